#pragma once

#include <string>

#include "latchwork/schematic.hpp"

namespace latchwork::inline v0::schematics {

struct DrawnSchematic {
  std::string svg;
  double fonts_wide = 0;  ///< its width, counted in the size of its words
};

/// @throws as schematic_svg().
DrawnSchematic drawn_schematic(const Schematic& schematic);

}  // namespace latchwork::inline v0::schematics
