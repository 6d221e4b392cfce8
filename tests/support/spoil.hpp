#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include "latchwork/plan.hpp"
#include "random.hpp"

namespace latchwork_test {

/// Ways of spoiling one step of a plan.
enum class Spoil {
  stop_left_out,
  reform_left_out,
  rung_left_out,   ///< those above come one row lower
  rung_not_taken,  ///< it is passed over
  crossing_left_out,
  hold_left_out,
  release_left_out,
  shaping_left_out,
  reform_elsewhere,  ///< on the needle beside
  hold_elsewhere,
  crossing_elsewhere,
  shaping_elsewhere,
  rung_other,      ///< of another type
  depth_other,     ///< from one row above or below, with the same rungs
  deeper_as_knit,  ///< from one row below, with one more knit
  shallower,       ///< without the lowest rung
  returns_swapped,
  stop_moved,   ///< one row early or late
  reform_late,  ///< at the next stop
  reforms_swapped,
  reform_twice,
  crossing_twice,
  words_only,  ///< hints, counts and costs
  count,
};

inline constexpr std::array<std::string_view, static_cast<std::size_t>(Spoil::count)> spoil_words = {
    "stop left out",      "re-form left out",  "rung left out",    "rung not taken",    "crossing left out",
    "hold left out",      "release left out",  "shaping left out", "re-form elsewhere", "hold elsewhere",
    "crossing elsewhere", "shaping elsewhere", "rung other",       "depth other",       "deeper as knit",
    "shallower",          "returns swapped",   "stop moved",       "re-form late",      "re-forms swapped",
    "re-form twice",      "crossing twice",    "words only"};

/// Spoils one step of the plan, at a stop by chance; false where that has no such step.
bool spoil(Random& random, latchwork::Plan& plan, Spoil kind);

/// Spoils the plan in this way, at one stop or another; false where a dozen tries found no such step.
bool spoil_somewhere(Random& random, latchwork::Plan& plan, Spoil kind);

/// Makes what a plan says of itself, and no motion shows, true of its needles and rows again: carriage sides, columns,
/// wales. What is left of a spoiling is about the cloth.
void relabel(const latchwork::Grid& grid, latchwork::Plan& plan);

}  // namespace latchwork_test
