#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/error.hpp"
#include "latchwork/export.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::inline v0 {

/// Why a plan stops where it does. `unknown`: the search for a plan without the stop came to no end.
enum class StopCause : std::uint8_t { crossing = 0, shaping = 1, hand_cells = 2, saving = 3, unknown = 4 };

/// Why a stop is there: something forces it, or it saves work.
struct StopReason {
  int row = 0;                          ///< the stop's
  StopCause cause = StopCause::saving;  ///< crossing, shaping: made here and nowhere else; hand_cells: no plan makes
                                        ///< them without this stop; saving: plans without it take more, or as much
  Place place;                ///< the crossing's or shaping's row and column, or the lowest, leftmost of the hand cells
  std::int64_t saves_ms = 0;  ///< saving: so much more takes the best plan found that never stops here; never more than
                              ///< a beside_ms that is told
  std::int64_t least_saves_ms = 0;  ///< every plan that never stops here takes at least so much more; the same as
                                    ///< saves_ms when that plan is proven the least; may be far below 0 when not
  std::int64_t beside_ms = -1;  ///< 0 or more: so much more it takes to do this stop's works at the other stops as they
                                ///< are, some of them perhaps differently there. -1, not told: these stops cannot make
                                ///< the panel, or take less than the plan, something forces the stop, or
                                ///< conditions are asked, which may bar those ways
  std::string message;          ///< for people, with place and time
  friend bool operator==(const StopReason&, const StopReason&) = default;
};

/// The reason of each stop of a plan, in its order. What a stop saves is found exactly, by planning again with its row
/// among the closed rows of the conditions: a plan for each stop that nothing forces. The plan is taken as it is; where
/// it is not a least one under these conditions, a stop may save less than nothing. The work limit and the time limit
/// are the whole call's: stopped, or out of work or time, the causes not yet found are `unknown`.
/// @throws Error as plan() does; before anything is planned, size_mismatch (field plan) for a plan of another size and
/// bad_argument ("stops[3].row") for stops that do not rise within its rows; bad_argument (field plan) where nothing
/// forces a stop and no plan does without it, because there is none for the panel under these conditions at all.
LATCHWORK_API std::vector<StopReason> stop_reasons(const Grid& grid, const Machine& machine, const Effort& effort,
                                                   const Plan& plan, const PlanOptions& options = {});

/// "crossing", "shaping", "hand_cells", "saving", "unknown"; empty for a number that is none.
LATCHWORK_API std::string_view stop_cause_name(StopCause cause) noexcept;

/// From which row on, up to which, and every how many rows a schedule repeats itself.
struct Period {
  int from_row = 0;  ///< rows from_row..last_row
  int last_row = 0;
  int rows = 0;   ///< the stop after row r and the one after row r + rows are of one kind, or neither is; 0: no period
  int times = 0;  ///< how often it goes through in full: 2 or more
  int stops = 0;  ///< stops in one period
  friend bool operator==(const Period&, const Period&) = default;
};

/// Where a plan becomes periodic, as that of a panel repeated upward does: of all periods that are gone through at
/// least twice, with a stop, the one that covers the most rows; then the shortest; then the lowest. An infeasible
/// plan has none: its stops are not looked at. Rows times their logarithm, and what stop_kinds() takes. @throws Error
/// too_large (rows), above Grid::max_side rows; bad_argument (rows) below 0, ("stops[3].row") if stops do not rise.
LATCHWORK_API Period plan_period(const Plan& plan);

/// An effort, and how far it may move before another plan takes less.
struct Tolerance {
  EffortTerm term = EffortTerm::stop;
  std::int64_t value_ms = 0;  ///< what it is
  std::int64_t least_ms = 0;  ///< if proven, the plan stays a least one from here ...
  std::int64_t most_ms = 0;   ///< ... to here, the other efforts as they are; within 0..3'600'000
  bool least_exact = false;   ///< one millisecond below, where that may be, another plan takes less
  bool most_exact = false;    ///< one millisecond above
  bool proven = false;  ///< the plan is proven to be a least one at value_ms, so that from here to here means that
  friend bool operator==(const Tolerance&, const Tolerance&) = default;
};

/// For every field of Effort, in its order, how far it may move before this plan, a least one under the options'
/// conditions, is none. Exact: a plan's total is linear in each effort, so the least total is concave in it, and where
/// this plan takes the least is one interval; each end is walked to from outside, from one better plan's line to the
/// next, and is proven by a plan there. An end that no search proves is told by its flag, with what is proven; so is
/// the greatest value at which the times of all plans of a large panel can be counted (too_large of plan()); so are
/// those not yet looked at when the call is stopped, or its work or time is over. Where not even the plan itself is
/// proven by then, `proven` is false in all, and both ends are value_ms. Some tens of searches; limits are of the
/// whole.
/// @throws Error as plan() does; before anything is planned, size_mismatch (field plan) for a plan of another size and
/// bad_argument ("stops[3].row") for stops that do not rise within its rows;
/// bad_argument (field plan) when the panel has no plan, another takes less, this one breaks a condition, or takes less
/// than any by the planner's rules can (see plan()); and, unless the call is over by then, when it works the wales of a
/// rhythm otherwise, or verify() finds that it does not make this panel, as one made for another of the same size.
LATCHWORK_API std::vector<Tolerance> plan_tolerances(const Grid& grid, const Machine& machine, const Effort& effort,
                                                     const Plan& plan, const PlanOptions& options = {});

}  // namespace latchwork::inline v0
