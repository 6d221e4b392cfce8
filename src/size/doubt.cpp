#include "size/doubt.hpp"

#include <algorithm>
#include <cmath>

#include "timings/student.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr int most_freedom = 10'000;  // Student's t is the normal's to a ten-thousandth there

}  // namespace

void Doubt::add(double part, double freedom) noexcept {
  if (freedom <= 0) return;
  const double square = part * part;
  squares_ += square;
  per_freedom_ += square * square / freedom;
}

void Doubt::add_known(double part) noexcept {
  squares_ += part * part;
}

double Doubt::spread() const noexcept {
  return std::sqrt(squares_);
}

std::optional<int> Doubt::freedom() const noexcept {
  // Parts too small for their fourth powers count as known well: they are less than 1e-70.
  if (per_freedom_ <= 0) return std::nullopt;
  constexpr double rounding = 1e-9;  // equal parts make a whole number, whatever the sums lose
  const double whole = std::floor(squares_ * squares_ / per_freedom_ * (1 + rounding));
  return static_cast<int>(std::clamp(whole, 1.0, static_cast<double>(most_freedom)));
}

double Doubt::margin(double level) const noexcept {
  if (squares_ == 0) return 0;
  return timing::student_limit(1 - level, freedom().value_or(most_freedom)) * spread();
}

}  // namespace latchwork::inline v0
