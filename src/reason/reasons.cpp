#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "conditions/check.hpp"
#include "effort/check.hpp"
#include "error/refuse.hpp"
#include "grid/words.hpp"
#include "latchwork/crossing.hpp"
#include "latchwork/error.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/wale.hpp"
#include "machine/check.hpp"
#include "plan/inputs.hpp"
#include "plan/one_call.hpp"
#include "plan/problem.hpp"
#include "plan/readings.hpp"
#include "plan/stops.hpp"
#include "plan/works.hpp"
#include "text/duration.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace planning;

/// What makes a stop after a row whatever else is planned. Looked for once for all rows.
class Forced {
 public:
  Forced(const Grid& grid, const Wales& wales) : grid_(grid), shapings_(static_cast<std::size_t>(grid.rows()) + 1) {
    for (const Wale& wale : wales.all()) {
      if (wale.row > 1) note(wale.row - 1, wale.column, "begins");
      if (wale.last_row() < grid.rows()) note(wale.last_row(), wale.columns.back(), "ends");
    }
  }

  bool makes(StopReason& reason) const { return by_crossing(reason) || by_shaping(reason); }

 private:
  struct Shaped {
    int column = -1;  // the lowest; -1: none
    const char* what = nullptr;
  };

  void note(int row, int column, const char* what) {
    Shaped& known = shapings_[static_cast<std::size_t>(row)];
    if (known.column < 0 || column < known.column) known = {column, what};
  }

  // Crossings stand by row and then column.
  bool by_crossing(StopReason& reason) const {
    const auto all = grid_.crossings();
    const auto first = std::lower_bound(all.begin(), all.end(), reason.row,
                                        [](const Crossing& crossing, int row) { return crossing.row < row; });
    if (first == all.end() || first->row != reason.row) return false;
    const auto last =
        std::find_if(first, all.end(), [&](const Crossing& crossing) { return crossing.row != reason.row; });
    reason.cause = StopCause::crossing;
    reason.place.column = first->column;
    reason.message = fmt::format("the {} at column {} is made here", crossing_name(*first), first->column);
    if (last - first > 1) reason.message += fmt::format(", and {} more", last - first - 1);
    return true;
  }

  bool by_shaping(StopReason& reason) const {
    const Shaped& shaped = shapings_[static_cast<std::size_t>(reason.row)];
    if (shaped.column < 0) return false;
    reason.cause = StopCause::shaping;
    reason.place.column = shaped.column;
    reason.message = fmt::format("the wale at column {} {} here", shaped.column, shaped.what);
    return true;
  }

  const Grid& grid_;
  std::vector<Shaped> shapings_;  // per row 0..R
};

class Reasons {
 public:
  Reasons(const Grid& grid, const Machine& machine, const Effort& effort, const Plan& mine, const PlanOptions& options)
      : grid_(grid),
        machine_(machine),
        effort_(effort),
        call_(options),
        unconditioned_(options.conditions == Conditions{}),
        forced_(grid, call_.wales(grid)) {
    call_.ask_stops(false);
    const HandWork work = hand_work(mine, effort);
    total_ms_ = work.hand_ms + work.carriage_ms;
    stops_.assign(static_cast<std::size_t>(grid.rows()) + 1, 0);
    for (const Stop& stop : mine.stops) {
      stops_[static_cast<std::size_t>(stop.row)] = 1;
    }
    told_ = {mine.bound_ms, mine.total_ms};
  }

  /// The reason of one of so many stops.
  StopReason of(const Stop& stop, std::size_t index, std::size_t count) {
    const double to = static_cast<double>(index + 1) / static_cast<double>(count);
    StopReason reason = reason_of(stop, static_cast<double>(index) / static_cast<double>(count), to);
    call_.tell(told_, to);
    return reason;
  }

  /// All are told.
  void end() { call_.tell(told_, 1); }

 private:
  StopReason reason_of(const Stop& stop, double from, double to) {
    StopReason reason;
    reason.row = stop.row;
    reason.place.row = stop.row;
    if (forced_.makes(reason)) return reason;
    if (call_.ended()) {
      unknown(reason);
      return reason;
    }
    try {
      const auto at_the_others = beside(stop.row);
      if (call_.ended()) {
        unknown(reason);
      } else {
        without(reason, at_the_others, from, to);
      }
    } catch (const Error& error) {
      if (!came_to_no_end(error)) throw;
      unknown(reason);
    }
    return reason;
  }

  // What it takes more to do a stop's works at the other stops, where they can be done there. Conditions may bar those,
  // or some ways of working at them: without looking, nothing is told of them.
  std::optional<std::int64_t> beside(int row) {
    if (!unconditioned_) return {};
    const Problem& problem = call_.problem(grid_, machine_, effort_);
    if (call_.ended() || !problem.barred.empty()) return {};
    stops_[static_cast<std::size_t>(row)] = 0;
    const std::int64_t cost = cost_of(problem, stops_);
    stops_[static_cast<std::size_t>(row)] = 1;
    if (cost >= far) return {};
    return plan_ms(problem, cost) - total_ms_;
  }

  // What a finding spans is a box: its corner may be a cell that the carriage knits.
  Place lowest_hand_cell(const Finding& why) const {
    Place place = why.place;
    for (int row = why.place.row; row <= why.last_row; ++row) {
      for (int column = why.place.column; column <= why.last_column; ++column) {
        const Cell cell = grid_.at(row, column);
        if (cell != Cell::purl && cell != Cell::tuck && cell != Cell::slip) continue;
        place.row = row;
        place.column = column;
        return place;
      }
    }
    return place;
  }

  static void unknown(StopReason& reason) {
    reason.cause = StopCause::unknown;
    reason.message = "the search for a plan without this stop was ended before it found one";
  }

  // That no plan does without a stop is news only where there is one with it. A panel without conditions has one unless
  // it is barred, and then that is what is found; with conditions one more plan tells. Asked once, and nothing is known
  // where that is ended first.
  void require_some(const Finding& why, double from, double to) {
    if (some_ || (unconditioned_ && why.code == FindingCode::row_closed)) return;
    some_ = true;
    if (call_.ended()) return;
    try {
      const Plan any = call_.plan(grid_, machine_, effort_, call_.part(from, to, told_));
      if (any.status != PlanStatus::infeasible) return;
      refuse("plan", "the panel has no plan, with this stop or without: " + any.findings.front().message);
    } catch (const Error& error) {
      if (!came_to_no_end(error)) throw;
    }
  }

  // Plans again without the stop. `beside`: what its works at the other stops take more, where they can be done there.
  void without(StopReason& reason, std::optional<std::int64_t> beside, double from, double to) {
    PlanOptions own = call_.part(from, to, told_);
    own.conditions.closed_rows.push_back(reason.row);
    const Plan other = call_.plan(grid_, machine_, effort_, own);
    if (other.status == PlanStatus::infeasible) {
      require_some(other.findings.front(), from, to);
      reason.cause = StopCause::hand_cells;
      const Finding& why = other.findings.front();
      reason.place = lowest_hand_cell(why);
      reason.message = why.code == FindingCode::row_closed
                           ? fmt::format("the hand cells of {}, {}, can be made at no other stop{}",
                                         run_of("row", why.place.row, why.last_row),
                                         run_of("column", why.place.column, why.last_column),
                                         unconditioned_ ? "" : " under the conditions")
                           : fmt::format("no plan does without it: {}", why.message);
      return;
    }
    // The other stops alone are a plan without this one: a search that was cut short may have missed it.
    reason.saves_ms = std::min(other.total_ms - total_ms_, beside.value_or(far));
    reason.least_saves_ms = other.bound_ms - total_ms_;
    if (beside && *beside >= 0) reason.beside_ms = *beside;
    const bool proven = reason.least_saves_ms == reason.saves_ms;
    if (reason.saves_ms < 0) {
      reason.message = fmt::format("{} plan without it takes {} less", proven ? "the least" : "a",
                                   rounded_duration(-reason.saves_ms));
      return;
    }
    reason.message = reason.saves_ms == 0 ? fmt::format("{} plan without it takes as long", proven ? "the least" : "a")
                                          : fmt::format("it saves {} against the best plan {}without it",
                                                        rounded_duration(reason.saves_ms), proven ? "" : "found ");
    if (!proven) {
      reason.message += reason.least_saves_ms > 0
                            ? fmt::format(" (at least {})", rounded_duration(reason.least_saves_ms))
                            : " (it is not proven to save anything)";
    }
    if (beside && *beside == 0) {
      reason.message += ": its works can as well be done at the other stops";
    } else if (beside) {
      reason.message += reason.saves_ms == 0 ? "; it saves " : ", ";
      reason.message += fmt::format("{} against its works at the other stops", rounded_duration(*beside));
    } else if (unconditioned_) {
      reason.message += "; the other stops cannot do its works";
    }
  }

  const Grid& grid_;
  const Machine& machine_;
  const Effort& effort_;
  OneCall call_;  // its clock runs from here
  bool unconditioned_;
  OneCall::Told told_;
  Forced forced_;
  bool some_ = false;  // there is a plan, or it was asked in vain
  std::int64_t total_ms_ = 0;
  std::vector<char> stops_;
};

}  // namespace

std::vector<StopReason> stop_reasons(const Grid& grid, const Machine& machine, const Effort& effort, const Plan& mine,
                                     const PlanOptions& options) {
  require_extent("plan", {.columns = mine.columns, .rows = mine.rows}, "grid", grid);
  require_stops_rise(mine);
  check(machine);
  check(effort);
  check(options);
  check(options.conditions, grid.rows(), grid.columns());
  planning::require_counted(grid, effort);
  Reasons reasons(grid, machine, effort, mine, options);
  std::vector<StopReason> out;
  for (const Stop& stop : mine.stops) out.push_back(reasons.of(stop, out.size(), mine.stops.size()));
  reasons.end();
  return out;
}

std::string_view stop_cause_name(StopCause cause) noexcept {
  switch (cause) {
    case StopCause::crossing:
      return "crossing";
    case StopCause::shaping:
      return "shaping";
    case StopCause::hand_cells:
      return "hand_cells";
    case StopCause::saving:
      return "saving";
    case StopCause::unknown:
      return "unknown";
  }
  return {};
}

}  // namespace latchwork::inline v0
