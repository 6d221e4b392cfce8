#pragma once

#include <cstddef>

namespace latchwork::inline v0::planning {

// Passes over the rows, of a plan and of its proof: after the narrow ones they grow wider, each after a look ahead at
// half its width.
constexpr std::size_t wide = 16;
constexpr std::size_t widening = 4;
constexpr int rows_ahead = 80;  ///< of a stretch that is looked through

}  // namespace latchwork::inline v0::planning
