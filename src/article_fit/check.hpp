#pragma once

#include <string>
#include <vector>

#include "latchwork/article_fit.hpp"

namespace latchwork::inline v0 {

/// Throws unless every number is in its range, whatever the panel. @throws Error bad_argument (field), bad_encoding.
void require_article_request(const ArticleRequest& request);

/// The pieces that are made as the panel. @throws Error bad_argument (field "made[0]") for a name that is no piece's.
std::vector<TargetPiece> made_pieces(const Targets& targets, const std::vector<std::string>& made);

}  // namespace latchwork::inline v0
