// The panels that a piece is knitted of, in its shape.
#include <fmt/format.h>

#include <cmath>
#include <utility>

#include "article_fit/outline.hpp"
#include "fit/request.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/size.hpp"

namespace latchwork::inline v0 {
namespace {

double width_mm(const FitRequest& wanted, const FitCandidate& candidate, const Swatch& swatch, int panel) {
  return size(fitted(wanted, candidate, panel), swatch, fitting::measuring_of(wanted, panel, candidate.panels))
      .width_mm;
}

/// Of all panels but that one. Those between the outer two are alike.
double beside_mm(const FitRequest& wanted, const FitCandidate& candidate, const Swatch& swatch, int panel) {
  const int last = candidate.panels - 1;
  const int inner = last - 1 - (panel > 0 && panel < last ? 1 : 0);
  double out = 0;
  if (panel != 0) out += width_mm(wanted, candidate, swatch, 0);
  if (panel != last) out += width_mm(wanted, candidate, swatch, last);
  if (inner > 0) out += inner * width_mm(wanted, candidate, swatch, 1);
  return out;
}

}  // namespace

Panel fitted_piece(const TargetPiece& piece, const FitRequest& design, const FitCandidate& candidate,
                   const Swatch& swatch, int panel, int step, const ShapeOptions& options) {
  for (const auto& [field, mm] :
       {std::pair{"width_error_mm", candidate.width_error_mm}, {"height_error_mm", candidate.height_error_mm}}) {
    if (!std::isfinite(mm)) fitting::refuse(field, fmt::format("{} is {}; it must be a number", field, mm));
  }
  const FitRequest wanted = piece_request(piece, design);
  Panel straight = fitted(wanted, candidate, panel);
  if (piece.shape.empty()) return straight;
  const int last = candidate.panels - 1;
  const PanelEdges edges{
      .left = panel == 0, .right = panel == last, .beside_mm = beside_mm(wanted, candidate, swatch, panel)};
  const SizeOptions measuring = fitting::measuring_of(wanted, panel, candidate.panels);
  return shaped(straight, outline_between(allowed(piece, candidate), straight, swatch, measuring, step, edges),
                options);
}

}  // namespace latchwork::inline v0
