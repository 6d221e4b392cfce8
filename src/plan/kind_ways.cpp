#include "plan/kind_ways.hpp"

#include <algorithm>
#include <utility>

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
  ways_.assign(problem_.lanes.size(), {});
}

std::int64_t KindWays::to_go(std::size_t lane, Standing standing) const {
  const Window& window = windows_.lanes[lane].layer[at(row_) + 1];
  const std::int64_t* go = prices_.to_go(lane);
  if (standing >= 0) return window.has(standing) ? go[standing - window.low] : far;
  return window.held == -1 - standing ? go[window.states()] : far;
}

const std::vector<Way>& KindWays::of(std::size_t lane, Standing from) {
  const auto [place, fresh] = ways_[lane].try_emplace(from);
  if (!fresh) return place->second;
  std::vector<Way>& out = place->second;
  const Lane& worked = problem_.lanes[lane];
  const Window& after = windows_.lanes[lane].layer[at(row_) + 1];
  const auto offer = [&](Standing to, std::int64_t cost, std::vector<int> deeds) {
    if (to_go(lane, to) < far) out.push_back({to, cost, std::move(deeds)});
  };
  offer(from, 0, {});
  if (from < 0) {
    const int held = -1 - from;
    if (worked.task(held).high - 1 == row_) offer(held + 1, 0, deeds_.release(worked, held));
  } else {
    const bool holds = after.held >= 0 && worked.task(after.held).low - 1 == row_;
    if (holds && after.held == from) offer(held_over(from), worked.hold, deeds_.hold(worked, from));
    const int done = worked.done_at(row_);
    if (done > from && worked.task(from).last_stop >= row_) {
      std::vector<int> deeds = deeds_.batch(worked, from, row_);
      const std::int64_t cost = worked.batch_cost(from, row_);
      offer(done, cost, deeds);
      if (holds && after.held == done) {
        const std::vector<int> more = deeds_.hold(worked, done);
        deeds.insert(deeds.end(), more.begin(), more.end());
        offer(held_over(done), cost + worked.hold, std::move(deeds));
      }
    }
  }
  std::stable_sort(out.begin(), out.end(),
                   [&](const Way& a, const Way& b) { return a.cost + to_go(lane, a.to) < b.cost + to_go(lane, b.to); });
  return out;
}

}  // namespace latchwork::inline v0::planning
