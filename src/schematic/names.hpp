#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace latchwork::inline v0::schematics {

/// What stands over pieces that are sewn together.
struct Names {
  std::string caption;  ///< over them all: what their names begin with; empty where they have nothing in common
  std::vector<std::string> own;  ///< over each: the rest
};

/// "cape back" over "panel 1 of 3", or, where that takes more than a line, "cape back: panel" over "1 of 3". `letters`:
/// how many each piece has room for on a line. One piece keeps its name.
Names names_over(const std::vector<std::string>& names, const std::vector<std::size_t>& letters);

}  // namespace latchwork::inline v0::schematics
