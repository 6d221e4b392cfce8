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
#include "plan/readings.hpp"
#include "plan/search.hpp"
#include "plan/solve.hpp"
#include "plan/widths.hpp"
#include "plan/works.hpp"
#include "plan/write_up.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace planning;

// Widths of the first passes over the rows: they follow the prices and find a good plan; most panels are closed by
// them.
constexpr std::size_t first_width = 1;
constexpr std::size_t narrow_width = 2;
constexpr std::int64_t most_begun = 500'000;         // lanes times rows, gone through for plans to begin with: a few ms
constexpr std::int64_t most_when_late = 300'000;     // the same, where the time is over and there is one already
constexpr std::int64_t most_followed_late = 50'000;  // the same, of lanes that are followed through their stacks then

// Progress: nobody knows how many passes it takes, so that each is told as a part of what is left.
constexpr double at_first = 0.02;
constexpr double of_narrow = 1.0 / 16;
constexpr double of_look = 1.0 / 6;
constexpr double of_wide = 1.0 / 5;

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

  Result run(Late late) {
    if (prices_) close();
    // What was proven stays proven, whatever ended the call.
    bool proven = complete_ || bound_ > most_;
    if (!proven && wants_more(late)) {
      if (problem_.apart <= 1) begin();
      begin_between();
      proven = bound_ > most_;
    }
    return {std::move(best_), bound_, proven, stuck_};
  }

 private:
  // Whether there is to be a schedule that is had without a search. Of a large panel even that takes long: where the
  // time is over, one is enough.
  bool wants_more(Late late) const {
    if (!limits_.stopped_or_late()) return true;
    return late == Late::has_one && (best_.cost >= far || is_small());
  }
  bool is_small() const { return steps_of_one() <= most_when_late; }
  std::int64_t steps_of_one() const {
    return static_cast<std::int64_t>(problem_.lanes.size() + 1) * (problem_.rows + 1);
  }

  // The best schedules that are had without a search, if they are better than what there is: each task as soon as it
  // can be done, and as few stops as serve all.
  void begin() {
    const bool late = problem_.apart <= 1 && limits_.stopped_or_late();
    auto few =
        late && steps_of_one() > most_followed_late ? few_stops_within(problem_, problem_.rows) : few_stops(problem_);
    if (problem_.apart <= 1 && !(late && !is_small() && few)) take(soonest(problem_));
    if (few) take(std::move(*few));
  }

  // Others: a stop after every row, and between these and few stops those of which none is long after what it serves.
  // As many as may be tried at no cost that is felt, counted so that they are the same everywhere.
  void begin_between() {
    const std::int64_t each = steps_of_one();
    std::int64_t left = most_begun - 2 * each;  // what begin() took
    if (problem_.apart <= 1 && left >= each) {
      Schedule all{std::vector<char>(problem_.forced.size(), 1), far};
      all.cost = cost_of(problem_, all.stops);
      take(std::move(all));
      left -= each;
    }
    // 1, 2, 3, 4, 6, 8, 12, 16 ... rows
    for (int wait = 1, more = 1; wait <= problem_.rows && left >= each; wait += more, left -= each) {
      if (auto few = few_stops_within(problem_, wait)) take(std::move(*few));
      if ((wait & (wait - 1)) == 0) more = std::max(1, wait / 2);
    }
  }

  void take(Schedule&& first) {
    if (first.cost >= best_.cost) return;
    best_ = std::move(first);
    most_ = below(problem_, best_.cost);
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
    if (!ascend(8) || !pass(first_width)) return false;
    for (int i = 0; i < 8 && !done(); ++i) {
      const std::int64_t before = prices_->bound();
      next_part(of_narrow);
      if (!climb(3) || !pass(narrow_width)) return false;
      if (prices_->bound() - before <= (usual() - prices_->bound()) / 50) break;
    }
    for (std::size_t width = wide; !done(); width *= widening) {
      const bool last = width >= greatest_;
      width = std::min(width, greatest_);
      next_part(of_look);
      if (!ahead_.look(problem_, windows_, *prices_, std::max<std::size_t>(1, width / 2), stretches_for(width),
                       most_ - prices_->bound(), limits_)) {
        return false;
      }
      next_part(of_wide);
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
    return raise(times, 64, [&] { return prices_->ascend(&limits_, most_); });
  }
  bool climb(int times) {
    return raise(times, 100, [&] { return prices_->climb(25, usual(), &limits_); });
  }

  bool done() const { return complete_ || prices_->bound() > most_; }

  // Where the bound leaves no room for a better schedule, there is none to look for.
  bool pass(std::size_t width) {
    if (done()) return true;
    Schedule better;
    const Pass found =
        search(problem_, windows_, *prices_, std::min(width, greatest_), most_, ahead_.gain(), better, limits_);
    if (found.broken_off) return false;
    if (better.cost <= most_) {
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
    limits_.now(bound_ms(problem_, bound_), best_.cost < far ? plan_ms(problem_, best_.cost) : -1, at_first);
  }

  // What comes next is so much of what is left.
  void next_part(double of_left) {
    const double from = share_;
    share_ += (1 - share_) * of_left;
    limits_.part(from, share_);
  }

  // What the best schedule costs; as long as there is none, what one may cost that minds no distance.
  std::int64_t usual() const { return std::min(best_.cost, usual_); }

  // No schedule needs to cost more: every row a stop, and every task worked alone. Each at its last stop may come to
  // more than can be counted; no schedule that needs to be looked at does (require_counted()).
  static std::int64_t dearest(const Problem& problem) {
    constexpr std::int64_t most = far / 2;
    std::int64_t cost = std::min(most, problem.stop_cost * (problem.rows + 1));
    for (const Lane& lane : problem.lanes) {
      for (int i = 0; i < lane.task_count(); ++i) {
        const int last = lane.task(i).last_stop;
        cost = std::min(most, cost + lane.hold + (lane.task(i).by_batch() ? lane.batch_cost(i, last) : 0));
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
  std::int64_t usual_ = far;
  int stuck_ = -1;
  std::int64_t most_ = 0;   // what a schedule may cost that takes less time than the best
  std::int64_t bound_ = 0;  // no schedule costs less
  bool complete_ = false;   // the last pass left nothing aside
  std::int64_t work_of_prices_ = 0;
  double share_ = at_first;  // of the whole, once the part that is being done is
};

}  // namespace

Solved planning::solve(const Problem& problem, const PlanOptions& options, Limits& limits, Late late) {
  Planner::Result result = Planner(problem, options, limits).run(late);
  Solved solved;
  solved.proven = result.proven;
  solved.bound = result.bound;
  solved.stuck = result.stuck;
  if (result.best.cost >= far) return solved;
  solved.works = std::move(result.best.works);
  if (solved.works.empty()) static_cast<void>(cost_of(problem, result.best.stops, nullptr, &solved.works));
  solved.cost = std::min(result.best.cost, cost_of_works(problem, solved.works));
  solved.bound = std::min(solved.bound, solved.cost);
  return solved;
}

Plan plan(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options) {
  Spent spent;
  return plan_counted(grid, machine, effort, options, spent);
}

Plan planning::plan_counted(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options,
                            Spent& spent, const Plan* plain) {
  check(machine);
  check(effort);
  check(options);
  require_counted(grid, effort);
  check(options.conditions, grid.rows(), grid.columns());
  if (options.conditions != Conditions{}) return plan_under(grid, machine, effort, options, spent, plain);
  Limits limits(options, &spent);  // its clock runs from here
  Readings own(false);
  Readings& readings = spent.readings ? *spent.readings : own;
  const Wales& wales = readings.wales(grid, limits);
  const Problem& problem = readings.problem(grid, machine, effort, limits);
  if (auto barred = what_bars(grid, machine, problem); !barred.empty()) {
    Plan none = bare_plan(grid, machine);
    none.findings = std::move(barred);
    if (options.progress) options.progress({0, -1, 1.0});
    return none;
  }
  limits.keep_back(grid);
  const Solved solved = solve(problem, options, limits);
  Plan plan = spent.written ? write_up(grid, wales, machine, effort, problem, solved.works) : bare_plan(grid, machine);
  if (!spent.written) plan.total_ms = plan_ms(problem, solved.cost);
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
