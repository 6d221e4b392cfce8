#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "plan/prices.hpp"

namespace latchwork::inline v0::planning {

/// Rows 0..R after which to stop, as flags, and their cost: hand work and one unit a stop.
struct Schedule {
  std::vector<char> stops;
  std::int64_t cost = far;
};

/// What one pass of the search found.
struct Pass {
  std::int64_t bound = far;  ///< no schedule but the incumbent that was passed in or out can cost less
  bool complete = false;     ///< nothing was left aside for want of width: the incumbent is the best
  bool broken_off = false;   ///< `go_on` said no
};

/// Goes up the rows with at most `width` partial schedules (labels) a row, the most promising by their bound under the
/// prices. A label is dropped when its bound passes the incumbent, or when another is at least as good whatever
/// follows. Among schedules of one cost it takes the one whose first differing row has a stop. Improves `best` in
/// place. `go_on(work, share)` is asked now and then.
Pass search(const Problem& problem, const Windows& windows, const Prices& prices, std::size_t width, Schedule& best,
            const std::function<bool(std::int64_t, double)>& go_on);

}  // namespace latchwork::inline v0::planning
