#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "plan/problem.hpp"

namespace latchwork::inline v0::planning {

/// The least of a run of values that grows at one end and is dropped from the other. Each value is looked at twice,
/// however long the run is: of the older part the least from each value on is known, of the newer part the least of
/// all, and when the older part is used up, the newer becomes it.
class SlidingLeast {
 public:
  /// Empty, with room for so many values.
  void start(std::size_t most) {
    if (value_.size() < most) value_.resize(most);
    first_ = split_ = end_ = 0;
    newer_ = far;
  }
  void push(std::int64_t value) {
    value_[end_++] = value;
    newer_ = std::min(newer_, value);
  }
  /// Drops the values pushed before the one of this place; 0 is the first pushed.
  void drop_before(std::size_t place) {
    if (place <= first_) return;
    first_ = place;
    if (first_ < split_) return;
    std::int64_t least = far;
    for (std::size_t k = end_; k-- > first_;) value_[k] = least = std::min(least, value_[k]);
    split_ = end_;
    newer_ = far;
  }
  /// `far` when there is none.
  std::int64_t least() const { return first_ < split_ ? std::min(value_[first_], newer_) : newer_; }

 private:
  std::vector<std::int64_t> value_;  // in the older part the least from each on
  std::size_t first_ = 0;
  std::size_t split_ = 0;  // the newer part begins
  std::size_t end_ = 0;
  std::int64_t newer_ = far;
};

}  // namespace latchwork::inline v0::planning
