#pragma once

#include <vector>

#include "timings/basis.hpp"

namespace latchwork::inline v0::timing {

/// The weights, each 0 or more, under which the sum of the columns is nearest to the target: algorithm NNLS of
/// C. L. Lawson and R. J. Hanson, Solving Least Squares Problems, 1974, chapter 23. Columns that lie within the span of
/// those in use stay out of it. A column is of use while its product with the residual is above 1e-11 of what it could
/// be. Takes a few more rounds than there are columns, each cubic in them.
Column non_negative(const std::vector<Column>& columns, const Column& target);

}  // namespace latchwork::inline v0::timing
