#pragma once

#include <vector>

#include "latchwork/shaping.hpp"

namespace latchwork::inline v0::shaping {

/// Where an outline lies in the stitches of a crossing.
struct CutCrossing {
  Crossing crossing;
  int columns = 0;       ///< of the span, outside in its row or in the row after
  bool outside = false;  ///< all of it in both rows: it is no work of the shaped panel
};

/// A stack of tucks or slips of which some cell is in work, and some cell, the held loop or the closing one is not.
struct CutStack {
  int row = 1;
  int last_row = 1;
  int column = 0;
};

bool in_work(const Outline& outline, int row, int column);

/// Crossings that are not wholly inside, in order. Linear in them.
std::vector<CutCrossing> cut_crossings(const Grid& grid, const Outline& outline);
/// Linear in cells.
std::vector<CutStack> cut_stacks(const Grid& grid, const Outline& outline);

/// Whether the column is one of the row's outermost `edge` in work.
bool in_edge(const Outline& outline, int row, int column, int edge);

}  // namespace latchwork::inline v0::shaping
