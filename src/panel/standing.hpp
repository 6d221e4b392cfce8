#pragma once

#include <vector>

#include "latchwork/panel.hpp"

namespace latchwork::inline v0 {

/// Of each strip of a band, from the left: whether some row has a column of it between its outermost stitches. One that
/// a shape has cut off wholly has none: nothing of it is knitted or measured. A row without a stitch is bare strands
/// from edge to edge. Linear in cells.
std::vector<bool> standing_strips(const Grid& grid, const Band& band);

}  // namespace latchwork::inline v0
