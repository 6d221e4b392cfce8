#pragma once

#include <cstdint>

namespace latchwork_test {

/// SplitMix64 (Steele, Lea, Flood, OOPSLA 2014): the same numbers everywhere, which <random>'s distributions are not.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}
  std::uint64_t next() {
    state_ += 0x9E3779B97F4A7C15U;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31);
  }
  /// A whole number from `least` to `most`, both in.
  int between(int least, int most) {
    return least + static_cast<int>(next() % static_cast<std::uint64_t>(most - least + 1));
  }
  /// True once in `n` on average.
  bool one_in(int n) { return between(1, n) == 1; }

 private:
  std::uint64_t state_;
};

}  // namespace latchwork_test
