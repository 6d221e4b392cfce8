#include "finding/reach.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "grid/rules.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::seeking {
namespace {

using rules::in_stack;

}  // namespace

std::vector<HandCells> hand_cells(const Grid& grid, const Wale& wale) {
  const auto cells_of_grid = grid.cells();  // a wale lies inside its grid, so that nothing is to be checked
  const auto columns = static_cast<std::size_t>(grid.columns());
  std::vector<Cell> cells;
  cells.reserve(wale.columns.size());
  for (int row = wale.row; row <= wale.last_row(); ++row) {
    cells.push_back(
        cells_of_grid[static_cast<std::size_t>(row - 1) * columns + static_cast<std::size_t>(wale.column_at(row))]);
  }
  std::vector<HandCells> found;
  find_hand_cells(grid, wale, cells, found);
  return found;
}

void find_hand_cells(const Grid& grid, const Wale& wale, std::span<const Cell> cells, std::vector<HandCells>& found) {
  found.clear();
  const auto tuck_beside = [&](int row) {
    const int column = wale.column_at(row);
    return (column > 0 && grid.at(row, column - 1) == Cell::tuck) ||
           (column + 1 < grid.columns() && grid.at(row, column + 1) == Cell::tuck);
  };
  const int count = static_cast<int>(cells.size());
  const auto cell = [&](int index) { return cells[static_cast<std::size_t>(index)]; };
  // Found without branches, for whether a cell is worked by hand can be as hard to foresee as a coin.
  std::vector<int> by_hand(cells.size());
  std::size_t hands = 0;
  for (int index = 0; index < count; ++index) {
    by_hand[hands] = index;
    hands += static_cast<std::size_t>(cell(index) != Cell::knit);
  }
  for (std::size_t k = 0; k < hands; ++k) {
    const int low = by_hand[k];
    HandCells hand{wale.row + low, 0, true, false, false};
    bool tucks_alone = true;
    int high = low;
    for (; high < count && in_stack(cell(high)); ++high) {
      hand.slips = hand.slips || cell(high) == Cell::slip;
      tucks_alone = tucks_alone && cell(high) == Cell::tuck && !tuck_beside(wale.row + high);
    }
    if (high == count) {
      --high;
      hand.closed = false;
    } else {
      hand.by_hold = high > low && tucks_alone && cell(high) == Cell::knit;
    }
    hand.high = wale.row + high;
    found.push_back(hand);
    while (k + 1 < hands && by_hand[k + 1] <= high) ++k;
  }
}

int most_in_stack(const HandCells& cells, const Machine& machine) noexcept {
  // A ladder of one row reaches no stack at all, whatever closes it.
  const bool by_ladder = cells.closed && !cells.by_hold && machine.max_ladder > 1;
  return by_ladder ? std::min(machine.tuck_limit, machine.max_ladder - 1) : machine.tuck_limit;
}

std::optional<Finding> out_of_reach(const Wale& wale, const HandCells& cells, const Machine& machine) {
  if (in_reach(wale, cells, machine)) return {};
  const int rows = cells.high - cells.low + 1;
  const bool loop = cells.low > wale.row || machine.cast_on_loops;
  Finding finding;
  finding.severity = Severity::error;
  finding.place.row = cells.low;
  finding.last_row = cells.high;
  finding.place.column = finding.last_column = wale.column_at(cells.low);
  const int column = finding.place.column;
  finding.value = rows;
  if (!cells.closed) {
    finding.code = FindingCode::open_stack;
    finding.message =
        fmt::format("no knit or purl closes the stack of tucks or slips in {} of column {}: the wale ends after row {}",
                    run_of("row", cells.low, cells.high), column, cells.high);
    finding.suggestion = fmt::format("knit or purl row {} of this wale, or one row more above it", cells.high);
    return finding;
  }
  if (!loop) {
    const bool stack = cells.stack() > 0;
    finding.code = stack ? FindingCode::no_held_loop : FindingCode::out_of_reach;
    finding.message =
        fmt::format("row {}, column {} is this wale's first row and the cast-on gives no loop of its own: nothing {}",
                    cells.low, column, stack ? "for the tuck or slip to hold" : "to put the tool into");
    finding.suggestion = "cast on so that each needle has its own loop, or knit the first row plain";
    return finding;
  }
  finding.code = FindingCode::out_of_reach;
  finding.limit = machine.max_ladder;
  finding.message = fmt::format("{} of column {} can only be re-formed together, {} down; the greatest ladder is {}",
                                run_of("row", cells.low, cells.high), column, count_of(rows, "row"),
                                count_of(machine.max_ladder, "row"));
  finding.suggestion = machine.max_ladder > 1
                           ? fmt::format("close the stack after {}, or allow ladders of {}",
                                         count_of(most_in_stack(cells, machine), "row"), count_of(rows, "row"))
                           : fmt::format("allow ladders of {}", count_of(rows, "row"));
  return finding;
}

}  // namespace latchwork::inline v0::seeking
