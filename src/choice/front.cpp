#include <algorithm>
#include <set>

#include "latchwork/choice.hpp"
#include "latchwork/error.hpp"
#include "plan/one_call.hpp"

namespace latchwork::inline v0 {
namespace {

int kinds_of(const Plan& plan) {
  const std::vector<int> kinds = stop_kinds(plan);
  return static_cast<int>(std::set(kinds.begin(), kinds.end()).size());
}

}  // namespace

Front plan_front(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options) {
  planning::OneCall call(options);  // its clock runs from here
  // A tenth of the work is the least plan; each number of kinds takes as much of the rest.
  constexpr double first = 0.1;
  PlanOptions own = call.part(0, first);
  own.conditions.max_kinds = 0;
  const Plan least = plan(grid, machine, effort, own);
  Front front;
  front.findings = least.findings;
  if (least.status == PlanStatus::infeasible) return front;
  int most = kinds_of(least);
  if (options.conditions.max_kinds > 0) most = std::min(most, options.conditions.max_kinds);

  front.fewest_proven = true;
  std::vector<FrontPoint> found;
  for (int kinds = most > 0 ? 1 : 0; kinds <= most; ++kinds) {
    if (call.ended()) {
      if (found.empty()) front.fewest_proven = false;  // fewer than the least plan's were not looked for
      break;
    }
    const double part = (1 - first) / std::max(1, most);
    const double from = first + part * std::max(0, kinds - 1);
    own = call.part(from, from + part);
    own.conditions.max_kinds = kinds;
    FrontPoint point;
    try {
      point.plan = kinds == 0 ? least : plan(grid, machine, effort, own);
    } catch (const Error& error) {
      if (!planning::came_to_no_end(error)) throw;
      if (found.empty()) front.fewest_proven = false;  // none was found, and none is ruled out
      continue;
    }
    if (point.plan.status == PlanStatus::infeasible) {
      front.findings = point.plan.findings;
      continue;
    }
    point.kinds = kinds_of(point.plan);
    found.push_back(std::move(point));
  }
  // The least plan is a point whatever the search for its number of kinds came to.
  if (kinds_of(least) <= most) found.push_back({kinds_of(least), least});
  if (!found.empty()) front.findings.clear();
  // What binds plans of more kinds binds those of fewer.
  for (std::size_t i = found.size(); i-- > 1;) {
    Plan& below = found[i - 1].plan;
    below.bound_ms = std::min(below.total_ms, std::max(below.bound_ms, found[i].plan.bound_ms));
    if (below.bound_ms == below.total_ms) below.status = PlanStatus::optimal;
  }
  for (FrontPoint& point : found) {
    if (!front.points.empty() && front.points.back().plan.total_ms <= point.plan.total_ms) continue;
    while (!front.points.empty() && front.points.back().kinds >= point.kinds) front.points.pop_back();
    front.points.push_back(std::move(point));
  }
  return front;
}

}  // namespace latchwork::inline v0
