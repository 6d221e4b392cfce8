#include "timings/student.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace latchwork::inline v0::timing {

double student_beyond(double t, int freedom) {
  const double n = freedom;
  const double angle = std::atan(t / std::sqrt(n));
  const double sine = t / std::sqrt(n + t * t);
  const double cosine_squared = n / (n + t * t);
  const bool odd = freedom % 2 != 0;
  double term = odd ? std::sqrt(cosine_squared) : 1;
  double sum = freedom > 1 ? term : 0;
  for (int k = odd ? 3 : 2; k <= freedom - 2; k += 2) {
    term *= cosine_squared * (k - 1) / k;
    sum += term;
  }
  const double within = odd ? (angle + sine * sum) * 2 / std::numbers::pi : sine * sum;
  return std::clamp(1 - within, 0.0, 1.0);
}

double student_limit(double share, int freedom) {
  double low = 0;
  double high = 1;
  while (student_beyond(high, freedom) > share && high < 1e12) high *= 2;
  for (int i = 0; i < 60; ++i) {
    const double middle = low + (high - low) / 2;
    (student_beyond(middle, freedom) > share ? low : high) = middle;
  }
  return high;
}

}  // namespace latchwork::inline v0::timing
