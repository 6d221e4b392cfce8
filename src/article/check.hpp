#pragma once

#include "latchwork/article.hpp"

namespace latchwork::inline v0 {

inline constexpr int max_article_count = 1000;  ///< of one count, and of pieces and seams alike

/// @throws Error bad_argument (field "pieces[0].width.terms[1].of") for an article that contradicts itself or is out of
/// its ranges; bad_encoding (field) for a text that is not UTF-8.
void require_article(const Article& article);

}  // namespace latchwork::inline v0
