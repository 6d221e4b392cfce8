// The generator behind the other property tests: it makes what it says, and everything there is.
#include "random_grid.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "catch.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/wale.hpp"

namespace random_grid_test {

using namespace latchwork;
using latchwork_test::any_grid;
using latchwork_test::Random;
using latchwork_test::random_grid;
using latchwork_test::RandomGridOptions;

namespace {

bool stacked(Cell cell) {
  return cell == Cell::tuck || cell == Cell::slip;
}

}  // namespace

TEST_CASE("one seed always makes one grid", "[random]") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    Random one(seed);
    Random other(seed);
    CHECK(any_grid(one) == any_grid(other));
  }
}

TEST_CASE("random grids show every cell, lean, place of a centre, unequal groups, bare centres and seams", "[random]") {
  std::array<int, 5> cells{};
  std::set<std::pair<Lean, Centre>> centred;
  int unequal = 0;
  int bare_centres = 0;
  int seam_crossings = 0;
  int seam_stacks = 0;
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    Random random(seed);
    const Grid grid = any_grid(random);
    for (const Cell cell : grid.cells()) ++cells[static_cast<std::size_t>(cell)];
    for (const Crossing& crossing : grid.crossings()) {
      if (crossing.centre > 0) centred.insert({crossing.lean, crossing.place});
      unequal += crossing.left != crossing.right ? 1 : 0;
      seam_crossings += crossing.row == grid.rows() ? 1 : 0;
      bare_centres += grid.at(crossing.row, crossing.column + crossing.left) == Cell::none ? 1 : 0;
    }
    for (int x = 0; x < grid.columns(); ++x) {
      seam_stacks += stacked(grid.at(grid.rows(), x)) && !stacked(grid.at(1, x)) ? 1 : 0;
    }
  }
  for (const int count : cells) CHECK(count > 500);
  CHECK(centred.size() == 6);
  CHECK(unequal > 100);
  CHECK(bare_centres > 20);
  CHECK(seam_crossings > 50);
  CHECK(seam_stacks > 20);
}

TEST_CASE("as a panel, each random stack stands on a loop in its wale and ends on a knit or purl of it", "[random]") {
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    Random random(seed);
    RandomGridOptions options;
    options.rows = random.between(1, 12);
    options.columns = random.between(1, 12);
    options.one_in_hole = random.one_in(2) ? 10 : 0;
    options.one_in_stack = 3;
    const Grid grid = random_grid(random, options);
    INFO("seed " << seed << "\n" << grid.to_text());
    const Wales wales(grid);
    bool closed = true;
    for (const Wale& wale : wales.all()) {
      const Cell top = grid.at(wale.last_row(), wale.columns.back());
      closed = closed && !stacked(top);
      // A wale's lowest cell may be in a stack only over the cast-on.
      closed = closed && (wale.row == 1 || !stacked(grid.at(wale.row, wale.column)));
    }
    for (const Crossing& crossing : grid.crossings()) closed = closed && crossing.row < grid.rows();
    REQUIRE(closed);
  }
}

TEST_CASE("with plain edges, cells at the edge or beside none are knit", "[random]") {
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    Random random(seed);
    const Grid grid = random_grid(random, {.one_in_stack = 3, .one_in_ladder = 5});
    INFO("seed " << seed << "\n" << grid.to_text());
    bool plain = true;
    for (int row = 1; row <= grid.rows(); ++row) {
      for (int x = 0; x < grid.columns(); ++x) {
        const bool beside =
            x == 0 || x + 1 == grid.columns() || grid.at(row, x - 1) == Cell::none || grid.at(row, x + 1) == Cell::none;
        if (beside && grid.at(row, x) != Cell::none) plain = plain && grid.at(row, x) == Cell::knit;
      }
    }
    REQUIRE(plain);
  }
}

TEST_CASE("the smallest failing grid fails still, and nothing can be left out of it", "[random]") {
  Random random(7);
  const Grid grid = random_grid(random, {.rows = 20, .columns = 20, .one_in_crossing = 3});
  const auto fails = [](const Grid& g) {
    return std::ranges::any_of(g.crossings(), [](const Crossing& crossing) { return crossing.width() >= 4; });
  };
  REQUIRE(fails(grid));
  const Grid smallest = latchwork_test::smallest_failing(grid, fails);
  CHECK(fails(smallest));
  CHECK(smallest.rows() == 1);
  CHECK(smallest.columns() <= 8);
  CHECK(smallest.crossings().size() == 1);
  CHECK(std::ranges::count(smallest.cells(), Cell::knit) == smallest.columns());
}

}  // namespace random_grid_test
