// Wales followed through crossings, against a walk written from DEVELOPERS.md, fabric and crossings.
#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/wale.hpp"
#include "random_grid.hpp"

namespace wale_test {

using namespace latchwork;
using latchwork_test::any_grid;
using latchwork_test::Random;

namespace {

/// The column in row + 1 of what stands at (row, x): the outer groups change places, the centre stays between them.
int next_column(const Grid& grid, int row, int x) {
  for (const Crossing& c : grid.crossings()) {
    if (c.row != row || x < c.column || x >= c.column + c.left + c.centre + c.right) continue;
    if (x < c.column + c.left) return x + c.right + c.centre;
    if (x < c.column + c.left + c.centre) return x - c.left + c.right;
    return x - c.left - c.centre;
  }
  return x;
}

}  // namespace

TEST_CASE("wales are the longest unbroken runs, each cell but none is in one, and they are named by their lowest loop",
          "[wale][law]") {
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    Random random(seed);
    const Grid grid = any_grid(random);
    INFO("seed " << seed << "\n" << grid.to_text());
    const Wales wales(grid);
    std::vector<std::vector<int>> owner(static_cast<std::size_t>(grid.rows()) + 1,
                                        std::vector<int>(static_cast<std::size_t>(grid.columns()), -1));
    bool good = true;
    for (std::size_t i = 0; i < wales.all().size(); ++i) {
      const Wale& wale = wales.all()[i];
      good = good && !wale.columns.empty() && wale.columns[0] == wale.column;
      if (i > 0) {
        const Wale& before = wales.all()[i - 1];
        good = good && std::pair(before.row, before.column) < std::pair(wale.row, wale.column);
      }
      for (int row = wale.row; row <= wale.last_row(); ++row) {
        const int x = wale.column_at(row);
        good = good && grid.at(row, x) != Cell::none;
        good = good && std::exchange(owner[static_cast<std::size_t>(row)][static_cast<std::size_t>(x)],
                                     static_cast<int>(i)) == -1;
        if (row < wale.last_row()) good = good && wale.column_at(row + 1) == next_column(grid, row, x);
      }
      // It could not go on, and did not come from anywhere.
      if (wale.last_row() < grid.rows()) {
        const int next = next_column(grid, wale.last_row(), wale.columns.back());
        good = good && grid.at(wale.last_row() + 1, next) == Cell::none;
      }
      for (int x = 0; wale.row > 1 && x < grid.columns(); ++x) {
        if (next_column(grid, wale.row - 1, x) == wale.column) good = good && grid.at(wale.row - 1, x) == Cell::none;
      }
    }
    for (int row = 1; row <= grid.rows(); ++row) {
      for (int x = 0; x < grid.columns(); ++x) {
        const int index = owner[static_cast<std::size_t>(row)][static_cast<std::size_t>(x)];
        good = good && (index == -1) == (grid.at(row, x) == Cell::none) && wales.at(row, x) == index;
      }
    }
    REQUIRE(good);
  }
}

TEST_CASE("mirrored cloth has mirrored wales", "[wale][law]") {
  for (std::uint64_t seed = 5000; seed < 6000; ++seed) {
    Random random(seed);
    const Grid grid = any_grid(random);
    INFO("seed " << seed << "\n" << grid.to_text());
    std::vector<Wale> expected;
    const Wales wales(grid);
    for (Wale wale : wales.all()) {
      wale.column = grid.columns() - 1 - wale.column;
      for (int& x : wale.columns) x = grid.columns() - 1 - x;
      expected.push_back(std::move(wale));
    }
    std::ranges::sort(expected, {}, [](const Wale& wale) { return std::pair(wale.row, wale.column); });
    for (const Grid& seen : {grid.mirrored(), grid.turned()}) {
      const Wales found(seen);
      REQUIRE(std::vector<Wale>(found.all().begin(), found.all().end()) == expected);
    }
  }
}

TEST_CASE("a crossing undone by its opposite after the next row brings every wale home", "[wale][law]") {
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    Random random(seed);
    const int left = random.between(1, 4);
    const int centre = random.between(0, 3);
    const int right = random.between(1, 4);
    CAPTURE(left, centre, right);
    Grid grid(3, left + centre + right);
    grid.cross({.row = 1, .column = 0, .left = left, .centre = centre, .right = right});
    grid.cross({.row = 2, .column = 0, .left = right, .centre = centre, .right = left});
    const Wales wales(grid);
    for (int x = 0; x < grid.columns(); ++x) REQUIRE(wales.at(3, x) == wales.at(1, x));
  }
}

}  // namespace wale_test
