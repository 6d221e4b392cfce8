#include "plan/inputs.hpp"

#include <fmt/format.h>

#include "finding/bed.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0::planning {

void check(const PlanOptions& options) {
  if (options.work_limit >= 0) return;
  Place place;
  place.field = "options.work_limit";
  throw Error(ErrorCode::bad_argument, place,
              fmt::format("options.work_limit is {}; it may be 0 (none) or more", options.work_limit));
}

std::vector<Finding> what_bars(const Grid& grid, const Machine& machine, const Problem& problem) {
  std::vector<Finding> barred;
  if (auto off = seeking::off_bed(grid, machine)) barred.push_back(std::move(*off));
  barred.insert(barred.end(), problem.barred.begin(), problem.barred.end());
  return barred;
}

}  // namespace latchwork::inline v0::planning
