#include "plan/kept.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <numeric>
#include <vector>

#include "plan/index.hpp"
#include "plan/rhythm.hpp"
#include "plan/stops.hpp"
#include "plan/works.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::planning {
namespace {

struct MadeBatch {
  int from_row = 0;
  int stop = 0;
};

/// How a plan works the wales that are kept to rhythms.
class KeptWorks {
 public:
  KeptWorks(const Plan& plan, const Wales& wales, const Conditions& conditions)
      : wales_(wales),
        rhythm_of_(wales.all().size(), -1),
        made_(wales.all().size()),
        steps_(conditions.rhythms.size()) {
    for (std::size_t i = 0; i < conditions.rhythms.size(); ++i) {
      const KeptRhythm& kept = conditions.rhythms[i];
      for (int column = kept.first_column; column <= kept.last_column; ++column) {
        if (const int wale = wales.at(kept.row, column); wale >= 0) rhythm_of_[at(wale)] = static_cast<int>(i);
      }
    }
    for (const Stop& stop : plan.stops) {
      if (stop.row < 0 || stop.row > plan.rows) continue;  // of a spoiled plan: it is not for us to say
      for (const Reform& reform : stop.reforms) {
        const int rhythm = of(reform.wale);
        if (rhythm < 0) continue;
        made_[at(reform.wale)].push_back({reform.from_row, stop.row});
        steps_[at(rhythm)].add(stop.row);
      }
      for (const int needle : stop.holds) note_hold(plan, stop.row, needle);
    }
  }

  /// The rhythm that a wale is kept to; -1: none.
  int of(int wale) const { return wale >= 0 && at(wale) < rhythm_of_.size() ? rhythm_of_[at(wale)] : -1; }
  const std::vector<MadeBatch>& made(int wale) const { return made_[at(wale)]; }
  bool holds(int rhythm) const { return steps_[at(rhythm)].hold; }

  /// The widest that has all the stops at which its wales are worked: any other that has them has more.
  Rhythm widest(int rhythm, int rows) const {
    const Steps& steps = steps_[at(rhythm)];
    return {steps.step > 0 ? steps.step : std::max(1, rows), steps.first >= 0 ? steps.first : 1};
  }

 private:
  struct Steps {
    int first = -1;  // the lowest stop
    int step = 0;    // what divides the rows between all of them
    bool hold = false;
    void add(int row) {
      if (first >= 0) step = std::gcd(step, row - first);
      first = first < 0 ? row : std::min(first, row);
    }
  };

  // Holds are the last that is done at a stop: the needle has the wale of the row above it.
  void note_hold(const Plan& plan, int row, int needle) {
    const auto place = [](std::int64_t number) { return number > 0 ? number - 1 : number; };
    const std::int64_t column = plan.columns - 1 - (place(needle) - place(plan.leftmost));
    if (row >= plan.rows || column < 0 || column >= plan.columns) return;
    const int rhythm = of(wales_.at(row + 1, static_cast<int>(column)));
    if (rhythm >= 0) steps_[at(rhythm)].hold = true;
  }

  const Wales& wales_;
  std::vector<int> rhythm_of_;                // per wale
  std::vector<std::vector<MadeBatch>> made_;  // per wale, of those that are kept to one
  std::vector<Steps> steps_;                  // per rhythm
};

bool works_so(const Lane& lane, const Works& works, const std::vector<MadeBatch>& made) {
  return works.cost < far && std::equal(works.list.begin(), works.list.end(), made.begin(), made.end(),
                                        [&](const Work& work, const MadeBatch& batch) {
                                          return work.stop == batch.stop &&
                                                 lane.task(work.first).low - 1 == batch.from_row;
                                        });
}

std::string rhythm_words(const KeptRhythm& kept) {
  const std::string wales =
      fmt::format("the wales of row {}, {}", kept.row, run_of("column", kept.first_column, kept.last_column));
  if (!kept.rhythm) return fmt::format("works {}, in no rhythm", wales);
  return fmt::format("works {}, otherwise than in their rhythm, every {} from row {}", wales,
                     count_of(kept.rhythm->every, "row"), kept.rhythm->first);
}

}  // namespace

std::optional<std::string> broken_condition(const Plan& plan, const Conditions& conditions) {
  const auto stop_words = [](const Stop& stop, const std::string& what) {
    return fmt::format("has a stop after row {} {}", stop.row, what);
  };
  std::vector<int> closed = conditions.closed_rows;
  std::sort(closed.begin(), closed.end());
  const Stop* before = nullptr;
  bool before_exempt = false;
  for (const Stop& stop : plan.stops) {
    const bool exempt = conditions.forced_exempt && (!stop.crossings.empty() || !stop.shapings.empty());
    if (!exempt) {
      if (conditions.carriage_right_only && !stop.carriage_right) {
        return stop_words(stop, "with the carriage on the left");
      }
      if (std::binary_search(closed.begin(), closed.end(), stop.row)) return stop_words(stop, "that is closed");
    }
    // Other stops keep their distance from those that are exempt.
    if (before != nullptr && !(exempt && before_exempt) &&
        std::int64_t{stop.row} - before->row < conditions.rows_apart) {
      return stop_words(stop,
                        fmt::format("nearer than {} to the one before it", count_of(conditions.rows_apart, "row")));
    }
    for (const Reform& reform : stop.reforms) {
      if (conditions.max_depth == 0 || std::ssize(reform.rungs) <= conditions.max_depth) continue;
      return stop_words(stop, fmt::format("that re-forms {}", count_of(std::ssize(reform.rungs), "row")));
    }
    before = &stop;
    before_exempt = exempt;
  }
  if (conditions.max_kinds == 0) return std::nullopt;  // on a large panel they take long to count
  if (const int kinds = kinds_of(plan); kinds > conditions.max_kinds) {
    return fmt::format("has {} of stop; the conditions allow {}", count_of(kinds, "kind"), conditions.max_kinds);
  }
  return std::nullopt;
}

std::optional<std::string> broken_rhythm(const Plan& plan, const Problem& problem, const Wales& wales,
                                         const Conditions& conditions) {
  if (conditions.rhythms.empty()) return std::nullopt;
  const KeptWorks works(plan, wales, conditions);
  std::vector<char> off(conditions.rhythms.size(), 0);
  for (std::size_t i = 0; i < off.size(); ++i) off[i] = works.holds(static_cast<int>(i)) ? 1 : 0;
  std::vector<char> by_hand(wales.all().size(), 0);
  for (const Lane& lane : problem.lanes) {
    std::optional<Works> mine;
    int known = -1;
    for (const int wale : lane.wales) {
      by_hand[at(wale)] = 1;
      const int rhythm = works.of(wale);
      if (rhythm < 0) continue;
      if (!mine || rhythm != known) {
        mine = works_in_rhythm(lane, conditions.rhythms[at(rhythm)].rhythm.value_or(works.widest(rhythm, problem.rows)),
                               problem.rows);
        known = rhythm;
      }
      if (!works_so(lane, *mine, works.made(wale))) off[at(rhythm)] = 1;
    }
  }
  // Nothing is ever due in a wale without hand cells.
  for (std::size_t wale = 0; wale < by_hand.size(); ++wale) {
    const int index = static_cast<int>(wale);
    if (by_hand[wale] == 0 && works.of(index) >= 0 && !works.made(index).empty()) off[at(works.of(index))] = 1;
  }
  for (std::size_t i = 0; i < off.size(); ++i) {
    if (off[i] != 0) return rhythm_words(conditions.rhythms[i]);
  }
  return std::nullopt;
}

}  // namespace latchwork::inline v0::planning
