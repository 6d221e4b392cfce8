#pragma once

#include <cstddef>
#include <string>

namespace latchwork::inline v0 {

/// A, B, ... Z, AA, AB, ...: names for the crossings and strips of one paper.
std::string letter_name(std::size_t index);

}  // namespace latchwork::inline v0
