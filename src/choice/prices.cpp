#include <algorithm>

#include "latchwork/choice.hpp"
#include "latchwork/error.hpp"

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

}  // namespace

std::vector<ConditionPrice> condition_prices(const Grid& grid, const Machine& machine, const Effort& effort,
                                             const PlanOptions& options) {
  PlanOptions own = options;
  own.conditions = {};
  Conditions nothing;
  nothing.forced_exempt = options.conditions.forced_exempt;
  double from = 0;
  constexpr double part = 1.0 / (static_cast<int>(Condition::all) + 2);
  if (options.progress) {
    own.progress = [&](const Progress& now) { options.progress({now.bound_ms, now.best_ms, from + part * now.share}); };
  }
  const Plan plain = plan(grid, machine, effort, own);
  std::vector<ConditionPrice> prices;
  for (int i = 0; i <= static_cast<int>(Condition::all); ++i) {
    const auto condition = static_cast<Condition>(i);
    from = part * (i + 1);
    own.conditions = alone(options.conditions, condition);
    if (own.conditions == nothing) continue;
    ConditionPrice price;
    price.condition = condition;
    const Plan kept = plan(grid, machine, effort, own);
    price.status = kept.status;
    if (kept.status != PlanStatus::infeasible) {
      price.total_ms = kept.total_ms;
      price.price_ms = kept.total_ms - plain.total_ms;
      price.least_price_ms = std::max<std::int64_t>(0, kept.bound_ms - plain.total_ms);
    }
    prices.push_back(price);
  }
  return prices;
}

}  // namespace latchwork::inline v0
