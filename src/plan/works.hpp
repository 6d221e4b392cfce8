#pragma once

#include <cstdint>
#include <vector>

#include "plan/limits.hpp"
#include "plan/problem.hpp"

namespace latchwork::inline v0::planning {

/// What a lane does at given stops: a batch over tasks first..last, or its needle held over task `first`.
struct Work {
  bool hold = false;
  int first = 0;
  int last = 0;
  int stop = 0;  ///< row after which the batch is made, or the hold is set
};

struct Works {
  std::vector<Work> list;  ///< from the lowest
  std::int64_t cost = 0;   ///< far when these stops do not allow the lane to be made
};

/// Stops of a schedule, laid out for lane after lane.
struct StopRows {
  std::vector<char> flags;  ///< per row 0..R
  std::vector<int> rows;    ///< those with a stop, rising
};
StopRows stop_rows(std::vector<char> flags);

/// The lane's cheapest works at these stops. Ties: fewer batches and holds, then fewer holds, then from the lowest up
/// the batch at the earlier stop. Linear in tasks and stops.
Works works_of(const Lane& lane, const StopRows& stops);

/// Cost of a schedule, forced stops included whether flagged or not; far when a lane cannot be made with it, and where
/// `limits` are over meanwhile. Else `works`, where asked for, are those of works_of(), one list a lane.
std::int64_t cost_of(const Problem& problem, const std::vector<char>& stops, Limits* limits = nullptr,
                     std::vector<std::vector<Work>>* works = nullptr);

/// Cost of works, one list a lane: theirs, and of the stops that they or the problem need.
std::int64_t cost_of_works(const Problem& problem, const std::vector<std::vector<Work>>& works);

}  // namespace latchwork::inline v0::planning
