#pragma once

#include "latchwork/effort.hpp"

namespace latchwork::inline v0 {

inline constexpr std::int64_t max_effort_ms = 3'600'000;

/// @throws Error bad_argument with the field ("effort.stop", of an argument of that name) for a number outside
/// 0..max_effort_ms.
void check(const Effort& effort, const char* name = "effort");

}  // namespace latchwork::inline v0
