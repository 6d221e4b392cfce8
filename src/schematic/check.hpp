#pragma once

#include "latchwork/schematic.hpp"

namespace latchwork::inline v0::schematics {

/// @throws Error as schematic_svg().
void check(const Schematic& schematic);

/// Measures are told in cm or inch. @throws Error bad_argument (field "unit") for another.
void require_unit(LengthUnit unit);

}  // namespace latchwork::inline v0::schematics
