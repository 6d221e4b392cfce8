#pragma once

#include "latchwork/article.hpp"

namespace latchwork::inline v0 {

/// @throws Error bad_value, with the field, for an article that contradicts itself or is out of its ranges.
void require_article(const Article& article);

}  // namespace latchwork::inline v0
