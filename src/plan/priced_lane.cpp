#include "plan/priced_lane.hpp"

#include <algorithm>
#include <utility>

#include "plan/index.hpp"

namespace latchwork::inline v0::planning {

PricedLane::PricedLane(const Lane& lane, int rows)
    : lane_(&lane), rows_(rows), standing_(at(lane.task_count()) + 1), of_row_(at(rows) + 1) {
  const auto holds = [](const Task& task) { return task.by_hold; };
  if (std::none_of(lane.tasks.begin(), lane.tasks.end(), holds)) return;
  held_.resize(lane.tasks.size());
  releases_.resize(at(rows) + 1, -1);
  for (int i = 0; i < lane.task_count(); ++i) {
    if (lane.task(i).by_hold) releases_[at(lane.task(i).high - 1)] = i;
  }
}

void PricedLane::start_up() {
  for (Standing& standing : standing_) standing.to = far;
  standing_.front().to = 0;
  queue_.start(at(rows_) + 1);
  next_ = dropped_ = 0;
}

void PricedLane::up(int row) {
  const int done = lane_->done_at(row);
  if (done >= 0) {
    work_ += std::max(0, done - next_);
    for (; next_ < done; ++next_) {
      const std::int64_t to = standing(next_).to;
      const bool starts = to < far && lane_->task(next_).by_batch();
      queue_.push(starts ? to - lane_->before[at(next_)] : far);
    }
    while (dropped_ < next_ && lane_->task(dropped_).last_stop < row) ++dropped_;
    queue_.drop_before(at(dropped_));
    of(row).start = queue_.least();
    of(row).there = standing(done).to;
  }
  look_at(row);
}

// Under either pass: what a stop at the row costs at least, without its price.
void PricedLane::look_at(int row) {
  row_ = row;
  done_ = lane_->done_at(row);
  release_ = releases_.empty() ? -1 : releases_[at(row)];
  sets_ = done_ >= 0 && done_ < lane_->task_count() && lane_->task(done_).by_hold && lane_->task(done_).low - 1 == row;
  using_ = ended_ = far;
  if (done_ >= 0 && of(row).start < far) {
    ended_ = of(row).start + lane_->batch + lane_->upto[at(row)];
    using_ = ended_ + after();
  }
  if (sets_ && of(row).there < far) using_ = std::min(using_, of(row).there + held_on());
  if (release_ >= 0 && held(release_).to < far) {
    using_ = std::min(using_, held(release_).to + standing(release_ + 1).from);
  }
  without_ = least_;
  ++work_;
}

// From where the next task is held over at the stop, without its price.
std::int64_t PricedLane::held_on() const {
  return lane_->hold + held(done_).released + standing(done_ + 1).from;
}

// From where a batch ended at the stop.
std::int64_t PricedLane::after() const {
  return sets_ ? std::min(standing(done_).worked, held_on()) : standing(done_).from;
}

void PricedLane::set_up(std::int64_t price) {
  if (release_ >= 0) {
    std::int64_t& to = standing(release_ + 1).to;
    to = std::min(to, held(release_).to + price);
  }
  if (done_ >= 0) {
    std::int64_t& to = standing(done_).to;
    if (sets_) held(done_).to = std::min(far, std::min(to, ended_) + price + lane_->hold);
    to = std::min(to, ended_ + price);
  }
  if (using_ < far) least_ = std::min(without_, using_ + price);
}

void PricedLane::start_down() {
  standing_.back().from = 0;
  next_ = lane_->task_count() - 1;
  queue_.start(at(rows_) + 1);
  pushed_ = rows_ + 1;
}

// What follows each task that is complete above the row only, by a batch: its stops are all above the row.
void PricedLane::finish_tasks(int row) {
  for (; next_ >= 0 && lane_->task(next_).high > row; --next_) {
    const Task& task = lane_->task(next_);
    work_ += pushed_ - task.high;
    while (pushed_ > task.high) queue_.push(of(--pushed_).adds);
    std::int64_t& worked = standing(next_).worked;
    worked = far;
    if (task.by_batch()) {
      queue_.drop_before(at(rows_ - task.last_stop));
      worked = std::min(far, queue_.least() + lane_->batch - lane_->before[at(next_)]);
    }
    standing(next_).from = worked;  // where it may be held, until the stop that sets it is reached
  }
}

void PricedLane::down(int row) {
  finish_tasks(row);
  look_at(row);
}

void PricedLane::price_down(std::int64_t price) {
  if (release_ >= 0) held(release_).released = price;
  if (done_ < 0) return;
  of(row_).adds = lane_->upto[at(row_)] + price + after();
  if (sets_) standing(done_).from = std::min(standing(done_).worked, held_on() + price);
}

void PricedLane::set_down(std::int64_t price) {
  price_down(price);
  if (using_ < far) least_ = std::min(without_, using_ + price);
}

void PricedLane::take_down(int row, std::int64_t price) {
  down(row);
  price_down(price);
}

void PricedLane::end_down() {
  finish_tasks(-1);
  least_ = standing(0).from;
}

std::int64_t PricedLane::worth(std::int64_t price, std::int64_t most) {
  if (using_ >= far) return 0;
  // The cheapest way is one that stops here, or one that does not; if it is dearer to stop, it is known.
  if (using_ + price <= least_) without_ = avoiding();
  return std::clamp<std::int64_t>(without_ - using_, 0, most);
}

// The cheapest way that does not stop at the row: from each task that may be waiting there to a stop above.
std::int64_t PricedLane::avoiding() const {
  const int waiting = release_ >= 0 ? release_ : done_;  // not complete there, so that all its stops are above
  const std::int64_t there = release_ >= 0 ? standing(release_).to : of(row_).there;
  std::int64_t least = far;
  if (there < far) least = there + (release_ >= 0 || sets_ ? standing(waiting).worked : standing(waiting).from);
  int low = waiting;
  while (low > 0 && lane_->task(low - 1).last_stop > row_) --low;
  std::int64_t above = far;
  int stop = row_ + 1;
  for (int i = low; i < waiting; ++i) {
    for (const int last = lane_->task(i).last_stop; stop <= last; ++stop) above = std::min(above, of(stop).adds);
    if (standing(i).to < far) least = std::min(least, standing(i).to + lane_->batch - lane_->before[at(i)] + above);
  }
  return least;
}

void PricedLane::get_ready() {
  lower_.resize(at(rows_) + 1);
  for (int row = rows_; row >= 0; --row) {
    int next = row + 1;
    while (next <= rows_ && of(next).adds >= of(row).adds) next = lower_[at(next)];
    lower_[at(row)] = next;
  }
}

// The best stop of a task is the least of the rows from the layer, or the task's own last row, to its latest stop. Each
// task's rows reach further up than those of the tasks below it, so that one walk finds them all.
void PricedLane::write_ways(const Window& window, int layer, std::int64_t* ways) const {
  int best = layer;
  for (int i = window.low; i <= window.high; ++i, ++ways) {
    if (i == lane_->task_count()) {
      *ways = 0;
      continue;
    }
    const Task& task = lane_->task(i);
    *ways = far;
    if (task.by_batch()) {
      best = std::max(best, task.high);
      while (lower_[at(best)] <= task.last_stop) best = lower_[at(best)];
      if (of(best).adds < far) *ways = of(best).adds + lane_->batch - lane_->before[at(i)];
    }
    if (task.by_hold && layer < task.low) *ways = std::min(*ways, standing(i).from);
  }
  if (window.held >= 0) *ways = std::min(far, held(window.held).released + standing(window.held + 1).from);
}

std::int64_t PricedLane::take_work() noexcept {
  return std::exchange(work_, 0);
}

}  // namespace latchwork::inline v0::planning
