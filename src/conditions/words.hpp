#pragma once

#include <string>
#include <vector>

#include "latchwork/conditions.hpp"

namespace latchwork::inline v0 {

/// The conditions for people, one each: "stops 4 rows apart or more". Empty where nothing is asked.
std::vector<std::string> condition_words(const Conditions& conditions);

}  // namespace latchwork::inline v0
