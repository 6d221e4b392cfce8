#pragma once

namespace latchwork::inline v0 {

/// How far a size may be off: independent parts, added as squares. See size.hpp for the formulas.
class Doubt {
 public:
  /// `relative` is the size's change, in mm, for a gauge that is off by its whole self; the gauge was measured in
  /// `places` places with that sample standard deviation relative to it. One place adds nothing.
  void add(double relative_mm, double relative_spread, int places) noexcept;

  double spread_mm() const noexcept;              ///< one standard deviation
  double margin_mm(double level) const noexcept;  ///< half the interval at that level

 private:
  double squares_ = 0;
  double per_freedom_ = 0;  // sum of the parts' fourth powers over their degrees of freedom
};

}  // namespace latchwork::inline v0
