#include "grid/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "latchwork/error.hpp"
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

std::string other_extent_words(std::string_view what, GridExtent made_for, std::string_view whose, const Grid& grid) {
  return fmt::format("the {} is for {} x {}; the {} has {} x {}", what, count_of(made_for.columns, "column"),
                     count_of(made_for.rows, "row"), whose, grid.columns(), grid.rows());
}

void require_extent(std::string_view what, GridExtent made_for, std::string_view whose, const Grid& grid) {
  if (made_for.columns == grid.columns() && made_for.rows == grid.rows()) return;
  Place place;
  place.field = what;
  throw Error(ErrorCode::size_mismatch, std::move(place), other_extent_words(what, made_for, whose, grid));
}

}  // namespace latchwork::inline v0
