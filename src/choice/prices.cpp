#include <algorithm>
#include <optional>

#include "conditions/check.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/error.hpp"
#include "plan/one_call.hpp"

namespace latchwork::inline v0 {
namespace {

/// The conditions with only one of them left.
Conditions alone(const Conditions& asked, Condition one) {
  Conditions left;
  left.forced_exempt = asked.forced_exempt;
  switch (one) {
    case Condition::carriage_right_only:
      left.carriage_right_only = asked.carriage_right_only;
      break;
    case Condition::rows_apart:
      left.rows_apart = asked.rows_apart;
      break;
    case Condition::max_depth:
      left.max_depth = asked.max_depth;
      break;
    case Condition::max_kinds:
      left.max_kinds = asked.max_kinds;
      break;
    case Condition::rhythms:
      left.rhythms = asked.rhythms;
      break;
    case Condition::closed_rows:
      left.closed_rows = asked.closed_rows;
      break;
    case Condition::all:
      return asked;
  }
  return left;
}

/// None when the search was ended before it found any plan.
std::optional<Plan> found(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options) {
  try {
    return plan(grid, machine, effort, options);
  } catch (const Error& error) {
    if (!planning::came_to_no_end(error)) throw;
    return {};
  }
}

}  // namespace

std::vector<ConditionPrice> condition_prices(const Grid& grid, const Machine& machine, const Effort& effort,
                                             const PlanOptions& options) {
  planning::OneCall call(options);  // its clock runs from here
  constexpr double part = 1.0 / (static_cast<int>(Condition::all) + 2);
  PlanOptions own = call.part(0, part);
  own.conditions = {};
  Conditions nothing;
  nothing.forced_exempt = options.conditions.forced_exempt;
  const Plan plain = plan(grid, machine, effort, own);
  check(options.conditions, grid.rows(), grid.columns());  // whether there is time for it or not
  std::vector<ConditionPrice> prices;
  for (int i = 0; i <= static_cast<int>(Condition::all); ++i) {
    const auto condition = static_cast<Condition>(i);
    own = call.part(part * (i + 1), part * (i + 2));
    own.conditions = alone(options.conditions, condition);
    if (own.conditions == nothing) continue;
    const std::optional<Plan> kept = call.ended() ? std::nullopt : found(grid, machine, effort, own);
    ConditionPrice price;
    price.condition = condition;
    if (!kept) {
      price = {condition, PlanStatus::feasible, -1, -1, 0};
    } else if (price.status = kept->status; price.status != PlanStatus::infeasible) {
      price.total_ms = kept->total_ms;
      price.price_ms = kept->total_ms - plain.total_ms;
      price.least_price_ms = std::max<std::int64_t>(0, kept->bound_ms - plain.total_ms);
    }
    prices.push_back(price);
  }
  return prices;
}

}  // namespace latchwork::inline v0
