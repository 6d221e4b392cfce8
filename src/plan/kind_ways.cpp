#include "plan/kind_ways.hpp"

#include "plan/index.hpp"

namespace latchwork::inline v0::planning {
namespace {

Standing held_over(int task) {
  return -1 - task;
}

}  // namespace

void KindWays::enter(int row) {
  row_ = row;
  prices_.look_from(row + 1);
  std::size_t states = 0;
  for (std::size_t lane = 0; lane < begin_.size(); ++lane) {
    begin_[lane] = states;
    states += at(windows_.lanes[lane].layer[at(row)].states()) + 1;
  }
  known_.assign(states, nullptr);
  ways_.clear();
}

std::int64_t KindWays::to_go(std::size_t lane, Standing standing) const {
  const Window& window = windows_.lanes[lane].layer[at(row_) + 1];
  const std::int64_t* go = prices_.to_go(lane);
  if (standing >= 0) return window.has(standing) ? go[standing - window.low] : far;
  return window.held == -1 - standing ? go[window.states()] : far;
}

std::span<const Way> KindWays::of(std::size_t lane, Standing from) {
  const Window& before = windows_.lanes[lane].layer[at(row_)];
  const int state = from >= 0 ? from - before.low : before.states();
  const Ways*& known = known_[begin_[lane] + at(state)];
  if (!known) {
    Ways& fresh = ways_.emplace_back();
    find(lane, from, fresh);
    known = &fresh;
  }
  return {known->list.data(), known->count};
}

void KindWays::find(std::size_t lane, Standing from, Ways& out) {
  const Lane& worked = problem_.lanes[lane];
  const Window& after = windows_.lanes[lane].layer[at(row_) + 1];
  const auto offer = [&](Standing to, std::int64_t cost, const DeedList& deeds) {
    const std::int64_t go = to_go(lane, to);
    if (go >= far) return;
    std::size_t place = out.count++;
    for (; place > 0; --place) {
      const Way& below = out.list[place - 1];
      if (below.cost + below.to_go <= cost + go) break;
      out.list[place] = below;
    }
    out.list[place] = {to, cost, go, deeds};
  };
  offer(from, 0, {});
  if (from < 0) {
    const int held = -1 - from;
    if (worked.task(held).high - 1 == row_) offer(held + 1, 0, deeds_.release(worked, held));
    return;
  }
  const bool holds = after.held >= 0 && worked.task(after.held).low - 1 == row_;
  if (holds && after.held == from) offer(held_over(from), worked.hold, deeds_.hold(worked, from));
  const int done = worked.done_at(row_);
  if (done <= from || worked.task(from).last_stop < row_) return;
  const std::int64_t cost = worked.batch_cost(from, row_);
  offer(done, cost, deeds_.batch(worked, from, row_));
  if (holds && after.held == done) {
    offer(held_over(done), cost + worked.hold, deeds_.batch_and_hold(worked, from, row_));
  }
}

}  // namespace latchwork::inline v0::planning
