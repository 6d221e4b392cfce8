#pragma once

#include <optional>

namespace latchwork::inline v0 {

/// How far a size in mm, or a need of yarn in g, may be off: independent parts, added as squares. See size.hpp for the
/// formulas.
class Doubt {
 public:
  /// A part with that standard deviation, known with so many degrees of freedom; of 0 it adds nothing.
  void add(double part, double freedom) noexcept;
  /// A part whose standard deviation comes from no sample, so that it is known as it is.
  void add_known(double part) noexcept;

  double spread() const noexcept;              ///< one standard deviation
  double margin(double level) const noexcept;  ///< half the interval at that level
  /// Effective degrees of freedom, 1..10000; nothing where no part comes from a sample.
  std::optional<int> freedom() const noexcept;

 private:
  double squares_ = 0;
  double per_freedom_ = 0;  // sum of the parts' fourth powers over their degrees of freedom
};

}  // namespace latchwork::inline v0
