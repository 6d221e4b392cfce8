#include <fmt/format.h>

#include "finding/kinds.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::seeking {
namespace {

// A run of like cells in a row, from `from` to before `to`.
void find_in_run(const Machine& machine, Cell cell, int row, int from, int to, std::vector<Finding>& found) {
  const int width = to - from;
  if (cell == Cell::slip && width > machine.float_limit) {
    Finding finding = found_at(FindingCode::long_float, Severity::warning, row, from);
    finding.last_column = to - 1;
    finding.value = width;
    finding.limit = machine.float_limit;
    finding.message = fmt::format("the strand of row {} floats past {}, {}; {} is the most", row,
                                  count_of(width, "needle"), run_of("column", from, to - 1), machine.float_limit);
    finding.suggestion =
        fmt::format("catch it with a knit, purl or tuck after {} at most", count_of(machine.float_limit, "needle"));
    found.push_back(std::move(finding));
  }
  if (cell == Cell::tuck && width > 1) {
    Finding finding = found_at(FindingCode::tucks_side_by_side, Severity::advice, row, from);
    finding.last_column = to - 1;
    finding.value = width;
    finding.limit = 1;
    finding.message =
        fmt::format("{} tucks stand side by side in row {}, {}: held needles would carry one straight strand", width,
                    row, run_of("column", from, to - 1));
    finding.suggestion = "re-form them with the latch tool, the rung of the lower row first, the same way throughout";
    found.push_back(std::move(finding));
  }
}

}  // namespace

void find_in_runs(const Grid& grid, const Machine& machine, std::vector<Finding>& found) {
  for (int row = 1; row <= grid.rows(); ++row) {
    for (int column = 0; column < grid.columns();) {
      const Cell cell = grid.at(row, column);
      int to = column + 1;
      while (to < grid.columns() && grid.at(row, to) == cell) ++to;
      find_in_run(machine, cell, row, column, to, found);
      column = to;
    }
  }
}

}  // namespace latchwork::inline v0::seeking
