#include "panel/standing.hpp"

#include <cstddef>

#include "grid/stitches.hpp"

namespace latchwork::inline v0 {

std::vector<bool> standing_strips(const Grid& grid, const Band& band) {
  // How many more rows have a column than have the one before it.
  std::vector<int> more(static_cast<std::size_t>(grid.columns()) + 1, 0);
  for (int row = band.row; row < band.row + band.rows; ++row) {
    const OuterStitches outer = outer_stitches(grid, row).value_or(OuterStitches{0, grid.columns() - 1});
    ++more[static_cast<std::size_t>(outer.first)];
    --more[static_cast<std::size_t>(outer.last) + 1];
  }
  std::vector<bool> out;
  out.reserve(band.strips.size());
  int rows = 0;
  for (const StripSpan& strip : band.strips) {
    bool stands = false;
    for (int column = strip.column; column < strip.column + strip.columns; ++column) {
      rows += more[static_cast<std::size_t>(column)];
      stands = stands || rows > 0;
    }
    out.push_back(stands);
  }
  return out;
}

}  // namespace latchwork::inline v0
