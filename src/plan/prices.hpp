#pragma once

#include <cstdint>
#include <vector>

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
  /// Cheapest way to the end from the states of a lane's layer, under the prices.
  const std::int64_t* to_go(std::size_t lane, int layer) const {
    const auto& offset = windows_->lanes[lane].offset;
    return back_[lane].data() + offset[static_cast<std::size_t>(layer)];
  }
  /// What each user of a stop after the row pays for it, in the order of Windows::users; all 0 at a forced stop.
  const std::vector<std::int64_t>& at_row(int row) const { return price_[static_cast<std::size_t>(row)]; }
  /// A lane's cheapest way from the cast-on to the end, under the prices.
  std::int64_t least(std::size_t lane) const { return back_[lane].front(); }
  /// States looked at so far: the work done.
  std::int64_t work() const noexcept { return work_; }

 private:
  void price_row(int row);
  void take_ahead(int row);
  void take_back(std::size_t lane, int row, const std::int64_t* price);
  std::int64_t way_back();
  std::int64_t cheapest(std::size_t lane, const std::int64_t* price);
  void follow(std::size_t lane, const std::int64_t* price, char* used) const;

  struct Way {
    std::int64_t cost;
    int stop;  // of the batch; -1: by hold
  };

  const Problem* problem_;
  const Windows* windows_;
  std::vector<std::vector<std::int64_t>> ahead_;  // per lane: cheapest way to each state
  std::vector<std::vector<std::int64_t>> back_;   // per lane: cheapest way from each state
  std::vector<std::vector<std::int64_t>> price_;  // per row: of its users
  std::vector<std::vector<int>> slot_;            // per lane and row: its place among the row's users; -1: it is none
  std::vector<std::int64_t> stopped_;             // scratch: the states of all users of a row, with a stop
  std::vector<std::int64_t> gain_;                // scratch: what the stop is worth to each user
  // Of the lane that cheapest() looked at last: per task, the cheapest way from it and the stop of its batch (-1:
  // held); per row, what a batch that ends there adds, with all that follows.
  std::vector<std::int64_t> to_end_;
  std::vector<int> best_;
  std::vector<std::int64_t> adds_;
  std::int64_t forced_cost_ = 0;
  std::int64_t bound_ = 0;
  std::int64_t work_ = 0;
};

}  // namespace latchwork::inline v0::planning
