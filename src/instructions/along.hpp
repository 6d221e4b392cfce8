#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace latchwork::inline v0::writing {

/// One piece of a stop's work, on some needles.
struct OnNeedles {
  std::vector<int> needles;  ///< in the order of the hand, one or more
  std::string work;          ///< equal for equal work, wherever it is done
  std::string words;         ///< with its needles: "L89-L84: cross X1"
};

/// Pieces first..first+period-1, done `times` times, each time `step` places further right (below 0: left).
struct Along {
  std::size_t first = 0;
  std::size_t period = 1;
  std::size_t times = 1;
  int step = 0;
};

/// The pieces in order, what comes again along the bed told once, where that takes fewer letters. From the left the
/// most is saved first. Periods of up to 64 pieces are looked at.
std::vector<Along> along_the_bed(std::span<const OnNeedles> pieces);

/// "17 x [L93: 11 p | L90: 12 p], each 11 needles further right, to R87".
std::string along_words(std::span<const OnNeedles> pieces, const Along& along, const std::string& once);

/// Of that the words that a key explains: "each 11 needles further right".
std::string along_step(const Along& along);

}  // namespace latchwork::inline v0::writing
