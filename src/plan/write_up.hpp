#pragma once

#include <vector>

#include "latchwork/plan.hpp"
#include "plan/problem.hpp"
#include "plan/works.hpp"

namespace latchwork::inline v0::planning {

/// The plan that does these works (one list a lane of the problem) and what the grid itself demands, needle by needle.
/// Times are filled in; status and bound are left to the caller.
Plan write_up(const Grid& grid, const Wales& wales, const Machine& machine, const Effort& effort,
              const Problem& problem, const std::vector<std::vector<Work>>& works);

/// A plan with no stops yet: sizes, needles cast on, carriage.
Plan bare_plan(const Grid& grid, const Machine& machine);

}  // namespace latchwork::inline v0::planning
