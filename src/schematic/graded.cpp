#include <fmt/format.h>

#include <algorithm>
#include <cmath>
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
  if (panels <= 0 || static_cast<std::size_t>(panels) <= Schematic::max_pieces) return;
  Place place;
  place.field = "panels";
  throw Error(ErrorCode::too_large, place,
              fmt::format("panels are {}; a schematic shows {} pieces", panels, Schematic::max_pieces));
}

/// A size's panel as a piece: a seam to its neighbour takes in edge columns, the outer ones what the design says.
SchematicPiece piece_of(const FitRequest& design, const FitCandidate& candidate, int panel, const Swatch& swatch) {
  SizeOptions options;
  options.state = design.state;
  options.substitutes = design.substitutes;
  options.seam_left = panel == 0 ? design.seam_left : design.seam_stitches;
  options.seam_right = panel == candidate.panels - 1 ? design.seam_right : design.seam_stitches;
  options.seam_bottom = design.seam_bottom;
  options.seam_top = design.seam_top;
  SchematicPiece out = schematic_piece(fitted(design, candidate, panel), swatch, options);
  out.name = candidate.panels > 1 ? fmt::format("panel {} of {}", panel + 1, candidate.panels) : "";
  out.seam_left = panel > 0;
  out.seam_right = panel < candidate.panels - 1;
  return out;
}

/// Adds the other size to the drawn one: its outline, and of the measures those that both have.
void add_size(SchematicPiece& drawn, const SchematicPiece& other) {
  const schematics::Box here = schematics::box_of(drawn.outline);
  const schematics::Box there = schematics::box_of(other.outline);
  const double x = (here.left + here.right - there.left - there.right) / 2;
  const double y = here.low - there.low;
  std::vector<OutlinePoint>& outline = drawn.others.emplace_back(other.outline);
  for (OutlinePoint& point : outline) point = {point.x_mm + x, point.y_mm + y};
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

/// Whether a width is told by a piece before: same label, same in every size.
bool told_before(const std::vector<SchematicPiece>& before, const SchematicMeasure& measure) {
  return std::any_of(before.begin(), before.end(), [&](const SchematicPiece& piece) {
    return std::any_of(piece.measures.begin(), piece.measures.end(), [&](const SchematicMeasure& each) {
      const auto near = [](double a, double b) { return std::abs(a - b) < 0.05; };
      return each.label == measure.label && near(each.mm, measure.mm) &&
             std::equal(each.others_mm.begin(), each.others_mm.end(), measure.others_mm.begin(),
                        measure.others_mm.end(), near);
    });
  });
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
  const int panels = grading.candidates.front().panels;
  for (int panel = 0; panel < panels; ++panel) {
    SchematicPiece piece = piece_of(designs[0], grading.candidates[0], panel, swatch);
    for (std::size_t i = 1; i < designs.size(); ++i) {
      add_size(piece, piece_of(designs[i], grading.candidates[i], panel, swatch));
    }
    const bool last = panel == panels - 1;
    std::erase_if(piece.measures, [&](const SchematicMeasure& measure) {
      return schematics::across(measure.side) ? told_before(out.pieces, measure) : !last;
    });
    out.pieces.push_back(std::move(piece));
  }
  if (panels > 1) {
    SchematicMeasure all;
    all.mm = grading.candidates.front().width_mm;
    for (std::size_t i = 1; i < designs.size(); ++i) all.others_mm.push_back(grading.candidates[i].width_mm);
    out.notes.push_back(fmt::format("All panels, sewn together: width {}.", schematics::measure_text(all, unit)));
  }
  return out;
}

}  // namespace latchwork::inline v0
