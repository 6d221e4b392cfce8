#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "latchwork/effort.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/wale.hpp"
#include "plan/limits.hpp"

// The grid as the planner sees it: which hand work there is, when it may be done, and what it costs. Costs are whole
// numbers of milliseconds times Problem::unit, so that one more stop can be counted as 1 and breaks ties.

namespace latchwork::inline v0::planning {

/// More than any cost, and still safe to add to another such and a cost.
inline constexpr std::int64_t far = std::int64_t{1} << 61;

/// Hand cells of one wale that can only be done together: a purl, or a stack of tucks and slips with its closing cell.
struct Task {
  int low = 1;           ///< lowest row
  int high = 1;          ///< highest row: the purl's own, or the closing cell's
  int last_stop = -1;    ///< latest stop at which a batch from just below `low` may end; below `high`: no batch can
  bool by_hold = false;  ///< its needle may be held instead, from a stop after low - 1 to one after high - 1
  bool by_batch() const noexcept { return last_stop >= high; }
};

/// Wales that are the same to the planner, and worked together: the same tasks, limits and costs.
struct Lane {
  std::vector<int> wales;            ///< indices into Wales::all(), by increasing index
  std::vector<Task> tasks;           ///< by row; they share no row
  std::vector<int> done;             ///< per row 0..R: tasks complete once a batch ends there; -1: none may end there
  std::vector<std::int64_t> upto;    ///< per row 0..R: rungs from the wale's foot to here
  std::vector<std::int64_t> before;  ///< per task: rungs below it
  std::int64_t batch = 0;
  std::int64_t hold = 0;

  int task_count() const noexcept { return static_cast<int>(tasks.size()); }
  const Task& task(int i) const { return tasks[static_cast<std::size_t>(i)]; }
  int done_at(int row) const { return done[static_cast<std::size_t>(row)]; }
  /// A batch over task i and all up to the stop after `row`, for all wales of the lane.
  std::int64_t batch_cost(int i, int row) const {
    return batch + upto[static_cast<std::size_t>(row)] - before[static_cast<std::size_t>(i)];
  }
};

struct Problem {
  int rows = 0;
  std::int64_t unit = 1;        ///< cost of one millisecond: rows + 2
  std::int64_t stop_cost = 1;   ///< a stop, and 1 to break ties towards fewer
  std::int64_t step_ms = 1;     ///< the totals of any two schedules differ by a multiple of this
  std::int64_t fixed_ms = 0;    ///< what no schedule can change: crossings, shaping, carriage passes
  std::vector<char> forced;     ///< per row 0..R: a crossing or shaping stops us here anyway
  int apart = 0;                ///< stops that are not forced keep so many rows from the one below; 0 or 1: no matter
  std::vector<Lane> lanes;      ///< in order of their lowest wale
  std::vector<Finding> barred;  ///< why no plan exists, lowest row first; empty when one does
};

/// The greatest cost of a schedule that takes less time than one of this cost, however many stops either makes.
inline std::int64_t below(const Problem& problem, std::int64_t cost) {
  return (cost / problem.unit - problem.step_ms) * problem.unit + problem.rows + 1;
}

/// Whether the costs of every plan at these efforts can be counted.
bool can_be_counted(const Grid& grid, const Effort& effort);

/// For a call to ask before it does anything that takes time.
/// @throws Error too_large (field effort) where they cannot be counted.
void require_counted(const Grid& grid, const Effort& effort);

/// Which wales with the same tasks, limits and costs make one lane and are worked together.
enum class Lanes : std::uint8_t {
  alike,     ///< all: what is best for one is best for the others
  in_place,  ///< those of the same cells that have a needle to themselves from cast-on to end. For kinds of stop, which
             ///< go by needles and rungs: of two such wales one may as well be worked as the other is, whereby no stops
             ///< of one kind become of two; tuck and slip may cost the same and are not. A wale that is crossed leaves
             ///< its needle to another, and may do there by itself what that one does.
};

/// The grid, of which the costs of every plan can be counted, as the planner sees it. Where it is left for the limits:
/// see ReadOn. Memory linear in rows times lanes.
/// @throws Error cancelled (field options), where it is left; too_large (field grid, with the wale's place) where
/// lanes, times rows + 1, would pass 2^25.
Problem problem_of(const Grid& grid, const Wales& wales, const Machine& machine, const Effort& effort,
                   Limits* limits = nullptr, Lanes lanes = Lanes::alike);

/// Whether the wale has one needle from the first of the panel's rows to the last.
bool is_in_place(const Wale& wale, int rows);

/// Whether a crossing or shaping stops us after the row anyway.
bool is_forced(const Problem& problem, int row);

}  // namespace latchwork::inline v0::planning
