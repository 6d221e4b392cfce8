#pragma once

#include <vector>

#include "fit/budget.hpp"
#include "fit/combination.hpp"
#include "fit/request.hpp"

namespace latchwork::inline v0::fitting {

/// The best `most` of all combinations within the limits, ranked; those found so far when the budget is spent. Starts
/// are left at 1.
std::vector<FitCandidate> search(const FitRequest& request, Combination& combination, const Limits& limits, int most,
                                 Budget& budget);

}  // namespace latchwork::inline v0::fitting
