#include "latchwork/schematic.hpp"
#include "brief/facts.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0 {

std::optional<std::string> report::schematic_of(const Brief& brief) {
  Schematic schematic;
  schematic.title = brief.panel.name();
  try {
    schematic.pieces.push_back(schematic_piece(brief.panel, brief.swatch));
    return schematic_svg(schematic);
  } catch (const Error& error) {
    // A row without a stitch has no edges, and what is under a millimetre no scale: such a panel goes without.
    if (error.code() == ErrorCode::bad_argument || error.code() == ErrorCode::too_large) return std::nullopt;
    throw;
  }
}

}  // namespace latchwork::inline v0
