#pragma once

#include "chart/svg.hpp"

namespace latchwork::inline v0::drawing {

/// Where the cells of a chart stand in its picture.
struct Frame {
  CellSize cell{};
  int first_row = 1;  ///< of those shown
  int last_row = 1;
  int first_column = 0;
  Unit left = 0;
  Unit top = 0;
  Unit width = 0;
  Unit height = 0;
  Unit font = 1000;  ///< of the words round it

  Unit column_x(int column) const { return left + (column - first_column) * cell.width; }
  Unit row_top(int row) const { return top + (last_row - row) * cell.height; }
  Unit bottom() const { return top + height; }
};

}  // namespace latchwork::inline v0::drawing
