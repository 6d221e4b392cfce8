#include "plan/stops.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include "latchwork/error.hpp"

namespace latchwork::inline v0 {

void require_stops_rise(const Plan& plan) {
  for (std::size_t i = 0; i < plan.stops.size(); ++i) {
    const int row = plan.stops[i].row;
    const auto refuse = [&](const std::string& why) {
      Place place;
      place.row = row;
      place.field = fmt::format("stops[{}].row", i);
      throw Error(ErrorCode::bad_argument, place, fmt::format("stop {}, after row {}: {}", i + 1, row, why));
    };
    if (row < 0 || row > plan.rows) refuse(fmt::format("the panel's rows are 0 to {}", plan.rows));
    if (i > 0 && row <= plan.stops[i - 1].row) {
      refuse(fmt::format("it comes after the stop after row {}; stops are told by rising row", plan.stops[i - 1].row));
    }
  }
}

int kinds_of(const Plan& plan) {
  const std::vector<int> kinds = stop_kinds(plan);  // numbered from 0
  return kinds.empty() ? 0 : *std::ranges::max_element(kinds) + 1;
}

}  // namespace latchwork::inline v0
