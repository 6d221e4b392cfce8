#pragma once

#include <algorithm>
#include <optional>

#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"
#include "plan/limits.hpp"

namespace latchwork::inline v0::planning {

/// The field of an error too_large that says: the search came to no end, and nobody ended it.
inline constexpr const char* beyond_search = "options.conditions.max_kinds";

/// Whether a plan came to nothing only because its search, for some limit or for an allowance of its own, came to no
/// end: there may be one.
inline bool came_to_no_end(const Error& error) {
  return error.code() == ErrorCode::cancelled ||
         (error.code() == ErrorCode::too_large && error.place().field == beyond_search);
}

/// Several plans that are one call to whoever asks: they share its clock fairly, and are told as parts of one piece of
/// work whose share never falls. The work limit holds for each.
class OneCall {
 public:
  /// What progress tells in place of a part's own bound and best, where these are of another question.
  struct Told {
    std::int64_t bound_ms = 0;
    std::int64_t best_ms = 0;
  };

  explicit OneCall(const PlanOptions& options) : options_(options), deadline_(options) {}
  OneCall(const OneCall&) = delete;
  OneCall& operator=(const OneCall&) = delete;

  /// Whether it is stopped, or its time is over: no further part is to begin.
  bool ended() const { return options_.stop.stop_requested() || (deadline_.set() && deadline_.left_ms() < 1); }

  /// The options of the next part, which is so much of the whole. They refer to this. Of the time that is left it gets
  /// as much as it is of the work that is left: what a part does not use, those after it have.
  PlanOptions part(double from, double to, std::optional<Told> told = {}) {
    PlanOptions own = keystone(from, to, told);
    if (deadline_.set() && to < 1) {
      const double fair = static_cast<double>(own.time_limit_ms) * (to - from) / (1 - from);
      own.time_limit_ms = std::max<std::int64_t>(1, static_cast<std::int64_t>(fair));
    }
    return own;
  }

  /// Of a part without which the others are of no use: it may take all the time that is left.
  PlanOptions keystone(double from, double to, std::optional<Told> told = {}) {
    PlanOptions own = options_;
    if (deadline_.set()) own.time_limit_ms = std::max<std::int64_t>(1, deadline_.left_ms());
    if (options_.progress) {
      own.progress = [this, from, to, told](const Progress& now) {
        tell(told.value_or(Told{now.bound_ms, now.best_ms}), from + (to - from) * now.share);
      };
    }
    return own;
  }

  void tell(const Told& told, double share) {
    if (!options_.progress) return;
    share_ = std::max({share_, share, deadline_.gone()});
    options_.progress({told.bound_ms, told.best_ms, share_});
  }

 private:
  const PlanOptions& options_;
  Deadline deadline_;
  double share_ = 0;
};

}  // namespace latchwork::inline v0::planning
