#pragma once

#include <string_view>
#include <vector>

#include "latchwork/yarn_need.hpp"

namespace latchwork::inline v0 {

/// "measured loops".
std::string_view route_name(YarnRoute route);

/// YarnNeed::apart of these.
double apart(const std::vector<YarnEstimate>& estimates);

/// Fills `decides` and `why` from the estimates, by the rule of YarnNeed::decides.
void decide(YarnNeed& need);

}  // namespace latchwork::inline v0
