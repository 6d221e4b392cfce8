// The algebra of the grid's operations, as laws over random grids.
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/wale.hpp"
#include "random_grid.hpp"

using namespace latchwork;
using latchwork_test::any_grid;
using latchwork_test::Random;

namespace {

/// Runs a law on `count` random grids; a failure shows its seed and the smallest grid that breaks the law.
template <class Law>
void for_any_grid(std::uint64_t seed, int count, Law law) {
  for (int i = 0; i < count; ++i) {
    Random random(seed + static_cast<std::uint64_t>(i));
    const Grid grid = any_grid(random);
    if (law(grid)) continue;
    const Grid smallest = latchwork_test::smallest_failing(grid, [&](const Grid& g) { return !law(g); });
    FAIL("seed " << seed + static_cast<std::uint64_t>(i) << ", smallest grid:\n" << smallest.to_text());
  }
  SUCCEED(count << " grids");
}

}  // namespace

TEST_CASE("every random grid is written as letters and read back equal", "[grid][law]") {
  for_any_grid(1, 2000, [](const Grid& grid) { return Grid::from_text(grid.to_text()) == grid; });
}

TEST_CASE("mirrored and turned are involutions", "[grid][law]") {
  for_any_grid(1000, 2000,
               [](const Grid& grid) { return grid.mirrored().mirrored() == grid && grid.turned().turned() == grid; });
}
