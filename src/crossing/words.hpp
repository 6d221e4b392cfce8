#pragma once

#include <string>

#include "latchwork/crossing.hpp"

namespace latchwork::inline v0 {

/// "3/3 right cross"; "2/1/2 left cross, centre behind". For papers with a key of abbreviations, where "RC" is taken:
/// it is the row counter.
std::string crossing_long_name(const Crossing& crossing);

}  // namespace latchwork::inline v0
