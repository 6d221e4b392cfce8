#include "latchwork/spacing.hpp"

#include <algorithm>
#include <numeric>
#include <vector>

#include "catch.hpp"

namespace spacing_test {

using namespace latchwork;

namespace {

/// Sums of `width` neighbouring gaps: least and greatest. Round a ring where `ring` is set.
bool even(const std::vector<int>& gaps, bool ring, int step) {
  const std::size_t count = gaps.size();
  for (std::size_t width = 1; width <= count; ++width) {
    int least = 1 << 30;
    int most = 0;
    for (std::size_t first = 0; ring ? first < count : first + width <= count; ++first) {
      int sum = 0;
      for (std::size_t i = 0; i < width; ++i) sum += gaps[(first + i) % count];
      least = std::min(least, sum);
      most = std::max(most, sum);
    }
    if (most - least > step) return false;
  }
  return true;
}

/// The ring that the gaps make: with half ends the first and the last are one.
std::vector<int> ring_of(const Spacing& spacing) {
  std::vector<int> gaps = spacing.gaps;
  if (spacing.ends == SpacingEnds::half_ends) {
    gaps.back() += gaps.front();
    gaps.erase(gaps.begin());
  }
  return gaps;
}

}  // namespace

TEST_CASE("all spacings of short lengths: the sum, the gaps' counts, and any m neighbours within one",
          "[spacing][property]") {
  int seen = 0;
  for (const SpacingEnds ends : {SpacingEnds::in_the_round, SpacingEnds::flat, SpacingEnds::half_ends}) {
    for (int step = 1; step <= 3; ++step) {
      for (int length = step; length <= 36; ++length) {
        const int most = length / step - (ends == SpacingEnds::in_the_round ? 0 : 1);
        for (int events = 1; events <= most; ++events) {
          const Spacing spacing = spaced_evenly(length, events, ends, step);
          INFO(length << ", " << events << " events, ends " << int(ends) << ", step " << step);
          ++seen;
          const std::vector<int> ring = ring_of(spacing);
          REQUIRE(std::accumulate(spacing.gaps.begin(), spacing.gaps.end(), 0) == length - length % step);
          REQUIRE(spacing.rest == length % step);
          REQUIRE(std::count(ring.begin(), ring.end(), spacing.every) == spacing.times);
          REQUIRE(std::count(ring.begin(), ring.end(), spacing.every + step) == spacing.longer_times);
          REQUIRE(spacing.times + spacing.longer_times == static_cast<int>(ring.size()));
          REQUIRE(even(ring, ends != SpacingEnds::flat, step));
          REQUIRE(std::all_of(spacing.gaps.begin(), spacing.gaps.end(),
                              [&](int gap) { return gap > 0 && gap % step == 0; }));
          int at = 0;
          for (std::size_t i = 0; i < spacing.positions.size(); ++i) {
            at += spacing.gaps[i];
            REQUIRE(spacing.positions[i] == at);
          }
          REQUIRE(static_cast<int>(spacing.positions.size()) == events);
          REQUIRE((ends == SpacingEnds::in_the_round) == (at == length - spacing.rest));
        }
      }
    }
  }
  CHECK(seen > 3000);
}

TEST_CASE("flat and with half ends, both edges are alike unless an event falls between two places",
          "[spacing][property]") {
  for (const SpacingEnds ends : {SpacingEnds::flat, SpacingEnds::half_ends}) {
    for (int length = 2; length <= 60; ++length) {
      for (int events = 1; events < length; ++events) {
        const Spacing spacing = spaced_evenly(length, events, ends);
        std::vector<int> back(spacing.gaps.rbegin(), spacing.gaps.rend());
        INFO(length << ", " << events << " events");
        // Only an exact half is rounded up on both sides.
        const int apart = std::abs(spacing.gaps.front() - back.front());
        REQUIRE(apart <= 1);
        const bool half =
            ends == SpacingEnds::flat ? length % (events + 1) * 2 == events + 1 : length % (2 * events) == events;
        REQUIRE((apart == 0 || half));
      }
    }
  }
}

}  // namespace spacing_test
