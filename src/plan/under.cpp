#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "plan/blame.hpp"
#include "plan/conditions.hpp"
#include "plan/index.hpp"
#include "plan/inputs.hpp"
#include "plan/one_call.hpp"
#include "plan/prices.hpp"
#include "plan/rhythm.hpp"
#include "plan/write_up.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::planning {
namespace {

constexpr std::int64_t most_begun_under = 200'000;  // a few milliseconds
constexpr int most_ascents = 8;                     // of prices, for a bound

class Under {
 public:
  Under(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options, Spent& spent,
        const Plan* plain)
      : grid_(grid),
        machine_(machine),
        effort_(effort),
        options_(options),
        spent_(spent),
        plain_(plain),
        limits_(options_, &spent),
        own_readings_(false),
        readings_(spent.readings ? *spent.readings : own_readings_),
        wales_(readings_.wales(grid, limits_)),
        plain_bound_ms_(spent.bound_ms) {
    if (!options.progress) return;
    // Several searches, told as one: of rhythms tried one by one nothing is proven before the last.
    options_.progress = [this, tell = options.progress](const Progress& now) {
      share_ = std::max(share_, 0.99 * now.share);
      tell({trying_ ? plain_bound_ms_ : std::max(plain_bound_ms_, now.bound_ms),
            best_.found() ? best_ms_
            : trying_     ? -1
                          : now.best_ms,
            share_});
    };
  }

  Plan run() {
    Plan none = bare_plan(grid_, machine_);
    const Lanes lanes = options_.conditions.max_kinds > 0 ? Lanes::in_place : Lanes::alike;
    base_ = narrowed(grid_, machine_, effort_, options_.conditions.max_depth, readings_, limits_, none.findings, lanes);
    if (!none.findings.empty()) return none;
    const auto& kept = options_.conditions.rhythms;
    const bool some = std::any_of(kept.begin(), kept.end(), [](const KeptRhythm& one) { return !one.rhythm; });
    limits_.keep_back(grid_, some ? Limits::for_a_rhythm_of_some : Limits::for_a_plan);
    // Rhythms that are tried are bound one by one, and of those that nobody comes to this is all that is known.
    if (some && plain_bound_ms_ == 0) bind(base_, limits_);
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
      const bool to_its_end = take(settled_, true);
      if (best_.found()) return finish();
      if (!to_its_end) end_without_plan();
      none.findings = std::move(broken_);
      if (none.findings.empty()) none.findings = {stuck()};
      return none;
    }
    try_all(at(open));
    if (best_.found()) return finish();
    none.findings = {no_rhythm(groups_[at(open)])};
    if (!broken_.empty()) none.findings.insert(none.findings.end(), broken_.begin(), broken_.end());
    return none;
  }

 private:
  struct Spot {
    int row = 0;
    int column = 0;
    bool found = false;
  };

  // The leftmost of the highest hand cells that are due at this row, else not above it, else of the lowest.
  void seek(const std::vector<Lane>& lanes, int row, Spot& spot, std::tuple<int, int, int>& best) const {
    for (const Lane& lane : lanes) {
      for (const Task& task : lane.tasks) {
        const bool due = std::max(task.last_stop, task.by_hold ? task.low - 1 : -1) == row;
        const int column = wales_.all()[at(lane.wales.front())].column_at(task.low);
        const std::tuple rank(due ? 0 : task.low <= row ? 1 : 2, task.low <= row ? -task.low : task.low, column);
        if (spot.found && rank >= best) continue;
        best = rank;
        spot = {task.low, column, true};
      }
    }
  }

  // Of all hand cells, or, where there are none, what forces a stop: the lowest.
  Spot spot_at(int row) const {
    Spot spot;
    std::tuple<int, int, int> best;
    seek(posed_.lanes, row, spot, best);
    for (const Group& group : groups_) seek(group.lanes, row, spot, best);
    if (spot.found) return spot;
    for (const Crossing& crossing : grid_.crossings()) return {crossing.row, crossing.column, true};  // by row
    for (const Wale& wale : wales_.all()) {
      if (wale.row > 1) return {wale.row, wale.column, true};
      if (wale.last_row() < base_.rows) return {wale.last_row(), wale.columns.back(), true};
    }
    return spot;
  }

  // What a search found, no more: the rows and kinds that are asked may bar the panel together, or either alone.
  Finding stuck() const {
    const Conditions& asked = options_.conditions;
    const Spot spot = spot_at(stuck_);
    const std::string past = stuck_ > 0 ? fmt::format("no schedule gets past row {}", stuck_) : "there is no schedule";
    if (asked.max_kinds > 0) {
      const std::string apart =
          asked.rows_apart > 1 ? fmt::format(" and {} rows between stops", asked.rows_apart) : std::string();
      return finding_at(FindingCode::too_many_kinds, spot.row, spot.column,
                        fmt::format("max_kinds: with {} of stop{} {}", count_of(asked.max_kinds, "kind"), apart, past),
                        "allow more kinds of stop");
    }
    return finding_at(FindingCode::stops_too_near, spot.row, spot.column,
                      fmt::format("rows_apart: with {} rows between stops {}: the hand cells of row {}, column {}, are "
                                  "missed",
                                  asked.rows_apart, past, spot.row, spot.column),
                      "ask for fewer rows between stops");
  }

  // No rhythm was found for this group.
  Finding no_rhythm(const Group& group) const {
    Spot spot;
    std::tuple<int, int, int> best;
    seek(group.lanes, 0, spot, best);
    if (!spot.found) spot = {group.kept->row, group.kept->first_column, true};
    const bool alone = options_.conditions.max_depth == 0 && broken_.empty() && posed_.lanes.empty();
    return finding_at(FindingCode::off_rhythm, spot.row, spot.column,
                      fmt::format("rhythms: no rhythm makes the wales of row {}, {}{}", group.kept->row,
                                  run_of("column", group.kept->first_column, group.kept->last_column),
                                  alone ? "" : ", with the other conditions"),
                      "keep fewer wales to one rhythm, or drop another condition");
  }

  std::vector<const Settled*> pointers(const std::vector<Settled>& settled) const {
    std::vector<const Settled*> out;
    out.reserve(settled.size());
    for (const Settled& one : settled) out.push_back(&one);
    return out;
  }

  // Of a large panel the problem takes long to copy: `last`, and it is not needed any more.
  Posed posed_with(const std::vector<Settled>& settled, bool last = false) {
    return pose(last ? std::move(base_) : base_, grid_, wales_, machine_, options_.conditions, groups_,
                pointers(settled));
  }

  // Solves with these rhythms; where there is no plan yet, as far as that goes without a search, whatever the limits.
  // Whether the search came to its end.
  bool take(const std::vector<Settled>& settled, bool last = false) {
    Posed posed = posed_with(settled, last);
    if (!posed.broken.empty()) {
      if (broken_.empty()) broken_ = std::move(posed.broken);
      return true;
    }
    if (best_.found() && !limits_.go_on(0)) {
      proven_ = false;
      return false;
    }
    Solved solved = solved_with(posed.problem, settled);
    const std::int64_t bound = bound_ms(posed.problem, std::min(solved.bound, solved.cost));
    const bool none = !solved.found() && solved.proven;
    if (!none) bound_ms_ = std::min(bound_ms_, bound);
    proven_ = proven_ && solved.proven;
    out_of_allowance_ = out_of_allowance_ || solved.out_of_allowance;
    if (!solved.found()) {
      if (posed_.lanes.empty()) posed_ = posed.problem;
      stuck_ = std::max(stuck_, solved.stuck);
      return solved.proven;
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

  Solved solved_with(const Problem& problem, const std::vector<Settled>& settled) {
    if (options_.conditions.max_kinds == 0) {
      return solve(problem, options_, limits_, best_.found() ? Late::has_none : Late::has_one);
    }
    Deeds deeds(grid_, wales_);
    std::vector<std::vector<int>> at_row = deeds.forced();
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      for (std::size_t k = 0; k < groups_[g].lanes.size(); ++k) {
        add_deeds(deeds, groups_[g].lanes[k], settled[g].works[k], at_row);
      }
    }
    // Of rhythms that are tried one by one, it is in one only.
    const Plan* plain = trying_ ? nullptr : plain_;
    return solve_kinds(problem, deeds, at_row, options_.conditions.max_kinds, options_, limits_, plain);
  }

  // The search ended with neither a plan nor a proof that there is none.
  [[noreturn]] void end_without_plan() const {
    if (out_of_allowance_ && !limits_.ended()) {  // nobody ended it
      refuse(ErrorCode::too_large, beyond_search,
             fmt::format("with {} of stop the search used up its own allowance of work, and found neither a plan nor "
                         "that there is none; allow more kinds, or more work by a work limit",
                         count_of(options_.conditions.max_kinds, "kind")));
    }
    refuse(ErrorCode::cancelled, "options.conditions",
           "the search ended, stopped, limited or out of memory, before any plan under the conditions was found; no "
           "plan that was had without a search keeps them, and there may be none");
  }

  // What binds all plans binds those that keep the conditions: by prices alone, at no cost that is felt.
  void bind(const Problem& problem, Limits& limits) {
    const Windows windows = windows_of(problem, &limits);
    if (limits.ended()) return;
    Prices prices(problem, windows, &limits);
    if (!prices.whole()) return;
    for (int i = 0; i < most_ascents; ++i) {
      const std::int64_t before = prices.bound();
      if (prices.ascend(&limits) == before) break;
    }
    plain_bound_ms_ = bound_ms(problem, prices.bound());
    limits.go_on(prices.work());
  }

  // The same for a plan that was not proven, whatever ended its search, but for one that has no time left.
  void bind_at_last() {
    if (plain_bound_ms_ > 0 || limits_.stopped_or_late()) return;
    PlanOptions own = options_;
    own.work_limit = 0;
    own.progress = nullptr;
    Limits limits(own, limits_);
    Machine shallow = machine_;
    const int depth = options_.conditions.max_depth;
    if (depth > 0) shallow.max_ladder = std::min(shallow.max_ladder, depth);
    try {
      bind(readings_.problem(grid_, shallow, effort_, limits), limits);
    } catch (const Error& error) {  // there is no time to read the panel again: the plan stands without this bound
      if (!came_to_no_end(error)) throw;
    }
  }

  struct Trial {
    std::int64_t bound = 0;
    Rhythm rhythm;
    Settled settled;
  };

  // Every rhythm of the group that is left open, the most promising first, until the next can be no better. Ties: the
  // one of the lower bound, then greater `every`, then smaller `first`.
  void try_all(std::size_t open) {
    trying_ = true;
    std::vector<Trial> trials;
    const bool all = collect(open, trials);
    if (all && trials.empty()) return;
    if (!trials.empty()) broken_.clear();
    std::stable_sort(trials.begin(), trials.end(), [](const Trial& a, const Trial& b) { return a.bound < b.bound; });
    bool to_its_end = all;
    for (Trial& trial : trials) {
      if (best_.found() && trial.bound >= best_ms_) break;
      settled_[open] = std::move(trial.settled);
      if (take(settled_)) continue;
      to_its_end = false;
      bound_ms_ = std::min(bound_ms_, trial.bound);
      break;
    }
    if (!all) {  // of those not tried only what no schedule can change is known
      proven_ = false;
      const auto forced = std::count_if(base_.forced.begin(), base_.forced.end(), [](char stop) { return stop != 0; });
      bound_ms_ = std::min(bound_ms_, bound_ms(base_, forced * base_.stop_cost));
    }
    if (best_.found() || to_its_end) return;
    if (limits_.ended()) find_any(open);
    if (!best_.found()) end_without_plan();
  }

  // The rhythms that may make a plan, each with a bound on its plans. Whether all were looked at.
  bool collect(std::size_t open, std::vector<Trial>& trials) {
    const RhythmFirsts firsts(groups_[open].lanes);
    std::set<std::vector<int>> seen;
    for (int every = base_.rows; every >= 1; --every) {
      if (!limits_.go_on(1)) return false;
      for (const int first : firsts.of(every)) {
        if (!limits_.go_on(std::ssize(groups_[open].lanes) * (base_.rows / every + 1))) return false;
        Settled mine = settle(groups_[open], {every, first}, base_.rows);
        if (mine.cost >= far) continue;
        if (!seen.insert(mine.stops).second) continue;  // the same works
        settled_[open] = mine;
        // The problem is laid out anew, lane by lane and row by row.
        if (!limits_.go_on((std::ssize(base_.lanes) + 1) * base_.rows)) return false;
        Posed posed = posed_with(settled_);
        if (!posed.broken.empty()) {
          if (broken_.empty()) broken_ = std::move(posed.broken);
          continue;
        }
        const Windows windows = windows_of(posed.problem, &limits_);
        if (limits_.ended()) return false;
        Prices prices(posed.problem, windows, &limits_);
        if (!prices.whole()) return false;
        for (int i = 0; i < 4; ++i) prices.ascend(&limits_);
        trials.push_back({bound_ms(posed.problem, prices.bound()), {every, first}, std::move(mine)});
        if (!limits_.go_on(prices.work())) return false;
      }
    }
    return true;
  }

  // Once the limits have ended it all: some rhythm with a plan that is had without a search. From the widest that comes
  // in time down to the densest, then wider ones, until so much work is done, and the densest in any case.
  void find_any(std::size_t open) {
    const RhythmFirsts firsts(groups_[open].lanes);
    std::int64_t left = most_begun_under;
    bool tried = false;
    for (const int every : firsts.likely(base_.rows)) {
      if (left <= 0 && every > 1) continue;
      for (const int first : firsts.of(every)) {
        left -= std::ssize(groups_[open].lanes) * (base_.rows / every + 1);
        Settled mine = settle(groups_[open], {every, first}, base_.rows);
        if (mine.cost >= far || breaks_at_sight(mine)) continue;
        left -= (std::ssize(base_.lanes) + 1) * base_.rows;
        if (std::exchange(tried, true) && limits_.long_over()) return;
        settled_[open] = std::move(mine);
        take(settled_);
        if (best_.found()) return;
        if (left <= 0) break;
      }
      if (left <= 0 && every == 1) return;
    }
  }

  // Whether a rhythm's own stops break the conditions: what pose() would say, sooner.
  bool breaks_at_sight(const Settled& mine) const {
    const Conditions& asked = options_.conditions;
    int last = -1;
    for (const int row : mine.stops) {
      if (is_forced(base_, row)) continue;
      const bool right = machine_.carriage_starts_right == (row % 2 == 0);
      if (asked.carriage_right_only && !right) return true;
      if (last >= 0 && row - last < asked.rows_apart) return true;
      if (std::find(asked.closed_rows.begin(), asked.closed_rows.end(), row) != asked.closed_rows.end()) return true;
      last = row;
    }
    return false;
  }

  Plan finish() {
    if (!spent_.written) {
      Plan plan = bare_plan(grid_, machine_);
      plan.total_ms = best_ms_;
      return told(std::move(plan));
    }
    Problem whole = std::move(posed_);
    std::vector<std::vector<Work>> works = std::move(best_.works);
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      for (std::size_t k = 0; k < groups_[g].lanes.size(); ++k) {
        whole.lanes.push_back(groups_[g].lanes[k]);
        works.push_back(best_settled_[g].works[k]);
      }
    }
    return told(write_up(grid_, wales_, machine_, effort_, whole, works));
  }

  // The plan with what is known of it.
  Plan told(Plan plan) {
    if (!proven_ && bound_ms_ < plan.total_ms) bind_at_last();
    const std::int64_t bound = std::max(bound_ms_, plain_bound_ms_);
    const bool optimal = proven_ || bound >= plan.total_ms;
    plan.status = optimal ? PlanStatus::optimal : PlanStatus::feasible;
    plan.bound_ms = optimal ? plan.total_ms : bound;
    share_ = 1;
    trying_ = false;
    if (options_.progress) options_.progress({plan.bound_ms, plan.total_ms, 1.0});
    return plan;
  }

  const Grid& grid_;
  const Machine& machine_;
  const Effort& effort_;
  PlanOptions options_;
  Spent& spent_;
  const Plan* plain_;
  double share_ = 0;
  bool trying_ = false;
  Limits limits_;  // its clock runs from the call
  Readings own_readings_;
  Readings& readings_;
  const Wales& wales_;
  std::int64_t plain_bound_ms_;  // of all plans, as far as is known
  Problem base_;
  std::vector<Group> groups_;
  std::vector<Settled> settled_;

  Solved best_;
  std::int64_t best_ms_ = 0;
  std::vector<Settled> best_settled_;
  Problem posed_;  // of the best
  std::int64_t bound_ms_ = far;
  bool proven_ = true;
  bool out_of_allowance_ = false;  // of the search for few kinds
  int stuck_ = -1;
  std::vector<Finding> broken_;
};

}  // namespace

Plan plan_bare(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options, Spent& spent,
               const Plan* plain) {
  return Under(grid, machine, effort, options, spent, plain).run();
}

Plan plan_under(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options,
                Spent& spent, const Plan* plain) {
  const Deadline deadline(options);
  const std::int64_t before = spent.work;
  Progress told{0, -1, 0};
  PlanOptions own = options;
  if (options.progress) {
    own.progress = [&](const Progress& now) {
      told = now;
      options.progress(now);
    };
  }
  Plan plan = plan_bare(grid, machine, effort, own, spent, plain);
  if (plan.status != PlanStatus::infeasible) return plan;
  if (spent.why) {
    plan = with_reasons(std::move(plan), {grid, machine, effort, options, deadline, spent, spent.work - before, told});
  }
  if (options.progress) options.progress({told.bound_ms, -1, 1.0});
  return plan;
}

}  // namespace latchwork::inline v0::planning
