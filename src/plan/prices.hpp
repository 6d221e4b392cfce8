#pragma once

#include <cstdint>
#include <vector>

#include "plan/limits.hpp"
#include "plan/priced_lane.hpp"
#include "plan/windows.hpp"

namespace latchwork::inline v0::planning {

/// A price for each lane and stop, at most the stop's cost in sum over the lanes: then the forced stops and every
/// lane's cheapest way under its prices cannot cost more than any plan. That sum is the bound.
class Prices {
 public:
  /// Begins with each stop's cost shared out evenly. Where `limits` are over meanwhile it is left on the way: then
  /// these are no prices, see whole(), and nothing else may be asked of them.
  Prices(const Problem& problem, const Windows& windows, Limits* limits = nullptr);

  /// Sets the prices of each free stop in turn anew, so that the bound rises as far as this stop alone allows: up the
  /// rows and down again. The bound never falls. Returns the new bound. Where `limits` are over it is left on the way:
  /// the bound is as before, and the prices are of no more use. It does not go down again where the bound is more than
  /// `enough` once it is up: then whatever is asked next goes down first.
  std::int64_t ascend(Limits* limits = nullptr, std::int64_t enough = far);

  /// Where ascent by single stops is stuck, goes along an averaged subgradient of the bound, `steps` times: each stop
  /// is made dearer for the lanes whose cheapest way uses it and cheaper for the others. `best` is the cost of the best
  /// schedule known; steps are sized by what is missing to it. Ends at the best prices met: the bound never falls.
  /// Where `limits` are over it is left on the way, as ascend() is.
  std::int64_t climb(int steps, std::int64_t best, Limits* limits = nullptr);

  /// Whether they were set up to the end.
  bool whole() const noexcept { return whole_; }
  std::int64_t bound() const noexcept { return bound_; }
  /// Finds every lane's ways to go from a layer under the prices as they are: to_go() tells them until the next call.
  void look_from(int layer);
  /// Cheapest way to the end from the states of a lane in the layer looked from.
  const std::int64_t* to_go(std::size_t lane) const { return go_.data() + go_at_[lane]; }
  /// What each user of a stop after the row pays for it, in the order of Windows::users; all 0 at a forced stop.
  const std::vector<std::int64_t>& at_row(int row) const { return price_[static_cast<std::size_t>(row)]; }
  /// A lane's cheapest way from the cast-on to the end, under the prices.
  std::int64_t least(std::size_t lane) const { return lanes_[lane].least(); }
  /// Steps made so far: the work done.
  std::int64_t work() const noexcept { return work_; }

 private:
  template <class Go, class Set>
  void price_row(int row, Go go, Set set);
  bool begin(Limits* limits);
  bool take_down(Limits* limits);
  std::int64_t sum();
  std::int64_t sum_of_least();

  const Problem* problem_;
  const Windows* windows_;
  std::vector<PricedLane> lanes_;
  std::vector<std::int64_t> go_;                  // cheapest ways from the layer looked from, lane by lane
  std::vector<std::size_t> go_at_;                // per lane: where they begin
  std::vector<std::vector<std::int64_t>> price_;  // per row: of its users
  std::int64_t forced_cost_ = 0;
  std::int64_t bound_ = 0;
  std::int64_t work_ = 0;
  std::int64_t states_ = 0;  // in all layers
  bool ready_ = false;       // the lanes are, for looking under these prices
  bool down_ = false;        // the last way was one down, under all prices as they are
  bool whole_;               // set last: all above is filled meanwhile
};

}  // namespace latchwork::inline v0::planning
