#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/quantity.hpp"

namespace latchwork::inline v0 {

/// Where the first and the last event stand. The values are in the C ABI.
enum class SpacingEnds : std::uint8_t {
  in_the_round = 0,  ///< k gaps, an event at the end of each: round a tube, or up rows, the last event in the last row
  flat = 1,          ///< k + 1 gaps, one at each edge and one between two events
  half_ends = 2,     ///< k gaps, the one across the ends cut in two: half of it at each edge
};

/// Events spread over stitches or rows as evenly as whole ones allow.
struct Spacing {
  int length = 1;                                ///< stitches or rows, 1..max_spacing
  int events = 1;                                ///< k, 1 or more
  SpacingEnds ends = SpacingEnds::in_the_round;  ///< where the first and the last event stand
  int step = 1;                                  ///< every gap is a multiple of it: 2 for shaping in even rows only
  int every = 1;                                 ///< the shorter gap
  int times = 1;                                 ///< how many gaps of `every`
  int longer_times = 0;                          ///< how many gaps of every + step
  int rest = 0;                                  ///< length mod step: what no gap takes, at the far end
  std::vector<int> gaps;       ///< in order, their sum length - rest; with half_ends the first and last are the halves
  std::vector<int> positions;  ///< of each event: stitches or rows worked before it, in order
  friend bool operator==(const Spacing&, const Spacing&) = default;
};

inline constexpr int max_spacing = 1'000'000;  ///< longest length

/// Spreads events evenly. With g gaps over n = length / step (rounded down), q = n / g and r = n mod g, there are g - r
/// gaps of q and r of q + 1 (each times step), in the order of Bresenham's lines: gap i ends at floor(i n / g) in the
/// round, and at i n / g rounded to the nearest, halves up, on flat pieces, which keeps the two edges alike; with
/// half_ends the events stand at (2 i - 1) n / 2 g, rounded so. Any m gaps in a row sum to within 1 (times step) of any
/// other m. (J. Harris and E. Reingold, Line drawing, leap years, and Euclid, ACM Comput. Surv. 36, 2004.)
/// Linear in the events.
/// @throws Error bad_argument (field "length", "ends", "step"); "events" below 1 or for more than fit: in the round at
/// most n, flat and with half ends n - 1, so that none stands on an edge.
LATCHWORK_API Spacing spaced_evenly(int length, int events, SpacingEnds ends = SpacingEnds::in_the_round, int step = 1);

/// For people. In the round "every 9th row 2 times, every 10th row 9 times"; flat "1 gap of 10 stitches, 10 gaps of 11
/// stitches"; with half ends "after 6 stitches, then every 13th stitch 3 times; 6 stitches after the last". How many of
/// each, not in which order: that is in `gaps`. What no gap takes is said at the end.
/// @throws Error bad_argument (field "counted"; "every", "step" of what spaced_evenly() did not make).
LATCHWORK_API std::string spacing_text(const Spacing& spacing, Counted counted);

}  // namespace latchwork::inline v0
