#pragma once

#include <string>
#include <vector>

#include "latchwork/article_fit.hpp"

namespace latchwork::inline v0 {

/// Throws unless every number is in its range, whatever the panel. @throws Error bad_argument (field), bad_encoding.
void require_article_request(const ArticleRequest& request);

/// The pieces that are made as the panel. @throws Error bad_argument (field "made[0]") for a name that is no piece's.
std::vector<TargetPiece> made_pieces(const Targets& targets, const std::vector<std::string>& made);

/// Leaves what seams take in where the piece's edge is sewn, 0 where it is not. Of a FitRequest or SizeOptions.
template <class Seams>
void keep_seams(const TargetPiece& piece, Seams& seams) {
  if (piece.left != EdgeUse::seamed) seams.seam_left = 0;
  if (piece.right != EdgeUse::seamed) seams.seam_right = 0;
  if (piece.lower != EdgeUse::seamed) seams.seam_bottom = 0;
  if (piece.upper != EdgeUse::seamed) seams.seam_top = 0;
}

}  // namespace latchwork::inline v0
