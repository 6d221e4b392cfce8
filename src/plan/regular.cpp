#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <numeric>
#include <optional>
#include <utility>

#include "conditions/check.hpp"
#include "effort/check.hpp"
#include "finding/merge.hpp"
#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"
#include "machine/check.hpp"
#include "plan/index.hpp"
#include "plan/inputs.hpp"
#include "plan/keeping.hpp"
#include "plan/limits.hpp"
#include "plan/problem.hpp"
#include "plan/readings.hpp"
#include "plan/rhythm.hpp"
#include "plan/works.hpp"
#include "plan/write_up.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace planning;

constexpr std::int64_t most_begun_rhythms = 200'000;  // a few milliseconds

// What rhythms cost. Stops at which nothing is due cost nothing, so that a rhythm is known by `every`, its stops' rows
// modulo `every`, and the first of them that comes once something can be done.
class Rhythms {
 public:
  /// `apart`: forced stops are made beside the rhythm's, and are not counted.
  Rhythms(const Problem& problem, std::int64_t stop_cost, bool apart)
      : problem_(problem), stop_cost_(stop_cost), apart_(apart), firsts_(problem.lanes) {
    for (const Lane& lane : problem.lanes) open_ += lane.task_count();
    standing_.resize(problem.lanes.size());
    for (int row = 0; apart && row <= problem.rows; ++row) beside_ += is_forced(problem, row) ? stop_cost : 0;
  }

  /// See RhythmFirsts.
  std::vector<int> firsts(int every, int forced) const { return firsts_.of(every, forced); }
  std::vector<int> likely() const { return firsts_.likely(problem_.rows); }

  /// `far` when some task is not done in time. Rows over `every`, times lanes, at most.
  std::int64_t cost(int every, int first) {
    std::fill(standing_.begin(), standing_.end(), 0);
    std::int64_t cost = beside_;
    std::int64_t open = open_;
    for (std::int64_t row = first; row <= problem_.rows; row += every) {
      const int here = static_cast<int>(row);
      bool busy = !apart_ && is_forced(problem_, here);
      for (std::size_t k = 0; k < standing_.size(); ++k) {
        const Lane& lane = problem_.lanes[k];
        int& standing = standing_[k];
        ++work_;
        const int done = done_at_stop(lane, standing, here);
        if (done == missed) return far;
        if (done == standing) continue;
        cost += lane.batch_cost(standing, here);
        open -= done - standing;
        standing = done;
        busy = true;
      }
      ++work_;
      if (busy && !(apart_ && is_forced(problem_, here))) cost += stop_cost_;
    }
    return open == 0 ? cost : far;
  }

  /// Per row 0..R: whether something is done there. The same steps as cost().
  std::vector<char> worked(const Rhythm& rhythm) {
    std::fill(standing_.begin(), standing_.end(), 0);
    std::vector<char> worked(at(problem_.rows) + 1, 0);
    for (std::int64_t row = rhythm.first; row <= problem_.rows; row += rhythm.every) {
      const int here = static_cast<int>(row);
      for (std::size_t k = 0; k < standing_.size(); ++k) {
        const int done = done_at_stop(problem_.lanes[k], standing_[k], here);
        if (done <= standing_[k]) continue;
        standing_[k] = done;
        worked[at(here)] = 1;
      }
      work_ += std::ssize(standing_) + 1;
    }
    return worked;
  }

  std::int64_t work() const noexcept { return work_; }

 private:
  const Problem& problem_;
  std::int64_t stop_cost_;
  bool apart_;
  RhythmFirsts firsts_;
  std::int64_t beside_ = 0;    // cost of the stops beside the rhythm
  std::int64_t open_ = 0;      // tasks in all
  std::vector<int> standing_;  // per lane: tasks done
  std::int64_t work_ = 0;
};

// Stopping after every row, each task is done as soon as it can be: only what must be held defeats every rhythm.
std::vector<Finding> what_must_be_held(const Wales& wales, const Problem& problem, int max_ladder) {
  std::vector<Finding> found;
  for (const Lane& lane : problem.lanes) {
    for (const Task& task : lane.tasks) {
      if (task.by_batch()) continue;
      for (const int index : lane.wales) {
        Finding finding;
        finding.code = FindingCode::out_of_reach;
        finding.severity = Severity::error;
        finding.place.row = task.low;
        finding.last_row = task.high;
        finding.place.column = finding.last_column = wales.all()[at(index)].column_at(task.low);
        finding.value = task.high - task.low + 1;
        finding.limit = max_ladder;
        finding.message = fmt::format(
            "the tucks in {} of column {} are {} rows deep with their closing stitch, past the greatest ladder of "
            "{}: only a held needle makes them, and a regular schedule holds none",
            run_of("row", task.low, task.high - 1), finding.place.column, finding.value, max_ladder);
        finding.suggestion = "use the least-effort plan, or fewer tucks in the stack";
        found.push_back(std::move(finding));
      }
    }
  }
  return seeking::merged_findings(std::move(found));
}

struct Best {
  Rhythm rhythm;
  std::int64_t cost = far;
};

std::vector<std::vector<Work>> works_of_all(const Problem& problem, const Rhythm& rhythm) {
  std::vector<std::vector<Work>> works;
  works.reserve(problem.lanes.size());
  for (const Lane& lane : problem.lanes) works.push_back(works_in_rhythm(lane, rhythm, problem.rows).list);
  return works;
}

/// Takes rhythms that keep the conditions, and knows which is the best of the others.
class Choice {
 public:
  /// `keeping`: null when nothing is asked.
  Choice(const Problem& problem, Rhythms& rhythms, Keeping* keeping)
      : problem_(problem), rhythms_(rhythms), keeping_(keeping) {}

  void offer(const Rhythm& rhythm) {
    const std::int64_t cost = rhythms_.cost(rhythm.every, rhythm.first);
    if (cost >= best_.cost) return;
    if (keeping_ && !keeps(rhythm)) {
      if (cost < refused_.cost) refused_ = {rhythm, cost};
      return;
    }
    best_ = {rhythm, cost};
  }

  const Best& best() const noexcept { return best_; }
  /// When there is none, though some rhythm makes the panel.
  std::vector<Finding> why_none() {
    if (refused_.cost >= far) return {};
    auto why = keeping_->broken(works_of_all(problem_, refused_.rhythm));
    if (!why) throw Error(ErrorCode::internal, {}, "a rhythm is refused, and keeps all that is asked");
    why->message +=
        fmt::format("; so it is in the best rhythm, every {} from row {}, and no other keeps to what is asked",
                    count_of(refused_.rhythm.every, "row"), refused_.rhythm.first);
    return {std::move(*why)};
  }
  std::int64_t work() const noexcept { return work_ + rhythms_.work(); }

 private:
  // Where its stops are is known before its works are written down, one by one: of many rhythms that is enough.
  bool keeps(const Rhythm& rhythm) {
    if (!keeping_->may_stop(rhythms_.worked(rhythm))) return false;
    work_ += static_cast<std::int64_t>(problem_.lanes.size() + 1) * (problem_.rows / rhythm.every + 1);
    return !keeping_->broken(works_of_all(problem_, rhythm));
  }

  const Problem& problem_;
  Rhythms& rhythms_;
  Keeping* keeping_;
  Best best_;
  Best refused_;
  std::int64_t work_ = 0;
};

// The first forced stop, and what every rhythm's `every` divides that has all of them; 0: no matter.
struct Forced {
  Forced(const Problem& problem, bool apart) {
    for (int row = 1; row <= problem.rows; ++row) {
      if (apart || !is_forced(problem, row)) continue;
      if (first == 0) first = row;
      step = std::gcd(step, row - first);
    }
  }
  int first = 0;
  int step = 0;
};

// Offers rhythms in the order of the tie rule: the greatest `every` first, then the smallest `first`. Whether all were.
bool offer_rhythms(Choice& choice, Rhythms& rhythms, const Problem& problem, const Forced& forced,
                   const PlanOptions& options, Limits& limits) {
  std::int64_t counted = 0;
  for (int every = problem.rows; every >= 1; --every) {
    if (forced.step % every != 0) continue;
    if (!limits.go_on(1)) return false;
    for (const int first : rhythms.firsts(every, forced.first)) {
      const std::int64_t work = choice.work();
      if (!limits.go_on(work - std::exchange(counted, work))) return false;
      choice.offer({every, first});
    }
    if (options.progress) {
      const std::int64_t best = choice.best().cost;
      const std::int64_t found = best < far ? plan_ms(problem, best) : -1;
      const double tried =
          1.0 - static_cast<double>(every) / problem.rows;  // not all: the last told is what comes of it
      options.progress({problem.fixed_ms, found, std::max(tried, limits.gone())});
    }
  }
  return true;
}

// Once the limits have ended it: offers the likely rhythms until one is taken; when so much work is done, the densest
// only.
void offer_any(Choice& choice, Rhythms& rhythms, const Forced& forced, const Limits& limits) {
  const std::int64_t last = choice.work() + most_begun_rhythms;
  bool tried = false;
  for (const int every : rhythms.likely()) {
    if (forced.step % every != 0) continue;
    if (choice.work() > last && every > 1) continue;
    for (const int first : rhythms.firsts(every, forced.first)) {
      if (std::exchange(tried, true) && limits.long_over()) return;
      choice.offer({every, first});
      if (choice.best().cost < far) return;
      if (choice.work() > last) break;
    }
  }
}

// Why no rhythm can make the panel, or keep to the depth that is asked, to which the problem is read.
std::vector<Finding> what_bars_rhythms(Problem& problem, const Grid& grid, const Machine& machine, const Effort& effort,
                                       int depth, Readings& readings, Limits& limits) {
  std::vector<Finding> found;
  problem = narrowed(grid, machine, effort, depth, readings, limits, found);
  const Wales& wales = readings.wales(grid, limits);
  const bool shallow = depth > 0 && depth < machine.max_ladder;
  const bool held = found.empty();
  if (held) found = what_must_be_held(wales, problem, shallow ? depth : machine.max_ladder);
  if (found.empty() || !shallow) return found;
  const Problem& whole = readings.problem(grid, machine, effort, limits);
  std::vector<Finding> at_all = what_bars(grid, machine, whole);
  if (at_all.empty()) at_all = what_must_be_held(wales, whole, machine.max_ladder);
  if (!at_all.empty()) return at_all;
  for (Finding& finding : found) {
    if (!held) break;  // it says so already
    finding.code = FindingCode::too_deep;
    finding.message = fmt::format("max_depth: {}", finding.message);
    finding.suggestion = "allow deeper re-forms, or fewer tucks in the stack";
  }
  return found;
}

// The plan in the best rhythm for re-forms; with `apart`, crossings and shapings keep their own rows.
Plan found_in_rhythm(const Grid& grid, const Machine& machine, const Effort& effort, bool apart,
                     const PlanOptions& options) {
  check(machine);
  check(effort);
  check(options);
  require_counted(grid, effort);
  check(options.conditions, grid.rows(), grid.columns());
  PlanOptions quiet = options;  // what progress is told is told here, once for each `every`
  quiet.progress = nullptr;
  Limits limits(quiet);  // its clock runs from here
  Readings readings(false);
  const Wales& wales = readings.wales(grid, limits);
  Problem problem;
  Plan none = bare_plan(grid, machine);
  none.findings = what_bars_rhythms(problem, grid, machine, effort, options.conditions.max_depth, readings, limits);
  if (!none.findings.empty()) return none;
  std::optional<Keeping> keeping;
  if (options.conditions != Conditions{}) {
    keeping.emplace(problem, grid, wales, machine, options.conditions);
    none.findings = keeping->barred(machine);
    if (!none.findings.empty()) return none;
  }

  limits.keep_back(grid);
  Rhythms rhythms(problem, effort.stop * problem.unit, apart);
  Choice choice(problem, rhythms, keeping ? &*keeping : nullptr);
  const Forced forced(problem, apart);
  const bool cut_short = !offer_rhythms(choice, rhythms, problem, forced, options, limits);
  if (cut_short && choice.best().cost >= far) offer_any(choice, rhythms, forced, limits);
  const Best& best = choice.best();
  if (best.cost >= far) {
    if (!cut_short) none.findings = choice.why_none();
    if (!none.findings.empty()) return none;
    throw Error(cut_short ? ErrorCode::cancelled : ErrorCode::internal, {},
                cut_short
                    ? "stopped, or limited, before any regular schedule was found; the densest rhythms do not do, "
                      "and there may be none"
                    : "no regular schedule, against all rules");
  }
  Plan plan = write_up(grid, wales, machine, effort, problem, works_of_all(problem, best.rhythm));
  plan.rhythm = best.rhythm;
  // Of rhythms not tried only what no schedule can change is known; a plan without hand work takes no more.
  const bool optimal = !cut_short || plan.total_ms == problem.fixed_ms;
  plan.status = optimal ? PlanStatus::optimal : PlanStatus::feasible;
  plan.bound_ms = optimal ? plan.total_ms : problem.fixed_ms;
  if (options.progress) options.progress({plan.bound_ms, plan.total_ms, 1.0});
  return plan;
}

// A plan was told with share 1; that there is none is told here.
Plan in_rhythm(const Grid& grid, const Machine& machine, const Effort& effort, bool apart, const PlanOptions& options) {
  std::int64_t bound_ms = 0;
  PlanOptions own = options;
  if (options.progress) {
    own.progress = [&](const Progress& now) {
      bound_ms = now.bound_ms;
      options.progress(now);
    };
  }
  Plan plan = found_in_rhythm(grid, machine, effort, apart, own);
  if (plan.status == PlanStatus::infeasible && options.progress) options.progress({bound_ms, -1, 1.0});
  return plan;
}

}  // namespace

Plan plan_regular(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options) {
  return in_rhythm(grid, machine, effort, false, options);
}

TwoRhythms plan_two_rhythms(const Grid& grid, const Machine& machine, const Effort& effort,
                            const PlanOptions& options) {
  TwoRhythms two{{0, 0}, {0, 0}, in_rhythm(grid, machine, effort, true, options)};
  int last = 0;
  for (const Crossing& crossing : grid.crossings()) {  // by row
    if (two.crossings.first == 0) two.crossings.first = crossing.row;
    if (last > 0) two.crossings.every = std::gcd(two.crossings.every, crossing.row - last);
    last = crossing.row;
  }
  if (two.crossings.first > 0 && two.crossings.every == 0) two.crossings.every = grid.rows();
  const auto reforms = [](const Stop& stop) { return !stop.reforms.empty(); };
  if (std::any_of(two.plan.stops.begin(), two.plan.stops.end(), reforms)) two.reforms = *two.plan.rhythm;
  two.plan.rhythm.reset();
  return two;
}

}  // namespace latchwork::inline v0
