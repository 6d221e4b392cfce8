#include "latchwork/plan.hpp"

#include <algorithm>
#include <optional>

#include "conditions/check.hpp"
#include "effort/check.hpp"
#include "latchwork/error.hpp"
#include "machine/check.hpp"
#include "plan/ahead.hpp"
#include "plan/conditions.hpp"
#include "plan/few_stops.hpp"
#include "plan/inputs.hpp"
#include "plan/limits.hpp"
#include "plan/prices.hpp"
#include "plan/problem.hpp"
#include "plan/search.hpp"
#include "plan/solve.hpp"
#include "plan/works.hpp"
#include "plan/write_up.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace planning;

// Widths of the passes over the rows. The first follow the prices and find a good plan; most panels are closed by them.
// Then passes grow wider, each after a look ahead at half its width.
constexpr std::size_t first_width = 1;
constexpr std::size_t narrow_width = 2;
constexpr std::size_t wide = 16;
constexpr std::size_t widening = 4;
constexpr int depth = 80;  // rows of a stretch looked ahead

class Planner {
 public:
  Planner(const Problem& problem, const PlanOptions& options, Limits& limits)
      : problem_(problem), limits_(limits), ahead_(problem), most_(dearest(problem)) {
    for (int row = 0; row <= problem_.rows; ++row) bound_ += is_forced(problem_, row) ? problem_.stop_cost : 0;
    if (problem.apart > 1) begin();
    if (set_up(options)) bound_ = prices_->bound();
    tell();
  }

  struct Result {
    Schedule best;
    std::int64_t bound = 0;
    bool proven = false;
    int stuck = -1;  // no schedule was found: the row past which none could be carried on
  };

  Result run() {
    if (prices_) close();
    // What was proven stays proven, whatever ended the call.
    bool proven = complete_ || bound_ > most_;
    if (!proven && !searched_ && problem_.apart <= 1) {
      begin();
      proven = bound_ > most_;
    }
    return {std::move(best_), bound_, proven, stuck_};
  }

 private:
  // The best schedule that is had without a search, if it is better than what there is.
  void begin() {
    const auto take = [&](Schedule&& first) {
      if (first.cost >= best_.cost) return;
      best_ = std::move(first);
      most_ = below(problem_, best_.cost);
    };
    if (problem_.apart <= 1) take(soonest(problem_));
    if (auto few = few_stops(problem_)) take(std::move(*few));
  }

  // What a search needs. Whether there was time for it.
  bool set_up(const PlanOptions& options) {
    if (limits_.over()) return false;
    windows_ = windows_of(problem_, &limits_);
    if (limits_.over()) return false;
    greatest_ = greatest_width(options, states_of_label(windows_), problem_.rows);
    Schedule all;  // the useful stops
    all.stops.assign(windows_.users.size(), 0);
    for (std::size_t row = 0; row < windows_.users.size(); ++row) {
      all.stops[row] = problem_.forced[row] != 0 || !windows_.users[row].empty() ? 1 : 0;
    }
    all.cost = cost_of(problem_, all.stops, &limits_);
    usual_ = all.cost;
    if (problem_.apart <= 1 && all.cost < far) {  // else they may be too near each other
      best_ = std::move(all);
      most_ = below(problem_, best_.cost);
    }
    if (limits_.over()) return false;
    if (prices_.emplace(problem_, windows_, &limits_).whole()) return true;
    prices_.reset();
    return false;
  }

  // Until the plan is proven, no wider pass is allowed, or a limit ends it.
  bool close() {
    const auto done = [&] { return complete_ || prices_->bound() > most_; };
    if (!ascend(8) || !pass(first_width)) return false;
    for (int i = 0; i < 8 && !done(); ++i) {
      const std::int64_t before = prices_->bound();
      if (!climb(3) || !pass(narrow_width)) return false;
      if (prices_->bound() - before <= (usual() - prices_->bound()) / 50) break;
    }
    for (std::size_t width = wide; !done(); width *= widening) {
      const bool last = width >= greatest_;
      width = std::min(width, greatest_);
      share_ += (1 - share_) / 3;
      if (!ahead_.look(problem_, windows_, *prices_, std::max<std::size_t>(1, width / 2), depth,
                       most_ - prices_->bound(), limits_)) {
        return false;
      }
      if (!pass(width)) return false;
      if (done() || last) break;
      if (!climb(8) || !ascend(4)) return false;
    }
    return true;
  }

  // Raises the bound by `step` until a step gains less than a `worth`-th of what is missing.
  template <class Step>
  bool raise(int times, int worth, Step&& step) {
    for (int i = 0; i < times && prices_->bound() <= most_; ++i) {
      const std::int64_t before = prices_->bound();
      const std::int64_t after = step();
      if (after > before) ahead_.forget();
      bound_ = std::max(bound_, after);
      if (!go_on()) return false;
      if (after - before <= (usual() - after) / worth) break;
    }
    return true;
  }
  bool ascend(int times) {
    return raise(times, 64, [&] { return prices_->ascend(&limits_); });
  }
  bool climb(int times) {
    return raise(times, 100, [&] { return prices_->climb(25, usual(), &limits_); });
  }

  bool pass(std::size_t width) {
    Schedule better;
    const Pass found =
        search(problem_, windows_, *prices_, std::min(width, greatest_), most_, ahead_.gain(), better, limits_);
    if (found.broken_off) return false;
    if (better.cost <= most_) {
      searched_ = true;
      best_ = std::move(better);
      most_ = below(problem_, best_.cost);
    }
    complete_ = found.complete;
    stuck_ = found.stuck;
    bound_ = std::max(bound_, std::min(found.bound, most_));
    return go_on();
  }

  bool go_on() {
    tell();
    const std::int64_t work = prices_->work() - work_of_prices_;
    work_of_prices_ = prices_->work();
    return limits_.go_on(work);
  }

  void tell() {
    limits_.now(bound_ms(problem_, bound_), best_.cost < far ? plan_ms(problem_, best_.cost) : -1, share_);
  }

  // What the best schedule costs; as long as there is none, what one may cost that minds no distance.
  std::int64_t usual() const { return std::min(best_.cost, usual_); }

  // No schedule needs to cost more: every row a stop, and every task worked alone.
  static std::int64_t dearest(const Problem& problem) {
    std::int64_t cost = problem.stop_cost * (problem.rows + 1);
    for (const Lane& lane : problem.lanes) {
      for (int i = 0; i < lane.task_count(); ++i) {
        const int last = lane.task(i).last_stop;
        cost += lane.hold + (lane.task(i).by_batch() ? lane.batch_cost(i, last) : 0);
      }
    }
    return cost;
  }

  const Problem& problem_;
  Limits& limits_;
  Windows windows_;
  std::optional<Prices> prices_;  // none where there was no time for any
  Ahead ahead_;
  std::size_t greatest_ = 1;
  Schedule best_;
  bool searched_ = false;  // it was found by a search
  std::int64_t usual_ = far;
  int stuck_ = -1;
  std::int64_t most_ = 0;   // what a schedule may cost that takes less time than the best
  std::int64_t bound_ = 0;  // no schedule costs less
  bool complete_ = false;   // the last pass left nothing aside
  std::int64_t work_of_prices_ = 0;
  double share_ = 0.02;
};

}  // namespace

Solved planning::solve(const Problem& problem, const PlanOptions& options, Limits& limits) {
  const Planner::Result result = Planner(problem, options, limits).run();
  Solved solved;
  solved.proven = result.proven;
  solved.bound = result.bound;
  solved.stuck = result.stuck;
  if (result.best.cost >= far) return solved;
  solved.works.reserve(problem.lanes.size());
  for (const Lane& lane : problem.lanes) solved.works.push_back(works_of(lane, result.best.stops).list);
  solved.cost = std::min(result.best.cost, cost_of_works(problem, solved.works));
  solved.bound = std::min(solved.bound, solved.cost);
  return solved;
}

Plan plan(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options) {
  check(machine);
  check(effort);
  check(options);
  check(options.conditions, grid.rows(), grid.columns());
  if (options.conditions != Conditions{}) return plan_under(grid, machine, effort, options);
  Limits limits(options);  // its clock runs from here
  const Wales wales(grid);
  const Problem problem = problem_of(grid, wales, machine, effort, &limits);
  if (auto barred = what_bars(grid, machine, problem); !barred.empty()) {
    Plan none = bare_plan(grid, machine);
    none.findings = std::move(barred);
    return none;
  }
  const Solved solved = solve(problem, options, limits);
  Plan plan = write_up(grid, wales, machine, effort, problem, solved.works);
  const std::int64_t bound = bound_ms(problem, solved.bound);
  const bool optimal = solved.proven || bound >= plan.total_ms;
  plan.status = optimal ? PlanStatus::optimal : PlanStatus::feasible;
  plan.bound_ms = optimal ? plan.total_ms : bound;
  if (options.progress) options.progress({plan.bound_ms, plan.total_ms, 1.0});
  return plan;
}

std::string_view plan_status_name(PlanStatus status) noexcept {
  switch (status) {
    case PlanStatus::optimal:
      return "optimal";
    case PlanStatus::feasible:
      return "feasible";
    case PlanStatus::infeasible:
      return "infeasible";
  }
  return {};
}

}  // namespace latchwork::inline v0
