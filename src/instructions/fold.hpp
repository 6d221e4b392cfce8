#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace latchwork::inline v0::writing {

/// What is done at a stop, as a number that is equal for equal work, and the row after which it is done.
struct StopWork {
  int row = 0;
  int work = 0;
  std::size_t letters = 0;  ///< what telling it costs
};

/// Stops first..first+count-1, told as they are; or, where `back` is not 0, each as the one so many stops before it:
/// the last `back` stops once more, over and over while they last, so that the last time may end early.
struct Fold {
  std::size_t first = 0;
  std::size_t count = 1;
  std::size_t back = 0;
};

/// Stops written with few letters, where a repeat counts for more than its line, since it sends the reader back: told,
/// or as stops before them, in order. Written out again they give the stops. What is repeated is work; rows may rise in
/// other steps, since each repeat tells its own. The stops that a repeat names are told one after another, or are all
/// the same one; but for that no way takes fewer letters. Stops up to 256 back are looked at, at most 256 steps a stop
/// and round, in a few rounds.
std::vector<Fold> folded(std::span<const StopWork> stops);

/// For each stop the one whose work is told for it: itself, or one that is told as it is.
std::vector<std::size_t> told_by(const std::vector<Fold>& folds);

}  // namespace latchwork::inline v0::writing
