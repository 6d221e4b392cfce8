#include "gauge/fisher.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace latchwork::inline v0 {
namespace {

// Beyond these the powers of a sum could leave the range of a double before its factors bring them back.
constexpr int most_between = 200;
constexpr int most_within = 600;

/// 1 + a/2 x + a (a + 2)/(2 4) x^2 + ..., that many terms.
double even_sum(int a, double x, int terms) {
  double term = 1;
  double sum = 1;
  for (int k = 1; k < terms; ++k) {
    term *= (a + 2.0 * (k - 1)) / (2.0 * k) * x;
    sum += term;
  }
  return sum;
}

double both_odd(double ratio, int between, int within) {
  const double angle = std::atan(std::sqrt(between * ratio / within));
  const double sine = std::sin(angle);
  const double cosine = std::cos(angle);
  double term = cosine;
  double sum = within > 1 ? cosine : 0;
  for (int k = 3; k <= within - 2; k += 2) {
    term *= cosine * cosine * (k - 1) / k;
    sum += term;
  }
  const double first = 2 / std::numbers::pi * (angle + sine * sum);
  if (between == 1) return 1 - first;
  term = 1;
  sum = 1;
  for (int k = 3; k <= between - 2; k += 2) {
    term *= sine * sine * (within + k - 2) / k;
    sum += term;
  }
  // The gamma function of (within + 1) / 2 over that of within / 2 is this over the root of pi.
  double gammas = 1;
  for (int k = 1; k <= within - 2; k += 2) gammas *= (k + 1.0) / k;
  return 1 - first + 2 / std::numbers::pi * gammas * sine * std::pow(cosine, within) * sum;
}

}  // namespace

double fisher_beyond(double ratio, int between, int within) {
  between = std::min(between, most_between);
  within = std::min(within, most_within);
  const double x = within / (within + between * ratio);
  double out = 0;
  if (between % 2 == 0) {
    out = std::pow(x, within / 2.0) * even_sum(within, 1 - x, between / 2);
  } else if (within % 2 == 0) {
    out = 1 - std::pow(1 - x, between / 2.0) * even_sum(between, x, within / 2);
  } else {
    out = both_odd(ratio, between, within);
  }
  return std::clamp(out, 0.0, 1.0);
}

}  // namespace latchwork::inline v0
