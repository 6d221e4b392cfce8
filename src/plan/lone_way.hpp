#pragma once

#include <cstdint>
#include <vector>

#include "plan/sliding_least.hpp"

namespace latchwork::inline v0::planning {

/// A lane's cheapest way alone, needles held or not, where every stop has a price. Where it stands is known by its
/// tasks, and a batch costs what its stop adds and its start takes off, so that of all stops in reach the one that adds
/// the least is best, of equal ones the lowest. Scratch is kept from lane to lane.
class LoneWay {
 public:
  explicit LoneWay(int rows) : rows_(rows), adds_(static_cast<std::size_t>(rows) + 1) {}

  /// Its cost. `price` has one a row 0..R; both must live until follow().
  std::int64_t find(const Lane& lane, const std::int64_t* price);

  /// Calls `use` with each stop of the way found last, from below.
  template <class Use>
  void follow(Use&& use) const {
    for (int i = 0; i < lane_->task_count();) {
      const Task& task = lane_->task(i);
      if (by_hold_[static_cast<std::size_t>(i)] != 0) {
        use(task.low - 1);
        use(task.high - 1);
        ++i;
        continue;
      }
      const int stop = stop_of(i);
      use(stop);
      i = lane_->done_at(stop);
      if (i < lane_->task_count() && holds_at(i, stop)) {
        use(lane_->task(i).high - 1);
        ++i;
      }
    }
  }

 private:
  int stop_of(int task) const;
  bool holds_at(int task, int stop) const;

  int rows_;
  const Lane* lane_ = nullptr;
  const std::int64_t* price_ = nullptr;
  std::vector<std::int64_t> to_end_;  // per task: the cheapest way from it
  std::vector<std::int64_t> batch_;   // per task: what the stop of its cheapest batch adds
  std::vector<char> by_hold_;         // per task: holding is cheaper
  std::vector<std::int64_t> adds_;    // per row: what a batch that ends there adds, with all that follows
  SlidingLeast queue_;
};

}  // namespace latchwork::inline v0::planning
