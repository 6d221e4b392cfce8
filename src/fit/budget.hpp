#pragma once

#include "fit/request.hpp"
#include "latchwork/fit.hpp"

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

/// fit() with another budget than the whole one, for the search and for the nearest each. Tests take a small one: what
/// happens when it is spent is the same, and under sanitizers the whole one takes long.
FitResult fit_within(const FitRequest& request, const Swatch& swatch, Count budget);

}  // namespace latchwork::inline v0::fitting
