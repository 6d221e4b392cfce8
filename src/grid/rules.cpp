#include "rules.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "text/words.hpp"

namespace latchwork::inline v0::rules {
namespace {

/// Looks along one row of the span for `none`; the centre, `skipped` columns from `skip_from`, is passed over.
std::optional<int> bare_column(std::span<const Cell> row, int column, int width, int skip_from, int skipped) {
  for (int x = column; x < column + width; ++x) {
    if (x >= skip_from && x < skip_from + skipped) continue;
    if (row[static_cast<std::size_t>(x)] == Cell::none) return x;
  }
  return std::nullopt;
}

bool all_bare(std::span<const Cell> row, int column, int width) {
  return std::ranges::all_of(row.subspan(static_cast<std::size_t>(column), static_cast<std::size_t>(width)),
                             [](Cell cell) { return cell == Cell::none; });
}

}  // namespace

std::optional<BrokenRule> broken_rule(int rows, int columns, std::span<const Cell> cells, const Crossing& crossing) {
  const auto row_of = [&](int row) {
    const auto width = static_cast<std::size_t>(columns);
    return cells.subspan(static_cast<std::size_t>(row - 1) * width, width);
  };
  const int above = row_after(crossing.row, rows);
  const auto low = row_of(crossing.row);
  const auto high = row_of(above);
  const int width = crossing.width();
  for (int x = crossing.column; x < crossing.column + width; ++x) {
    if (in_stack(low[static_cast<std::size_t>(x)])) {
      return BrokenRule{ErrorCode::crossing_over_stack, crossing.row, x};
    }
  }
  const int centre_low = crossing.column + crossing.left;
  const int centre_high = crossing.column + crossing.right;  // the right group has moved to the left of it
  const bool bare =
      crossing.centre > 0 && all_bare(low, centre_low, crossing.centre) && all_bare(high, centre_high, crossing.centre);
  const int skipped = bare ? crossing.centre : 0;
  if (const auto x = bare_column(low, crossing.column, width, centre_low, skipped)) {
    return BrokenRule{ErrorCode::crossing_over_none, crossing.row, *x};
  }
  if (const auto x = bare_column(high, crossing.column, width, centre_high, skipped)) {
    return BrokenRule{ErrorCode::crossing_over_none, above, *x};
  }
  return std::nullopt;
}

Error refusal(const BrokenRule& broken, const Crossing& crossing) {
  const Place place = place_at(broken.row, broken.column);
  if (broken.code == ErrorCode::crossing_over_stack) {
    return {broken.code, place,
            fmt::format("{} has a tuck or slip at row {}, column {}; its stitches must be closed loops in row {}",
                        crossing_words(crossing), broken.row, broken.column, crossing.row)};
  }
  return {broken.code, place,
          fmt::format("{} has no stitch at row {}, column {}; only its whole centre may be bare, in both rows",
                      crossing_words(crossing), broken.row, broken.column)};
}

void require_rule(int rows, int columns, std::span<const Cell> cells, const Crossing& crossing) {
  if (const auto broken = broken_rule(rows, columns, cells, crossing)) throw refusal(*broken, crossing);
}

void require_size(std::int64_t rows, std::int64_t columns) {
  if (rows < 1) {
    throw Error(ErrorCode::bad_argument, place_of_field("rows"), fmt::format("a grid of {} rows; at least 1", rows));
  }
  if (columns < 1) {
    throw Error(ErrorCode::bad_argument, place_of_field("columns"),
                fmt::format("a grid of {} columns; at least 1", columns));
  }
  if (rows > Grid::max_side) {
    throw Error(ErrorCode::too_large, place_of_field("rows"),
                fmt::format("a grid of {} rows; the most is {}", rows, Grid::max_side));
  }
  if (columns > Grid::max_side) {
    throw Error(ErrorCode::too_large, place_of_field("columns"),
                fmt::format("a grid of {} columns; the most is {}", columns, Grid::max_side));
  }
  if (rows * columns > Grid::max_cells) {
    throw Error(
        ErrorCode::too_large, {},
        fmt::format("a grid of {} x {} is {} cells; the most is {}", rows, columns, rows * columns, Grid::max_cells));
  }
}

void require_inside(int row, int column, int rows, int columns) {
  if (row >= 1 && row <= rows && column >= 0 && column < columns) return;
  throw Error(ErrorCode::off_grid, place_at(row, column),
              fmt::format("row {}, column {} is off the grid; it has {} and {}", row, column, run_of("row", 1, rows),
                          run_of("column", 0, columns - 1)));
}

std::string crossing_words(const Crossing& crossing) {
  return fmt::format("crossing {} after row {}, {}", crossing_name(crossing), crossing.row,
                     run_of("column", crossing.column, crossing.column + crossing.width() - 1));
}

}  // namespace latchwork::inline v0::rules
