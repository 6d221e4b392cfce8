#include <fmt/format.h>

#include "finding/kinds.hpp"
#include "finding/reach.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::seeking {
namespace {

void find_shaping(const Grid& grid, const Wale& wale, std::vector<Finding>& found) {
  const auto stitch = [&](int row, int column) {
    return column >= 0 && column < grid.columns() && grid.at(row, column) != Cell::none;
  };
  if (wale.row > 1) {
    Finding finding = found_at(FindingCode::wale_begins, Severity::advice, wale.row, wale.column);
    const bool inside = stitch(wale.row - 1, wale.column - 1) && stitch(wale.row - 1, wale.column + 1);
    finding.value = 1;
    finding.message = fmt::format("a stitch begins at row {}, column {}: a shaping event after row {}{}", wale.row,
                                  wale.column, wale.row - 1, inside ? ", and an eyelet" : "");
    finding.suggestion = inside ? "cast on over the needle, or start the stitch in row 1 where no eyelet is wanted"
                                : "cast on, or increase, on this needle";
    found.push_back(std::move(finding));
  }
  if (wale.last_row() < grid.rows()) {
    const int column = wale.columns.back();
    Finding finding = found_at(FindingCode::wale_ends, Severity::advice, wale.last_row(), column);
    finding.value = 1;
    finding.message = fmt::format("a stitch ends after row {}, column {}: a shaping event", wale.last_row(), column);
    finding.suggestion = "bind it off, or move it to a neighbouring needle before the next row";
    found.push_back(std::move(finding));
  }
}

}  // namespace

void find_in_wales(const Grid& grid, const Wales& wales, const Machine& machine, std::vector<Finding>& found) {
  for (const Wale& wale : wales.all()) {
    find_shaping(grid, wale, found);
    for (const HandCells& cells : hand_cells(grid, wale)) {
      if (auto why = out_of_reach(wale, cells, machine)) found.push_back(std::move(*why));
      if (cells.stack() <= machine.tuck_limit) continue;
      const int column = wale.column_at(cells.low);
      Finding finding = found_at(FindingCode::high_stack, Severity::warning, cells.low, column);
      finding.last_row = cells.low + cells.stack() - 1;
      finding.value = cells.stack();
      finding.limit = machine.tuck_limit;
      // What a hook takes is a matter of tucks: a slip's strand passes it, but the held loop is drawn up over both.
      finding.message =
          cells.slips
              ? fmt::format(
                    "{} tucks or slips stand on one another from row {} of column {}, all on one held loop; the limit "
                    "is {}",
                    cells.stack(), cells.low, column, machine.tuck_limit)
              : fmt::format("{} tucks stand on one another from row {} of column {}; the needle's hook takes {}",
                            cells.stack(), cells.low, column, machine.tuck_limit);
      finding.suggestion =
          "close the stack with a knit or purl after " + count_of(most_in_stack(cells, machine), "row");
      found.push_back(std::move(finding));
    }
  }
}

}  // namespace latchwork::inline v0::seeking
