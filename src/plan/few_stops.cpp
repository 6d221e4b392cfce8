#include "plan/few_stops.hpp"

#include <algorithm>
#include <tuple>

#include "plan/index.hpp"
#include "plan/works.hpp"

namespace latchwork::inline v0::planning {
namespace {

constexpr int nowhere = -1;

/// Rows first..last, one of which is to be a stop.
struct Span {
  int first = 0;
  int last = 0;
};

/// A stop, and how the lanes stand after it.
struct Mark {
  int row = 0;
  int below = nowhere;  // the mark of the stop below
  int stops = 0;        // with those below
  int latest = 0;       // the row by which the next stop must come; past the last when all is done
  std::vector<int> standing;
};

constexpr std::size_t most_a_row = 4;          // marks of stops after one row, fewer on a great panel
constexpr std::size_t most_steps = 2'000'000;  // lanes, rows and marks: a few milliseconds
constexpr std::size_t most_open = 256;         // marks that the next stop is tried from

class FewStops {
 public:
  /// `held`: what can be held is, and else only what no batch makes. `wait`: rows that a batch comes after its cells,
  /// at the most.
  FewStops(const Problem& problem, bool held, int wait) : problem_(problem), held_(held), must_(problem.forced) {
    for (const Lane& lane : problem.lanes) {
      for (const Task& task : lane.tasks) {
        if (is_held(task)) {
          must_[at(task.low - 1)] = must_[at(task.high - 1)] = 1;
        } else {
          spans_.push_back({task.high, std::min(task.last_stop, task.high + wait)});
        }
      }
    }
    usable_.reserve(must_.size());
    for (int row = 0; row <= problem.rows; ++row) {
      usable_.push_back(must_[at(row)] != 0 || some_lane_stops(row) ? 1 : 0);
    }
  }

  /// As if a lane could be worked at all of its rows. None where some stop is in the middle of a lane's stack, and does
  /// not serve what it was to serve.
  std::optional<Schedule> find_quickly() const {
    Schedule found;
    if (!serve_spans(found.stops)) return {};
    found.cost = cost_of(problem_, found.stops, nullptr, &found.works);
    if (found.cost >= far) return {};
    return found;
  }

  std::optional<Schedule> find() const {
    Schedule found;
    if (!serve_spans(found.stops)) return {};
    found.cost = cost_of(problem_, found.stops, nullptr, &found.works);
    if (found.cost < far) return found;
    // Some stop is in the middle of a lane's stack, and does not serve what it was to serve.
    if (!follow_lanes(found.stops)) return {};
    found.cost = cost_of(problem_, found.stops, nullptr, &found.works);
    if (found.cost < far) return found;
    return {};
  }

 private:
  bool is_held(const Task& task) const { return task.by_hold && (held_ || !task.by_batch()); }
  bool some_lane_stops(int row) const {
    return std::any_of(problem_.lanes.begin(), problem_.lanes.end(),
                       [&](const Lane& lane) { return lane.done_at(row) > 0; });
  }

  // The lowest row at which the stop below one at each row may be, 0..R+1: past that something would be missed.
  std::vector<int> lowest_below() const {
    std::vector<int> lowest(at(problem_.rows) + 2, nowhere);
    const auto raise = [&](int row, int to) { lowest[at(row)] = std::max(lowest[at(row)], to); };
    for (const Span& span : spans_) raise(span.last + 1, span.first);
    for (int row = 0; row <= problem_.rows; ++row) {
      if (must_[at(row)]) raise(row + 1, row);
    }
    for (int row = 0; row <= problem_.rows; ++row) raise(row + 1, lowest[at(row)]);
    return lowest;
  }

  // Every span gets a stop, as if a lane could be worked at all of its rows. Whether it can.
  bool serve_spans(std::vector<char>& stops) const {
    const std::vector<int> lowest = lowest_below();
    const int apart = std::max(1, problem_.apart);
    // Forced stops keep no distance, and what is too near them is closed to all lanes.
    const auto highest_below = [&](int row) {
      return row > problem_.rows || is_forced(problem_, row) ? row - 1 : row - apart;
    };
    std::vector<int> latest(lowest.size(), nowhere);  // the highest row up to each at which there may be a stop
    const auto can_follow = [&](int row) {
      const int below = highest_below(row);
      return lowest[at(row)] == nowhere || (below >= 0 && latest[at(below)] >= lowest[at(row)]);
    };
    std::vector<char> may(lowest.size(), 0);
    for (int row = 0; row <= problem_.rows; ++row) {
      may[at(row)] = usable_[at(row)] && can_follow(row) ? 1 : 0;
      latest[at(row)] = may[at(row)] ? row : row > 0 ? latest[at(row) - 1] : nowhere;
    }
    const int end = problem_.rows + 1;
    if (!can_follow(end)) return false;
    stops.assign(at(end), 0);
    for (int row = end; lowest[at(row)] != nowhere;) {
      // As far down as nothing is missed.
      int below = lowest[at(row)];
      while (!may[at(below)]) ++below;
      stops[at(below)] = 1;
      row = below;
    }
    return true;
  }

  // Goes up the rows with a few marks for each, and keeps those after which most is done in the lanes that are in the
  // middle of a stack there: in the others a stop does all that is due.
  bool follow_lanes(std::vector<char>& stops) const {
    std::vector<Mark> marks(1);
    marks.front().row = -std::max(1, problem_.apart);
    marks.front().standing.assign(problem_.lanes.size(), 0);
    marks.front().latest = latest_after(marks.front());
    std::vector<int> open{0};
    for (int row = 0; row <= problem_.rows; ++row) {
      const auto first = static_cast<int>(marks.size());
      if (usable_[at(row)]) {
        for (const int below : best_below(marks, open, row)) marks.push_back(stop_after(marks, below, row));
      }
      std::erase_if(open, [&](int mark) {
        if (!must_[at(row)] && marks[at(mark)].latest > row) return false;
        marks[at(mark)].standing = {};
        return true;
      });
      for (int mark = first; mark < static_cast<int>(marks.size()); ++mark) {
        if (marks[at(mark)].latest > row) open.push_back(mark);
      }
      if (open.size() > most_open) open.erase(open.begin(), open.end() - most_open);
      if (open.empty()) return false;
    }
    // What is still open past the last row has nothing left to do.
    const int last = *std::min_element(open.begin(), open.end(),
                                       [&](int a, int b) { return marks[at(a)].stops < marks[at(b)].stops; });
    stops.assign(at(problem_.rows) + 1, 0);
    for (int mark = last; mark > 0; mark = marks[at(mark)].below) stops[at(marks[at(mark)].row)] = 1;
    return true;
  }

  // The marks from which to stop after the row.
  std::vector<int> best_below(const std::vector<Mark>& marks, const std::vector<int>& open, int row) const {
    std::vector<std::size_t> inside;  // lanes that cannot be worked there
    for (std::size_t lane = 0; lane < problem_.lanes.size(); ++lane) {
      if (problem_.lanes[lane].done_at(row) < 0) inside.push_back(lane);
    }
    std::vector<std::tuple<int, int, int>> found;
    for (const int mark : open) {
      const Mark& below = marks[at(mark)];
      if (!is_forced(problem_, row) && row - below.row < problem_.apart) continue;
      int done = 0;
      for (const std::size_t lane : inside) done += below.standing[lane];
      found.emplace_back(-done, below.stops, -mark);
    }
    std::sort(found.begin(), found.end());
    const std::size_t size = std::max<std::size_t>(1, problem_.lanes.size() * must_.size());
    const std::size_t most = std::min(found.size(), std::clamp<std::size_t>(most_steps / size, 1, most_a_row));
    std::vector<int> best;
    best.reserve(most);
    for (std::size_t i = 0; i < most; ++i) best.push_back(-std::get<2>(found[i]));
    return best;
  }

  Mark stop_after(const std::vector<Mark>& marks, int below, int row) const {
    Mark mark{row, below, marks[at(below)].stops + 1, 0, marks[at(below)].standing};
    for (std::size_t k = 0; k < problem_.lanes.size(); ++k) {
      const Lane& lane = problem_.lanes[k];
      int& standing = mark.standing[k];
      if (standing < lane.task_count() && is_held(lane.task(standing)) && lane.task(standing).high - 1 == row)
        ++standing;
      standing = std::max(standing, lane.done_at(row));
    }
    mark.latest = latest_after(mark);
    return mark;
  }

  int latest_after(const Mark& mark) const {
    int latest = problem_.rows + 1;
    for (std::size_t k = 0; k < problem_.lanes.size(); ++k) {
      const Lane& lane = problem_.lanes[k];
      if (mark.standing[k] >= lane.task_count()) continue;
      const Task& next = lane.task(mark.standing[k]);
      latest = std::min(latest, is_held(next) ? next.high - 1 : next.last_stop);
    }
    return latest;
  }

  const Problem& problem_;
  bool held_;
  std::vector<char> must_;    // per row: forced, or the beginning or end of a hold
  std::vector<char> usable_;  // per row: some lane can be worked there
  std::vector<Span> spans_;
};

}  // namespace

std::optional<Schedule> few_stops(const Problem& problem) {
  if (auto found = FewStops(problem, false, problem.rows).find()) return found;
  const auto either = [](const Task& task) { return task.by_hold && task.by_batch(); };
  const bool other_way = std::any_of(problem.lanes.begin(), problem.lanes.end(), [&](const Lane& lane) {
    return std::any_of(lane.tasks.begin(), lane.tasks.end(), either);
  });
  if (!other_way) return {};
  return FewStops(problem, true, problem.rows).find();
}

std::optional<Schedule> few_stops_within(const Problem& problem, int wait) {
  return FewStops(problem, false, wait).find_quickly();
}

Schedule soonest(const Problem& problem) {
  Schedule found{problem.forced, 0};
  for (const Lane& lane : problem.lanes) {
    for (int i = 0; i < lane.task_count(); ++i) {
      const Task& task = lane.task(i);
      if (!task.by_batch()) {
        found.stops[at(task.low - 1)] = found.stops[at(task.high - 1)] = 1;
        found.cost += lane.hold;
        continue;
      }
      int stop = task.high;
      while (lane.done_at(stop) <= i) ++stop;  // at the last stop, at the latest
      found.stops[at(stop)] = 1;
      found.cost += lane.batch_cost(i, stop);
    }
  }
  found.cost +=
      problem.stop_cost * std::count_if(found.stops.begin(), found.stops.end(), [](char stop) { return stop != 0; });
  return found;
}

}  // namespace latchwork::inline v0::planning
