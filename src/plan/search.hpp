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

/// What became of one label, for a proof that others can follow.
struct Fate {
  std::uint32_t from = 0;  ///< label of the row below, counted among those kept
  bool stop = false;
  enum class End : std::uint8_t { kept, bound, dominated } end = End::bound;
  std::uint32_t by = 0;  ///< dominated: a kept one's place in the row's list
};

/// Per row 0..R: every label that was made, by `from`, a stop first.
using Fates = std::vector<std::vector<Fate>>;

/// Goes up the rows with at most `width` partial schedules (labels) a row, the most promising by their bound under the
/// prices. A label is dropped when its bound passes the incumbent, or when another is at least as good whatever
/// follows. Among schedules of one cost it takes the one whose first differing row has a stop. Improves `best` in
/// place. `go_on(work, share)` is asked now and then. With `fates`, writes there what became of each label, and drops
/// one that is as good as another whatever its stops' rows.
Pass search(const Problem& problem, const Windows& windows, const Prices& prices, std::size_t width, Schedule& best,
            const std::function<bool(std::int64_t, double)>& go_on, Fates* fates = nullptr);

}  // namespace latchwork::inline v0::planning
