#pragma once

#include <algorithm>
#include <cstdlib>

namespace latchwork_test {

/// How many cases of random input are tried; their seeds follow each other. LATCHWORK_PLANS sets it outright,
/// LATCHWORK_PART takes one in so many of the usual: under a sanitizer an oracle takes ten times as long, and what it
/// is to find there, wrong reads and writes, each case shows as well as the next.
inline int how_many(int usual) {
  const auto of = [](const char* name) {
    const char* const text = std::getenv(name);
    return text ? std::atoi(text) : 0;
  };
  if (const int count = of("LATCHWORK_PLANS"); count > 0) return count;
  if (const int part = of("LATCHWORK_PART"); part > 1) return std::max(usual / part, 1);
  return usual;
}

}  // namespace latchwork_test
