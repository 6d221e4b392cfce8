#pragma once

#include <optional>
#include <string>

#include "latchwork/conditions.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/wale.hpp"
#include "plan/problem.hpp"

namespace latchwork::inline v0::planning {

/// What of the conditions a plan's stops do not keep, to go after "the plan"; nothing where they keep all that can be
/// seen in them: for rhythms see broken_rhythm(). Linear in the plan, times a logarithm of the closed rows.
std::optional<std::string> broken_condition(const Plan& plan, const Conditions& conditions);

/// The same of the rhythms that wales are kept to, of a plan of the panel that was read without them, at the
/// conditions' depth or deeper. A rhythm that is to be found is the widest with the stops at which the plan works its
/// wales: others that have these work them alike or otherwise than it does. Conditions are checked. Linear in the plan
/// and the panel.
std::optional<std::string> broken_rhythm(const Plan& plan, const Problem& problem, const Wales& wales,
                                         const Conditions& conditions);

}  // namespace latchwork::inline v0::planning
