#include "plan/works.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

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

/// Stops that a batch may end at, from the top down, and which of those in reach is best: what it adds, with all that
/// follows, does not depend on where the batch begins. A stop that one below it is as good as is of no more use, for
/// what reaches the upper one reaches the lower as well, and longer.
class Reach {
 public:
  struct Stop {
    int row = 0;
    Rest rest;  ///< from the stop on, with the rungs below it
  };
  explicit Reach(std::size_t most) { stops_.reserve(most); }
  void push(const Stop& lower) {
    while (stops_.size() > first_ && !(stops_.back().rest.key() < lower.rest.key())) stops_.pop_back();
    stops_.push_back(lower);
  }
  /// Nothing when there is none at or below the row.
  const Stop* best(int last_row) {
    while (first_ < stops_.size() && stops_[first_].row > last_row) ++first_;
    return first_ < stops_.size() ? &stops_[first_] : nullptr;
  }

 private:
  std::vector<Stop> stops_;
  std::size_t first_ = 0;
};

// Per task and one past the last: the best way on from it.
std::vector<Rest> rests_of(const Lane& lane, const StopRows& stops) {
  const int count = lane.task_count();
  std::vector<Rest> rest(at(count) + 1);
  rest[at(count)].cost = 0;
  Reach reach(stops.rows.size());
  std::size_t known = stops.rows.size();  // pushed from here on
  for (int i = count - 1; i >= 0; --i) {
    const Task& task = lane.task(i);
    Rest& best = rest[at(i)];
    while (known > 0 && stops.rows[known - 1] >= task.high) {
      const int row = stops.rows[--known];
      const int done = lane.done_at(row);
      if (done < 0) continue;
      const Rest& then = rest[at(done)];
      if (then.cost < far) reach.push({row, {lane.upto[at(row)] + then.cost, then.works, then.holds, {}}});
    }
    if (task.by_batch()) {
      if (const Reach::Stop* stop = reach.best(task.last_stop)) {
        best = stop->rest;
        best.cost += lane.batch - lane.before[at(i)];
        best.works += 1;
        best.next = {false, i, lane.done_at(stop->row) - 1, stop->row};
      }
    }
    if (task.by_hold && stops.flags[at(task.low - 1)] && stops.flags[at(task.high - 1)]) {
      const Rest& then = rest[at(i) + 1];
      const Rest held{lane.hold + then.cost, then.works + 1, then.holds + 1, {true, i, i, task.low - 1}};
      if (then.cost < far && (best.cost >= far || held.key() < best.key())) best = held;
    }
  }
  return rest;
}

std::vector<Work> best_works(const std::vector<Rest>& rest) {
  std::vector<Work> list;
  for (std::size_t i = 0; i + 1 < rest.size(); i = at(list.back().last + 1)) list.push_back(rest[i].next);
  return list;
}

}  // namespace

StopRows stop_rows(std::vector<char> flags) {
  StopRows stops{std::move(flags), {}};
  stops.rows.reserve(static_cast<std::size_t>(std::count(stops.flags.begin(), stops.flags.end(), 1)));
  for (std::size_t row = 0; row < stops.flags.size(); ++row) {
    if (stops.flags[row] != 0) stops.rows.push_back(static_cast<int>(row));
  }
  return stops;
}

Works works_of(const Lane& lane, const StopRows& stops) {
  const std::vector<Rest> rest = rests_of(lane, stops);
  Works works;
  works.cost = rest[0].cost;
  if (works.cost < far) works.list = best_works(rest);
  return works;
}

std::int64_t cost_of(const Problem& problem, const std::vector<char>& stops, Limits* limits,
                     std::vector<std::vector<Work>>* works) {
  std::vector<char> all = stops;
  std::int64_t cost = 0;
  for (std::size_t row = 0; row < all.size(); ++row) {
    all[row] = all[row] != 0 || problem.forced[row] != 0 ? 1 : 0;
    if (all[row]) cost += problem.stop_cost;
  }
  const StopRows laid_out = stop_rows(std::move(all));
  for (const Lane& lane : problem.lanes) {
    if (limits && limits->over()) return far;
    const std::vector<Rest> rest = rests_of(lane, laid_out);
    const std::int64_t mine = rest.front().cost;
    if (mine >= far) {
      if (works) works->clear();
      return far;
    }
    cost += mine;
    if (works) works->push_back(best_works(rest));
  }
  return cost;
}

std::int64_t cost_of_works(const Problem& problem, const std::vector<std::vector<Work>>& works) {
  std::vector<char> stops = problem.forced;
  std::int64_t cost = 0;
  for (std::size_t k = 0; k < works.size(); ++k) {
    const Lane& lane = problem.lanes[k];
    for (const Work& work : works[k]) {
      stops[at(work.stop)] = 1;
      if (work.hold) stops[at(lane.task(work.first).high - 1)] = 1;
      cost += work.hold ? lane.hold : lane.batch_cost(work.first, work.stop);
    }
  }
  for (const char stop : stops) cost += stop != 0 ? problem.stop_cost : 0;
  return cost;
}

}  // namespace latchwork::inline v0::planning
