#include "plan/kept.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "plan/stops.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {

std::optional<std::string> planning::broken_condition(const Plan& plan, const Conditions& conditions) {
  const auto stop_words = [](const Stop& stop, const std::string& what) {
    return fmt::format("has a stop after row {} {}", stop.row, what);
  };
  const Stop* before = nullptr;
  for (const Stop& stop : plan.stops) {
    const bool exempt = conditions.forced_exempt && (!stop.crossings.empty() || !stop.shapings.empty());
    if (!exempt) {
      if (conditions.carriage_right_only && !stop.carriage_right) {
        return stop_words(stop, "with the carriage on the left");
      }
      if (std::ranges::find(conditions.closed_rows, stop.row) != conditions.closed_rows.end()) {
        return stop_words(stop, "that is closed");
      }
      if (before != nullptr && std::int64_t{stop.row} - before->row < conditions.rows_apart) {
        return stop_words(stop,
                          fmt::format("nearer than {} to the one before it", count_of(conditions.rows_apart, "row")));
      }
    }
    for (const Reform& reform : stop.reforms) {
      if (conditions.max_depth == 0 || std::ssize(reform.rungs) <= conditions.max_depth) continue;
      return stop_words(stop, fmt::format("that re-forms {}", count_of(std::ssize(reform.rungs), "row")));
    }
    before = &stop;
  }
  if (conditions.max_kinds == 0) return std::nullopt;  // on a large panel they take long to count
  if (const int kinds = kinds_of(plan); kinds > conditions.max_kinds) {
    return fmt::format("has {} of stop; the conditions allow {}", count_of(kinds, "kind"), conditions.max_kinds);
  }
  return std::nullopt;
}

}  // namespace latchwork::inline v0
