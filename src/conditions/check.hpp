#pragma once

#include "latchwork/conditions.hpp"

namespace latchwork::inline v0 {

/// @throws Error bad_argument with the field ("options.conditions.rows_apart", "options.conditions.rhythms[1].row") for
/// a number out of its range, wales off a panel of this size, or two rhythms to be found.
void check(const Conditions& conditions, int rows, int columns);

}  // namespace latchwork::inline v0
