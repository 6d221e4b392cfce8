#pragma once

#include <cstdint>

#include "latchwork/plan.hpp"
#include "plan/limits.hpp"

namespace latchwork::inline v0::planning {

/// What a plan under conditions that came to nothing was asked with, and what it took.
struct Barred {
  const Grid& grid;
  const Machine& machine;
  const Effort& effort;
  const PlanOptions& options;
  const Deadline& deadline;  ///< of the options
  Spent& spent;              ///< what this takes is added
  std::int64_t taken = 0;    ///< of it, by the plan
  Progress told{0, -1, 0};   ///< last: told again while the reason is looked for, whereby the call can be stopped
};

/// `none`, which some condition bars, with the true reasons: each is one condition that alone leaves no plan, or
/// several that do only together. Without all that are named there is a plan. The panel is planned again under fewer
/// conditions, only until there is any plan, within the call's limits and some count of work; what is not known by
/// then is said.
Plan with_reasons(Plan none, const Barred& barred);

}  // namespace latchwork::inline v0::planning
