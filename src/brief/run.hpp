#pragma once

#include <functional>
#include <vector>

#include "latchwork/brief.hpp"

namespace latchwork::inline v0::report {

/// Progress of one part of the job as progress of the whole.
std::function<void(const Progress&)> share_of(const std::function<void(const Progress&)>& whole, double from,
                                              double share);

/// How a brief's panel is measured.
SizeOptions measuring_of(const Brief& brief);
/// Of its article's design and of the brief: the first for a texture counts.
std::vector<Substitute> article_substitutes(const Brief& brief);

}  // namespace latchwork::inline v0::report
