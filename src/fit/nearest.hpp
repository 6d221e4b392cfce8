#pragma once

#include <vector>

#include "fit/combination.hpp"
#include "fit/search.hpp"
#include "latchwork/fit.hpp"

namespace latchwork::inline v0::fitting {

/// What a candidate does not keep of the request, as FitNearest::gives.
std::vector<FitGive> gives_of(const FitRequest& request, const FitCandidate& candidate);

/// FitResult::nearest of a request that nothing fits.
std::vector<FitNearest> nearest(const FitRequest& request, Combination& combination, Budget& budget);

}  // namespace latchwork::inline v0::fitting
