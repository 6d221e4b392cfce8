#include "latchwork/wale.hpp"

#include <algorithm>
#include <cstdint>
#include <iterator>

#include "grid/rules.hpp"
#include "latchwork/error.hpp"
#include "wale/watched.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr int nothing = -1;
constexpr std::size_t rows_between = 64;  // words to whoever watches

/// Moves what stands in the columns of one row to where the crossing puts it: the right group, the centre, the left.
void cross_columns(std::vector<int>& columns, const Crossing& crossing) {
  const auto first = columns.begin() + crossing.column;
  const auto last = first + crossing.width();
  const auto centre = first + crossing.left;
  const auto right = centre + crossing.centre;
  std::rotate(first, right, last);  // right, left, centre
  const auto moved = first + crossing.right;
  std::rotate(moved, moved + crossing.left, last);  // right, centre, left
}

}  // namespace

Wales::Wales(const Grid& grid) : Wales(grid, nullptr) {}

Wales::Wales(const Grid& grid, const following::Watched* watched) : rows_(grid.rows()), columns_(grid.columns()) {
  const auto cells = grid.cells();
  const auto columns = static_cast<std::size_t>(columns_);
  const std::size_t block = columns * rows_between;
  index_.reserve(cells.size());
  std::vector<int> running(columns, nothing);  // the wale that arrives in each column
  auto crossing = grid.crossings().begin();
  const auto end = grid.crossings().end();
  std::vector<std::size_t> rows_of;  // of each wale
  int row = 1;
  for (std::size_t first = 0; first < cells.size(); first += block) {
    const std::size_t last = std::min(cells.size(), first + block);
    index_.resize(last, nothing);  // as it comes, for the memory of a great grid is slow to be had
    for (std::size_t cell = first; cell < last; cell += columns, ++row) {
      const Cell* const row_cells = cells.data() + cell;
      int* const index = index_.data() + cell;
      for (std::size_t column = 0; column < columns; ++column) {
        int& wale = running[column];
        if (row_cells[column] == Cell::none) {
          wale = nothing;
          continue;
        }
        if (wale == nothing) {
          wale = static_cast<int>(wales_.size());
          wales_.push_back({static_cast<int>(column), row, {}});
          rows_of.push_back(0);
        }
        ++rows_of[static_cast<std::size_t>(wale)];
        index[column] = wale;
      }
      for (; crossing != end && crossing->row == row; ++crossing) cross_columns(running, *crossing);
    }
    if (watched) watched->passed(static_cast<std::int64_t>(last - first));
  }
  std::vector<int*> next(wales_.size());  // where the column of each wale's next row goes
  for (std::size_t wale = 0; wale < wales_.size(); ++wale) {
    wales_[wale].columns.resize(rows_of[wale]);
    next[wale] = wales_[wale].columns.data();
  }
  for (std::size_t first = 0; first < cells.size(); first += block) {
    const std::size_t last = std::min(cells.size(), first + block);
    for (std::size_t cell = first; cell < last; cell += columns) {
      const int* const index = index_.data() + cell;
      for (std::size_t column = 0; column < columns; ++column) {
        if (index[column] != nothing) *next[static_cast<std::size_t>(index[column])]++ = static_cast<int>(column);
      }
    }
    if (watched) watched->passed(static_cast<std::int64_t>(last - first));
  }
}

int Wales::at(int row, int column) const {
  rules::require_inside(row, column, rows_, columns_);
  return index_[static_cast<std::size_t>(row - 1) * static_cast<std::size_t>(columns_) +
                static_cast<std::size_t>(column)];
}

}  // namespace latchwork::inline v0
