#pragma once

#include <vector>

#include "latchwork/shaping.hpp"

namespace latchwork::inline v0::shaping {

/// Where an outline lies in the stitches of a crossing. After the last row of a panel no row follows: such a crossing
/// lies in that one alone. But a grid may be read as a tile too, and keeps a crossing on its seam only where row 1 has
/// its stitches.
struct CutCrossing {
  Crossing crossing;
  int columns = 0;       ///< of the span, outside
  int row = 1;           ///< in this row: the crossing's, the one after, or on the seam row 1
  bool outside = false;  ///< all of it in both rows: it is no work of the shaped panel
};

/// Whether it is whole in the last row, and cut in row 1 alone.
bool is_cut_on_seam(const CutCrossing& cut);

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
