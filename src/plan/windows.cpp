#include "plan/windows.hpp"

#include "plan/index.hpp"

namespace latchwork::inline v0::planning {
namespace {

// The last row after which "task done so far: i" is still of use, before the next stop of use to it.
int alive_until(const Lane& lane, int i, int rows) {
  if (i == lane.task_count()) return rows;
  const Task& task = lane.task(i);
  return std::max(task.by_batch() ? task.last_stop - 1 : -2, task.by_hold ? task.low - 2 : -2);
}

LaneWindows windows_of_lane(const Lane& lane, int rows) {
  LaneWindows out;
  out.layer.reserve(at(rows) + 2);
  out.layer.push_back({});
  int low = 0;
  int high = 0;
  int hold = 0;  // first task that could still be held over
  for (int row = 0; row <= rows; ++row) {
    while (high < lane.task_count() &&
           (lane.task(high).high <= row || (lane.task(high).by_hold && lane.task(high).high - 1 <= row))) {
      ++high;
    }
    while (low < lane.task_count() && alive_until(lane, low, rows) < row) ++low;
    while (hold < lane.task_count() && lane.task(hold).high - 1 <= row) ++hold;
    Window window{low, high, -1};
    if (window.high < window.low) window.high = window.low - 1;
    if (hold < lane.task_count() && lane.task(hold).by_hold && lane.task(hold).low - 1 <= row) window.held = hold;
    out.layer.push_back(window);
  }
  return out;
}

}  // namespace

bool can_use(const Lane& lane, const Window& from, const Window& to, int row) {
  if (from.held >= 0 && lane.task(from.held).high - 1 == row) return true;
  if (to.held >= 0 && lane.task(to.held).low - 1 == row) return true;
  const int done = lane.done_at(row);
  for (int i = from.low; i <= from.high && i < done; ++i) {
    if (lane.task(i).last_stop >= row) return true;
  }
  return false;
}

Windows windows_of(const Problem& problem, Limits* limits) {
  Windows out;
  out.users.resize(at(problem.rows) + 1);
  out.lanes.reserve(problem.lanes.size());
  for (std::size_t k = 0; k < problem.lanes.size(); ++k) {
    if (limits && limits->over()) return out;
    out.lanes.push_back(windows_of_lane(problem.lanes[k], problem.rows));
    const auto& layer = out.lanes.back().layer;
    for (int row = 0; row <= problem.rows; ++row) {
      if (can_use(problem.lanes[k], layer[at(row)], layer[at(row) + 1], row)) {
        out.users[at(row)].push_back(static_cast<int>(k));
      }
    }
  }
  return out;
}

}  // namespace latchwork::inline v0::planning
