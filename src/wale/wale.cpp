#include "latchwork/wale.hpp"

#include <algorithm>
#include <iterator>

#include "grid/rules.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr int nothing = -1;

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

Wales::Wales(const Grid& grid) : rows_(grid.rows()), columns_(grid.columns()) {
  const auto cells = grid.cells();
  index_.assign(cells.size(), nothing);
  std::vector<int> running(static_cast<std::size_t>(columns_), nothing);  // the wale that arrives in each column
  auto crossing = grid.crossings().begin();
  const auto end = grid.crossings().end();
  std::vector<std::size_t> rows_of;  // of each wale
  std::size_t cell = 0;
  for (int row = 1; row <= rows_; ++row) {
    for (int column = 0; column < columns_; ++column, ++cell) {
      int& wale = running[static_cast<std::size_t>(column)];
      if (cells[cell] == Cell::none) {
        wale = nothing;
        continue;
      }
      if (wale == nothing) {
        wale = static_cast<int>(wales_.size());
        wales_.push_back({column, row, {}});
        rows_of.push_back(0);
      }
      ++rows_of[static_cast<std::size_t>(wale)];
      index_[cell] = wale;
    }
    for (; crossing != end && crossing->row == row; ++crossing) cross_columns(running, *crossing);
  }
  std::vector<int*> next(wales_.size());  // where the column of each wale's next row goes
  for (std::size_t wale = 0; wale < wales_.size(); ++wale) {
    wales_[wale].columns.resize(rows_of[wale]);
    next[wale] = wales_[wale].columns.data();
  }
  cell = 0;
  for (int row = 1; row <= rows_; ++row) {
    for (int column = 0; column < columns_; ++column, ++cell) {
      if (index_[cell] != nothing) *next[static_cast<std::size_t>(index_[cell])]++ = column;
    }
  }
}

int Wales::at(int row, int column) const {
  rules::require_inside(row, column, rows_, columns_);
  return index_[static_cast<std::size_t>(row - 1) * static_cast<std::size_t>(columns_) +
                static_cast<std::size_t>(column)];
}

}  // namespace latchwork::inline v0
