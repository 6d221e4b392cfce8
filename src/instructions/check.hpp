#pragma once

#include <string>
#include <vector>

#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"
#include "move/plan_step.hpp"

namespace latchwork::inline v0::writing {

/// Whether every number of a plan can stand in the words: a plan is plain data, and whoever made it may have put any
/// number anywhere. Rows and needles are the panel's, rungs end at their stop, no count is below nothing, and what a
/// stop says of itself is so: its carriage side, the columns and wales beside its needles, the groups of its crossings,
/// their order, needles and tools. Whether the work makes the panel is for verify() to say. Of an infeasible plan,
/// whose steps are not told, only size, place and rhythm are looked at. Linear in the plan.
///
/// What it returns are the steps that hands would do for nothing, as verify() finds them: words leave them out.
/// @throws Error size_mismatch (field "plan"); bad_argument, with the stop's row, the RS column where there is one, and
/// a field such as "stops[2].reforms[0].needle".
struct Checked {
  std::vector<PlanStep> needless;  ///< by stop, in the order in which they would be done
  std::string first_needless;      ///< in words; empty where there is none
};
Checked check(const Panel& panel, const Plan& plan);

/// The plan without some of its steps, which are in that order.
Plan without(const Plan& plan, const std::vector<PlanStep>& steps);

}  // namespace latchwork::inline v0::writing
