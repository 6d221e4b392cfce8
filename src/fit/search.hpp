#pragma once

#include <vector>

#include "fit/combination.hpp"
#include "fit/request.hpp"

namespace latchwork::inline v0::fitting {

/// How many widths and heights a search may still look at, so that none goes on for ever.
class Budget {
 public:
  explicit Budget(Count left) : left_(left) {}
  bool spent() const { return left_ <= 0; }
  void take() { --left_; }

 private:
  Count left_;
};
inline constexpr Count whole_budget = 20'000'000;

/// The best `most` of all combinations within the limits, ranked; those found so far when the budget is spent. Starts
/// are left at 1.
std::vector<FitCandidate> search(const FitRequest& request, Combination& combination, const Limits& limits, int most,
                                 Budget& budget);

}  // namespace latchwork::inline v0::fitting
