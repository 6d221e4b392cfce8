#pragma once

#include <cstdint>
#include <string>

namespace latchwork::inline v0 {

/// A time for people, rounded, but below a second as it is: "0.5 s", "40 s", "3 min 20 s", "12 min", "5 h", "5 h 12
/// min"; "-40 s" below 0.
std::string rounded_duration(std::int64_t ms);

}  // namespace latchwork::inline v0
