#pragma once

#include <optional>

#include "latchwork/grid.hpp"

namespace latchwork::inline v0 {

/// The outermost columns of a row that have a stitch.
struct OuterStitches {
  int first = 0;
  int last = 0;
};

/// Nothing where the row has no stitch. Linear in the cells that are passed over.
std::optional<OuterStitches> outer_stitches(const Grid& grid, int row) noexcept;

}  // namespace latchwork::inline v0
