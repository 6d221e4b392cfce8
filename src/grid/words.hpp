#pragma once

#include <string>
#include <string_view>

#include "latchwork/grid.hpp"

namespace latchwork::inline v0 {

/// A grid's extent for people: "31 stitches x 20 rows". Where not every column has a stitch in row 1, "31 columns x 20
/// rows (29 stitches in row 1)": whoever counts the needles cast on finds the number.
std::string extent_words(const Grid& grid);

/// Columns and rows of something that belongs to a grid.
struct GridExtent {
  int columns = 0;
  int rows = 0;
};

/// "the plan is for 31 columns x 20 rows; the panel has 30 x 20": what is made for another size than its grid.
std::string other_extent_words(std::string_view what, GridExtent made_for, std::string_view whose, const Grid& grid);

/// @throws Error size_mismatch, with `what` as its field, when it is made for another size than the grid.
void require_extent(std::string_view what, GridExtent made_for, std::string_view whose, const Grid& grid);

}  // namespace latchwork::inline v0
