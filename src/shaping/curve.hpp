#pragma once

#include <span>
#include <vector>

#include "latchwork/shaping.hpp"

namespace latchwork::inline v0::shaping {

/// An edge as a function: columns in from the panel's edge at any height. The points must be in order.
class EdgeCurve {
 public:
  EdgeCurve(std::span<const EdgePoint> points, EdgeLine line);
  /// Where it is when the row counter reads `row`, between readings too; at a step, where it was below.
  double at(double row) const;

 private:
  std::span<const EdgePoint> points_;
  std::vector<double> slopes_;  ///< at each point, of curves; empty for straight lines
};

}  // namespace latchwork::inline v0::shaping
