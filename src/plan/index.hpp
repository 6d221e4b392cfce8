#pragma once

#include <cstddef>

namespace latchwork::inline v0::planning {

/// A row, wale or task as a place in a list: numbers of people are int.
constexpr std::size_t at(int i) noexcept {
  return static_cast<std::size_t>(i);
}

}  // namespace latchwork::inline v0::planning
