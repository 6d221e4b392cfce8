#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "effort/check.hpp"
#include "effort/terms.hpp"
#include "error/refuse.hpp"
#include "grid/words.hpp"
#include "latchwork/error.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/simulate.hpp"
#include "plan/kept.hpp"
#include "plan/one_call.hpp"
#include "plan/problem.hpp"
#include "plan/stops.hpp"
#include "reason/ends.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr int quarters_after = 2;  // of the time to read the panel: a plan is compared with another

using Term = EffortPart;
using planning::OneCall;

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

/// Every plan of the planner does these equally often: each purl and slip is re-formed once, for no hold makes one.
bool is_usual(const Term& term) {
  return term.cost == &Effort::rung_purl || term.cost == &Effort::rung_slip || term.cost == &Effort::crossing ||
         term.cost == &Effort::crossing_stitch || term.cost == &Effort::shaping || term.cost == &Effort::row;
}

/// What is proven of an end: it is found, or the value itself.
std::pair<std::int64_t, bool> told_of(const ToleranceEnd& end, std::int64_t value_ms) {
  return {end.found ? end.at : value_ms, end.found};
}

/// As the least plan was read.
std::optional<std::string> broken_rhythm_of(const Plan& mine, OneCall& call, const Grid& grid, Machine machine,
                                            const Effort& effort, const PlanOptions& options) {
  const Conditions& asked = options.conditions;
  if (asked.rhythms.empty()) return std::nullopt;
  if (asked.max_depth > 0) machine.max_ladder = std::min(machine.max_ladder, asked.max_depth);
  const planning::Lanes lanes = asked.max_kinds > 0 ? planning::Lanes::in_place : planning::Lanes::alike;
  const planning::Problem& problem = call.problem(grid, machine, effort, lanes);
  return planning::broken_rhythm(mine, problem, call.wales(grid), asked);
}

/// Its total is that of a least plan, as far as is known. `own`: the planner's own needs no second look, nor does one
/// of a call that is over, of which nothing is told that is not so of any plan.
void require_least(const Plan& mine, std::int64_t total, const Plan& least, const Grid& grid, bool own) {
  if (total > least.total_ms) {
    refuse("plan", fmt::format("the plan takes {} ms, and another {} ms: only a least one has tolerances", total,
                               least.total_ms));
  }
  if (total < least.bound_ms) {
    refuse("plan", fmt::format("the plan takes {} ms, and {} ms is the least that one by the planner's rules can take: "
                               "it breaks them, or is for another panel",
                               total, least.bound_ms));
  }
  if (own) return;
  if (const Verification knitted = verify(grid, mine); !knitted.verified) {
    refuse("plan", "the plan does not make this panel: " + knitted.message);
  }
}

}  // namespace

std::vector<Tolerance> plan_tolerances(const Grid& grid, const Machine& machine, const Effort& effort, const Plan& mine,
                                       const PlanOptions& options) {
  require_extent("plan", {.columns = mine.columns, .rows = mine.rows}, "grid", grid);
  require_stops_rise(mine);
  OneCall call(options);  // its clock runs from here
  call.keep_back_after(quarters_after);
  constexpr double part = 1.0 / (std::size(effort_parts) + 1);
  const Plan least = call.plan(grid, machine, effort, call.keystone(0, part));
  if (least.status == PlanStatus::infeasible)
    refuse("plan", "the panel has no plan: " + least.findings.front().message);
  if (const auto broken = planning::broken_condition(mine, options.conditions)) refuse("plan", "the plan " + *broken);
  const std::int64_t total = total_of(mine, effort);
  const bool over = call.ended();
  const bool own = over || mine == least;
  require_least(mine, total, least, grid, own);
  if (!own) {
    if (const auto broken = broken_rhythm_of(mine, call, grid, machine, effort, options))
      refuse("plan", "the plan " + *broken);
  }
  const OneCall::Told told{least.bound_ms, total};
  const bool proven = !over && least.status == PlanStatus::optimal;
  std::vector<Tolerance> tolerances;
  std::vector<std::size_t> moving;  // the terms of which plans may do more or less
  std::vector<ToleranceEnd> ends;   // of each of these the lower, and the upper
  for (const Term& term : effort_parts) {
    Tolerance tolerance{term.term, effort.*term.cost, 0, max_effort_ms, true, true, proven};
    if (!proven) {
      tolerance.least_ms = tolerance.most_ms = tolerance.value_ms;
      tolerance.least_exact = tolerance.most_exact = false;
    } else if (!is_usual(term) || (!own && times(mine, term) != times(least, term))) {
      moving.push_back(tolerances.size());
      ends.push_back({term, 0});
      ends.push_back({term, most_counted(grid, effort, term)});
    }
    tolerances.push_back(tolerance);
  }
  EndWalker(grid, machine, effort, mine, call, told).walk(ends, part);
  auto end = ends.begin();
  for (const std::size_t index : moving) {
    Tolerance& tolerance = tolerances[index];
    std::tie(tolerance.least_ms, tolerance.least_exact) = told_of(*end++, tolerance.value_ms);
    std::tie(tolerance.most_ms, tolerance.most_exact) = told_of(*end, tolerance.value_ms);
    const std::int64_t outermost = most_counted(grid, effort, (end++)->term);
    const bool beyond_counting = tolerance.most_ms == outermost && outermost < max_effort_ms;
    if (beyond_counting) tolerance.most_exact = false;  // nothing is known there
  }
  call.tell(told, 1);
  return tolerances;
}

}  // namespace latchwork::inline v0
