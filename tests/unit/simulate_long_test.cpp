// Looks inside (src/simulate): how a wale's loops and a row's passings are found again without going through all.
#include <algorithm>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "far_hands.hpp"
#include "latchwork/simulate.hpp"
#include "random.hpp"
#include "simulate/long_wales.hpp"
#include "simulate/passings.hpp"

namespace simulate_long_test {

using namespace latchwork;
using namespace latchwork::knitting;
using latchwork_test::Random;

namespace {

std::int32_t walked_to(const Cloth& cloth, std::int32_t slot, int row) {
  while (slot != no_slot && cloth.row_of(slot) != row) slot = cloth[slot].below;
  return slot;
}

}  // namespace

TEST_CASE("a tool may go into the lowest loop of a tall wale at every move", "[simulate]") {
  const Fabric fabric = simulate({-1, 1}, latchwork_test::tall_wale_moves(10'000));
  REQUIRE(fabric.faults.size() == 1);
  CHECK(fabric.faults[0].message.find("the latch tool is still in the wale of needle L1") != std::string::npos);
}

TEST_CASE("a wide crossing may be re-formed wale by wale", "[simulate]") {
  constexpr int half = 200;
  const Fabric fabric = simulate({-half, 2 * half}, latchwork_test::wide_crossing_moves(half));
  REQUIRE(fabric.grid);
  // Those that were re-formed last, on the operator's right, are on her side of all others: behind them on the RS.
  REQUIRE(fabric.grid->crossings().size() == 1);
  CHECK(fabric.grid->crossings()[0] ==
        Crossing{.row = 2, .column = 0, .left = half, .right = half, .lean = Lean::right});
}

TEST_CASE("a wale's slot of a row is found as by going down from the needle", "[simulate]") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    constexpr int rows = 400;
    Cloth cloth(rows, 2);
    LongWales wales;
    std::int32_t top = cloth.at(0, 0);
    const auto put_on = [&](std::int32_t slot) {
      cloth[slot] = {.below = top};
      top = slot;
    };
    for (int row = 1, step = 0; step < 2'000 && row <= rows; ++step) {
      if (random.one_in(3)) {
        put_on(cloth.at(row++, random.between(0, 1)));
        continue;
      }
      const int wanted = random.one_in(10) ? random.between(-2, rows + 2) : random.between(0, row);
      const std::int32_t found = wales.find(cloth, top, wanted);
      REQUIRE(found == walked_to(cloth, top, wanted));
      if (found == no_slot || !random.one_in(20)) continue;
      std::vector<std::int32_t> rungs;
      while (top != found) {
        if (cloth[top].by_row) wales.drop(cloth, top, found);
        rungs.push_back(top);
        top = std::exchange(cloth[top].below, no_slot);
      }
      // Worked from the bottom up again, now and then out of order or with one left hanging.
      std::ranges::reverse(rungs);
      if (rungs.size() > 2 && random.one_in(2)) std::swap(rungs[0], rungs[rungs.size() / 2]);
      if (!rungs.empty() && random.one_in(4)) rungs.pop_back();
      for (const std::int32_t slot : rungs) put_on(slot);
    }
  }
}

TEST_CASE("of a row that a wale holds twice, the upper is found, and the lower once that is dropped", "[simulate]") {
  // Hands that take rungs out of order can bring this about; a plan cannot.
  constexpr int rows = 200;
  Cloth cloth(rows, 2);
  LongWales wales;
  std::int32_t top = cloth.at(0, 0);
  const auto put_on = [&](std::int32_t slot) {
    cloth[slot] = {.below = top};
    top = slot;
  };
  for (int row = 1; row < 100; ++row) put_on(cloth.at(row, 0));
  const std::int32_t below = top;
  put_on(cloth.at(5, 1));
  for (int row = 100; row < rows; ++row) put_on(cloth.at(row, 0));
  CHECK(wales.find(cloth, top, 5) == cloth.at(5, 1));
  REQUIRE(cloth[top].by_row == false);  // those near the needle are looked at one by one
  std::int32_t slot = top;
  while (!cloth[slot].by_row) slot = cloth[slot].below;
  wales.drop(cloth, slot, below);
  top = below;
  CHECK(wales.find(cloth, top, 5) == cloth.at(5, 0));
  CHECK(wales.find(cloth, top, 150) == no_slot);
}

TEST_CASE("passings are kept in order whatever is dropped and taken back", "[simulate]") {
  constexpr int columns = 6;
  for (std::uint64_t seed = 1; seed <= 50; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    Passings passings;
    std::vector<std::pair<int, int>> plain;
    for (int step = 0; step < 300; ++step) {
      if (random.one_in(8)) {
        const auto count = static_cast<std::size_t>(random.between(0, 4));
        passings.take_back(count);
        plain.resize(plain.size() - std::min(count, plain.size()));
      } else if (random.one_in(3)) {
        const int wale = random.between(0, columns - 1);
        // As it is meant: through all of them.
        std::vector<int> others;
        bool as_before = true;
        const std::size_t count = plain.size();
        std::erase_if(plain, [&](const auto& pair) {
          if (pair.first != wale && pair.second != wale) return false;
          as_before = as_before && pair.first == wale;
          others.push_back(pair.first == wale ? pair.second : pair.first);
          return true;
        });
        for (int other = 0; other < columns; ++other) {
          if (std::ranges::count(others, other) % 2 == 1) plain.emplace_back(wale, other);
        }
        REQUIRE(passings.pass_near(wale, columns) == (as_before && plain.size() == count));
      } else {
        const int near = random.between(0, columns - 1);
        const int far = random.between(0, columns - 1);  // hands that lose rungs can make a wale pass its own name
        passings.add({near, far});
        plain.emplace_back(near, far);
      }
      std::vector<std::pair<int, int>> found;
      passings.each([&](const Passing& passing) { found.emplace_back(passing.near, passing.far); });
      REQUIRE(found == plain);
    }
  }
}

}  // namespace simulate_long_test
