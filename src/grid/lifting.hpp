#pragma once

#include "latchwork/crossing.hpp"
#include "latchwork/grid.hpp"

// Which stitches of a crossing leave their needles: the one rule that findings, costs and plans share. The simulator
// knows nothing of it, and fails a plan that goes by a wrong one.

namespace latchwork::inline v0::lifting {

/// Whether the whole centre is bare, a ladder: then there is nothing of it to lift. The grid keeps it whole or bare.
bool bare_centre(const Grid& grid, const Crossing& crossing);

/// Stitches of the centre that are lifted: none of a bare one, nor of one in front of equal groups, which stays on its
/// needles. Between unequal groups the centre moves over, and then even one in front is lifted.
int centre_lifted(const Grid& grid, const Crossing& crossing);

/// Stitches lifted in all.
int stitches_lifted(const Grid& grid, const Crossing& crossing);

}  // namespace latchwork::inline v0::lifting
