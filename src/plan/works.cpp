#include "plan/works.hpp"

#include <tuple>

#include "plan/index.hpp"

namespace latchwork::inline v0::planning {
namespace {

struct Rest {
  std::int64_t cost = far;
  int works = 0;
  int holds = 0;
  Work next;
  auto key() const { return std::tie(cost, works, holds); }
};

}  // namespace

Works works_of(const Lane& lane, const std::vector<char>& stops) {
  const int count = lane.task_count();
  std::vector<Rest> rest(at(count) + 1);
  rest[at(count)].cost = 0;
  for (int i = count - 1; i >= 0; --i) {
    const Task& task = lane.task(i);
    Rest& best = rest[at(i)];
    const auto offer = [&](std::int64_t cost, const Work& work) {
      const Rest& then = rest[at(work.last) + 1];
      if (then.cost >= far) return;
      const Rest mine{cost + then.cost, then.works + 1, then.holds + (work.hold ? 1 : 0), work};
      if (best.cost >= far || mine.key() < best.key()) best = mine;
    };
    for (int row = task.high; row <= task.last_stop; ++row) {
      if (!stops[at(row)] || lane.done_at(row) < 0) continue;
      offer(lane.batch_cost(i, row), {false, i, lane.done_at(row) - 1, row});
    }
    if (task.by_hold && stops[at(task.low - 1)] && stops[at(task.high - 1)]) {
      offer(lane.hold, {true, i, i, task.low - 1});
    }
  }
  Works works;
  works.cost = rest[0].cost;
  if (works.cost >= far) return works;
  for (int i = 0; i < count; i = works.list.back().last + 1) works.list.push_back(rest[at(i)].next);
  return works;
}

std::int64_t cost_of(const Problem& problem, const std::vector<char>& stops) {
  std::vector<char> all = stops;
  std::int64_t cost = 0;
  for (std::size_t row = 0; row < all.size(); ++row) {
    all[row] = all[row] != 0 || problem.forced[row] != 0 ? 1 : 0;
    if (all[row]) cost += problem.stop_cost;
  }
  for (const Lane& lane : problem.lanes) {
    const std::int64_t mine = works_of(lane, all).cost;
    if (mine >= far) return far;
    cost += mine;
  }
  return cost;
}

}  // namespace latchwork::inline v0::planning
