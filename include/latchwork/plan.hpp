#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/certificate.hpp"
#include "latchwork/conditions.hpp"
#include "latchwork/effort.hpp"
#include "latchwork/export.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/progress.hpp"

namespace latchwork::inline v0 {

/// Which of a crossing's groups, named by where it stands on the RS before the crossing.
enum class GroupName : std::uint8_t { left = 0, centre = 1, right = 2 };

/// One group put back on the needles. Needles are the operator's leftmost of the group.
struct GroupReturn {
  GroupName group = GroupName::left;
  int stitches = 1;
  int from_needle = 1;      ///< lifted from here
  int to_needle = 1;        ///< put back here
  std::vector<int> prongs;  ///< tools that lift it, operator's left to right; empty: it stays on its needles (a centre
                            ///< in front of equal groups; between unequal ones it moves over and is lifted)
  friend bool operator==(const GroupReturn&, const GroupReturn&) = default;
};

/// A crossing made at a stop. All lifted groups leave their needles first; then they return in this order: the group
/// put back first shows in front on the RS. A bare centre is not among them.
struct CrossingStep {
  Crossing crossing;
  std::vector<GroupReturn> returns;
  bool ease =
      false;  ///< hint: bring the crossed needles out to hold and let the carriage knit them back on the next row
  friend bool operator==(const CrossingStep&, const CrossingStep&) = default;
};

/// A batch: one wale dropped to the loop of row `from_row` and re-formed up to the stop's row.
struct Reform {
  int needle = 1;           ///< operator's view
  int column = 0;           ///< RS column at the stop
  int wale = 0;             ///< index into Wales(grid).all()
  int from_row = 0;         ///< a: the tool goes into this row's loop (0: the cast-on's)
  std::vector<Cell> rungs;  ///< what the rungs of rows a+1, a+2, ... become; the lowest row is always taken first
  friend bool operator==(const Reform&, const Reform&) = default;
};

/// Needles that begin (`on`) or end work at a stop, by cast-on or bind-off: where `none` cells start or end.
struct Shaping {
  int needle = 1;
  int column = 0;
  bool on = true;
  friend bool operator==(const Shaping&, const Shaping&) = default;
};

/// All that is done after row `row` is knitted, in this order: releases, re-forms in one sweep of the bed from the
/// operator's left, crossings, needles cast on, needles bound off, holds.
struct Stop {
  int row = 0;                 ///< 0 only for needles put in hold on the cast-on row
  bool carriage_right = true;  ///< COR, else COL
  std::vector<int> releases;   ///< needles taken out of hold, operator's left to right
  std::vector<Reform> reforms;
  std::vector<CrossingStep> crossings;
  std::vector<Shaping> shapings;  ///< cast-ons, then bind-offs, each from the operator's left
  std::vector<int> holds;         ///< needles put in hold for the coming rows
  std::int64_t effort_ms = 0;     ///< the stop and all that is done at it
  friend bool operator==(const Stop&, const Stop&) = default;
};

/// Whether the plan is proven to be the least, is the best found, or there is none.
enum class PlanStatus : std::uint8_t { optimal = 0, feasible = 1, infeasible = 2 };

/// A schedule of hand work for a panel on a machine. Plain data, checked where it is told or simulated.
struct Plan {
  int rows = 0;
  int columns = 0;
  int leftmost = 0;  ///< the panel's leftmost needle, operator's view
  bool carriage_starts_right = true;
  std::vector<int> columns_on;  ///< RS columns with a stitch in row 1: the needles cast on
  std::vector<Stop> stops;      ///< by row
  std::int64_t total_ms = 0;    ///< all hand work and all carriage passes
  std::int64_t bound_ms = 0;    ///< no plan of this kind, by the planner's rules (see plan()), can take less
  PlanStatus status = PlanStatus::infeasible;
  std::optional<Rhythm> rhythm;   ///< set on a regular plan
  std::vector<Finding> findings;  ///< of an infeasible plan: why, and where; else empty
  friend bool operator==(const Plan&, const Plan&) = default;
};

/// Totals of a plan.
struct HandWork {
  int stops = 0, batches = 0, crossings = 0, holds = 0, shapings = 0;
  int rungs_knit = 0, rungs_purl = 0, rungs_tuck = 0, rungs_slip = 0;
  int stitches_crossed = 0;  ///< stitches lifted
  std::int64_t hand_ms = 0;  ///< all but the carriage passes
  std::int64_t carriage_ms = 0;
  friend bool operator==(const HandWork&, const HandWork&) = default;
};

struct PlanOptions {
  std::stop_token stop;                           ///< when asked to stop: the best plan so far, status `feasible`
  std::function<void(const Progress&)> progress;  ///< what it throws ends the call and reaches the caller
  std::int64_t work_limit = 0;     ///< search steps, a count and not a clock: the same plan on every machine; 0: none
  std::int64_t time_limit_ms = 0;  ///< by the clock, from the call on; 0: none. Passed by no more than 20 ms, or 5 % of
                                   ///< it where that is more, as far as the machine lets it be foreseen: see plan()
  std::int64_t memory_limit = 0;   ///< bytes for the search's partial schedules, and in certify() as many for the
                                   ///< branches of the proof; 0: 1 GiB. The panel itself takes some 200 bytes a row and
                                   ///< kind of wale more, up to 400 where a row's ladders span it
  Conditions conditions{};         ///< what else is asked of the plan
};

/// The least-effort plan for the grid read as a panel. Exact: `optimal` unless stopped or limited, or on a panel so
/// entangled that the search would outgrow its memory, where it ends `feasible` with the bound it could prove. What
/// cannot be scheduled gives status infeasible with findings, not an error. Crossings are made after their row; hand
/// cells are re-formed by batches or, for tucks under a closing knit with no tuck beside them, by hold. A batch starts
/// right below a hand cell, and passes no crossing of its wale; one from the cast-on, and a hold on its loop, need
/// `cast_on_loops`. These are the planner's rules (DEVELOPERS.md, "Rules of the plan"): what is proven is proven of the
/// plans that keep them, and one that does not may take less. Ties are broken the same way on every machine. Of
/// schedules that take as long and that the search holds side by side, the one with fewer stops is kept, each stop
/// being counted as a part of a millisecond more; of as many, the one that has a stop where they first differ. It is
/// proven that none takes less time, not that none with as much has fewer stops: the search ends before it would know.
/// Within the stops, fewer batches and holds, then fewer holds, then from the lowest up each batch at the earlier stop.
///
/// When stopped or limited it gives the best plan so far, however soon: before it searches it has each hand cell done
/// as soon as it can be, and stops as few as serve all, and takes the better (of a large panel whose time is over
/// before that only one is made: the second, or where stacks are in its way the first). Reading the panel, one of these
/// and its writing up are done whatever the limit, and time is kept back for them: by measure 5 to 10 ms for 200,000
/// cells, and as much more for more. A panel of up to 200,000 cells, each crossing counted as twenty, is always read,
/// unless many of its wales begin or end inside it. A larger one has no plan, `cancelled`, where reading it, and what
/// comes after, would by the pace it is read at end 15 ms, or 3.75 %, past its time or later; nor has one that is
/// stopped, where following or reading its wales would pass some 400,000 cells yet.
///
/// Under `options.conditions` it is the least plan that keeps them, proven with the same care: bounds are of the plans
/// that keep them or of all plans. Where nothing keeps them the plan is infeasible, and its findings name the condition
/// and the place. With `max_kinds` the search has an allowance of work where neither work nor time is limited: it is
/// exact on small panels and else ends `feasible` with a bound; its ties go to fewer stops, then to what is found
/// first, which is the same everywhere.
///
/// Conditions, too, have a plan before any search where one is cheap to have: with `rows_apart` as few stops as serve
/// all, each far enough from the one below, which misses a plan only where stacks or holds are in the way; with wales
/// in a rhythm that is to be found, the likely rhythms are tried until one does, from the widest that comes in time
/// down to the densest; with `max_kinds` stops each as late as can be, else re-forms in rhythms. The others close stops
/// or make ladders shorter, and begin as a plan without conditions does. Where none of these keeps the conditions and
/// the call is ended before a search finds a plan, that is the error `cancelled`: there may be a plan or none.
/// @throws Error bad_argument (machine, effort, options, conditions); too_large when a total, times rows + 2, could
/// pass 2^60 ms, (field grid, with the wale's place) when the kinds of wale, times rows + 1, pass 2^25, or (field
/// options.conditions.max_kinds) when nobody limits the search and its own allowance ends before it has a plan or knows
/// that there is none; cancelled when stopped, limited, or out of its memory, before that.
LATCHWORK_API Plan plan(const Grid& grid, const Machine& machine, const Effort& effort = {},
                        const PlanOptions& options = {});

/// The best regular plan: every (every, first) is tried whose stops include all forced ones (crossings, shaping); at
/// each stop all that is due is done: every wale with hand cells up to that row not yet worked is re-formed from just
/// below the lowest of them, unless its row is a tuck or slip (then it waits). Stops with nothing to do are not
/// counted. No holds. Infeasible when no rhythm works. Ties: greater `every`, then smaller `first`. Its bound is its
/// own total's least value. When stopped or limited: the best found so far, `feasible`; before any was tried, the
/// first that does from the widest that surely comes in time down to the densest, every row.
///
/// Under `options.conditions` the best of the rhythms whose stops and works keep them all. Wales kept to a rhythm of
/// their own keep to it when they are worked at the same stops as in that one; those left to be found do so in any.
/// Where none keeps them the plan is infeasible: its findings name the condition and the place, as plan() does, or how
/// the best rhythm breaks it.
/// @throws Error as plan() does; cancelled when stopped or limited before any rhythm was found, and none of those that
/// are tried then keeps the conditions.
LATCHWORK_API Plan plan_regular(const Grid& grid, const Machine& machine, const Effort& effort = {},
                                const PlanOptions& options = {});

/// A plan in two rhythms, one inside the other or not: crossings at `crossings`, re-forms at `reforms`.
struct TwoRhythms {
  Rhythm crossings;  ///< the widest rhythm that has every crossing of the panel; every = 0 when it has none
  Rhythm reforms;    ///< stops at which all that is due is re-formed; every = 0 when nothing ever is
  Plan plan;         ///< infeasible when no rhythm works; its own `rhythm` is none
  friend bool operator==(const TwoRhythms&, const TwoRhythms&) = default;
};

/// The best plan in two rhythms: crossings are made where the panel has them, which is every so many rows or at some of
/// these; shapings at their rows; re-forms as in plan_regular(), at the stops of a rhythm of their own, the best of all
/// by full enumeration. A stop of either with nothing to do is not made; one where both fall is made once. No holds.
/// It takes no more than plan_regular(), whose rhythm serves for both. Ties: greater reforms.every, then smaller first.
/// When stopped or limited: the best found so far, `feasible`. Conditions are kept as by plan_regular(), by all stops
/// that are made, forced ones too.
/// @throws Error as plan_regular() does.
LATCHWORK_API TwoRhythms plan_two_rhythms(const Grid& grid, const Machine& machine, const Effort& effort = {},
                                          const PlanOptions& options = {});

/// A proof that no plan by the planner's rules (see plan()) takes less than `total_ms`, for check_certificate(): hand
/// in the total of an optimal plan, or the bound of a feasible one. When that cannot be proven (a lower total is
/// possible, or the call is stopped or limited), a certificate of the greatest bound that prices alone were found to
/// prove; when prices prove more than `total_ms`, of that. It looks at no conditions: conditions only take plans away,
/// so that what is proven of all plans holds of those that keep them.
/// @throws Error bad_argument (machine, effort, options; total_ms below 0; grid, when it cannot be scheduled at all);
/// too_large, as plan(); cancelled when stopped or limited before the panel was read, as a large one may be.
LATCHWORK_API Certificate certify(const Grid& grid, const Machine& machine, const Effort& effort, std::int64_t total_ms,
                                  const PlanOptions& options = {});

/// For each stop the number of its kind, counted from 0 in the order in which kinds first appear. Stops are of one kind
/// when the same is done at them, whatever their row: the same needles released, the same needles re-formed to the same
/// depth with the same rungs, the same crossings in the same columns, needles cast on, bound off and held. Carriage
/// side, hints and times do not count. Stops times their size, times a logarithm.
LATCHWORK_API std::vector<int> stop_kinds(const Plan& plan);

/// Counts and times of a plan under these efforts. What a spoiled plan has below 0, rows or stitches of a group, counts
/// as none; stitches crossed past 2^31 - 1 stay there. Linear in the plan. @throws Error bad_argument (effort).
LATCHWORK_API HandWork hand_work(const Plan& plan, const Effort& effort = {});

/// "optimal", "feasible", "infeasible"; empty for a number that is none.
LATCHWORK_API std::string_view plan_status_name(PlanStatus status) noexcept;

}  // namespace latchwork::inline v0
