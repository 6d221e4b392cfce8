#include <algorithm>
#include <optional>
#include <utility>

#include "brief/facts.hpp"
#include "brief/run.hpp"
#include "latchwork/error.hpp"
#include "latchwork/schematic.hpp"

namespace latchwork::inline v0 {
namespace {

/// Nothing where a row has no stitch or the cloth falls in two: there is no one outline then; nor without a gauge.
std::optional<SchematicPiece> piece_of(const Brief& brief) {
  try {
    return schematic_piece(brief.panel, brief.swatch, report::measuring_of(brief));
  } catch (const Error& error) {
    if (error.code() == ErrorCode::bad_argument && error.place().field == "grid") return std::nullopt;
    if (error.code() == ErrorCode::no_gauge) return std::nullopt;
    throw;
  }
}

}  // namespace

std::optional<schematics::DrawnSchematic> report::schematic_of(const Brief& brief) {
  std::optional<SchematicPiece> piece = piece_of(brief);
  if (!piece) return std::nullopt;
  Schematic schematic;
  schematic.title = brief.panel.name();
  schematic.pieces.push_back(std::move(*piece));
  double width = 0;
  double height = 0;
  for (const OutlinePoint& point : schematic.pieces[0].outline) {
    width = std::max(width, point.x_mm);
    height = std::max(height, point.y_mm);
  }
  // Nor has what is under a millimetre, or larger than a field, a scale; and some outlines have too many corners.
  constexpr double most_mm = 1e6;
  if (std::min(width, height) < 1 || std::max(width, height) > most_mm) return std::nullopt;
  if (schematic.pieces[0].outline.size() > Schematic::max_points) return std::nullopt;
  return schematics::drawn_schematic(schematic);
}

}  // namespace latchwork::inline v0
