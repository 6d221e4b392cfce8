// Larger and smaller grids from grids.
#include <limits>
#include <string>

#include "catch.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"

namespace grid_joins_test {

using namespace latchwork;
using latchwork_test::message_of;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

const Grid rope = Grid::from_text(
    "pkkp\n"
    "x 1 1/1 R\n"
    "kkkp\n");

}  // namespace

TEST_CASE("unfolded about a line puts the mirror image on the right, with the other lean", "[grid][join]") {
  CHECK(rope.unfolded(Axis::line) == Grid::from_text("pkkppkkp\n"
                                                     "x 1 1/1 R\n"
                                                     "x 5 1/1 L\n"
                                                     "kkkppkkk\n"));
}

TEST_CASE("unfolded about a stitch shares the last column once", "[grid][join]") {
  CHECK(rope.unfolded(Axis::stitch) == Grid::from_text("pkkpkkp\n"
                                                       "x 1 1/1 R\n"
                                                       "x 4 1/1 L\n"
                                                       "kkkpkkk\n"));
  CHECK(Grid(3, 1).unfolded(Axis::stitch) == Grid(3, 1));
}

TEST_CASE("a mirror axis through a crossing is refused at the crossing; a line beside it is not",
          "[grid][join][error]") {
  Grid grid(4, 5);
  grid.cross({.row = 3, .column = 1, .left = 2, .right = 2});
  CHECK_THROWS_MATCHES(grid.unfolded(Axis::stitch), Error, refused(ErrorCode::crossing_cut, 3, 1));
  CHECK(grid.unfolded(Axis::line).columns() == 10);
  grid.uncross(3, 1);
  grid.cross({.row = 3, .column = 0, .left = 2, .right = 2});
  CHECK(grid.unfolded(Axis::stitch).columns() == 9);
}

TEST_CASE("an axis that is neither a line nor a stitch is refused", "[grid][join][error]") {
  CHECK_THROWS_MATCHES(rope.unfolded(static_cast<Axis>(2)), Error, refused_field(ErrorCode::bad_argument, "axis"));
}

TEST_CASE("repeated across and up, each copy stands beside or on the one before", "[grid][join]") {
  CHECK(rope.repeated_across(2) == Grid::from_text("pkkppkkp\n"
                                                   "x 1 1/1 R\n"
                                                   "x 5 1/1 R\n"
                                                   "kkkpkkkp\n"));
  CHECK(rope.repeated_up(2) == Grid::from_text("pkkp\n"
                                               "x 1 1/1 R\n"
                                               "kkkp\n"
                                               "pkkp\n"
                                               "x 1 1/1 R\n"
                                               "kkkp\n"));
  CHECK(rope.repeated_up(1) == rope);
  CHECK(rope.repeated_up(1, 2) == rope);
  CHECK(rope.repeated_across(1) == rope);
}

TEST_CASE("half-drop: copy i moves up by i shifts and wraps over the seam, crossings too", "[grid][join]") {
  const Grid tile = Grid::from_text(
      "kkk\n"
      "kkp\n"
      "x 0 1/1 L\n"
      "kkk\n"
      "kpk\n");
  // Row 2's crossing moves to the seam in copy 1, and home again in copy 2; row 1's purl to row 3, row 3's to row 1.
  CHECK(tile.repeated_across(3, 2) == Grid::from_text("x 3 1/1 L\n"
                                                      "kkkkkkkkk\n"
                                                      "kkpkpkkkp\n"
                                                      "x 0 1/1 L\n"
                                                      "x 6 1/1 L\n"
                                                      "kkkkkkkkk\n"
                                                      "kpkkkpkpk\n"));
}

TEST_CASE("repeated upward, copies may lie like bricks: what leaves on the right comes in on the left",
          "[grid][repeat]") {
  const Grid brick = Grid::from_text(
      "kpkk\n"
      "x 0 1/1 L\n"
      "kkkp\n");
  CHECK(brick.repeated_up(3, 2) == Grid::from_text("kpkk\n"
                                                   "x 0 1/1 L\n"
                                                   "kkkp\n"
                                                   "kkkp\n"
                                                   "x 2 1/1 L\n"
                                                   "kpkk\n"
                                                   "kpkk\n"
                                                   "x 0 1/1 L\n"
                                                   "kkkp\n"));
  CHECK(brick.repeated_up(2, -2) == brick.repeated_up(2, 2));
  CHECK_THROWS_MATCHES(brick.repeated_up(2, 3), Error, refused(ErrorCode::crossing_cut, 1, 0));
  CHECK(message_of([&] { static_cast<void>(brick.repeated_up(2, 3)); }) ==
        "crossing 1/1 LC after row 1, columns 0 to 1 would be cut by copy 2, moved right by 3 columns");
  // A crossing on the seam has the shifted copy's row above it.
  Grid seam = Grid::from_text("kkk\nkkk\nkk.\n");
  seam.cross({.row = 3, .column = 0, .left = 1, .right = 1, .lean = Lean::left});
  CHECK(seam.repeated_up(2).crossings().size() == 2);
  CHECK_THROWS_MATCHES(seam.repeated_up(2, 1), Error, refused(ErrorCode::crossing_over_none, 4, 0));
}

TEST_CASE("copies below 1 are refused, and a size past the limits is too large before any work",
          "[grid][join][error]") {
  const int huge = std::numeric_limits<int>::max();
  CHECK_THROWS_MATCHES(rope.repeated_across(0), Error, refused_field(ErrorCode::bad_argument, "times"));
  CHECK_THROWS_MATCHES(rope.repeated_up(-2), Error, refused_field(ErrorCode::bad_argument, "times"));
  CHECK_THROWS_MATCHES(rope.repeated_across(huge), Error, refused_field(ErrorCode::too_large, "columns"));
  CHECK_THROWS_MATCHES(rope.repeated_up(huge), Error, refused_field(ErrorCode::too_large, "rows"));
  const Grid wide(2, Grid::max_side);
  CHECK_THROWS_MATCHES(wide.unfolded(Axis::line), Error, refused_field(ErrorCode::too_large, "columns"));
  CHECK_THROWS_MATCHES(wide.beside(Grid(2, 1)), Error, refused_field(ErrorCode::too_large, "columns"));
  CHECK_THROWS_MATCHES(wide.repeated_up(2049), Error, refused(ErrorCode::too_large));
  CHECK_THROWS_MATCHES(Grid(Grid::max_side, 1).above(Grid(1, 1)), Error, refused_field(ErrorCode::too_large, "rows"));
}

TEST_CASE("rolled up by any integer, rows wrap over the seam and a crossing goes with its row", "[grid][join]") {
  const Grid tile = Grid::from_text(
      "kkp\n"
      "kpk\n"
      "x 1 1/1 R\n"
      "pkk\n");
  CHECK(tile.rolled_up(1) == Grid::from_text("kpk\n"
                                             "x 1 1/1 R\n"
                                             "pkk\n"
                                             "kkp\n"));
  CHECK(tile.rolled_up(2) == Grid::from_text("x 1 1/1 R\n"
                                             "pkk\n"
                                             "kkp\n"
                                             "kpk\n"));
  CHECK(tile.rolled_up(-1) == tile.rolled_up(2));
  CHECK(tile.rolled_up(0) == tile);
  CHECK(tile.rolled_up(std::numeric_limits<int>::min()) == tile.rolled_up(1));  // -2^31 = 1 modulo 3
  CHECK(tile.rolled_up(std::numeric_limits<int>::max()) == tile.rolled_up(1));  // 2^31 - 1 = 1 modulo 3
}

TEST_CASE("unequal heights beside, and unequal widths above, are refused", "[grid][join][error]") {
  CHECK_THROWS_MATCHES(rope.beside(Grid(3, 4)), Error, refused_field(ErrorCode::size_mismatch, "right"));
  CHECK_THROWS_MATCHES(rope.above(Grid(2, 3)), Error, refused_field(ErrorCode::size_mismatch, "below"));
}

TEST_CASE("beside puts its argument on the right, above puts it below", "[grid][join]") {
  CHECK(rope.beside(Grid::from_text("t\ns\n")) == Grid::from_text("pkkpt\n"
                                                                  "x 1 1/1 R\n"
                                                                  "kkkps\n"));
  CHECK(rope.above(Grid::from_text("tttt\n")) == Grid::from_text("pkkp\n"
                                                                 "x 1 1/1 R\n"
                                                                 "kkkp\n"
                                                                 "tttt\n"));
}

TEST_CASE("a seam crossing that would meet no stitch in the grid put on it is refused at that place",
          "[grid][join][error]") {
  const Grid seam = Grid::from_text(
      "x 0 1/1 R\n"
      "kkk\n"
      "kkk\n");
  const Grid bare = Grid::from_text("k.k\n");
  CHECK_THROWS_MATCHES(bare.above(seam), Error, refused(ErrorCode::crossing_over_none, 3, 1));
  // Below it, the same bare row comes round the seam: the tile's row 1 follows row R.
  CHECK_THROWS_MATCHES(seam.above(bare), Error, refused(ErrorCode::crossing_over_none, 1, 1));
  CHECK(seam.above(Grid(1, 3)).crossings()[0].row == 3);
}

TEST_CASE("a slice keeps the crossings that follow its rows, the last on its seam", "[grid][slice]") {
  const Grid grid = Grid::from_text(
      "kkkkp\n"
      "x 1 1/1 L\n"
      "kkkpk\n"
      "x 2 1/1 R\n"
      "kkpkk\n"
      "x 1 1/1 R\n"
      "kpkkk\n");
  CHECK(grid.sliced(2, 1, 2, 3) == Grid::from_text("x 0 1/1 L\n"
                                                   "kkp\n"
                                                   "x 1 1/1 R\n"
                                                   "kpk\n"));
  CHECK(grid.sliced(1, 0, 4, 5) == grid);
  CHECK(grid.sliced(4, 4, 1, 1) == Grid::from_text("p\n"));
}

TEST_CASE("a slice that cuts a crossing in two is refused at the crossing", "[grid][slice][error]") {
  Grid grid(4, 6);
  grid.cross({.row = 2, .column = 1, .left = 2, .right = 2});                                    // columns 1 to 4
  CHECK_THROWS_MATCHES(grid.sliced(2, 0, 1, 3), Error, refused(ErrorCode::crossing_cut, 2, 1));  // its right part
  CHECK_THROWS_MATCHES(grid.sliced(1, 2, 2, 4), Error, refused(ErrorCode::crossing_cut, 2, 1));  // its left part
  CHECK_THROWS_MATCHES(grid.sliced(1, 2, 4, 2), Error, refused(ErrorCode::crossing_cut, 2, 1));  // both
  CHECK(grid.sliced(3, 2, 2, 2) == Grid(2, 2));  // above it: the crossing belongs to the row it follows
  CHECK(grid.sliced(1, 0, 4, 1) == Grid(4, 1));  // beside it
  CHECK(grid.sliced(1, 5, 4, 1) == Grid(4, 1));
}

TEST_CASE("a slice off the grid or of no size is refused", "[grid][slice][error]") {
  const Grid grid(4, 6);
  CHECK_THROWS_MATCHES(grid.sliced(0, 0, 1, 1), Error, refused(ErrorCode::off_grid, 0, 0));
  CHECK_THROWS_MATCHES(grid.sliced(1, -1, 1, 1), Error, refused(ErrorCode::off_grid, 1, -1));
  CHECK_THROWS_MATCHES(grid.sliced(4, 0, 2, 1), Error, refused(ErrorCode::off_grid, 4, 0));
  CHECK_THROWS_MATCHES(grid.sliced(1, 5, 1, 2), Error, refused(ErrorCode::off_grid, 1, 5));
  CHECK_THROWS_MATCHES(grid.sliced(1, 0, 0, 1), Error, refused_field(ErrorCode::bad_argument, "rows"));
  CHECK_THROWS_MATCHES(grid.sliced(1, 0, 1, 0), Error, refused_field(ErrorCode::bad_argument, "columns"));
  CHECK_THROWS_MATCHES(grid.sliced(std::numeric_limits<int>::max(), 0, 2, 1), Error,
                       refused(ErrorCode::off_grid, std::numeric_limits<int>::max(), 0));
}

TEST_CASE("a slice whose last crossing would meet a bare first row is refused there", "[grid][slice][error]") {
  const Grid grid = Grid::from_text(
      "kkk\n"
      "x 0 1/1 R\n"
      "kkk\n"
      "k.k\n");
  CHECK_THROWS_MATCHES(grid.sliced(1, 0, 2, 3), Error, refused(ErrorCode::crossing_over_none, 1, 1));
  CHECK(grid.sliced(2, 0, 2, 3).crossings().size() == 1);
}

TEST_CASE("a patch takes the place of the cells and crossings under it", "[grid][paste]") {
  Grid grid = Grid::from_text(
      "kkkkk\n"
      "x 0 1/1 R\n"
      "x 2 1/1 R\n"
      "kkkkk\n"
      "x 2 1/1 R\n"
      "kkkkk\n"
      "x 2 1/1 R\n"
      "kkkkk\n");
  const Grid patch = Grid::from_text(
      "ppp\n"
      "x 1 1/1 L\n"
      "kkk\n");
  grid.paste(patch, 2, 2);
  CHECK(grid == Grid::from_text("kkkkk\n"
                                "x 0 1/1 R\n"  // beside it
                                "kkppp\n"      // the one that was after this row is gone
                                "x 3 1/1 L\n"  // the patch's own
                                "kkkkk\n"
                                "x 2 1/1 R\n"  // below it, its row is not inside
                                "kkkkk\n"));
}

TEST_CASE("a view of the cells taken before a paste shows what was pasted", "[grid][paste]") {
  Grid grid(2, 2);
  const auto before = grid.cells();
  grid.paste(Grid::from_text("p"), 2, 1);
  CHECK(before.data() == grid.cells().data());
  CHECK(before[3] == Cell::purl);
}

TEST_CASE("a patch that lies partly under a crossing is refused, and the grid is unchanged", "[grid][paste][error]") {
  Grid grid(4, 6);
  grid.cross({.row = 2, .column = 1, .left = 2, .right = 2});
  const Grid before = grid;
  CHECK_THROWS_MATCHES(grid.paste(Grid(1, 2), 2, 0), Error, refused(ErrorCode::crossing_cut, 2, 1));
  CHECK_THROWS_MATCHES(grid.paste(Grid(2, 3), 1, 3), Error, refused(ErrorCode::crossing_cut, 2, 1));
  CHECK_THROWS_MATCHES(grid.paste(Grid(1, 2), 2, 2), Error, refused(ErrorCode::crossing_cut, 2, 1));
  CHECK_THROWS_MATCHES(grid.paste(Grid(2, 2), 4, 0), Error, refused(ErrorCode::off_grid, 4, 0));
  CHECK_THROWS_MATCHES(grid.paste(Grid(1, 2), 1, 5), Error, refused(ErrorCode::off_grid, 1, 5));
  CHECK_THROWS_MATCHES(grid.paste(Grid(1, 1), 0, 0), Error, refused(ErrorCode::off_grid, 0, 0));
  CHECK(grid == before);
  grid.paste(Grid::from_text("pp\n"), 3, 2);  // above it: row 3 shows the crossing, row 2 owns it
  CHECK(grid.crossings().size() == 1);
  CHECK(grid.at(3, 3) == Cell::purl);
}

TEST_CASE("a patch that takes the stitches above a crossing is refused, below it or round the seam",
          "[grid][paste][error]") {
  Grid grid(3, 4);
  grid.cross({.row = 1, .column = 0});
  grid.cross({.row = 3, .column = 2});
  const Grid before = grid;
  const Grid bare = Grid::from_text("..\n");
  CHECK_THROWS_MATCHES(grid.paste(bare, 2, 0), Error, refused(ErrorCode::crossing_over_none, 2, 0));
  CHECK_THROWS_MATCHES(grid.paste(bare, 1, 2), Error, refused(ErrorCode::crossing_over_none, 1, 2));
  // The patch's own last crossing meets this grid's row above it.
  grid.set(3, 1, Cell::none);
  const Grid with_hole = grid;
  CHECK_THROWS_MATCHES(grid.paste(Grid::from_text("x 0 1/1 R\nkk\n"), 2, 0), Error,
                       refused(ErrorCode::crossing_over_none, 3, 1));
  CHECK(grid == with_hole);
  grid.set(3, 1, Cell::knit);
  CHECK(grid == before);
}

TEST_CASE("a grid pasted on itself is unchanged", "[grid][paste]") {
  Grid grid = rope;
  grid.paste(grid, 1, 0);
  CHECK(grid == rope);
}

}  // namespace grid_joins_test
