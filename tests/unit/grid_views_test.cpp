// The four views of a grid, as the table in DEVELOPERS.md, views, has them.
#include <array>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"

namespace grid_views_test {

using namespace latchwork;
using latchwork_test::refused;

namespace {

/// The cells of a grid, row 1 first, as letters.
std::string letters_of(const Grid& grid) {
  std::string letters;
  for (const Cell cell : grid.cells()) letters += cell_letter(cell);
  return letters;
}

}  // namespace

TEST_CASE("each view sends a cell where the table says", "[grid][view]") {
  const int rows = 5;
  const int columns = 7;
  for (int row = 1; row <= rows; ++row) {
    for (int x = 0; x < columns; ++x) {
      Grid grid(rows, columns);
      grid.set(row, x, Cell::purl);
      CHECK(grid.mirrored().at(row, columns - 1 - x) == Cell::purl);
      CHECK(grid.upside_down().at(rows + 1 - row, x) == Cell::purl);
      CHECK(grid.half_turn().at(rows + 1 - row, columns - 1 - x) == Cell::purl);
      // Seen from the other side that purl is a knit, and all the knits are purls.
      const Grid turned = grid.turned();
      int knits = 0;
      for (const Cell cell : turned.cells()) knits += cell == Cell::knit ? 1 : 0;
      CHECK(turned.at(row, columns - 1 - x) == Cell::knit);
      CHECK(knits == 1);
    }
  }
}

TEST_CASE("turned swaps knit and purl and keeps tuck, slip and none", "[grid][view]") {
  CHECK(Grid::from_text("kkpts.\n").turned() == Grid::from_text(".stkpp\n"));
  CHECK(Grid::from_text("kkpts.\n").mirrored() == Grid::from_text(".stpkk\n"));
}

TEST_CASE("each view sends a crossing where the table says", "[grid][view]") {
  // R = 8 rows, W = 10 columns; after row 3, start 1, l = 2, k = 1, q = 3, right lean, centre in front.
  const Crossing crossing{
      .row = 3, .column = 1, .left = 2, .centre = 1, .right = 3, .lean = Lean::right, .place = Centre::front};
  Grid grid(8, 10);
  grid.cross(crossing);
  struct Case {
    const char* view;
    Grid seen;
    Crossing expected;
  };
  const Case cases[] = {
      {"mirrored: start W-c-l-k-q, swap, flips, keeps",
       grid.mirrored(),
       {.row = 3, .column = 3, .left = 3, .centre = 1, .right = 2, .lean = Lean::left, .place = Centre::front}},
      {"turned: start W-c-l-k-q, swap, keeps, front <-> behind",
       grid.turned(),
       {.row = 3, .column = 3, .left = 3, .centre = 1, .right = 2, .lean = Lean::right, .place = Centre::behind}},
      {"upside_down: after R-r, start c, swap, flips, keeps",
       grid.upside_down(),
       {.row = 5, .column = 1, .left = 3, .centre = 1, .right = 2, .lean = Lean::left, .place = Centre::front}},
      {"half_turn: after R-r, start W-c-l-k-q, keep, keeps, keeps",
       grid.half_turn(),
       {.row = 5, .column = 3, .left = 2, .centre = 1, .right = 3, .lean = Lean::right, .place = Centre::front}},
  };
  for (const Case& c : cases) {
    INFO(c.view);
    REQUIRE(c.seen.crossings().size() == 1);
    CHECK(c.seen.crossings()[0] == c.expected);
  }
}

TEST_CASE("turned swaps a centre in front with one behind, and keeps one between; the others keep the place",
          "[grid][view]") {
  for (const auto& [place, turned] :
       {std::pair(Centre::front, Centre::behind), std::pair(Centre::between, Centre::between),
        std::pair(Centre::behind, Centre::front)}) {
    Grid grid(2, 3);
    grid.cross({.row = 1, .column = 0, .left = 1, .centre = 1, .right = 1, .lean = Lean::right, .place = place});
    CHECK(grid.turned().crossings()[0].place == turned);
    CHECK(grid.mirrored().crossings()[0].place == place);
    CHECK(grid.upside_down().crossings()[0].place == place);
    CHECK(grid.half_turn().crossings()[0].place == place);
  }
}

TEST_CASE("a crossing on the seam stays on the seam, upside down and turned by half", "[grid][view]") {
  Grid grid(4, 5);
  grid.cross({.row = 4, .column = 0, .left = 1, .right = 2, .lean = Lean::right});
  REQUIRE(grid.upside_down().crossings().size() == 1);
  CHECK(grid.upside_down().crossings()[0] ==
        Crossing{.row = 4, .column = 0, .left = 2, .right = 1, .lean = Lean::left});
  CHECK(grid.half_turn().crossings()[0] == Crossing{.row = 4, .column = 2, .left = 1, .right = 2, .lean = Lean::right});
}

TEST_CASE("upside down, a stack and the cell that closes it stay one unit in their own order", "[grid][view]") {
  struct Case {
    const char* column;  // row 1 first
    const char* upside_down;
    const char* reason;
  };
  const Case cases[] = {
      {"ktp", "tpk", "a tuck and its closing purl move together"},
      {"kttpp", "pttpk", "a higher stack"},
      {"ktspk", "ktspk", "tuck and slip in one stack keep their order"},
      {"tpkk", "kktp", "a stack from the cast-on"},
      {"kktp", "tpkk", "and back again"},
      {"pkkt", "pkkt", "a stack on the seam, closed by row 1 of the next copy, stays there"},
      {"pkktt", "tpkkt", "row 5 and 4 are closed by row 1: in the image rows 5 and 1 by row 2"},
      {"t.k", "kt.", "what follows the stack goes with it, whichever it is"},
      {"ts", "st", "a column of nothing else is simply reversed"},
      {"tststs", "ststst", "a ring without a closing cell"},
      {"k", "k", "one row"},
      {"t", "t", "one row of tuck"},
  };
  for (const Case& c : cases) {
    INFO(c.reason);
    const std::string column = c.column;
    Grid grid(static_cast<int>(column.size()), 1);
    for (int row = 1; row <= grid.rows(); ++row) grid.set(row, 0, *cell_of(column[static_cast<std::size_t>(row - 1)]));
    CHECK(letters_of(grid.upside_down()) == c.upside_down);
    CHECK(letters_of(grid.half_turn()) == c.upside_down);
  }
}

TEST_CASE("a stack above a crossing that ends on no stitch cannot be turned over, and the place is told",
          "[grid][view][error]") {
  const Grid grid = Grid::from_text(
      "kkk.\n"
      "kkkt\n"
      "x 2 1/1 R\n"
      "kkkk\n");
  CHECK_THROWS_MATCHES(grid.upside_down(), Error, refused(ErrorCode::crossing_over_none, 2, 3));
  CHECK_THROWS_MATCHES(grid.half_turn(), Error, refused(ErrorCode::crossing_over_none, 2, 3));
  CHECK(grid.mirrored().mirrored() == grid);
  const Grid closed = Grid::from_text(
      "kkkp\n"
      "kkkt\n"
      "x 2 1/1 R\n"
      "kkkk\n");
  CHECK(closed.upside_down() == Grid::from_text("kkkk\n"
                                                "x 2 1/1 L\n"
                                                "kkkp\n"
                                                "kkkt\n"));
}

TEST_CASE("a stack that ends on a bare centre cannot be turned over, and the place told is the stack's",
          "[grid][view][error]") {
  // Upside down the stack would stand above the crossing, and its centre would be bare below only.
  const auto [text, row, column] = GENERATE(table<const char*, int, int>({
      {"k.k\nx 0 1/1/1 L between\nk.k\nktk\nkkk\n", 2, 1},
      {"k.kk\nx 0 1/1/1 L between\nk.kk\nktkk\nktkk\nkkkk\n", 3, 1},
      {"k..k\nx 0 1/2/1 L between\nk..k\nkktk\nkkkk\n", 2, 2},
      {"kk.k\nx 0 1/1/2 R between\nk.kk\nkskk\nkkkk\n", 2, 1},  // the centre moves as the wider group passes it
  }));
  CAPTURE(text);
  const Grid grid = Grid::from_text(text);
  CHECK_THROWS_MATCHES(grid.upside_down(), Error, refused(ErrorCode::crossing_over_none, row, column));
  CHECK_THROWS_MATCHES(grid.half_turn(), Error, refused(ErrorCode::crossing_over_none, row, column));
}

TEST_CASE("a mirrored chart makes other cloth; turned is the same cloth: leans tell them apart", "[grid][view]") {
  // DEVELOPERS.md, views: the left to right reflection flips a lean, seeing the back does not.
  const Grid rope = Grid::from_text(
      "kkkkpp\n"
      "x 0 2/2 R\n"
      "kkkkpp\n");
  CHECK(rope.mirrored() == Grid::from_text("ppkkkk\n"
                                           "x 2 2/2 L\n"
                                           "ppkkkk\n"));
  CHECK(rope.turned() == Grid::from_text("kkpppp\n"
                                         "x 2 2/2 R\n"
                                         "kkpppp\n"));
}

TEST_CASE("wide rows are mirrored cell by cell at every width, whole words and the rest", "[grid][view]") {
  for (int width = 1; width <= 40; ++width) {
    std::vector<std::uint8_t> cells;
    for (int x = 0; x < 3 * width; ++x) cells.push_back(static_cast<std::uint8_t>((x * 7 + x / 5) % 5));
    const Grid grid = Grid::from_cells(3, width, cells);
    const Grid mirrored = grid.mirrored();
    for (int row = 1; row <= 3; ++row) {
      for (int x = 0; x < width; ++x) {
        if (mirrored.at(row, width - 1 - x) != grid.at(row, x)) FAIL("width " << width << ", row " << row << ", " << x);
      }
    }
  }
  SUCCEED("every width");
}

}  // namespace grid_views_test
