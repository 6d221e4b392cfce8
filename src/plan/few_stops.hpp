#pragma once

#include <optional>
#include <vector>

#include "plan/problem.hpp"
#include "plan/search.hpp"

// Schedules that are had without a search, for what ends before one has found any.

namespace latchwork::inline v0::planning {

/// Stops at which every lane can be made, each as far from the one below as the problem asks: as few as may be, where
/// no lane has stacks. From every row on it is known which stop below may come before it, so that no choice is tried in
/// vain. None when this finds none; there may be some, where stops are apart and what a stack or a hold takes up is in
/// the way. Linear in lanes times rows, a few times where there are stacks.
std::optional<Schedule> few_stops(const Problem& problem);

/// The same, but looked for as if a lane could be worked after any row, and so that each hand cell is done no more than
/// `wait` rows after it could be; what they cost is of the least works at these stops. None where no stops are found so
/// far apart, or some lane is in the middle of a stack at one that was to serve it. Linear in lanes times rows, once.
std::optional<Schedule> few_stops_within(const Problem& problem, int wait);

/// Every task as soon as it can be done, on its own: at these stops the lanes can always be made, where stops need not
/// be apart, for no more than the cost told. Linear in tasks.
Schedule soonest(const Problem& problem);

}  // namespace latchwork::inline v0::planning
