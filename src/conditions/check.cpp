#include "conditions/check.hpp"

#include <fmt/format.h>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"

namespace latchwork::inline v0 {
namespace {

[[noreturn]] void refuse_condition(const std::string& condition, const std::string& what) {
  const std::string field = "options.conditions." + condition;
  refuse(field, field + " " + what);
}

void within(const std::string& field, int value, int least, int most) {
  if (value >= least && value <= most) return;
  refuse_condition(field, fmt::format("is {}; it may be {} to {}", value, least, most));
}

}  // namespace

void check(const Conditions& conditions, int rows, int columns) {
  within("rows_apart", conditions.rows_apart, 0, Grid::max_side);
  within("max_depth", conditions.max_depth, 0, Grid::max_side);
  within("max_kinds", conditions.max_kinds, 0, Grid::max_side);
  for (std::size_t i = 0; i < conditions.closed_rows.size(); ++i) {
    within(fmt::format("closed_rows[{}]", i), conditions.closed_rows[i], 0, rows);
  }
  int open = 0;
  for (std::size_t i = 0; i < conditions.rhythms.size(); ++i) {
    const KeptRhythm& kept = conditions.rhythms[i];
    const auto field = [&](const char* name) { return fmt::format("rhythms[{}].{}", i, name); };
    within(field("row"), kept.row, 1, rows);
    within(field("first_column"), kept.first_column, 0, columns - 1);
    within(field("last_column"), kept.last_column, kept.first_column, columns - 1);
    if (kept.rhythm) {
      within(field("rhythm.every"), kept.rhythm->every, 1, Grid::max_side);
      within(field("rhythm.first"), kept.rhythm->first, 1, Grid::max_side);
    } else if (++open > 1) {
      refuse_condition(field("rhythm"), "is left to be found, as another is; only one may be");
    }
  }
}

}  // namespace latchwork::inline v0
