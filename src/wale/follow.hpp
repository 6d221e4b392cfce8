#pragma once

#include <cstdint>
#include <functional>

#include "latchwork/grid.hpp"
#include "latchwork/wale.hpp"

namespace latchwork::inline v0::following {

/// Wales(grid), for a caller who may have to leave it on the way: `passed` is told as so many cells more are passed,
/// each twice in all, and what it throws ends it.
Wales follow(const Grid& grid, const std::function<void(std::int64_t cells)>& passed);

}  // namespace latchwork::inline v0::following
