#pragma once

#include <span>
#include <vector>

#include "chart/svg.hpp"
#include "chart/view.hpp"
#include "latchwork/cell.hpp"
#include "latchwork/crossing.hpp"

namespace latchwork::inline v0::drawing {

/// A mark's line from (x, y), counted from the block's top left corner: to the right for a back loop, downward for a
/// face loop.
struct Stroke {
  Unit x = 0;
  Unit y = 0;
  Unit length = 0;
};

/// A stitch that too little is seen of for a mark that keeps clear of lines: columns from the block's first.
struct Narrow {
  int from = 0;     ///< below the crossing
  int to = 0;       ///< above it
  Stroke stroke{};  ///< the mark it would have all the same
};

struct BandMarks {
  Cell marked = Cell::purl;  ///< purl, or knit where purls are blank
  std::vector<Stroke> strokes;
  std::vector<Narrow> narrow;  ///< of back and face loops alike
};

/// Where the loops that are not blank among `above`, the cells of the row a crossing's block stands in, are marked: as
/// many parts as the band has stitches, side by side where most of the band is seen, clear of every line.
BandMarks band_marks(const Crossing& crossing, CellSize size, std::span<const Cell> above, Cell blank);

/// Whether every narrow stitch of some crossings of the view shows the loop it shows in the row below: then nothing is
/// lost without its mark, and the key says so. `any` tells whether a loop that is not blank stays without one.
struct Unmarked {
  bool as_below = true;
  bool any = false;
};
Unmarked unmarked(const View& view, std::span<const Crossing> crossings, CellSize size);

}  // namespace latchwork::inline v0::drawing
