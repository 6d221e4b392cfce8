#pragma once

#include <string>
#include <vector>

#include "latchwork/schematic.hpp"

namespace latchwork::inline v0::schematics {

/// Whether an outline is that of one piece: its edges meet at its corners alone, each with the next. O(n log n).
/// @throws Error bad_argument, field "<at>[corner]", at the first fault.
void require_simple(const std::string& at, const std::vector<OutlinePoint>& outline);

}  // namespace latchwork::inline v0::schematics
