#pragma once

#include <algorithm>

#include "fit/request.hpp"
#include "latchwork/error.hpp"
#include "latchwork/fit.hpp"

namespace latchwork::inline v0::fitting {

/// The work of a whole call, in the parts that fit.hpp counts; for the search and for the nearest each.
inline constexpr Count whole_budget = 400'000'000;

/// How much work a search may still do, so that none goes on for ever; and whoever watches it.
class Budget {
 public:
  Budget(const FitOptions& options, Count left) : options_(options), whole_(left), left_(left) {}
  bool spent() const { return left_ <= 0; }
  Count left() const { return left_; }
  /// A quarter of the whole more, for what is to be told in any case.
  void reserve() { left_ = whole_ / 4; }

  /// Counts work before it is done. @throws Error cancelled, at the latest a millisecond or so after it was asked for.
  void take(Count parts) {
    left_ -= parts;
    since_told_ += parts;
    if (since_told_ >= told_each) look();
  }

  /// What is done from here to the next call counts from `from` to `to` of the whole.
  void stage(double from, double to) {
    from_ = from;
    to_ = to;
    tell(0);
  }
  /// So much of the stage is done.
  void tell(double share) {
    share_ = std::max(share_, from_ + (to_ - from_) * share);
    look();
  }

 private:
  static constexpr Count told_each = 500'000;

  void look() {
    since_told_ = 0;
    if (options_.stop.stop_requested()) cancel();
    if (options_.progress) options_.progress({.bound_ms = 0, .best_ms = 0, .share = share_});
    if (options_.stop.stop_requested()) cancel();
  }
  [[noreturn]] static void cancel() { throw Error(ErrorCode::cancelled, {}, "the fit was asked to stop"); }

  const FitOptions& options_;
  Count whole_;
  Count left_;
  Count since_told_ = 0;
  double from_ = 0;
  double to_ = 1;
  double share_ = 0;
};

/// Tolerances that are left aside.
struct Loosened {
  bool width = false;
  bool height = false;
};

/// fit() with another budget than the whole one, for the search and for the nearest each. Tests take a small one: what
/// happens when it is spent is the same, and under sanitizers the whole one takes long. A grading leaves a tolerance
/// aside, and does not want the nearest of each construction.
FitResult fit_within(const FitRequest& request, const Swatch& swatch, Count budget_of_each,
                     const FitOptions& options = {}, Loosened loosened = {}, bool with_nearest = true);

}  // namespace latchwork::inline v0::fitting
