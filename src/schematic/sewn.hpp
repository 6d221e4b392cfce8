#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/fit.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/schematic.hpp"

namespace latchwork::inline v0::schematics {

/// The panels that a piece is sewn of, from the left on the RS, each measured between its seams, as
/// fitting::measuring_of() has it. They are called "panel 1 of 3" after `name`, a piece of one panel `name` alone. Of
/// two panels or more the first has the widths of all together too, where every panel has its own at the same height.
/// @throws Error as schematic_piece().
std::vector<SchematicPiece> sewn_pieces(std::string_view name, const std::vector<Panel>& panels,
                                        const FitRequest& wanted, const Swatch& swatch);

/// Leaves what a panel before tells too, in each size; heights that all have stay with the last panel.
void leave_told(std::vector<SchematicPiece>& panels);

/// Whether a piece stands edge to edge with the one before it.
bool is_sewn(const std::vector<SchematicPiece>& pieces, std::size_t index);

/// Whether a width is not the piece's alone, but goes on over those that are sewn to it.
bool reaches_over(const std::vector<SchematicPiece>& pieces, std::size_t index, const SchematicMeasure& measure);

/// Pieces sewn together stand edge to edge, on one lower line: what is added to x and y of each, as they are drawn, so
/// that they stand in the place of the first, which keeps its own. For the pieces from `first` to before `last`.
std::vector<OutlinePoint> places_of(const std::vector<SchematicPiece>& pieces, std::size_t first, std::size_t last);

}  // namespace latchwork::inline v0::schematics
