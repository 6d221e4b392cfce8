#pragma once

#include <span>
#include <string>
#include <string_view>

namespace latchwork::inline v0 {

/// The one of `names` that a misspelt name is nearest to, small letters and capitals alike; the first of several; empty
/// where none is near. How far is counted in letters left out, put in, changed or swapped with their neighbour (the
/// optimal string alignment distance), and near is up to one letter in three of the longer name. Quick for any length.
std::string_view near_name(std::string_view misspelt, std::span<const std::string_view> names);

/// For the end of a message that refuses a name: `; perhaps "rows" was meant`, or nothing where none is near.
std::string perhaps_meant(std::string_view misspelt, std::span<const std::string_view> names);

}  // namespace latchwork::inline v0
