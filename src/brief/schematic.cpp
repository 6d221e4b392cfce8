#include <algorithm>

#include "brief/facts.hpp"
#include "latchwork/error.hpp"
#include "latchwork/schematic.hpp"

namespace latchwork::inline v0 {
namespace {

/// A row without a stitch has no edges.
bool has_bare_row(const Grid& grid) {
  const auto columns = static_cast<std::size_t>(grid.columns());
  for (auto left = grid.cells(); !left.empty(); left = left.subspan(columns)) {
    const auto row = left.first(columns);
    if (std::all_of(row.begin(), row.end(), [](Cell cell) { return cell == Cell::none; })) return true;
  }
  return false;
}

}  // namespace

std::optional<std::string> report::schematic_of(const Brief& brief) {
  if (has_bare_row(brief.panel.grid())) return std::nullopt;
  Schematic schematic;
  schematic.title = brief.panel.name();
  schematic.pieces.push_back(schematic_piece(brief.panel, brief.swatch));
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
  return schematic_svg(schematic);
}

}  // namespace latchwork::inline v0
