#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "latchwork/brief.hpp"

namespace latchwork::inline v0::report {

/// Progress of one part of the job as progress of the whole.
std::function<void(const Progress&)> share_of(const std::function<void(const Progress&)>& whole, double from,
                                              double share);

// Each @throws Error bad_argument (field "brief.substitutes[1].texture", "brief.article.design.substitutes[0].use"),
// too_large.

/// How a brief's panel is measured.
SizeOptions measuring_of(const Brief& brief);
/// Of its article's design and of the brief: the first for a texture counts.
std::vector<Substitute> article_substitutes(const Brief& brief);
/// The state of its article's design, or, where that names none, the brief's.
std::optional<ClothState> article_state(const Brief& brief);
/// How its article's fits are measured: by both.
SizeOptions article_measuring(const Brief& brief);

}  // namespace latchwork::inline v0::report
