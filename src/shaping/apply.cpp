#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <utility>
#include <vector>

#include "grid/rules.hpp"
#include "latchwork/shaping.hpp"
#include "shaping/check.hpp"
#include "shaping/cuts.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace shaping;

[[noreturn]] void refuse_cut(ErrorCode code, int row, int column, const std::string& message) {
  Place place;
  place.row = row;
  place.column = column;
  place.field = "outline";
  throw Error(code, place, message);
}

void refuse_cuts(const std::vector<CutCrossing>& crossings, const std::vector<CutStack>& stacks) {
  const auto cut = std::find_if(crossings.begin(), crossings.end(), [](const CutCrossing& c) { return !c.outside; });
  if (cut != crossings.end()) {
    const Crossing& crossing = cut->crossing;
    refuse_cut(
        ErrorCode::crossing_cut, crossing.row, crossing.column,
        fmt::format("the edge cuts {}: {} of its {} stitches {} outside in row {}{}", rules::crossing_words(crossing),
                    cut->columns, crossing.width(), cut->columns == 1 ? "is" : "are", cut->row,
                    is_cut_on_seam(*cut) ? ", which a crossing after the last row needs as well" : ""));
  }
  if (stacks.empty()) return;
  const CutStack& stack = stacks.front();
  refuse_cut(ErrorCode::bad_argument, stack.row, stack.column,
             fmt::format("the edge cuts the tucks or slips of column {}, {}", stack.column,
                         run_of("row", stack.row, stack.last_row)));
}

}  // namespace

Panel shaped(const Panel& panel, const Outline& outline, const ShapeOptions& options) {
  const Grid& grid = panel.grid();
  check(grid, outline, options);
  const std::vector<CutCrossing> crossings = cut_crossings(grid, outline);
  const std::vector<CutStack> stacks = cut_stacks(grid, outline);
  if (options.cut == CutWork::refuse) refuse_cuts(crossings, stacks);

  const auto columns = static_cast<std::size_t>(grid.columns());
  std::vector<std::uint8_t> cells;
  cells.reserve(grid.cells().size());
  for (const Cell cell : grid.cells()) cells.push_back(static_cast<std::uint8_t>(cell));
  const auto cell = [&](int row, int column) -> std::uint8_t& {
    return cells[static_cast<std::size_t>(row - 1) * columns + static_cast<std::size_t>(column)];
  };
  const auto knit = [&](int row, int column) {
    if (cell(row, column) != static_cast<std::uint8_t>(Cell::none))
      cell(row, column) = static_cast<std::uint8_t>(Cell::knit);
  };
  for (const CutCrossing& cut : crossings) {
    if (cut.outside) continue;
    for (int i = 0; i < cut.crossing.width(); ++i) {
      knit(cut.crossing.row, cut.crossing.column + i);
      if (cut.crossing.row < grid.rows()) knit(cut.crossing.row + 1, cut.crossing.column + i);
    }
  }
  for (const CutStack& stack : stacks) {
    for (int row = stack.row; row <= stack.last_row; ++row) knit(row, stack.column);
  }
  for (int row = 1; row <= grid.rows(); ++row) {
    const RowSpan& span = outline.rows[static_cast<std::size_t>(row) - 1];
    for (int column = 0; column < grid.columns(); ++column) {
      if (column < span.first || column > span.last) {
        cell(row, column) = static_cast<std::uint8_t>(Cell::none);
      } else if (in_edge(outline, row, column, options.edge_stitches)) {
        knit(row, column);
      }
    }
  }
  Grid out = Grid::from_cells(grid.rows(), grid.columns(), cells);
  auto next = crossings.begin();
  for (const Crossing& crossing : grid.crossings()) {
    if (next != crossings.end() && next->crossing == crossing) {
      ++next;
    } else {
      out.cross(crossing);
    }
  }
  Panel result(panel.name(), std::move(out), {panel.bands().begin(), panel.bands().end()});
  result.set_axis_half_columns(panel.axis_half_columns());
  return result;
}

}  // namespace latchwork::inline v0
