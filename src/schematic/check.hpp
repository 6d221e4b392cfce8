#pragma once

#include "latchwork/schematic.hpp"

namespace latchwork::inline v0::schematics {

/// @throws Error as schematic_svg().
void check(const Schematic& schematic);

}  // namespace latchwork::inline v0::schematics
