#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "fit/request.hpp"
#include "grading/grader.hpp"
#include "latchwork/error.hpp"
#include "latchwork/schematic.hpp"
#include "schematic/check.hpp"
#include "schematic/layout.hpp"
#include "schematic/sewn.hpp"

namespace latchwork::inline v0 {
namespace {

/// Throws unless there is a candidate for each size, all of one construction.
void require_graded(const GradeRequest& request, const Grading& grading) {
  const std::vector<FitCandidate>& candidates = grading.candidates;
  if (candidates.empty() || candidates.size() != request.sizes.size()) {
    fitting::refuse("candidates", fmt::format("candidates are {}; the request has {} sizes", candidates.size(),
                                              request.sizes.size()));
  }
  const int panels = candidates.front().panels;
  for (const FitCandidate& candidate : candidates) {
    if (candidate.panels == panels) continue;
    fitting::refuse("panels", fmt::format("one size has {} panels, another {}", panels, candidate.panels));
  }
  if (panels < 1) fitting::refuse("panels", fmt::format("panels are {}; there must be one or more", panels));
  if (static_cast<std::size_t>(panels) <= Schematic::max_pieces) return;
  Place place;
  place.field = "panels";
  throw Error(ErrorCode::too_large, place,
              fmt::format("panels are {}; a schematic shows {} pieces", panels, Schematic::max_pieces));
}

/// A size's panels, sewn together.
std::vector<SchematicPiece> pieces_of(const FitRequest& design, const FitCandidate& candidate, const Swatch& swatch) {
  std::vector<Panel> panels;
  panels.reserve(static_cast<std::size_t>(candidate.panels));
  for (int i = 0; i < candidate.panels; ++i) panels.push_back(fitted(design, candidate, i));
  std::vector<SchematicPiece> out = schematics::sewn_pieces("", panels, design, swatch);
  if (candidate.panels == 1) out.front().name.clear();
  return out;
}

/// Adds a panel of another size to the drawn one, that much further right and up: its outline, and of the measures
/// those that both have.
void add_size(SchematicPiece& drawn, const SchematicPiece& other, double x_mm, double y_mm) {
  std::vector<OutlinePoint>& outline = drawn.others.emplace_back(other.outline);
  for (OutlinePoint& point : outline) point = {point.x_mm + x_mm, point.y_mm + y_mm};
  std::vector<SchematicMeasure> both;
  for (SchematicMeasure& measure : drawn.measures) {
    const auto same = std::find_if(other.measures.begin(), other.measures.end(),
                                   [&](const SchematicMeasure& each) { return each.label == measure.label; });
    if (same == other.measures.end()) continue;
    measure.others_mm.push_back(same->mm);
    both.push_back(std::move(measure));
  }
  drawn.measures = std::move(both);
  for (const std::string& note : other.notes) {
    if (std::find(drawn.notes.begin(), drawn.notes.end(), note) == drawn.notes.end()) drawn.notes.push_back(note);
  }
}

/// Where a size reaches, all its panels together, in the place of the first.
schematics::Box extent_of(const std::vector<SchematicPiece>& panels) {
  const std::vector<OutlinePoint> places = schematics::places_of(panels, 0, panels.size());
  schematics::Box out = schematics::box_of(panels.front().outline);
  out.right = schematics::box_of(panels.back().outline).right + places.back().x_mm;
  return out;
}

/// Adds another size: its middle on the drawn one's, and on one lower line with it.
void add_size(std::vector<SchematicPiece>& drawn, const std::vector<SchematicPiece>& other) {
  const schematics::Box here = extent_of(drawn);
  const schematics::Box there = extent_of(other);
  const std::vector<OutlinePoint> places = schematics::places_of(drawn, 0, drawn.size());
  const std::vector<OutlinePoint> other_places = schematics::places_of(other, 0, other.size());
  const double middle = (here.left + here.right - there.left - there.right) / 2;
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    const double y = schematics::box_of(drawn[i].outline).low - schematics::box_of(other[i].outline).low;
    add_size(drawn[i], other[i], middle + other_places[i].x_mm - places[i].x_mm, y);
  }
}

}  // namespace

Schematic graded_schematic(const GradeRequest& request, const Grading& grading, const Swatch& swatch, LengthUnit unit) {
  require_graded(request, grading);
  schematics::require_unit(unit);
  Schematic out;
  out.unit = unit;
  std::vector<FitRequest> designs;
  designs.reserve(request.sizes.size());
  for (const GradeSize& size : request.sizes) {
    out.sizes.push_back(size.name);
    designs.push_back(grading::design_for(size, request.design));
  }
  out.pieces = pieces_of(designs[0], grading.candidates[0], swatch);
  for (std::size_t i = 1; i < designs.size(); ++i) {
    add_size(out.pieces, pieces_of(designs[i], grading.candidates[i], swatch));
  }
  schematics::leave_told(out.pieces);
  return out;
}

}  // namespace latchwork::inline v0
