#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "effort/terms.hpp"
#include "latchwork/plan.hpp"
#include "plan/one_call.hpp"

namespace latchwork::inline v0 {

/// What the plan takes at these efforts.
std::int64_t total_of(const Plan& plan, const Effort& effort);

/// How often a plan does what a term prices.
std::int64_t times(const Plan& plan, const EffortPart& term);

/// An end of a term's tolerance.
struct ToleranceEnd {
  EffortPart term;
  std::int64_t at = 0;    ///< further out the plan is no least one; at first the outermost value of the term
  bool found = false;     ///< at `at` it is proven to be one
  bool hopeless = false;  ///< no more time or work would find it
};

/// Goes to the ends of tolerances from outside, from one better plan's line to the next.
class EndWalker {
 public:
  /// `told` is what progress tells of the plan.
  EndWalker(const Grid& grid, const Machine& machine, const Effort& effort, const Plan& mine, planning::OneCall& call,
            const planning::OneCall::Told& told)
      : grid_(grid), machine_(machine), effort_(effort), mine_(mine), call_(call), told_(told) {}

  /// What remains of the call from this part on is shared by all the ends. Those for which their share was not enough
  /// are walked on to with what the others left, until the call is over.
  void walk(std::vector<ToleranceEnd>& ends, double from);

 private:
  void walk(ToleranceEnd& end, double from, double to);
  /// With the term where the end is: a plan that takes less than mine, or a least one; or the best so far.
  std::optional<Plan> better_or_least(ToleranceEnd& end, double from, double to);

  const Grid& grid_;
  const Machine& machine_;
  const Effort& effort_;
  const Plan& mine_;
  planning::OneCall& call_;
  planning::OneCall::Told told_;
};

}  // namespace latchwork::inline v0
