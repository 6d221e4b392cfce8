#include "plan/rhythm.hpp"

#include <algorithm>

namespace latchwork::inline v0::planning {

Works works_in_rhythm(const Lane& lane, const Rhythm& rhythm, int rows) {
  Works works;
  int standing = 0;
  for (std::int64_t next = rhythm.first; next <= rows && standing < lane.task_count(); next += rhythm.every) {
    const int row = static_cast<int>(next);
    const int done = done_at_stop(lane, standing, row);
    if (done == missed) break;
    if (done == standing) continue;
    works.cost += lane.batch_cost(standing, row);
    works.list.push_back({false, standing, done - 1, row});
    standing = done;
  }
  if (standing < lane.task_count()) works.cost = far;
  return works;
}

RhythmFirsts::RhythmFirsts(const std::vector<Lane>& lanes) : lanes_(&lanes) {
  for (const Lane& lane : lanes) {
    for (const Task& task : lane.tasks) {
      earliest_ = std::min(earliest_, task.high);
      latest_ = std::min(latest_, task.last_stop);
      if (!narrowest_ || task.last_stop - task.high < narrowest_->last_stop - narrowest_->high) narrowest_ = &task;
    }
  }
}

int RhythmFirsts::widest_in_time() const {
  if (!narrowest_) return 1;
  int widest = std::numeric_limits<int>::max();
  for (const Lane& lane : *lanes_) {
    for (const Task& task : lane.tasks) {
      // A stop for the narrowest serves it as well: in the uppermost rows, or below a crossing, that is usual.
      if (task.high <= narrowest_->high && task.last_stop >= narrowest_->last_stop) continue;
      widest = std::min(widest, task.last_stop - task.high + 1);
    }
  }
  return std::max(1, widest);
}

std::vector<int> RhythmFirsts::likely(int rows) const {
  const int widest = std::min(rows, widest_in_time());
  std::vector<int> order;
  order.reserve(static_cast<std::size_t>(rows));
  for (int every = widest; every >= 1; --every) order.push_back(every);
  for (int every = widest + 1; every <= rows; ++every) order.push_back(every);
  return order;
}

std::vector<int> RhythmFirsts::of(int every, int forced) const {
  const int low = forced > 0 ? forced : narrowest_ ? narrowest_->high : 1;
  const int high = forced > 0 || !narrowest_ ? low : std::min(narrowest_->last_stop, low + every - 1);
  const int latest = forced > 0 ? std::min(forced, latest_) : latest_;
  std::vector<int> found;
  for (int row = low; row <= high; ++row) {
    const int residue = (row - 1) % every + 1;
    if (residue <= latest) found.push_back(residue);
    if (earliest_ >= latest) continue;
    // From the first such row after `earliest_` on, an earlier stop would have had something to do.
    std::int64_t first = residue + (std::max(0, earliest_ - residue) / every + 1) * std::int64_t{every};
    for (; first <= latest; first += every) found.push_back(static_cast<int>(first));
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace latchwork::inline v0::planning
