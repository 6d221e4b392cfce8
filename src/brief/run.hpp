#pragma once

#include <functional>

#include "latchwork/brief.hpp"

namespace latchwork::inline v0::report {

/// Progress of one part of the job as progress of the whole.
std::function<void(const Progress&)> share_of(const std::function<void(const Progress&)>& whole, double from,
                                              double share);

}  // namespace latchwork::inline v0::report
