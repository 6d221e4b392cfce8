// Larger and smaller grids from grids: repeat, roll, join, slice, paste.
#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "latchwork/grid.hpp"
#include "rules.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace rules;

void require_times(int times) {
  if (times < 1) {
    throw Error(ErrorCode::bad_argument, place_of_field("times"), fmt::format("{} copies; at least 1", times));
  }
}

/// Rows 0..R-1 round the ring.
int wrapped(std::int64_t row, int rows) noexcept {
  const std::int64_t rest = row % rows;
  return static_cast<int>(rest < 0 ? rest + rows : rest);
}

/// For each row r, crossings[starts[r]] is its first: starts has R + 2 entries, so that r + 1 ends it.
std::vector<std::size_t> row_starts(std::span<const Crossing> crossings, int rows) {
  std::vector<std::size_t> starts(static_cast<std::size_t>(rows) + 2, 0);
  for (const Crossing& crossing : crossings) ++starts[static_cast<std::size_t>(crossing.row) + 1];
  for (std::size_t r = 1; r < starts.size(); ++r) starts[r] += starts[r - 1];
  return starts;
}

std::span<const Crossing> after_row(std::span<const Crossing> crossings, const std::vector<std::size_t>& starts,
                                    int row) {
  const auto r = static_cast<std::size_t>(row);
  return crossings.subspan(starts[r], starts[r + 1] - starts[r]);
}

/// Adds crossings moved to another row and sideways.
void append(std::vector<Crossing>& to, std::span<const Crossing> crossings, int row, int by) {
  for (Crossing crossing : crossings) {
    crossing.row = row;
    crossing.column += by;
    to.push_back(crossing);
  }
}

void append_rows(std::vector<Cell>& to, std::span<const Cell> cells) {
  to.insert(to.end(), cells.begin(), cells.end());
}

/// Rows of `width` cells, the last `moved` of each first.
void append_rolled(std::vector<Cell>& to, std::span<const Cell> cells, std::size_t width, std::size_t moved) {
  for (; !cells.empty(); cells = cells.subspan(width)) {
    append_rows(to, cells.subspan(width - moved, moved));
    append_rows(to, cells.first(width - moved));
  }
}

bool before(const Crossing& one, const Crossing& other) {
  return one.row != other.row ? one.row < other.row : one.column < other.column;
}

[[noreturn]] void refuse_cut(const Crossing& crossing, const std::string& by) {
  throw Error(ErrorCode::crossing_cut, place_at(crossing.row, crossing.column),
              fmt::format("{} would be cut by {}", crossing_words(crossing), by));
}

/// The rectangle of a slice or patch, or an error that says what is off the grid.
void require_rectangle(const char* what, int row, int column, std::int64_t rows, std::int64_t columns,
                       const Grid& grid) {
  if (row < 1 || column < 0 || row - 1 + rows > grid.rows() || column + columns > grid.columns()) {
    throw Error(
        ErrorCode::off_grid, place_at(row, column),
        fmt::format("a {} of {} x {} at row {}, column {} is off the grid of {} x {}", what,
                    count_of(columns, "column"), count_of(rows, "row"), row, column, grid.columns(), grid.rows()));
  }
}

}  // namespace

Grid Grid::unfolded(Axis axis) const {
  if (axis != Axis::line && axis != Axis::stitch) {
    throw Error(ErrorCode::bad_argument, place_of_field("axis"),
                fmt::format("axis is {}; it is 0 (line) or 1 (stitch)", static_cast<int>(axis)));
  }
  const int shared = axis == Axis::stitch ? 1 : 0;
  const std::int64_t wide = std::int64_t{2} * columns_ - shared;
  require_size(rows_, wide);
  if (shared == 1) {
    for (const Crossing& crossing : crossings_) {
      if (crossing.column + crossing.width() == columns_) {
        refuse_cut(crossing, fmt::format("a mirror axis through column {}", columns_ - 1));
      }
    }
  }
  const Grid image = mirrored();
  const auto width = static_cast<std::size_t>(columns_);
  std::vector<Cell> cells;
  cells.reserve(static_cast<std::size_t>(rows_) * static_cast<std::size_t>(wide));
  for (std::size_t start = 0; start < cells_.size(); start += width) {
    append_rows(cells, std::span(cells_).subspan(start, width));
    append_rows(cells,
                std::span(image.cells_)
                    .subspan(start + static_cast<std::size_t>(shared), width - static_cast<std::size_t>(shared)));
  }
  std::vector<Crossing> crossings;
  crossings.reserve(2 * crossings_.size());
  const auto starts = row_starts(crossings_, rows_);  // the image has as many after each row
  for (int row = 1; row <= rows_; ++row) {
    append(crossings, after_row(crossings_, starts, row), row, 0);
    append(crossings, after_row(image.crossings_, starts, row), row, columns_ - shared);
  }
  return {rows_, static_cast<int>(wide), std::move(cells), std::move(crossings)};
}

Grid Grid::repeated_across(int times, int shift) const {
  require_times(times);
  const std::int64_t wide = std::int64_t{columns_} * times;
  require_size(rows_, wide);
  const auto width = static_cast<std::size_t>(columns_);
  const auto starts = row_starts(crossings_, rows_);
  std::vector<Cell> cells;
  cells.reserve(static_cast<std::size_t>(rows_) * static_cast<std::size_t>(wide));
  std::vector<Crossing> crossings;
  crossings.reserve(crossings_.size() * static_cast<std::size_t>(times));
  for (int y = 0; y < rows_; ++y) {
    for (int copy = 0; copy < times; ++copy) {
      const int from = wrapped(y - std::int64_t{copy} * shift, rows_);  // the row that has moved up to y
      append_rows(cells, std::span(cells_).subspan(static_cast<std::size_t>(from) * width, width));
      append(crossings, after_row(crossings_, starts, from + 1), y + 1, copy * columns_);
    }
  }
  return {rows_, static_cast<int>(wide), std::move(cells), std::move(crossings)};
}

Grid Grid::repeated_up(int times, int shift) const {
  require_times(times);
  const std::int64_t high = std::int64_t{rows_} * times;
  require_size(high, columns_);
  std::vector<Cell> cells;
  cells.reserve(cells_.size() * static_cast<std::size_t>(times));
  std::vector<Crossing> crossings;
  crossings.reserve(crossings_.size() * static_cast<std::size_t>(times));
  for (int copy = 0; copy < times; ++copy) {
    const int moved = wrapped(std::int64_t{copy} * shift, columns_);
    if (moved == 0) {
      append_rows(cells, cells_);
    } else {
      append_rolled(cells, cells_, static_cast<std::size_t>(columns_), static_cast<std::size_t>(moved));
    }
    const auto first = std::ssize(crossings);
    for (Crossing crossing : crossings_) {
      crossing.column = wrapped(std::int64_t{crossing.column} + moved, columns_);
      if (crossing.column + crossing.width() > columns_) {
        crossing.column = wrapped(std::int64_t{crossing.column} - moved, columns_);
        refuse_cut(crossing, fmt::format("copy {}, moved right by {}", copy + 1, count_of(moved, "column")));
      }
      crossing.row += copy * rows_;
      crossings.push_back(crossing);
    }
    std::ranges::sort(crossings.begin() + first, crossings.end(), before);
  }
  if (wrapped(shift, columns_) != 0) {
    // Each seam has other columns above it than the tile's own.
    for (const Crossing& crossing : crossings) {
      if (crossing.row % rows_ == 0) require_rule(static_cast<int>(high), columns_, cells, crossing);
    }
  }
  return {static_cast<int>(high), columns_, std::move(cells), std::move(crossings)};
}

Grid Grid::rolled_up(int shift) const {
  const int moved = wrapped(shift, rows_);  // so many rows of the top come to the bottom
  const auto split = static_cast<std::ptrdiff_t>(rows_ - moved) * columns_;
  std::vector<Cell> cells;
  cells.reserve(cells_.size());
  cells.insert(cells.end(), cells_.begin() + split, cells_.end());
  cells.insert(cells.end(), cells_.begin(), cells_.begin() + split);
  std::vector<Crossing> crossings;
  crossings.reserve(crossings_.size());
  const auto top = std::ranges::lower_bound(crossings_, rows_ - moved + 1, {}, &Crossing::row);
  for (auto crossing = top; crossing != crossings_.end(); ++crossing) {
    crossings.push_back(*crossing);
    crossings.back().row -= rows_ - moved;
  }
  for (auto crossing = crossings_.begin(); crossing != top; ++crossing) {
    crossings.push_back(*crossing);
    crossings.back().row += moved;
  }
  return {rows_, columns_, std::move(cells), std::move(crossings)};
}

Grid Grid::beside(const Grid& right) const {
  if (right.rows_ != rows_) {
    throw Error(ErrorCode::size_mismatch, place_of_field("right"),
                fmt::format("{} beside {}; they must be equal", count_of(right.rows_, "row"), rows_));
  }
  const std::int64_t wide = std::int64_t{columns_} + right.columns_;
  require_size(rows_, wide);
  std::vector<Cell> cells;
  cells.reserve(cells_.size() + right.cells_.size());
  std::vector<Crossing> crossings;
  crossings.reserve(crossings_.size() + right.crossings_.size());
  const auto starts = row_starts(crossings_, rows_);
  const auto right_starts = row_starts(right.crossings_, rows_);
  const auto width = static_cast<std::size_t>(columns_);
  const auto right_width = static_cast<std::size_t>(right.columns_);
  for (int row = 1; row <= rows_; ++row) {
    const auto y = static_cast<std::size_t>(row - 1);
    append_rows(cells, std::span(cells_).subspan(y * width, width));
    append_rows(cells, std::span(right.cells_).subspan(y * right_width, right_width));
    append(crossings, after_row(crossings_, starts, row), row, 0);
    append(crossings, after_row(right.crossings_, right_starts, row), row, columns_);
  }
  return {rows_, static_cast<int>(wide), std::move(cells), std::move(crossings)};
}

Grid Grid::above(const Grid& below) const {
  if (below.columns_ != columns_) {
    throw Error(ErrorCode::size_mismatch, place_of_field("below"),
                fmt::format("{} above {}; they must be equal", count_of(columns_, "column"), below.columns_));
  }
  const std::int64_t high = std::int64_t{rows_} + below.rows_;
  require_size(high, columns_);
  std::vector<Cell> cells;
  cells.reserve(cells_.size() + below.cells_.size());
  append_rows(cells, below.cells_);
  append_rows(cells, cells_);
  std::vector<Crossing> crossings;
  crossings.reserve(crossings_.size() + below.crossings_.size());
  crossings = below.crossings_;
  for (const Crossing& crossing : crossings_) {
    crossings.push_back(crossing);
    crossings.back().row += below.rows_;
  }
  // The two old seams have new rows above them.
  for (const Crossing& crossing : crossings) {
    if (crossing.row == below.rows_ || crossing.row == high) {
      require_rule(static_cast<int>(high), columns_, cells, crossing);
    }
  }
  return {static_cast<int>(high), columns_, std::move(cells), std::move(crossings)};
}

Grid Grid::sliced(int row, int column, int rows, int columns) const {
  require_size(rows, columns);
  require_rectangle("slice", row, column, rows, columns, *this);
  std::vector<Cell> cells;
  cells.reserve(static_cast<std::size_t>(rows) * static_cast<std::size_t>(columns));
  for (int y = row - 1; y < row - 1 + rows; ++y) {
    append_rows(cells, std::span(cells_).subspan(static_cast<std::size_t>(y) * static_cast<std::size_t>(columns_) +
                                                     static_cast<std::size_t>(column),
                                                 static_cast<std::size_t>(columns)));
  }
  std::vector<Crossing> crossings;
  const auto first = std::ranges::lower_bound(crossings_, row, {}, &Crossing::row);
  for (auto found = first; found != crossings_.end() && found->row < row + rows; ++found) {
    const int end = found->column + found->width();
    if (end <= column || found->column >= column + columns) continue;
    if (found->column < column || end > column + columns) {
      refuse_cut(*found, "a slice of " + run_of("column", column, column + columns - 1));
    }
    crossings.push_back(*found);
    crossings.back().row -= row - 1;
    crossings.back().column -= column;
  }
  for (const Crossing& crossing : crossings) {  // the last row is followed by another row than before
    if (crossing.row == rows) require_rule(rows, columns, cells, crossing);
  }
  return {rows, columns, std::move(cells), std::move(crossings)};
}

void Grid::paste(const Grid& patch, int row, int column) {
  require_rectangle("patch", row, column, patch.rows_, patch.columns_, *this);
  const int last_row = row + patch.rows_ - 1;
  const int last_column = column + patch.columns_ - 1;
  const auto under = [&](const Crossing& crossing) {
    return crossing.column <= last_column && crossing.column + crossing.width() > column;
  };
  std::vector<Crossing> crossings;
  crossings.reserve(crossings_.size() + patch.crossings_.size());
  const auto append_patch = [&] {
    for (const Crossing& crossing : patch.crossings_) {
      crossings.push_back(crossing);
      crossings.back().row += row - 1;
      crossings.back().column += column;
    }
  };
  bool merged = false;
  for (const Crossing& crossing : crossings_) {
    if (!merged && crossing.row >= row) {
      append_patch();
      merged = true;
    }
    if (crossing.row >= row && crossing.row <= last_row && under(crossing)) {
      if (crossing.column < column || crossing.column + crossing.width() > last_column + 1) {
        refuse_cut(crossing, "a patch of " + run_of("column", column, last_column));
      }
      continue;  // the patch takes its place
    }
    crossings.push_back(crossing);
  }
  if (!merged) append_patch();
  std::ranges::sort(crossings, {}, [](const Crossing& crossing) { return std::pair(crossing.row, crossing.column); });

  const auto width = static_cast<std::size_t>(columns_);
  const auto patch_width = static_cast<std::size_t>(patch.columns_);
  std::vector<Cell> cells = cells_;
  for (int y = 0; y < patch.rows_; ++y) {
    const auto from = patch.cells_.begin() + static_cast<std::ptrdiff_t>(static_cast<std::size_t>(y) * patch_width);
    const auto to = static_cast<std::size_t>(row - 1 + y) * width + static_cast<std::size_t>(column);
    std::copy_n(from, patch_width, cells.begin() + static_cast<std::ptrdiff_t>(to));
  }
  // Only two rows of crossings meet cells they were not checked against: those just below the patch, and its own last.
  const int below = row == 1 ? rows_ : row - 1;
  for (const Crossing& crossing : crossings) {
    if ((crossing.row == below || crossing.row == last_row) && under(crossing)) {
      require_rule(rows_, columns_, cells, crossing);
    }
  }
  std::ranges::copy(cells, cells_.begin());  // in place, so that views of cells() stay valid
  crossings_ = std::move(crossings);
}

}  // namespace latchwork::inline v0
