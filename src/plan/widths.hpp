#pragma once

#include <cstddef>

#include "plan/ahead.hpp"

namespace latchwork::inline v0::planning {

// Passes over the rows, of a plan and of its proof: after the narrow ones they grow wider, each after a look ahead at
// half its width.
constexpr std::size_t wide = 16;
constexpr std::size_t widening = 4;

/// For a look ahead before a pass of this width, by trial. Every stretch begins wherever the classes may stand, and so
/// knows less than a search that comes from below: with many labels it is better to begin seldom. With few, what it is
/// to find is dropped on the way of a long one.
constexpr Stretches stretches_for(std::size_t width) {
  if (width < 64) return {.depth = 80, .apart = 16};
  if (width < 256) return {.depth = 160, .apart = 16};
  return {.depth = 240, .apart = 20};
}

}  // namespace latchwork::inline v0::planning
