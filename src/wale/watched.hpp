#pragma once

#include <cstdint>
#include <functional>

#include "latchwork/grid.hpp"
#include "latchwork/wale.hpp"

namespace latchwork::inline v0::following {

/// Wales that are followed for a caller who may have to leave it on the way.
struct Watched {
  std::function<void(std::int64_t cells)> passed;  ///< told as so many cells more are passed, each twice in all; what
                                                   ///< it throws ends it

  Wales follow(const Grid& grid) const { return {grid, this}; }
};

}  // namespace latchwork::inline v0::following
