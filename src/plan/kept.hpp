#pragma once

#include <optional>
#include <string>

#include "latchwork/conditions.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::inline v0::planning {

/// What of the conditions a plan's stops do not keep, to go after "the plan"; nothing where they keep all that can be
/// seen in them: a rhythm that wales are kept to is not looked at. Linear in the plan.
std::optional<std::string> broken_condition(const Plan& plan, const Conditions& conditions);

}  // namespace latchwork::inline v0::planning
