#pragma once

#include <vector>

#include "fit/combination.hpp"
#include "fit/search.hpp"
#include "latchwork/fit.hpp"

namespace latchwork::inline v0::fitting {

/// What a candidate does not keep of the request, as FitNearest::gives.
std::vector<FitGive> gives_of(const FitRequest& request, const FitCandidate& candidate);

/// FitResult::nearest, and nearest_complete, of a request that nothing fits.
struct Nearest {
  std::vector<FitNearest> nearest;
  bool complete = true;
};
Nearest nearest(const FitRequest& request, Combination& combination, Budget& budget);

}  // namespace latchwork::inline v0::fitting
