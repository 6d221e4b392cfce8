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
  bool better_than(const Rest& other) const {
    return std::tie(cost, works, holds) < std::tie(other.cost, other.works, other.holds);
  }
};

/// The best way on from each task of a lane at given stops. Kept from lane to lane, for its room.
class WaysOn {
 public:
  void find(const Lane& lane, const StopRows& stops) {
    const int count = lane.task_count();
    rest_.assign(at(count) + 1, {});
    next_.resize(at(count));
    rest_[at(count)].cost = 0;
    reach_.clear();
    first_ = 0;
    std::size_t known = stops.rows.size();  // pushed from here on
    for (int i = count - 1; i >= 0; --i) {
      const Task& task = lane.task(i);
      Rest& best = rest_[at(i)];
      while (known > 0 && stops.rows[known - 1] >= task.high) {
        const int row = stops.rows[--known];
        const int done = lane.done_at(row);
        if (done < 0) continue;
        const Rest& then = rest_[at(done)];
        if (then.cost < far) push({row, {lane.upto[at(row)] + then.cost, then.works, then.holds}});
      }
      if (task.by_batch()) {
        if (const Stop* stop = in_reach(task.last_stop)) {
          best = {stop->rest.cost + lane.batch - lane.before[at(i)], stop->rest.works + 1, stop->rest.holds};
          next_[at(i)] = {false, i, lane.done_at(stop->row) - 1, stop->row};
        }
      }
      if (task.by_hold && stops.flags[at(task.low - 1)] && stops.flags[at(task.high - 1)]) {
        const Rest& then = rest_[at(i) + 1];
        const Rest held{lane.hold + then.cost, then.works + 1, then.holds + 1};
        if (then.cost < far && (best.cost >= far || held.better_than(best))) {
          best = held;
          next_[at(i)] = {true, i, i, task.low - 1};
        }
      }
    }
  }

  std::int64_t cost() const { return rest_.front().cost; }
  /// Where there is one.
  std::vector<Work> list() const {
    std::vector<Work> list;
    list.reserve(at(rest_.front().works));
    for (std::size_t i = 0; i < next_.size(); i = at(list.back().last + 1)) list.push_back(next_[i]);
    return list;
  }

 private:
  // Stops that a batch may end at, from the top down: what one adds, with all that follows, does not depend on where
  // the batch begins. A stop that one below it is as good as is of no more use, for what reaches the upper one reaches
  // the lower as well, and longer.
  struct Stop {
    int row = 0;
    Rest rest;  // from the stop on, with the rungs below it
  };
  void push(const Stop& lower) {
    while (reach_.size() > first_ && !reach_.back().rest.better_than(lower.rest)) reach_.pop_back();
    reach_.push_back(lower);
  }
  // The best at or below the row; nothing when there is none.
  const Stop* in_reach(int last_row) {
    while (first_ < reach_.size() && reach_[first_].row > last_row) ++first_;
    return first_ < reach_.size() ? &reach_[first_] : nullptr;
  }

  std::vector<Rest> rest_;  // per task and one past the last
  std::vector<Work> next_;  // per task, where there is a way on
  std::vector<Stop> reach_;
  std::size_t first_ = 0;  // of those in reach
};

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
  WaysOn ways;
  ways.find(lane, stops);
  Works works{{}, ways.cost()};
  if (works.cost < far) works.list = ways.list();
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
  WaysOn ways;
  for (const Lane& lane : problem.lanes) {
    if (limits && limits->over()) return far;
    ways.find(lane, laid_out);
    if (ways.cost() >= far) {
      if (works) works->clear();
      return far;
    }
    cost += ways.cost();
    if (works) works->push_back(ways.list());
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
