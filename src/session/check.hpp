#pragma once

#include <cstdint>

namespace latchwork::inline v0::sitting {

inline constexpr std::int64_t least_length_ms = 60'000;
inline constexpr std::int64_t most_length_ms = 86'400'000;

/// As SessionOptions says.
inline bool is_session(std::int64_t ms) {
  return ms >= least_length_ms && ms <= most_length_ms;
}
inline bool is_rest(std::int64_t ms) {
  return ms == 0 || is_session(ms);
}

}  // namespace latchwork::inline v0::sitting
