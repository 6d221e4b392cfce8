#pragma once

#include <cstdint>
#include <vector>

#include "latchwork/plan.hpp"
#include "plan/limits.hpp"
#include "plan/problem.hpp"
#include "plan/works.hpp"

namespace latchwork::inline v0::planning {

/// A schedule for a problem, and what is proven of it.
struct Solved {
  std::vector<std::vector<Work>> works;  ///< one list a lane
  std::int64_t cost = far;               ///< of stops and works; far: none was found
  std::int64_t bound = 0;                ///< no schedule costs less
  bool proven = false;                   ///< this is the least; or, when none was found, there is none
  int stuck = -1;                        ///< there is none: no schedule can be carried on past this row
  bool out_of_allowance = false;         ///< nobody limited the search, and an allowance of its own ended it
  bool found() const noexcept { return cost < far; }
};

/// What a search that is stopped, or whose time is over, leaves where it has found no schedule: one that is had without
/// a search, which takes some milliseconds more on a large panel, or none, where nobody needs it.
enum class Late : std::uint8_t { has_one, has_none };

/// The least schedule of a problem that is not barred. Of the options it takes the memory limit.
Solved solve(const Problem& problem, const PlanOptions& options, Limits& limits, Late late = Late::has_one);

/// plan(), and what it took, which is added even where it comes to nothing. `plain`: see plan_under(), of no matter
/// without conditions.
Plan plan_counted(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options,
                  Spent& spent, const Plan* plain = nullptr);

}  // namespace latchwork::inline v0::planning
