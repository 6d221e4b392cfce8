#include "latchwork/plan.hpp"

#include <algorithm>

#include "effort/check.hpp"
#include "latchwork/error.hpp"
#include "machine/check.hpp"
#include "plan/inputs.hpp"
#include "plan/prices.hpp"
#include "plan/problem.hpp"
#include "plan/search.hpp"
#include "plan/works.hpp"
#include "plan/write_up.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace planning;

// Widths of the passes over the rows. The first follows the prices and finds a good plan, by which the others are cut;
// most panels are closed by the second.
constexpr std::size_t first_width = 1;
constexpr std::size_t second_width = 16;
constexpr std::size_t widening = 8;
constexpr std::size_t greatest_width = std::size_t{1} << 18;  // past it memory, not time, would run out

class Planner {
 public:
  Planner(const Problem& problem, const PlanOptions& options) : problem_(problem), options_(options) {}

  struct Result {
    Schedule best;
    std::int64_t bound = 0;
    bool proven = false;
  };

  Result run() {
    const Windows windows = windows_of(problem_);
    Prices prices(problem_, windows);
    Result result;
    result.best.stops.assign(windows.users.size(), 0);
    for (std::size_t row = 0; row < windows.users.size(); ++row) {
      result.best.stops[row] = problem_.forced[row] != 0 || !windows.users[row].empty() ? 1 : 0;
    }
    result.best.cost = cost_of(problem_, result.best.stops);
    result.bound = prices.bound();

    std::int64_t work_of_prices = 0;
    // Raises the bound by `step` until a step gains less than a `worth`-th of what is missing.
    const auto raise = [&](int times, int worth, const auto& step) {
      for (int i = 0; i < times; ++i) {
        const std::int64_t before = prices.bound();
        const std::int64_t after = step();
        result.bound = std::max(result.bound, after);
        if (!go_on(prices.work() - work_of_prices, result, 0.02)) return false;
        work_of_prices = prices.work();
        if (after - before <= (result.best.cost - after) / worth) break;
      }
      return true;
    };
    const auto ascend = [&] { return prices.ascend(); };
    const auto climb = [&] { return prices.climb(25, result.best.cost); };
    if (!raise(8, 64, ascend)) return result;
    for (std::size_t width = first_width; width <= greatest_width;
         width = width == first_width ? second_width : width * widening) {
      const Pass pass = search(problem_, windows, prices, width, result.best,
                               [&](std::int64_t work, double share) { return go_on(work, result, share); });
      if (pass.broken_off) return result;
      result.bound = std::max(result.bound, pass.bound);
      share_floor_ += (1 - share_floor_) / 2;
      if (pass.complete) {
        result.proven = true;
        return result;
      }
      if (!raise(16, 100, climb) || !raise(4, 64, ascend)) return result;
    }
    return result;
  }

 private:
  bool go_on(std::int64_t work, const Result& result, double share_of_pass) {
    work_ += work;
    if (options_.stop.stop_requested()) return false;
    if (options_.work_limit > 0 && work_ > options_.work_limit) return false;
    if (options_.progress && work_ >= told_ + tell_every) {
      told_ = work_;
      share_ = std::max(share_, share_floor_ + (1 - share_floor_) / 2 * share_of_pass);
      options_.progress({bound_ms(problem_, result.bound), plan_ms(problem_, result.best.cost), share_});
    }
    return true;
  }

  static constexpr std::int64_t tell_every = 2'000'000;  // states: a few milliseconds
  const Problem& problem_;
  const PlanOptions& options_;
  std::int64_t work_ = 0;
  std::int64_t told_ = 0;
  double share_floor_ = 0;
  double share_ = 0;
};

}  // namespace

Plan plan(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options) {
  check(machine);
  check(effort);
  check(options);
  const Wales wales(grid);
  const Problem problem = problem_of(grid, wales, machine, effort);
  if (auto barred = what_bars(grid, machine, problem); !barred.empty()) {
    Plan none = bare_plan(grid, machine);
    none.findings = std::move(barred);
    return none;
  }
  const Planner::Result result = Planner(problem, options).run();
  std::vector<std::vector<Work>> works;
  for (const Lane& lane : problem.lanes) works.push_back(works_of(lane, result.best.stops).list);
  Plan plan = write_up(grid, wales, machine, effort, problem, works);
  plan.status = result.proven ? PlanStatus::optimal : PlanStatus::feasible;
  plan.bound_ms = result.proven ? plan.total_ms : std::min(plan.total_ms, bound_ms(problem, result.bound));
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
