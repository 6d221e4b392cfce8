#pragma once

#include <string>
#include <vector>

#include "latchwork/plan.hpp"
#include "plan/kinds.hpp"
#include "plan/problem.hpp"
#include "plan/readings.hpp"
#include "plan/solve.hpp"

namespace latchwork::inline v0::planning {

// Conditions become a problem without them where they can: stops that they forbid are closed to every lane, and a lane
// that keeps to a rhythm is settled, its stops forced. Two remain: rows_apart between stops that are not forced, which
// the search keeps, and max_kinds, which has a search of its own.

/// Wales kept to one rhythm: their lanes, taken out of the problem.
struct Group {
  const KeptRhythm* kept = nullptr;
  std::vector<Lane> lanes;
};

/// Takes the wales of every rhythm out of the problem's lanes. @throws Error bad_argument for a wale in two of them.
std::vector<Group> take_out(Problem& problem, const Wales& wales, const Conditions& conditions);

/// What a group does in a rhythm.
struct Settled {
  std::vector<std::vector<Work>> works;  ///< one list a lane
  std::vector<int> stops;                ///< at which it does something, rising
  std::int64_t cost = 0;                 ///< of the works, without stops; far when something is not done in time
};
Settled settle(const Group& group, const Rhythm& rhythm, int rows);

/// An error at a row and column.
Finding finding_at(FindingCode code, int row, int column, std::string message, std::string suggestion);

/// The problem with batches of this depth (0: as the machine allows), and what bars it: the panel, or else the depth.
Problem narrowed(const Grid& grid, const Machine& machine, const Effort& effort, int depth, Readings& readings,
                 Limits& limits, std::vector<Finding>& barred, Lanes lanes = Lanes::alike);

/// Why a group whose works in a rhythm cost too much (settle()) cannot keep to it.
Finding off_rhythm(const Group& group, const Rhythm& rhythm, const Wales& wales);

/// A problem with conditions put into it.
struct Posed {
  Problem problem;
  std::vector<Finding> broken;  ///< why nothing keeps the conditions; empty when nothing is known against it
};

/// Closes what the conditions forbid, forces the settled groups' stops and adds the cost of their works. `settled` are
/// in the order of `groups`.
Posed pose(Problem problem, const Grid& grid, const Wales& wales, const Machine& machine, const Conditions& conditions,
           const std::vector<Group>& groups, const std::vector<const Settled*>& settled);

/// The plan under conditions: plan() hands over to it. Inputs are checked. `plain`, where it is known: the plan under
/// the same but for max_kinds. What it takes is added to `spent`.
Plan plan_under(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options,
                Spent& spent, const Plan* plain = nullptr);

/// The same, and where there is none its findings tell what was met first: conditions may be named that bar nothing.
Plan plan_bare(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options, Spent& spent,
               const Plan* plain = nullptr);

}  // namespace latchwork::inline v0::planning
