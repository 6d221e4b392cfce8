#include "plan/inputs.hpp"

#include <fmt/format.h>

#include <string>

#include "error/refuse.hpp"
#include "finding/bed.hpp"

namespace latchwork::inline v0::planning {

void check(const PlanOptions& options) {
  const auto not_below_none = [](const char* field, std::int64_t value) {
    if (value >= 0) return;
    const std::string place = fmt::format("options.{}", field);
    refuse(place, fmt::format("{} is {}; it may be 0 (none) or more", place, value));
  };
  not_below_none("work_limit", options.work_limit);
  not_below_none("time_limit_ms", options.time_limit_ms);
  not_below_none("memory_limit", options.memory_limit);
}

std::vector<Finding> what_bars(const Grid& grid, const Machine& machine, const Problem& problem) {
  std::vector<Finding> barred;
  if (auto off = seeking::off_bed(grid, machine)) barred.push_back(std::move(*off));
  barred.insert(barred.end(), problem.barred.begin(), problem.barred.end());
  return barred;
}

}  // namespace latchwork::inline v0::planning
