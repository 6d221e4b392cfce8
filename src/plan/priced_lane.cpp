#include "plan/priced_lane.hpp"

#include <utility>

#include "plan/index.hpp"

namespace latchwork::inline v0::planning {

PricedLane::PricedLane(const Lane& lane, int rows)
    : lane_(&lane),
      rows_(rows),
      to_(at(lane.task_count()) + 1, far),
      from_(to_),
      worked_(to_),
      held_(at(lane.task_count()), far),
      released_(at(lane.task_count()), 0),
      start_(at(rows) + 1, far),
      there_(start_),
      adds_(start_) {
  for (int i = 0; i < lane.task_count(); ++i) {
    const Task& task = lane.task(i);
    if (!task.by_hold) continue;
    releases_.resize(at(rows) + 1, -1);
    releases_[at(task.high - 1)] = i;
  }
}

void PricedLane::start_up() {
  std::fill(to_.begin(), to_.end(), far);
  to_[0] = 0;
  queue_.start(at(rows_) + 1);
  next_ = dropped_ = 0;
}

void PricedLane::up(int row) {
  const int done = lane_->done_at(row);
  if (done >= 0) {
    work_ += std::max(0, done - next_);
    for (; next_ < done; ++next_) {
      const std::int64_t to = to_[at(next_)];
      const bool starts = to < far && lane_->task(next_).by_batch();
      queue_.push(starts ? to - lane_->before[at(next_)] : far);
    }
    while (dropped_ < next_ && lane_->task(dropped_).last_stop < row) ++dropped_;
    queue_.drop_before(at(dropped_));
    start_[at(row)] = queue_.least();
    there_[at(row)] = to_[at(done)];
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
  if (done_ >= 0 && start_[at(row)] < far) {
    ended_ = start_[at(row)] + lane_->batch + lane_->upto[at(row)];
    using_ = ended_ + after();
  }
  if (sets_ && there_[at(row)] < far) using_ = std::min(using_, there_[at(row)] + held_on());
  if (release_ >= 0 && held_[at(release_)] < far) {
    using_ = std::min(using_, held_[at(release_)] + from_[at(release_) + 1]);
  }
  without_ = least_;
  ++work_;
}

// From where the next task is held over at the stop, without its price.
std::int64_t PricedLane::held_on() const {
  return lane_->hold + released_[at(done_)] + from_[at(done_) + 1];
}

// From where a batch ended at the stop.
std::int64_t PricedLane::after() const {
  return sets_ ? std::min(worked_[at(done_)], held_on()) : from_[at(done_)];
}

void PricedLane::set_up(std::int64_t price) {
  if (release_ >= 0) {
    std::int64_t& to = to_[at(release_) + 1];
    to = std::min(to, held_[at(release_)] + price);
  }
  if (done_ >= 0) {
    std::int64_t& to = to_[at(done_)];
    if (sets_) held_[at(done_)] = std::min(far, std::min(to, ended_) + price + lane_->hold);
    to = std::min(to, ended_ + price);
  }
  if (using_ < far) least_ = std::min(without_, using_ + price);
}

void PricedLane::start_down() {
  from_.back() = 0;
  next_ = lane_->task_count() - 1;
  queue_.start(at(rows_) + 1);
  pushed_ = rows_ + 1;
}

// What follows each task that is complete above the row only, by a batch: its stops are all above the row.
void PricedLane::finish_tasks(int row) {
  for (; next_ >= 0 && lane_->task(next_).high > row; --next_) {
    const Task& task = lane_->task(next_);
    work_ += pushed_ - task.high;
    while (pushed_ > task.high) queue_.push(adds_[at(--pushed_)]);
    std::int64_t& worked = worked_[at(next_)];
    worked = far;
    if (task.by_batch()) {
      queue_.drop_before(at(rows_ - task.last_stop));
      worked = std::min(far, queue_.least() + lane_->batch - lane_->before[at(next_)]);
    }
    from_[at(next_)] = worked;  // where it may be held, until the stop that sets it is reached
  }
}

void PricedLane::down(int row) {
  finish_tasks(row);
  look_at(row);
}

void PricedLane::price_down(std::int64_t price) {
  if (release_ >= 0) released_[at(release_)] = price;
  if (done_ < 0) return;
  adds_[at(row_)] = lane_->upto[at(row_)] + price + after();
  if (sets_) from_[at(done_)] = std::min(worked_[at(done_)], held_on() + price);
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
  least_ = from_[0];
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
  const std::int64_t there = release_ >= 0 ? to_[at(release_)] : there_[at(row_)];
  std::int64_t least = far;
  if (there < far) least = there + (release_ >= 0 || sets_ ? worked_[at(waiting)] : from_[at(waiting)]);
  int low = waiting;
  while (low > 0 && lane_->task(low - 1).last_stop > row_) --low;
  std::int64_t above = far;
  int stop = row_ + 1;
  for (int i = low; i < waiting; ++i) {
    for (const int last = lane_->task(i).last_stop; stop <= last; ++stop) above = std::min(above, adds_[at(stop)]);
    if (to_[at(i)] < far) least = std::min(least, to_[at(i)] + lane_->batch - lane_->before[at(i)] + above);
  }
  return least;
}

void PricedLane::get_ready() {
  lower_.resize(at(rows_) + 1);
  for (int row = rows_; row >= 0; --row) {
    int next = row + 1;
    while (next <= rows_ && adds_[at(next)] >= adds_[at(row)]) next = lower_[at(next)];
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
      if (adds_[at(best)] < far) *ways = adds_[at(best)] + lane_->batch - lane_->before[at(i)];
    }
    if (task.by_hold && layer < task.low) *ways = std::min(*ways, from_[at(i)]);
  }
  if (window.held >= 0) *ways = std::min(far, released_[at(window.held)] + from_[at(window.held) + 1]);
}

std::int64_t PricedLane::take_work() noexcept {
  return std::exchange(work_, 0);
}

}  // namespace latchwork::inline v0::planning
