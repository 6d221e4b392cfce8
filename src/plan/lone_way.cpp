#include "plan/lone_way.hpp"

#include "plan/index.hpp"

namespace latchwork::inline v0::planning {

std::int64_t LoneWay::find(const Lane& lane, const std::int64_t* price) {
  lane_ = &lane;
  price_ = price;
  const int count = lane.task_count();
  to_end_.resize(at(count) + 1);
  batch_.resize(at(count));
  by_hold_.resize(at(count));
  to_end_[at(count)] = 0;
  queue_.start(at(rows_) + 1);
  int known = rows_ + 1;  // adds_ from here on
  for (int i = count - 1; i >= 0; --i) {
    const Task& task = lane.task(i);
    const std::int64_t then = to_end_[at(i) + 1];
    const Task* above = i + 1 < count ? &lane.task(i + 1) : nullptr;
    const int sets = above && above->by_hold ? above->low - 1 : -1;  // a stop that may set the task above in hold too
    for (int row = known - 1; row >= task.high; --row) {
      std::int64_t adds = lane.done_at(row) < 0 || then >= far ? far : lane.upto[at(row)] + price[row] + then;
      if (above && row == sets && to_end_[at(i) + 2] < far) {
        adds =
            std::min(adds, lane.upto[at(row)] + price[row] + lane.hold + price[above->high - 1] + to_end_[at(i) + 2]);
      }
      adds_[at(row)] = adds;
      queue_.push(adds);
    }
    known = std::min(known, task.high);
    std::int64_t cost = far;
    if (task.by_batch()) {
      queue_.drop_before(at(rows_ - task.last_stop));
      batch_[at(i)] = queue_.least();
      if (batch_[at(i)] < far) cost = batch_[at(i)] + lane.batch - lane.before[at(i)];
    }
    by_hold_[at(i)] = 0;
    if (task.by_hold && then < far) {
      const std::int64_t held = lane.hold + price[task.low - 1] + price[task.high - 1] + then;
      if (held < cost) {
        cost = held;
        by_hold_[at(i)] = 1;
      }
    }
    to_end_[at(i)] = cost;
  }
  return to_end_[0];
}

int LoneWay::stop_of(int task) const {
  int row = lane_->task(task).high;
  while (adds_[at(row)] != batch_[at(task)]) ++row;
  return row;
}

bool LoneWay::holds_at(int task, int stop) const {
  const Task& next = lane_->task(task);
  return next.by_hold && next.low - 1 == stop &&
         adds_[at(stop)] != lane_->upto[at(stop)] + price_[stop] + to_end_[at(task)];
}

}  // namespace latchwork::inline v0::planning
