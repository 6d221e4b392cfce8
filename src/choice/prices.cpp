#include <algorithm>
#include <optional>
#include <stop_token>
#include <utility>

#include "conditions/check.hpp"
#include "effort/check.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/error.hpp"
#include "machine/check.hpp"
#include "plan/inputs.hpp"
#include "plan/one_call.hpp"

namespace latchwork::inline v0 {
namespace {

// Cells of the panels that are read once the call is over, for plans that are had without a search: a few milliseconds.
constexpr std::int64_t most_begun = 150'000;

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
std::optional<Plan> found(planning::OneCall& call, const Grid& grid, const Machine& machine, const Effort& effort,
                          const PlanOptions& own) {
  try {
    return call.plan(grid, machine, effort, own);
  } catch (const Error& error) {
    if (!planning::came_to_no_end(error)) throw;
    return {};
  }
}

/// A condition, or all, and what is known of its plans.
struct Asked {
  Condition condition = Condition::all;
  Conditions conditions;
  bool looked = false;
  bool impossible = false;     // there is none
  std::int64_t total_ms = -1;  // of the best; -1: none is known
  std::int64_t bound_ms = 0;   // none takes less

  void look(const std::optional<Plan>& plan) {
    looked = true;
    if (plan) take(*plan);
  }

 private:
  void take(const Plan& plan) {
    impossible = plan.status == PlanStatus::infeasible;
    if (impossible) return;
    total_ms = plan.total_ms;
    bound_ms = plan.bound_ms;
  }
};

/// Each condition that is asked, and last all of them.
std::vector<Asked> all_asked(Conditions conditions) {
  if (conditions.rows_apart == 1) conditions.rows_apart = 0;  // either asks nothing
  Conditions nothing;
  nothing.forced_exempt = conditions.forced_exempt;
  std::vector<Asked> asked;
  for (int i = 0; i <= static_cast<int>(Condition::all); ++i) {
    Asked one;
    one.condition = static_cast<Condition>(i);
    one.conditions = alone(conditions, one.condition);
    if (one.conditions != nothing) asked.push_back(std::move(one));
  }
  return asked;
}

bool is_one(const std::vector<Asked>& asked) {
  return asked.size() == 2 && asked.front().conditions == asked.back().conditions;
}

/// One condition alone is all.
void same(const Asked& from, Asked& to) {
  const Condition condition = to.condition;
  to = from;
  to.condition = condition;
}

/// For what nobody looked at before the call was over: the plan that is had without a search, while the panel is small.
/// Of all conditions first, for that plan keeps each.
void begin(planning::OneCall& call, const Grid& grid, const Machine& machine, const Effort& effort,
           std::vector<Asked>& asked) {
  std::stop_source over;
  over.request_stop();
  PlanOptions own = call.keystone(0, 1);
  own.progress = nullptr;  // all was told
  own.stop = over.get_token();
  std::int64_t left = most_begun;
  for (auto one = asked.rbegin(); one != asked.rend(); ++one) {
    if (one->looked || (is_one(asked) && &*one == &asked.front())) continue;
    left -= std::int64_t{grid.rows()} * grid.columns();
    if (left < 0) break;
    own.conditions = one->conditions;
    one->look(found(call, grid, machine, effort, own));
  }
  if (is_one(asked)) same(asked.back(), asked.front());
}

/// A plan that keeps all conditions keeps each, and one that keeps any is a plan without conditions. What bounds the
/// plans without bounds those under a condition, and those under one condition bound those under all.
void compare(std::int64_t& plain_ms, std::int64_t plain_bound_ms, std::vector<Asked>& asked) {
  Asked& all = asked.back();
  for (Asked& one : asked) {
    one.bound_ms = std::max(one.bound_ms, plain_bound_ms);
    all.bound_ms = std::max(all.bound_ms, one.bound_ms);
    all.impossible = all.impossible || one.impossible;
    if (all.total_ms >= 0 && (one.total_ms < 0 || one.total_ms > all.total_ms)) one.total_ms = all.total_ms;
    if (one.total_ms >= 0) plain_ms = std::min(plain_ms, one.total_ms);
  }
}

ConditionPrice price_of(const Asked& one, std::int64_t plain_ms, std::int64_t plain_bound_ms) {
  if (one.impossible) return {one.condition, PlanStatus::infeasible, 0, 0, 0, 0};
  const std::int64_t least = std::max<std::int64_t>(0, one.bound_ms - plain_ms);
  if (one.total_ms < 0) return {one.condition, PlanStatus::feasible, -1, -1, least, -1};
  const PlanStatus status = one.bound_ms >= one.total_ms ? PlanStatus::optimal : PlanStatus::feasible;
  return {one.condition, status, one.total_ms, one.total_ms - plain_ms, least, one.total_ms - plain_bound_ms};
}

}  // namespace

std::vector<ConditionPrice> condition_prices(const Grid& grid, const Machine& machine, const Effort& effort,
                                             const PlanOptions& options) {
  planning::OneCall call(options);  // its clock runs from here
  call.ask_why(false);
  call.ask_stops(false);
  check(machine);
  check(effort);
  planning::check(options);
  check(options.conditions, grid.rows(), grid.columns());  // whether there is time for it or not
  std::vector<Asked> asked = all_asked(options.conditions);
  const double part = 1.0 / static_cast<double>(asked.size() + 1);
  PlanOptions own = call.part(0, part);
  own.conditions = {};
  const Plan plain = call.plan(grid, machine, effort, own);
  const planning::OneCall::Told told = planning::told_of(plain);
  if (asked.empty()) {
    call.tell(told, 1);
    return {};
  }
  call.bind(plain.bound_ms);  // conditions only take plans away
  double from = part;
  for (Asked& one : asked) {
    if (&one != &asked.front() && is_one(asked)) {
      same(asked.front(), one);
    } else if (!call.ended()) {
      own = call.part(from, from + part, told);
      own.conditions = one.conditions;
      one.look(found(call, grid, machine, effort, own));
    }
    from += part;
  }
  begin(call, grid, machine, effort, asked);
  std::int64_t plain_ms = plain.total_ms;
  compare(plain_ms, plain.bound_ms, asked);
  std::vector<ConditionPrice> prices;
  prices.reserve(asked.size());
  for (const Asked& one : asked) prices.push_back(price_of(one, plain_ms, plain.bound_ms));
  call.tell(told, 1);
  return prices;
}

}  // namespace latchwork::inline v0
