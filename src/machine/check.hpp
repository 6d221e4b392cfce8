#pragma once

#include "latchwork/machine.hpp"

namespace latchwork::inline v0 {

/// @throws Error bad_argument with the field ("machine.pitch_mm") for a machine out of the ranges its header gives.
void check(const Machine& machine);

/// Needles left and right of the bed's centre; an odd count puts the odd one on the left.
inline int needles_left(const Machine& machine) noexcept {
  return (machine.needles + 1) / 2;
}
inline int needles_right(const Machine& machine) noexcept {
  return machine.needles / 2;
}

}  // namespace latchwork::inline v0
