#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "effort/check.hpp"
#include "finding/merge.hpp"
#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"
#include "machine/check.hpp"
#include "plan/inputs.hpp"
#include "plan/problem.hpp"
#include "plan/works.hpp"
#include "plan/write_up.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace planning;

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

// All rhythms with one `every`. After a stop where no wale waits in the middle of a stack, everything up to that row is
// done, whatever came before: so what follows such a stop is worked out once for all rhythms that pass it.
class Rhythms {
 public:
  Rhythms(const Problem& problem, std::int64_t stop_cost) : problem_(problem), stop_cost_(stop_cost) {
    clean_.assign(at(problem.rows) + 1, 1);
    for (const Lane& lane : problem.lanes) {
      for (int row = 1; row <= problem.rows; ++row) {
        if (lane.done_at(row) < 0) clean_[at(row)] = 0;
      }
    }
    standing_.resize(problem.lanes.size());
    after_.resize(at(problem.rows) + 1);
  }

  void set_every(int every) {
    every_ = every;
    for (int row = problem_.rows; row >= 1; --row) {
      if (!clean_[at(row)]) continue;
      for (std::size_t k = 0; k < standing_.size(); ++k) standing_[k] = problem_.lanes[k].done_at(row);
      after_[at(row)] = run(std::int64_t{row} + every);
    }
  }

  std::int64_t cost(int first) {
    std::fill(standing_.begin(), standing_.end(), 0);
    return run(first);
  }

 private:
  // Goes on from how the lanes stand, with stops from `row` on.
  std::int64_t run(std::int64_t row) {
    std::int64_t cost = 0;
    for (; row <= problem_.rows; row += every_) {
      const int here = static_cast<int>(row);
      bool busy = is_forced(problem_, here);
      for (std::size_t k = 0; k < standing_.size(); ++k) {
        const Lane& lane = problem_.lanes[k];
        const int done = lane.done_at(here);
        int& standing = standing_[k];
        if (done <= standing) continue;  // nothing is due, or it waits
        if (lane.task(standing).last_stop < here) return far;
        cost += lane.batch_cost(standing, here);
        standing = done;
        busy = true;
      }
      if (busy) cost += stop_cost_;
      if (clean_[at(here)]) return std::min(far, cost + after_[at(here)]);
    }
    for (std::size_t k = 0; k < standing_.size(); ++k) {
      if (standing_[k] < problem_.lanes[k].task_count()) return far;
    }
    return cost;
  }

  const Problem& problem_;
  std::int64_t stop_cost_;
  int every_ = 1;
  std::vector<char> clean_;          // per row: no lane is in the middle of a stack
  std::vector<int> standing_;        // per lane: tasks done
  std::vector<std::int64_t> after_;  // per clean row: cost of what follows a stop there
};

std::vector<Work> works_at(const Lane& lane, const Rhythm& rhythm, int rows) {
  std::vector<Work> works;
  int standing = 0;
  for (std::int64_t row = rhythm.first; row <= rows; row += rhythm.every) {
    const int done = lane.done_at(static_cast<int>(row));
    if (done <= standing) continue;
    works.push_back({false, standing, done - 1, static_cast<int>(row)});
    standing = done;
  }
  return works;
}

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
            "the tucks in rows {} to {} of column {} are {} rows deep with their closing stitch, past the greatest "
            "ladder of {}: only a held needle makes them, and a regular schedule holds none",
            task.low, task.high - 1, finding.place.column, finding.value, max_ladder);
        finding.suggestion = "use the least-effort plan, or fewer tucks in the stack";
        found.push_back(std::move(finding));
      }
    }
  }
  return merged_findings(std::move(found));
}

struct Best {
  Rhythm rhythm;
  std::int64_t cost = far;
};

// Rhythms in the order of the tie rule: the greatest `every` first, then the smallest `first`.
Best best_rhythm(const Problem& problem, std::int64_t stop_cost, const PlanOptions& options, bool& cut_short) {
  int first_forced = 0;
  int step = 0;  // every rhythm's `every` divides it; 0: no matter
  for (int row = 1; row <= problem.rows; ++row) {
    if (!is_forced(problem, row)) continue;
    if (first_forced == 0) first_forced = row;
    step = std::gcd(step, row - first_forced);
  }
  Rhythms rhythms(problem, stop_cost);
  Best best;
  std::int64_t work = 0;
  for (int every = problem.rows; every >= 1; --every) {
    if (step % every != 0) continue;
    if (options.stop.stop_requested() || (options.work_limit > 0 && work > options.work_limit)) {
      cut_short = true;
      return best;
    }
    rhythms.set_every(every);
    const int residue = first_forced > 0 ? (first_forced - 1) % every + 1 : 0;
    for (int first = residue > 0 ? residue : 1; first <= (first_forced > 0 ? first_forced : problem.rows);
         first += residue > 0 ? every : 1) {
      const std::int64_t cost = rhythms.cost(first);
      if (cost < best.cost) best = {{every, first}, cost};
    }
    work += std::int64_t{problem.rows} * static_cast<std::int64_t>(problem.lanes.size() + 1);
    if (options.progress) {
      const std::int64_t found = best.cost < far ? plan_ms(problem, best.cost) : -1;
      options.progress({problem.fixed_ms, found, 1.0 - static_cast<double>(every - 1) / problem.rows});
    }
  }
  return best;
}

}  // namespace

Plan plan_regular(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options) {
  check(machine);
  check(effort);
  check(options);
  const Wales wales(grid);
  const Problem problem = problem_of(grid, wales, machine, effort);
  Plan none = bare_plan(grid, machine);
  none.findings = what_bars(grid, machine, problem);
  if (none.findings.empty()) none.findings = what_must_be_held(wales, problem, machine.max_ladder);
  if (!none.findings.empty()) return none;

  bool cut_short = false;
  const Best best = best_rhythm(problem, effort.stop * problem.unit, options, cut_short);
  if (best.cost >= far) {
    throw Error(cut_short ? ErrorCode::cancelled : ErrorCode::internal, {},
                cut_short ? "stopped before any regular schedule was found" : "no regular schedule, against all rules");
  }
  std::vector<std::vector<Work>> works;
  for (const Lane& lane : problem.lanes) works.push_back(works_at(lane, best.rhythm, problem.rows));
  Plan plan = write_up(grid, wales, machine, effort, problem, works);
  plan.rhythm = best.rhythm;
  plan.status = cut_short ? PlanStatus::feasible : PlanStatus::optimal;
  plan.bound_ms = cut_short ? problem.fixed_ms : plan.total_ms;
  return plan;
}

}  // namespace latchwork::inline v0
