#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "latchwork/error.hpp"
#include "plan/conditions.hpp"
#include "plan/inputs.hpp"
#include "plan/one_call.hpp"
#include "plan/prices.hpp"
#include "plan/rhythm.hpp"
#include "plan/write_up.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::planning {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

class Under {
 public:
  Under(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options, const Plan* plain)
      : grid_(grid),
        machine_(machine),
        effort_(effort),
        options_(options),
        plain_(plain),
        limits_(options_),
        wales_(grid) {
    if (!options.progress) return;
    // Several searches, told as one: of rhythms tried one by one nothing is proven before the last.
    options_.progress = [this, tell = options.progress](const Progress& now) {
      share_ = std::max(share_, 0.99 * now.share);
      tell({trying_ ? 0 : now.bound_ms, best_.found() ? best_ms_ : trying_ ? -1 : now.best_ms, share_});
    };
  }

  Plan run() {
    Plan none = bare_plan(grid_, machine_);
    base_ = problem_of(grid_, wales_, machine_, effort_);
    none.findings = what_bars(grid_, machine_, base_);
    if (none.findings.empty())
      none.findings = narrow(base_, grid_, wales_, machine_, effort_, options_.conditions.max_depth);
    if (!none.findings.empty()) return none;
    groups_ = take_out(base_, wales_, options_.conditions);
    settled_.resize(groups_.size());
    int open = -1;
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      if (!groups_[g].kept->rhythm) {
        open = static_cast<int>(g);
        continue;
      }
      settled_[g] = settle(groups_[g], *groups_[g].kept->rhythm, base_.rows);
      if (settled_[g].cost >= far) {
        none.findings = {off_rhythm(groups_[g], *groups_[g].kept->rhythm, wales_)};
        return none;
      }
    }
    if (open < 0) {
      take(settled_);
      if (best_.found()) return finish();
      none.findings = std::move(broken_);
      if (none.findings.empty()) none.findings = {stuck()};
      return none;
    }
    try_all(at(open));
    if (best_.found()) return finish();
    const Group& group = groups_[at(open)];
    none.findings = {
        finding_at(FindingCode::off_rhythm, group.kept->row, group.kept->first_column,
                   fmt::format("rhythms: no rhythm makes the wales of row {}, {}, with the other conditions",
                               group.kept->row, run_of("column", group.kept->first_column, group.kept->last_column)),
                   "keep fewer wales to one rhythm, or drop another condition")};
    if (!broken_.empty()) none.findings.insert(none.findings.end(), broken_.begin(), broken_.end());
    return none;
  }

 private:
  Finding stuck() const {
    const bool kinds = options_.conditions.max_kinds > 0;
    const int row = std::max(0, stuck_);
    int column = 0;
    int low = row;
    for (const Lane& lane : posed_.lanes) {
      for (const Task& task : lane.tasks) {
        if (std::max(task.last_stop, task.by_hold ? task.low - 1 : -1) != row) continue;
        low = task.low;
        column = wales_.all()[at(lane.wales.front())].column_at(task.low);
      }
    }
    if (kinds) {
      return finding_at(FindingCode::too_many_kinds, low, column,
                        fmt::format("max_kinds: with {} of stop no schedule gets past row {}",
                                    count_of(options_.conditions.max_kinds, "kind"), row),
                        "allow more kinds of stop");
    }
    return finding_at(FindingCode::stops_too_near, low, column,
                      fmt::format("rows_apart: with {} rows between stops no schedule gets past row {}: the hand cells "
                                  "of row {}, column {}, are missed",
                                  options_.conditions.rows_apart, row, low, column),
                      "ask for fewer rows between stops");
  }

  std::vector<const Settled*> pointers(const std::vector<Settled>& settled) const {
    std::vector<const Settled*> out;
    out.reserve(settled.size());
    for (const Settled& one : settled) out.push_back(&one);
    return out;
  }

  Posed posed_with(const std::vector<Settled>& settled) const {
    return pose(base_, grid_, wales_, machine_, options_.conditions, groups_, pointers(settled));
  }

  // Solves with these rhythms. Whether the search came to its end.
  bool take(const std::vector<Settled>& settled) {
    Posed posed = posed_with(settled);
    if (!posed.broken.empty()) {
      if (broken_.empty()) broken_ = std::move(posed.broken);
      return true;
    }
    // The first search for few kinds of stop begins with what is cheap to have, time or none.
    const bool begins = options_.conditions.max_kinds > 0 && !best_.found();
    if (!begins && !limits_.go_on(0)) return end_early();
    Solved solved;
    if (options_.conditions.max_kinds > 0) {
      Deeds deeds(grid_, wales_);
      std::vector<std::vector<int>> at_row = deeds.forced();
      for (std::size_t g = 0; g < groups_.size(); ++g) {
        for (std::size_t k = 0; k < groups_[g].lanes.size(); ++k) {
          add_deeds(deeds, groups_[g].lanes[k], settled[g].works[k], at_row);
        }
      }
      // Of rhythms that are tried one by one, it is in one only.
      const Plan* plain = trying_ ? nullptr : plain_;
      solved = solve_kinds(posed.problem, deeds, at_row, options_.conditions.max_kinds, options_, limits_, plain);
    } else {
      solved = solve(posed.problem, options_, limits_);
    }
    const std::int64_t bound = bound_ms(posed.problem, std::min(solved.bound, solved.cost));
    const bool none = !solved.found() && solved.proven;
    if (!none) bound_ms_ = std::min(bound_ms_, bound);
    proven_ = proven_ && solved.proven;
    if (!solved.found()) {
      if (posed_.lanes.empty()) posed_ = posed.problem;
      stuck_ = std::max(stuck_, solved.stuck);
      return solved.proven ? true : end_early();
    }
    const std::int64_t total = plan_ms(posed.problem, solved.cost);
    if (!best_.found() || total < best_ms_) {
      best_ = std::move(solved);
      best_ms_ = total;
      best_settled_ = settled;
      posed_ = std::move(posed.problem);
    }
    return true;
  }

  bool end_early() {
    if (!best_.found()) {
      Place place;
      const bool asked = limits_.ended() || options_.work_limit > 0 || options_.memory_limit > 0;
      if (!asked && options_.conditions.max_kinds > 0) {  // nobody ended it
        place.field = beyond_search;
        throw Error(ErrorCode::too_large, place,
                    fmt::format("with {} of stop the search used up its own allowance of work, and found neither a "
                                "plan nor that there is none; allow more kinds, or more work by a work limit",
                                count_of(options_.conditions.max_kinds, "kind")));
      }
      place.field = "options.conditions";
      throw Error(
          ErrorCode::cancelled, place,
          "the search ended, stopped, limited or out of memory, before any plan under the conditions was found");
    }
    proven_ = false;
    return false;
  }

  // Every rhythm of the group that is left open, the most promising first. Ties: greater `every`, then smaller `first`.
  void try_all(std::size_t open) {
    trying_ = true;
    struct Trial {
      std::int64_t bound;
      Rhythm rhythm;
      Settled settled;
    };
    std::vector<Trial> trials;
    const RhythmFirsts firsts(groups_[open].lanes);
    const auto ended = [&](std::int64_t work) {
      if (limits_.go_on(work)) return false;
      end_early();
      bound_ms_ = 0;
      return true;
    };
    std::set<std::vector<int>> seen;
    for (int every = base_.rows; every >= 1; --every) {
      if (ended(1)) return;
      for (const int first : firsts.of(every)) {
        if (ended(std::ssize(groups_[open].lanes) * (base_.rows / every + 1))) return;
        Settled mine = settle(groups_[open], {every, first}, base_.rows);
        if (mine.cost >= far) continue;
        if (!seen.insert(mine.stops).second) continue;  // the same works
        settled_[open] = mine;
        // The problem is laid out anew, lane by lane and row by row.
        if (ended((std::ssize(base_.lanes) + 1) * base_.rows)) return;
        Posed posed = posed_with(settled_);
        if (!posed.broken.empty()) {
          if (broken_.empty()) broken_ = std::move(posed.broken);
          continue;
        }
        const Windows windows = windows_of(posed.problem);
        Prices prices(posed.problem, windows, &limits_);
        if (!prices.whole() && ended(0)) return;
        for (int i = 0; i < 4; ++i) prices.ascend(&limits_);
        trials.push_back({bound_ms(posed.problem, prices.bound()), {every, first}, std::move(mine)});
        if (ended(prices.work())) return;
      }
    }
    if (trials.empty()) return;
    broken_.clear();
    std::stable_sort(trials.begin(), trials.end(), [](const Trial& a, const Trial& b) { return a.bound < b.bound; });
    for (Trial& trial : trials) {
      if (best_.found() && trial.bound >= best_ms_) break;
      settled_[open] = std::move(trial.settled);
      if (!take(settled_)) {
        bound_ms_ = std::min(bound_ms_, trial.bound);
        return;
      }
    }
  }

  Plan finish() {
    Problem whole = posed_;
    std::vector<std::vector<Work>> works = best_.works;
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      for (std::size_t k = 0; k < groups_[g].lanes.size(); ++k) {
        whole.lanes.push_back(groups_[g].lanes[k]);
        works.push_back(best_settled_[g].works[k]);
      }
    }
    Plan plan = write_up(grid_, wales_, machine_, effort_, whole, works);
    const bool optimal = proven_ || bound_ms_ >= plan.total_ms;
    plan.status = optimal ? PlanStatus::optimal : PlanStatus::feasible;
    plan.bound_ms = optimal ? plan.total_ms : std::min(plan.total_ms, bound_ms_);
    share_ = 1;
    trying_ = false;
    if (options_.progress) options_.progress({plan.bound_ms, plan.total_ms, 1.0});
    return plan;
  }

  const Grid& grid_;
  const Machine& machine_;
  const Effort& effort_;
  PlanOptions options_;
  const Plan* plain_;
  double share_ = 0;
  bool trying_ = false;
  Limits limits_;  // its clock runs from the call
  Wales wales_;
  Problem base_;
  std::vector<Group> groups_;
  std::vector<Settled> settled_;

  Solved best_;
  std::int64_t best_ms_ = 0;
  std::vector<Settled> best_settled_;
  Problem posed_;  // of the best
  std::int64_t bound_ms_ = far;
  bool proven_ = true;
  int stuck_ = -1;
  std::vector<Finding> broken_;
};

}  // namespace

Plan plan_under(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options,
                const Plan* plain) {
  return Under(grid, machine, effort, options, plain).run();
}

}  // namespace latchwork::inline v0::planning
