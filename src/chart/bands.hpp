#pragma once

#include <span>
#include <string>

#include "chart/svg.hpp"
#include "latchwork/cell.hpp"
#include "latchwork/crossing.hpp"

namespace latchwork::inline v0::drawing {

/// Draws a crossing as a merged block one row high with its top left corner at (x, y): each group a slanted band from
/// its place below to its place above, the ones behind broken where one in front passes. `above` are the cells of the
/// row the block stands in (empty: not shown): a back loop gets a dash on its band, no stitch a grey fill.
/// `leave_narrow`: a stitch too narrow for a clear mark goes without.
void append_crossing(std::string& out, const Crossing& crossing, Unit x, Unit y, CellSize size,
                     std::span<const Cell> above, bool leave_narrow = true);

}  // namespace latchwork::inline v0::drawing
