#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <optional>
#include <tuple>

#include "effort/check.hpp"
#include "effort/terms.hpp"
#include "grid/words.hpp"
#include "latchwork/error.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/simulate.hpp"
#include "plan/kept.hpp"
#include "plan/one_call.hpp"
#include "plan/problem.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr int quarters_after = 2;  // of the time to read the panel: a plan is compared with another

using Term = EffortPart;
using planning::OneCall;

std::int64_t total_of(const Plan& plan, const Effort& effort) {
  const HandWork work = hand_work(plan, effort);
  return work.hand_ms + work.carriage_ms;
}

/// How often a plan does what a term prices.
std::int64_t times(const Plan& plan, const Term& term) {
  Effort one{0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0};
  one.*term.cost = 1;
  return total_of(plan, one);
}

/// The greatest value of the term at which the times of all plans can be counted, the others as they are.
std::int64_t most_counted(const Grid& grid, Effort effort, const Term& term) {
  std::int64_t counted = effort.*term.cost;
  std::int64_t not_counted = max_effort_ms + 1;
  while (not_counted - counted > 1) {
    effort.*term.cost = (counted + not_counted) / 2;
    (planning::can_be_counted(grid, effort) ? counted : not_counted) = effort.*term.cost;
  }
  return counted;
}

/// Every plan for the panel does these equally often.
bool is_fixed(const Term& term) {
  return term.cost == &Effort::crossing || term.cost == &Effort::crossing_stitch || term.cost == &Effort::shaping ||
         term.cost == &Effort::row;
}

class Walker {
 public:
  Walker(const Grid& grid, const Machine& machine, const Effort& effort, const Plan& mine, OneCall& call,
         const OneCall::Told& told)
      : grid_(grid), machine_(machine), effort_(effort), mine_(mine), call_(call), told_(told) {}

  /// From `end` towards the term's value: the outermost place where the plan is proven to be a least one, and whether
  /// another takes less right outside. It is the work from..to of the call.
  std::pair<std::int64_t, bool> walk(const Term& term, std::int64_t end, double from, double to) {
    const std::int64_t value = effort_.*term.cost;
    const std::int64_t often = times(mine_, term);
    std::int64_t at = end;
    while (at != value) {
      const double half = (from + to) / 2;  // nobody knows how many plans it takes
      const auto other = least(term, at, from, half);
      from = half;
      if (!other) return {value, false};
      Effort moved = effort_;
      moved.*term.cost = at;
      const std::int64_t gain = total_of(mine_, moved) - total_of(*other, moved);
      if (gain <= 0) {
        if (other->status == PlanStatus::optimal) return {at, true};
        return {value, false};
      }
      // How much nearer to the value the other takes no less: its line is the flatter one on this side.
      const std::int64_t slope = std::abs(often - times(*other, term));
      const std::int64_t step = (gain + slope - 1) / slope;
      at += at > value ? -step : step;
    }
    return {value, true};
  }

 private:
  std::optional<Plan> least(const Term& term, std::int64_t at, double from, double to) {
    if (call_.ended()) return {};
    Effort moved = effort_;
    moved.*term.cost = at;
    try {
      return call_.plan(grid_, machine_, moved, call_.part(from, to, told_));
    } catch (const Error& error) {
      if (!planning::came_to_no_end(error)) throw;
      return {};
    }
  }

  const Grid& grid_;
  const Machine& machine_;
  const Effort& effort_;
  const Plan& mine_;
  OneCall& call_;
  OneCall::Told told_;
};

[[noreturn]] void refuse(const std::string& why) {
  Place place;
  place.field = "plan";
  throw Error(ErrorCode::bad_argument, place, why);
}

}  // namespace

std::vector<Tolerance> plan_tolerances(const Grid& grid, const Machine& machine, const Effort& effort, const Plan& mine,
                                       const PlanOptions& options) {
  require_extent("plan", {.columns = mine.columns, .rows = mine.rows}, "grid", grid);
  OneCall call(options);  // its clock runs from here
  call.keep_back_after(quarters_after);
  constexpr double part = 1.0 / (std::size(effort_parts) + 1);
  const Plan least = call.plan(grid, machine, effort, call.keystone(0, part));
  if (least.status == PlanStatus::infeasible) refuse("the panel has no plan: " + least.findings.front().message);
  if (const auto broken = planning::broken_condition(mine, options.conditions)) refuse("the plan " + *broken);
  const std::int64_t total = total_of(mine, effort);
  if (total > least.total_ms) {
    refuse(
        fmt::format("the plan takes {} ms, and another {} ms: only a least one has tolerances", total, least.total_ms));
  }
  if (total < least.bound_ms) {
    refuse(fmt::format("the plan takes {} ms, less than any plan for this panel: it is for another", total));
  }
  // Of a call that is over nothing is told that is not so of any plan, and the planner's own needs no second look.
  const bool over = call.ended();
  if (!over && mine != least) {
    if (const Verification knitted = verify(grid, mine); !knitted.verified) {
      refuse("the plan does not make this panel: " + knitted.message);
    }
  }
  const OneCall::Told told{least.bound_ms, total};
  Walker walker(grid, machine, effort, mine, call, told);
  const bool proven = !over && least.status == PlanStatus::optimal;
  std::vector<Tolerance> tolerances;
  for (const Term& term : effort_parts) {
    Tolerance tolerance{term.term, effort.*term.cost, 0, max_effort_ms, true, true, proven};
    if (call.ended() || !proven) {
      tolerance.least_ms = tolerance.most_ms = tolerance.value_ms;
      tolerance.least_exact = tolerance.most_exact = false;
    } else if (!is_fixed(term)) {
      const double from = part * static_cast<double>(tolerances.size() + 1);
      std::tie(tolerance.least_ms, tolerance.least_exact) = walker.walk(term, 0, from, from + part / 2);
      const std::int64_t end = most_counted(grid, effort, term);
      std::tie(tolerance.most_ms, tolerance.most_exact) = walker.walk(term, end, from + part / 2, from + part);
      if (tolerance.most_ms == end && end < max_effort_ms) tolerance.most_exact = false;  // nothing is known beyond
    }
    tolerances.push_back(tolerance);
    call.tell(told, std::min(1.0, part * static_cast<double>(tolerances.size() + 1)));
  }
  return tolerances;
}

}  // namespace latchwork::inline v0
