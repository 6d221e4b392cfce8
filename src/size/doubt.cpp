#include "size/doubt.hpp"

#include <algorithm>
#include <cmath>

#include "timings/student.hpp"

namespace latchwork::inline v0 {

void Doubt::add(double relative_mm, double relative_spread, int places) noexcept {
  if (places < 2) return;
  const double part = relative_mm * relative_spread;
  const double square = part * part * (1 + 1.0 / places);
  squares_ += square;
  per_freedom_ += square * square / (places - 1);
}

double Doubt::spread_mm() const noexcept {
  return std::sqrt(squares_);
}

double Doubt::margin_mm(double level) const noexcept {
  if (squares_ == 0) return 0;
  constexpr double most = 10'000;    // Student's t is the normal's to a ten-thousandth there
  constexpr double rounding = 1e-9;  // equal parts make a whole number, whatever the sums lose
  // Parts too small for their fourth powers count as known well: they are less than 1e-70 mm.
  const double freedom = per_freedom_ > 0 ? squares_ * squares_ / per_freedom_ : most;
  const double whole = std::floor(freedom * (1 + rounding));
  return timing::student_limit(1 - level, static_cast<int>(std::clamp(whole, 1.0, most))) * spread_mm();
}

}  // namespace latchwork::inline v0
