#pragma once

#include <span>
#include <string>

#include "chart/svg.hpp"
#include "latchwork/cell.hpp"
#include "latchwork/crossing.hpp"

namespace latchwork::inline v0::drawing {

/// The row that a crossing's block stands in.
struct Above {
  std::span<const Cell> cells{};  ///< from the block's first column; empty: not shown
  Cell blank = Cell::knit;        ///< knit or purl: goes without a mark
  bool leave_narrow = true;       ///< a stitch too narrow for a clear mark goes without
};

/// Draws a crossing as a merged block one row high with its top left corner at (x, y): each group a slanted band from
/// its place below to its place above, the ones behind broken where one in front passes. On its band a back loop gets a
/// dash, or else a face loop a stroke, and no stitch a grey fill.
void append_crossing(std::string& out, const Crossing& crossing, Unit x, Unit y, CellSize size, const Above& above);

}  // namespace latchwork::inline v0::drawing
