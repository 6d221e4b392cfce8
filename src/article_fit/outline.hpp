#pragma once

#include "latchwork/article_fit.hpp"

namespace latchwork::inline v0 {

/// Which of a piece's edges are a panel's own, and what is sewn beside it, where the piece is of several panels.
struct PanelEdges {
  bool left = true;  ///< as seen on the right side
  bool right = true;
  double beside_mm = 0;  ///< width of the other panels together, between their seams
};

/// The piece as its shape is cut from a candidate: ranges wider about their middles by what the candidate lacks of
/// them. The fit allowed that, so that it bars no shape; the panel is then taken whole at its widest, and what is
/// higher than it lies at its last row.
TargetPiece allowed(const TargetPiece& piece, const FitCandidate& candidate);

/// piece_outline() of one panel, whose seams are all in `options` already. At an edge that is not the piece's it keeps
/// all its columns.
Outline outline_between(const TargetPiece& piece, const Panel& panel, const Swatch& swatch, const SizeOptions& options,
                        int step, const PanelEdges& edges);

}  // namespace latchwork::inline v0
