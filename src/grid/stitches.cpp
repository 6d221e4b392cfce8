#include "grid/stitches.hpp"

#include <algorithm>
#include <cstddef>

namespace latchwork::inline v0 {

std::optional<OuterStitches> outer_stitches(const Grid& grid, int row) noexcept {
  const auto columns = static_cast<std::size_t>(grid.columns());
  const auto cells = grid.cells().subspan(static_cast<std::size_t>(row - 1) * columns, columns);
  const auto stitch = [](Cell cell) { return cell != Cell::none; };
  const auto first = std::find_if(cells.begin(), cells.end(), stitch);
  if (first == cells.end()) return std::nullopt;
  const auto before = first - cells.begin();
  const auto after = std::find_if(cells.rbegin(), cells.rend(), stitch) - cells.rbegin();
  return OuterStitches{static_cast<int>(before), grid.columns() - 1 - static_cast<int>(after)};
}

}  // namespace latchwork::inline v0
