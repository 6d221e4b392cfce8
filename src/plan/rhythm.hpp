#pragma once

#include <algorithm>
#include <limits>
#include <optional>
#include <vector>

#include "latchwork/conditions.hpp"
#include "plan/problem.hpp"
#include "plan/works.hpp"

namespace latchwork::inline v0::planning {

/// Some task of a lane can be done at no stop any more.
inline constexpr int missed = -1;

/// How many of a lane's tasks are done after a stop at which all that is due is, if `standing` were before it: as many
/// when nothing is due, or it waits.
inline int done_at_stop(const Lane& lane, int standing, int row) {
  if (standing < lane.task_count() && lane.task(standing).last_stop < row) return missed;
  return std::max(standing, lane.done_at(row));
}

/// What a lane does when all that is due is done at each stop of a rhythm; no cost when a task comes too late for its
/// last stop. No holds. Linear in the rhythm's stops.
Works works_in_rhythm(const Lane& lane, const Rhythm& rhythm, int rows);

/// Which `first` are worth a trial with an `every`. Stops at which nothing is due are as good as not there, so that a
/// rhythm is known by `every`, its stops' rows modulo `every`, and the first of them that comes once something can be
/// done.
class RhythmFirsts {
 public:
  /// The lanes are to stay where they are.
  explicit RhythmFirsts(const std::vector<Lane>& lanes);

  /// Every `first` that may make a rhythm of its own with this `every`, smallest first: some stop of it does the
  /// narrowest task (or falls on `forced`, where that is not 0), and it begins neither too late for any task nor
  /// needlessly late.
  std::vector<int> of(int every, int forced = 0) const;

  /// The rows between stops from which on, the more the tighter, a rhythm that serves the narrowest task may come too
  /// late for another: with so many or fewer it comes in time wherever no stack is in its way. 1 or more.
  int widest_in_time() const;

  /// Every `every` of 1..rows, in the order in which some rhythm is found soonest: from the widest that comes in time
  /// down to the densest, then wider ones.
  std::vector<int> likely(int rows) const;

 private:
  int earliest_ = std::numeric_limits<int>::max();  // row of the first stop at which anything can be done
  int latest_ = std::numeric_limits<int>::max();    // row by which the first stop must have come
  const Task* narrowest_ = nullptr;                 // the one with the fewest rows to stop at, if any
  const std::vector<Lane>* lanes_;
};

}  // namespace latchwork::inline v0::planning
