#pragma once

#include "grading/grader.hpp"

namespace latchwork::inline v0::grading {

/// For sizes none of which go together: Grading::nearest, and in `complete` whether there may be nearer ones.
std::vector<FitNearest> nearest_together(const GradeRequest& request, const Swatch& swatch, const Order& order,
                                         Progressing& fits, fitting::Budget& budget, bool& complete);

}  // namespace latchwork::inline v0::grading
