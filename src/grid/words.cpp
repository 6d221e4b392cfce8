#include "grid/words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "text/words.hpp"

namespace latchwork::inline v0 {

std::string extent_words(const Grid& grid) {
  const auto first_row = grid.cells().first(static_cast<std::size_t>(grid.columns()));
  const auto bare = std::count(first_row.begin(), first_row.end(), Cell::none);
  const std::string rows = count_of(grid.rows(), "row");
  if (bare == 0) return fmt::format("{} x {}", count_of(grid.columns(), "stitch", "es"), rows);
  const std::string stitches = bare == grid.columns() ? "no stitch" : count_of(grid.columns() - bare, "stitch", "es");
  return fmt::format("{} x {} ({} in row 1)", count_of(grid.columns(), "column"), rows, stitches);
}

}  // namespace latchwork::inline v0
