#pragma once

#include <string>

#include "latchwork/grid.hpp"

namespace latchwork::inline v0 {

/// A grid's extent for people: "31 stitches x 20 rows". Where not every column has a stitch in row 1, "31 columns x 20
/// rows (29 stitches in row 1)": whoever counts the needles cast on finds the number.
std::string extent_words(const Grid& grid);

}  // namespace latchwork::inline v0
