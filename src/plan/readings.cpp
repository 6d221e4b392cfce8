#include "plan/readings.hpp"

#include <algorithm>
#include <cstdint>
#include <utility>

#include "plan/read_on.hpp"
#include "wale/watched.hpp"

namespace latchwork::inline v0::planning {

const Wales& Readings::wales(const Grid& grid, Limits& limits) {
  if (!wales_) {
    ReadOn read_on(&limits, grid, 2);
    const following::Watched watched{[&](std::int64_t cells) { read_on.step(cells); }};
    wales_ = watched.follow(grid);
  }
  return *wales_;
}

const Problem& Readings::problem(const Grid& grid, const Machine& machine, const Effort& effort, Limits& limits,
                                 Lanes lanes) {
  if (effort_ != effort) {
    kept_.clear();
    effort_ = effort;
  }
  const auto known = std::find_if(kept_.begin(), kept_.end(), [&](const Reading& one) {
    return one.max_ladder == machine.max_ladder && one.lanes == lanes;
  });
  if (known != kept_.end()) return *known->problem;
  auto read = std::make_unique<Problem>(problem_of(grid, wales(grid, limits), machine, effort, &limits, lanes));
  ++times_;
  kept_.push_back({machine.max_ladder, lanes, std::move(read)});
  return *kept_.back().problem;
}

Problem Readings::own_problem(const Grid& grid, const Machine& machine, const Effort& effort, Limits& limits,
                              Lanes lanes) {
  if (several_) return problem(grid, machine, effort, limits, lanes);
  ++times_;
  return problem_of(grid, wales(grid, limits), machine, effort, &limits, lanes);
}

}  // namespace latchwork::inline v0::planning
