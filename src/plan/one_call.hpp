#pragma once

#include <optional>

#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"
#include "plan/limits.hpp"
#include "plan/readings.hpp"

namespace latchwork::inline v0::planning {

/// The field of an error too_large that says: the search came to no end, and nobody ended it.
inline constexpr const char* beyond_search = "options.conditions.max_kinds";

/// Whether a plan came to nothing only because its search, for some limit or for an allowance of its own, came to no
/// end: there may be one.
inline bool came_to_no_end(const Error& error) {
  return error.code() == ErrorCode::cancelled ||
         (error.code() == ErrorCode::too_large && error.place().field == beyond_search);
}

/// Several plans that are one call to whoever asks: they share its time and its work fairly, and are told as parts of
/// one piece of work whose share never falls. Work is counted, so that under a work limit, too, the same call comes to
/// the same on every machine.
class OneCall {
 public:
  /// What progress tells in place of a part's own bound and best, where these are of another question.
  struct Told {
    std::int64_t bound_ms = 0;
    std::int64_t best_ms = 0;
  };

  /// The clock runs from here.
  explicit OneCall(const PlanOptions& options) : options_(options), deadline_(options) {
    spent_.whole = &deadline_;
    spent_.readings = &readings_;
  }
  OneCall(const OneCall&) = delete;
  OneCall& operator=(const OneCall&) = delete;

  /// Whether no further part is to begin: it is stopped, its work is done, or its time is over, or nearly so: a plan
  /// takes some time whatever its limits, and where the clock matters as much is to be left as the plans before took,
  /// and by how much they came too late.
  bool ended() const;

  /// The options of the next part, which is so much of the whole. They refer to this. Of the time and the work that are
  /// left it gets as much as it is of what is left of the whole: what a part does not use, those after it have.
  PlanOptions part(double from, double to, std::optional<Told> told = {});

  /// Of a part without which the others are of no use: it may take all that is left.
  PlanOptions keystone(double from, double to, std::optional<Told> told = {});

  /// A plan with these options, which part() or keystone() gave: what it takes is counted. `plain`: see plan_under().
  Plan plan(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& own,
            const Plan* plain = nullptr);

  /// Whether its plans are to have few kinds of stop.
  bool under_few_kinds() const noexcept { return options_.conditions.max_kinds > 0; }
  /// Whether the limits of the last plan ended it, so that with more there may be a better one.
  bool cut_short() const noexcept { return spent_.ended; }

  /// Whether anybody asks why there is no plan, where there is none: to find out takes about as long again.
  void ask_why(bool why) { spent_.why = why; }
  /// Whether anybody asks for a plan's stops, or else for its total, bound, status and findings only.
  void ask_stops(bool written) { spent_.written = written; }
  /// What comes of a plan that is written up takes so many quarters of the time to read the panel more.
  void keep_back_after(int quarters) { spent_.after = quarters; }
  /// No plan that is still to come takes less.
  void bind(std::int64_t bound_ms) { spent_.bound_ms = bound_ms; }

  /// What the plans read.
  const Readings& readings() const noexcept { return readings_; }
  /// The panel's wales, as the plans follow them. @throws Error cancelled, as Readings::wales().
  const Wales& wales(const Grid& grid);
  /// The panel as the plans read it. What that takes counts as theirs.
  /// @throws Error as problem_of().
  const Problem& problem(const Grid& grid, const Machine& machine, const Effort& effort, Lanes lanes = Lanes::alike);

  void tell(const Told& told, double share);

 private:
  std::int64_t work_left() const;

  const PlanOptions& options_;
  Deadline deadline_;
  std::int64_t overrun_ms_ = 0;  // the most that a plan took beyond its own time
  Readings readings_{true};
  Spent spent_;
  double share_ = 0;
  std::int64_t bound_ms_ = 0;  // as told
};

/// Of the plan that the parts after it are told by.
inline OneCall::Told told_of(const Plan& plan) {
  const bool none = plan.status == PlanStatus::infeasible;
  return {plan.bound_ms, none ? -1 : plan.total_ms};
}

}  // namespace latchwork::inline v0::planning
