#include <cstdint>
#include <vector>

#include "catch.hpp"
#include "latchwork/move.hpp"
#include "latchwork/simulate.hpp"
#include "random.hpp"
#include "random_grid.hpp"
#include "soonest_plan.hpp"

namespace simulate_moves_test {

using namespace latchwork;
using latchwork_test::Random;
using latchwork_test::RandomGridOptions;
using latchwork_test::soonest_plan;

namespace {

/// A needle as seen in a mirror at the bed's centre.
int reflected(int needle) {
  return -needle;
}

/// A move that may or may not be possible on L3..R3.
Move any_move(Random& random, int row) {
  Move move;
  move.kind = random.one_in(4) ? MoveKind::carriage : static_cast<MoveKind>(random.between(0, 15));
  const auto needle = [&] {
    const int place = random.between(-3, 3);
    return place == 0 ? 4 : place;  // now and then one that is not there
  };
  move.needle = needle();
  move.last_needle = random.one_in(2) ? move.needle : needle();
  move.row = random.one_in(2) ? row : random.between(-1, row + 1);
  move.tool = random.between(-1, 2);
  return move;
}

/// Every stack of tucks or slips is closed: what soonest_plan() can work.
bool closed(const Grid& grid) {
  for (int row = 1; row <= grid.rows(); ++row) {
    for (int column = 0; column < grid.columns(); ++column) {
      const bool open = grid.at(row, column) == Cell::tuck || grid.at(row, column) == Cell::slip;
      if (open && (row == grid.rows() || grid.at(row + 1, column) == Cell::none)) return false;
    }
  }
  return true;
}

}  // namespace

// DEVELOPERS.md, views: `mirrored` keeps cells and flips leans. Common practice, no source: mirror images need the
// opposite order of returns, so the same order on mirrored needles makes the mirror image with its lean flipped.
TEST_CASE("the same moves on mirrored needles make the mirrored chart", "[simulate][property]") {
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    RandomGridOptions options;
    options.rows = random.between(1, 9);
    options.columns = random.between(1, 9);
    options.one_in_hole = random.one_in(3) ? 12 : 0;
    const Grid grid = latchwork_test::random_grid(random, options);
    const Plan plan = soonest_plan(grid, -4, random.one_in(2));
    std::vector<Move> all = moves(plan);
    const Fabric fabric = simulate({.leftmost = plan.leftmost, .columns = plan.columns}, all);
    for (Move& move : all) {
      const int first = reflected(move.last_needle);
      move.last_needle = reflected(move.needle);
      move.needle = first;
    }
    // A tool of several stitches holds them in the other order now, which is the needles' order too.
    const int rightmost = -4 + plan.columns - 1;
    const Bed bed{.leftmost = reflected(rightmost >= 0 ? rightmost + 1 : rightmost), .columns = plan.columns};
    const Fabric mirrored = simulate(bed, all);
    INFO(grid.to_text());
    REQUIRE(fabric.grid);
    REQUIRE(mirrored.grid);
    CHECK(*mirrored.grid == fabric.grid->mirrored());
    CHECK(mirrored.loops == fabric.loops);
  }
}

TEST_CASE("any moves at all end in a fabric or in a fault, and what is read can be made", "[simulate][property]") {
  constexpr Bed bed{.leftmost = -3, .columns = 6};
  int sound = 0;
  int described_by_none = 0;
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    std::vector<Move> done = {{.kind = MoveKind::cast_on, .needle = -3, .last_needle = 3}};
    int row = 0;
    for (int i = 0; i < 160; ++i) {
      done.push_back(any_move(random, row));
      const Fabric fabric = simulate(bed, done);
      REQUIRE(fabric.grid.has_value() == fabric.faults.empty());
      // A move that could not be done is taken back, so that the next one meets a bed that has been lived on.
      const bool stuck = !fabric.faults.empty() && fabric.faults.front().move >= 0;
      if (stuck) CHECK(fabric.faults.front().move == static_cast<std::int64_t>(done.size()) - 1);
      if (stuck) done.pop_back();
      if (!stuck && done.back().kind == MoveKind::carriage) ++row;
      if (fabric.grid) {
        ++sound;
        INFO(fabric.grid->to_text());
        if (i % 8 == 0 && closed(*fabric.grid)) CHECK(verify(*fabric.grid, soonest_plan(*fabric.grid, -3)).verified);
      } else if (!stuck) {
        ++described_by_none;
      }
    }
  }
  CHECK(sound > 1000);
  CHECK(described_by_none > 1000);
}

}  // namespace simulate_moves_test
