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

/// Stops first..first+count-1, made `times` times in all, each time `period` rows further up.
struct Fold {
  std::size_t first = 0;
  std::size_t count = 1;
  std::size_t times = 1;
  int period = 0;
};

/// Folds runs of stops that come again at a steady distance, in order, where that saves letters; written out again the
/// folds give the stops.
/// Runs of up to 64 stops are found, so the work is linear in the stops.
std::vector<Fold> folded(std::span<const StopWork> stops);

}  // namespace latchwork::inline v0::writing
