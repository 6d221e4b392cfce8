#pragma once

#include <cstdint>
#include <vector>

#include "latchwork/plan.hpp"
#include "plan/problem.hpp"

namespace latchwork::inline v0::planning {

/// @throws Error bad_argument (field options.work_limit, time_limit_ms, memory_limit) for a negative limit.
void check(const PlanOptions& options);

/// Why this panel cannot be scheduled on this machine, lowest row first: off the bed, or hand cells out of reach. Empty
/// when it can.
std::vector<Finding> what_bars(const Grid& grid, const Machine& machine, const Problem& problem);

/// Milliseconds of a schedule's cost, and of a bound on it (rounded down by less than one), with what is fixed.
inline std::int64_t plan_ms(const Problem& problem, std::int64_t cost) {
  return cost / problem.unit + problem.fixed_ms;
}
inline std::int64_t bound_ms(const Problem& problem, std::int64_t bound) {
  return bound / problem.unit + problem.fixed_ms;
}

}  // namespace latchwork::inline v0::planning
