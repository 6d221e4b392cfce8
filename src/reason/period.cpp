#include <algorithm>
#include <tuple>

#include "latchwork/reason.hpp"

namespace latchwork::inline v0 {

Period plan_period(const Plan& plan) {
  const auto at = [](int i) { return static_cast<std::size_t>(i); };
  std::vector<int> kind_at(at(std::max(0, plan.rows)) + 1, -1);
  const std::vector<int> kinds = stop_kinds(plan);
  for (std::size_t i = 0; i < plan.stops.size(); ++i) {
    const int row = plan.stops[i].row;
    if (row >= 0 && row <= plan.rows) kind_at[at(row)] = kinds[i];
  }
  Period best;
  for (int rows = 1; 2 * rows <= plan.rows + 1; ++rows) {
    int first = 0;  // of the run of rows that are like those one period on
    int stops = 0;
    const auto end_run = [&](int end) {
      // Rows first..end-1 are each followed by their like, so that first..end-1+rows is periodic.
      const int covered = end - first + rows;
      if (stops == 0 || covered < 2 * rows || covered <= best.last_row - best.from_row + (best.rows > 0 ? 1 : 0))
        return;
      best = {first, first + covered - 1, rows, covered / rows, 0};
    };
    for (int row = 0; row + rows <= plan.rows; ++row) {
      if (kind_at[at(row)] == kind_at[at(row + rows)]) {
        stops += kind_at[at(row)] >= 0 ? 1 : 0;
        continue;
      }
      end_run(row);
      first = row + 1;
      stops = 0;
    }
    end_run(plan.rows - rows + 1);
  }
  for (int row = best.from_row; row < best.from_row + best.rows; ++row) best.stops += kind_at[at(row)] >= 0 ? 1 : 0;
  return best;
}

}  // namespace latchwork::inline v0
