#include <algorithm>
#include <cstddef>
#include <memory>
#include <utility>

#include "conditions/check.hpp"
#include "effort/check.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/error.hpp"
#include "machine/check.hpp"
#include "plan/inputs.hpp"
#include "plan/one_call.hpp"
#include "plan/stops.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double part_of_least = 0.25;  // of the time: its bound is every point's
constexpr double least_part = 0.125;    // of the time that is left: for each number of kinds
constexpr double last_from = 0.999;     // some is left to be shared, however many there are
constexpr int quarters_after = 2;       // of the time to read the panel: a plan's kinds are counted

/// What is known of the plans with at most so many kinds of stop, for each number of kinds from 1.
class Counts {
 public:
  using Shared = std::shared_ptr<Plan>;  // of a large panel it takes long to copy

  /// `least`: the plan with any number, which is so many.
  Counts(const Shared& least, int kinds, int most) : counts_(static_cast<std::size_t>(most) + 1) {
    counts_.back().bound_ms = least->bound_ms;
    take(least, kinds);
  }

  int most() const { return static_cast<int>(counts_.size()) - 1; }
  /// No plan has so many kinds or fewer.
  void rule_out(int kinds) { none_ = std::max(none_, kinds); }
  int none() const { return none_; }
  void look_at(int kinds) { of(kinds).looked = true; }
  /// Of all plans of so many kinds or fewer.
  void bind(int kinds, std::int64_t bound_ms) { of(kinds).bound_ms = std::max(of(kinds).bound_ms, bound_ms); }
  /// Of equals the first stays.
  void take(const Shared& plan, int kinds) {
    if (kinds > most()) return;
    Shared& best = of(kinds).best;
    if (!best || plan->total_ms < best->total_ms) best = plan;
  }

  /// The numbers of kinds that nobody looked at and nothing settles: a proof that there is none, or a plan of so many
  /// kinds or fewer that is as good as the bound of one with so many or more.
  std::vector<int> open() const {
    std::vector<std::int64_t> bounds(counts_.size() + 1, 0);
    for (std::size_t kinds = counts_.size(); kinds-- > 0;) {
      bounds[kinds] = std::max(bounds[kinds + 1], counts_[kinds].bound_ms);
    }
    std::vector<int> open;
    std::int64_t best_ms = -1;
    for (std::size_t kinds = 0; kinds < counts_.size(); ++kinds) {
      const Shared& best = counts_[kinds].best;
      if (best && (best_ms < 0 || best->total_ms < best_ms)) best_ms = best->total_ms;
      const bool settled = static_cast<int>(kinds) <= none_ || (best_ms >= 0 && best_ms <= bounds[kinds]);
      if (!settled && !counts_[kinds].looked) open.push_back(static_cast<int>(kinds));
    }
    return open;
  }

  /// From the fewest kinds on, each that takes less than those before. What binds plans of more kinds binds those of
  /// fewer.
  std::vector<FrontPoint> points() && {
    std::int64_t bound_ms = 0;
    for (std::size_t kinds = counts_.size(); kinds-- > 0;) {
      bound_ms = std::max(bound_ms, counts_[kinds].bound_ms);
      counts_[kinds].bound_ms = bound_ms;
    }
    std::vector<FrontPoint> points;
    for (std::size_t kinds = 0; kinds < counts_.size(); ++kinds) {
      const Shared& best = counts_[kinds].best;
      if (!best || (!points.empty() && points.back().plan.total_ms <= best->total_ms)) continue;
      best->bound_ms = std::min(best->total_ms, counts_[kinds].bound_ms);
      best->status = best->bound_ms == best->total_ms ? PlanStatus::optimal : PlanStatus::feasible;
      points.push_back({static_cast<int>(kinds), std::move(*best)});
    }
    return points;
  }

 private:
  struct Count {
    bool looked = false;
    std::int64_t bound_ms = 0;
    Shared best;  // of just so many kinds
  };
  Count& of(int kinds) { return counts_[static_cast<std::size_t>(kinds)]; }

  std::vector<Count> counts_;
  int none_ = 0;
};

/// The ends first, then the middle of the longest run of those that are open, of equals the lowest: whenever it ends,
/// what was looked at is spread.
int next_of(const std::vector<int>& open, int most) {
  if (open.front() == 1) return 1;
  if (open.back() == most) return most;
  std::size_t longest = 0;
  std::size_t from = 0;
  for (std::size_t i = 0, begin = 0; i < open.size(); ++i) {
    if (i > 0 && open[i] != open[i - 1] + 1) begin = i;
    if (i - begin + 1 <= longest) continue;
    longest = i - begin + 1;
    from = begin;
  }
  return open[from + (longest - 1) / 2];
}

}  // namespace

Front plan_front(const Grid& grid, const Machine& machine, const Effort& effort, const PlanOptions& options) {
  planning::OneCall call(options);  // its clock runs from here
  check(machine);
  check(effort);
  planning::check(options);
  check(options.conditions, grid.rows(), grid.columns());
  call.keep_back_after(quarters_after);
  PlanOptions own = call.part(0, part_of_least);
  own.conditions.max_kinds = 0;
  const auto least = std::make_shared<Plan>(call.plan(grid, machine, effort, own));
  Front front;
  front.findings = least->findings;
  const planning::OneCall::Told told = planning::told_of(*least);
  if (least->status == PlanStatus::infeasible) {
    call.tell(told, 1);
    return front;
  }
  call.bind(least->bound_ms);  // of more kinds and fewer
  const int kinds_of_least = kinds_of(*least);
  int most = kinds_of_least;
  if (options.conditions.max_kinds > 0) most = std::min(most, options.conditions.max_kinds);

  Counts counts(least, kinds_of_least, most);
  double done = part_of_least;
  for (std::vector<int> open = counts.open(); !open.empty() && !call.ended(); open = counts.open()) {
    const int kinds = next_of(open, most);
    const double from = std::min(done, last_from);
    done = open.size() == 1 ? 1 : from + (1 - from) * std::max(least_part, 1.0 / static_cast<double>(open.size()));
    own = call.part(from, done, told);
    own.conditions.max_kinds = kinds;
    counts.look_at(kinds);
    call.ask_why(kinds == most);
    try {
      const auto found = std::make_shared<Plan>(call.plan(grid, machine, effort, own, least.get()));
      if (found->status == PlanStatus::infeasible) {
        counts.rule_out(kinds);
        if (kinds == most) front.findings = found->findings;
        continue;
      }
      counts.bind(kinds, found->bound_ms);
      counts.take(found, kinds_of(*found));
    } catch (const Error& error) {
      if (!planning::came_to_no_end(error)) throw;  // else none was found, and none is ruled out
    }
  }
  const int none = counts.none();
  front.points = std::move(counts).points();
  // Where there is work for hands, there is a stop.
  front.fewest_proven = front.points.empty() ? none == most : front.points.front().kinds <= none + 1;
  call.tell(told, 1);
  return front;
}

}  // namespace latchwork::inline v0
