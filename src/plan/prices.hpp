#pragma once

#include <cstdint>
#include <vector>

#include "plan/priced_lane.hpp"
#include "plan/windows.hpp"

namespace latchwork::inline v0::planning {

/// A price for each lane and stop, at most the stop's cost in sum over the lanes: then the forced stops and every
/// lane's cheapest way under its prices cannot cost more than any plan. That sum is the bound.
class Prices {
 public:
  Prices(const Problem& problem, const Windows& windows);

  /// Sets the prices of each free stop in turn anew, so that the bound rises as far as this stop alone allows: up the
  /// rows and down again. The bound never falls. Returns the new bound.
  std::int64_t ascend();

  /// Where ascent by single stops is stuck, goes along an averaged subgradient of the bound, `steps` times: each stop
  /// is made dearer for the lanes whose cheapest way uses it and cheaper for the others. `best` is the cost of the best
  /// schedule known; steps are sized by what is missing to it. Ends at the best prices met: the bound never falls.
  std::int64_t climb(int steps, std::int64_t best);

  std::int64_t bound() const noexcept { return bound_; }
  /// Finds the ways to go under the prices as they are; to be called before to_go() when prices were set anew.
  void find_ways();
  /// Cheapest way to the end from the states of a lane's layer, under the prices.
  const std::int64_t* to_go(std::size_t lane, int layer) const {
    const auto& offset = windows_->lanes[lane].offset;
    return back_[lane].data() + offset[static_cast<std::size_t>(layer)];
  }
  /// What each user of a stop after the row pays for it, in the order of Windows::users; all 0 at a forced stop.
  const std::vector<std::int64_t>& at_row(int row) const { return price_[static_cast<std::size_t>(row)]; }
  /// A lane's cheapest way from the cast-on to the end, under the prices.
  std::int64_t least(std::size_t lane) const { return lanes_[lane].least(); }
  /// Steps made so far: the work done.
  std::int64_t work() const noexcept { return work_; }

 private:
  template <class Go, class Set>
  void price_row(int row, Go go, Set set);
  std::int64_t way_back();
  std::int64_t sum();

  const Problem* problem_;
  const Windows* windows_;
  std::vector<PricedLane> lanes_;
  std::vector<std::vector<std::int64_t>> back_;   // per lane: cheapest way from each state, when ways_found_
  std::vector<std::vector<std::int64_t>> price_;  // per row: of its users
  std::int64_t forced_cost_ = 0;
  std::int64_t bound_ = 0;
  std::int64_t work_ = 0;
  bool ways_found_ = false;
};

}  // namespace latchwork::inline v0::planning
