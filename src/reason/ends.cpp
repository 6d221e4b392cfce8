#include "reason/ends.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>

#include "latchwork/error.hpp"

namespace latchwork::inline v0 {
namespace {

/// A better plan is found long before it is proven to be the least, and is enough.
struct Trial {
  std::int64_t work;  ///< that it may do
  double told;        ///< the share of the place that progress tells at its end
};
constexpr std::array<Trial, 3> trials = {{{2'000'000, 0.05}, {32'000'000, 0.15}, {512'000'000, 0.4}}};

}  // namespace

std::int64_t total_of(const Plan& plan, const Effort& effort) {
  const HandWork work = hand_work(plan, effort);
  return work.hand_ms + work.carriage_ms;
}

std::int64_t times(const Plan& plan, const EffortPart& term) {
  Effort one{0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0};
  one.*term.cost = 1;
  return total_of(plan, one);
}

void EndWalker::walk(std::vector<ToleranceEnd>& ends, double from) {
  std::vector<ToleranceEnd*> open;
  open.reserve(ends.size());
  for (ToleranceEnd& end : ends) open.push_back(&end);
  bool again = false;
  while (!open.empty() && !call_.ended()) {
    // One share more than there are ends is left for those that need more; the last has all.
    auto shares = static_cast<double>(open.size()) + (again && open.size() == 1 ? 0 : 1);
    for (ToleranceEnd* end : open) {
      const double to = from + (1 - from) / shares;
      walk(*end, from, to);
      from = to;
      shares -= 1;
      call_.tell(told_, from);
    }
    std::erase_if(open, [](const ToleranceEnd* end) { return end->found || end->hopeless; });
    again = true;
  }
}

void EndWalker::walk(ToleranceEnd& end, double from, double to) {
  const std::int64_t value = effort_.*end.term.cost;
  const std::int64_t often = times(mine_, end.term);
  while (end.at != value) {
    const double half = (from + to) / 2;  // nobody knows how many plans it takes
    const auto other = better_or_least(end, from, half);
    if (!other) return;
    from = half;
    Effort moved = effort_;
    moved.*end.term.cost = end.at;
    const std::int64_t gain = total_of(mine_, moved) - total_of(*other, moved);
    if (gain <= 0) {
      end.found = other->status == PlanStatus::optimal;
      end.hopeless = !end.found && !call_.cut_short();
      return;
    }
    // How much nearer to the value the other takes no less: its line is the flatter one on this side.
    const std::int64_t slope = std::abs(often - times(*other, end.term));
    const std::int64_t step = (gain + slope - 1) / slope;
    end.at += end.at > value ? -step : step;
  }
  end.found = true;
}

std::optional<Plan> EndWalker::better_or_least(ToleranceEnd& end, double from, double to) {
  Effort moved = effort_;
  moved.*end.term.cost = end.at;
  const std::int64_t mine = total_of(mine_, moved);
  std::optional<Plan> found;
  double done = from;
  for (std::size_t trial = 0; !call_.ended(); ++trial) {
    // A search for few kinds of stop that is given so much work would leave the allowance of its own.
    const PlanOptions whole = call_.part(from, to, told_);
    const bool last = trial == trials.size() || call_.under_few_kinds() ||
                      (whole.work_limit > 0 && whole.work_limit <= trials[trial].work);
    const double till = last ? to : from + (to - from) * trials[trial].told;
    PlanOptions own = call_.part(std::exchange(done, till), till, told_);
    own.time_limit_ms = whole.time_limit_ms;
    own.work_limit = last ? whole.work_limit : trials[trial].work;
    try {
      found = call_.plan(grid_, machine_, moved, own);
      const bool enough = found->status == PlanStatus::optimal || total_of(*found, moved) < mine;
      if (last || enough || !call_.cut_short()) break;
    } catch (const Error& error) {
      if (!planning::came_to_no_end(error)) throw;
      if (!last && call_.cut_short()) continue;
      end.hopeless = !call_.cut_short();
      break;
    }
  }
  return found;
}

}  // namespace latchwork::inline v0
