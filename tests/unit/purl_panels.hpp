#pragma once

// Small panels of purls that choices and reasons are tested on.

#include "latchwork/effort.hpp"
#include "latchwork/grid.hpp"

namespace latchwork_test {

using namespace latchwork;

/// A purl in row 2 and one in row 4, in neighbouring columns.
inline Grid purls() {
  return Grid::from_text("kkkk\nkkkk\nkkpk\nkkkk\nkpkk\nkkkk");
}

inline Effort cheap_stops() {
  Effort effort;
  effort.stop = 1'000;
  return effort;
}

/// Purls here and there: as many stops as rows, hardly any of them forced.
inline Grid scattered(int rows, int columns) {
  Grid grid(rows, columns);
  for (int row = 1; row <= rows; ++row) {
    for (int column = 1; column + 1 < columns; ++column) {
      if ((row * 7 + column * 11) % 13 == 0) grid.set(row, column, Cell::purl);
    }
  }
  return grid;
}

}  // namespace latchwork_test
