#include "latchwork/grid.hpp"

#include <array>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "catch.hpp"
#include "latchwork/error.hpp"

namespace grid_test {

using namespace latchwork;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

Place place_of(int row, int column, const char* field) {
  Place place;
  place.row = row;
  place.column = column;
  place.field = field;
  return place;
}

constexpr int huge = std::numeric_limits<int>::max();

}  // namespace

TEST_CASE("a new grid is all knit and has no crossings", "[grid]") {
  const Grid grid(3, 5);
  CHECK(grid.rows() == 3);
  CHECK(grid.columns() == 5);
  CHECK(grid.cells().size() == 15);
  for (const Cell cell : grid.cells()) CHECK(cell == Cell::knit);
  CHECK(grid.crossings().empty());
}

TEST_CASE("cells stand row by row from the cast-on, each row from the left on the right side", "[grid]") {
  Grid grid(2, 3);
  grid.set(1, 0, Cell::purl);
  grid.set(2, 2, Cell::tuck);
  CHECK(grid.cells()[0] == Cell::purl);
  CHECK(grid.cells()[5] == Cell::tuck);
  CHECK(grid.at(1, 0) == Cell::purl);
  CHECK(grid.at(2, 2) == Cell::tuck);
}

TEST_CASE("a size below 1 or past the limits is refused by name, and costs no memory", "[grid][error]") {
  CHECK_THROWS_MATCHES(Grid(0, 4), Error, refused_field(ErrorCode::bad_argument, "rows"));
  CHECK_THROWS_MATCHES(Grid(4, -1), Error, refused_field(ErrorCode::bad_argument, "columns"));
  CHECK_THROWS_MATCHES(Grid(Grid::max_side + 1, 1), Error, refused_field(ErrorCode::too_large, "rows"));
  CHECK_THROWS_MATCHES(Grid(1, Grid::max_side + 1), Error, refused_field(ErrorCode::too_large, "columns"));
  CHECK_THROWS_MATCHES(Grid(Grid::max_side, Grid::max_side), Error, refused(ErrorCode::too_large));
  CHECK_THROWS_MATCHES(Grid(huge, huge), Error, refused_field(ErrorCode::too_large, "rows"));
  CHECK(Grid(Grid::max_side, 1).rows() == Grid::max_side);
}

TEST_CASE("from_cells takes every cell's number, row 1 first", "[grid]") {
  const std::vector<std::uint8_t> numbers = {0, 1, 2, 3, 4, 0};
  const Grid grid = Grid::from_cells(2, 3, numbers);
  CHECK(grid.at(1, 0) == Cell::knit);
  CHECK(grid.at(1, 1) == Cell::purl);
  CHECK(grid.at(1, 2) == Cell::tuck);
  CHECK(grid.at(2, 0) == Cell::slip);
  CHECK(grid.at(2, 1) == Cell::none);
}

TEST_CASE("from_cells refuses too few, too many, and a number that is no cell at its place", "[grid][error]") {
  std::vector<std::uint8_t> numbers(6, 0);
  CHECK_THROWS_MATCHES(Grid::from_cells(2, 4, numbers), Error, refused_field(ErrorCode::size_mismatch, "cells"));
  CHECK_THROWS_MATCHES(Grid::from_cells(1, 5, numbers), Error, refused_field(ErrorCode::size_mismatch, "cells"));
  CHECK_THROWS_MATCHES(Grid::from_cells(0, 6, numbers), Error, refused_field(ErrorCode::bad_argument, "rows"));
  numbers[4] = 5;
  CHECK_THROWS_MATCHES(Grid::from_cells(2, 3, numbers), Error, refused(ErrorCode::bad_value, 2, 1));
}

TEST_CASE("a cell off the grid is neither read nor set", "[grid][error]") {
  struct Case {
    int row;
    int column;
  };
  const Case cases[] = {{0, 0}, {5, 0}, {1, -1}, {1, 3}, {-7, 1}, {huge, huge}};
  Grid grid(4, 3);
  const Grid before = grid;
  for (const auto [row, column] : cases) {
    CHECK_THROWS_MATCHES(grid.at(row, column), Error, refused(ErrorCode::off_grid, row, column));
    CHECK_THROWS_MATCHES(grid.set(row, column, Cell::purl), Error, refused(ErrorCode::off_grid, row, column));
  }
  CHECK(grid == before);
  CHECK_THROWS_MATCHES(grid.set(1, 1, static_cast<Cell>(5)), Error,
                       refused(ErrorCode::bad_argument, place_of(1, 1, "cell")));
  CHECK(grid == before);
}

TEST_CASE("a crossing that leaves the grid is refused, and the grid is unchanged", "[grid][error]") {
  struct Case {
    Crossing crossing;
    const char* reason;
  };
  const Case cases[] = {
      {{.row = 0, .column = 0}, "below the first row"},
      {{.row = 5, .column = 0}, "above the last row"},
      {{.row = 1, .column = 3}, "past the right edge"},
      {{.row = 1, .column = -1}, "past the left edge"},
      {{.row = 1, .column = 0, .left = 3, .right = 2}, "wider than the grid"},
      {{.row = 1, .column = 1, .left = 1, .centre = 2, .right = 1}, "its centre pushes it over the edge"},
      {{.row = 1, .column = 0, .left = huge, .centre = huge, .right = huge}, "a sum past any integer"},
      {{.row = huge, .column = huge}, "a place past any grid"},
  };
  Grid grid(4, 4);
  const Grid before = grid;
  for (const Case& c : cases) {
    INFO(c.reason);
    CHECK_THROWS_MATCHES(grid.cross(c.crossing), Error,
                         refused(ErrorCode::off_grid, c.crossing.row, c.crossing.column));
    CHECK(grid == before);
  }
}

TEST_CASE("a crossing needs a stitch on either side, a centre of 0 or more, and a known lean and place",
          "[grid][error]") {
  struct Case {
    Crossing crossing;
    const char* field;
  };
  const Case cases[] = {
      {{.row = 2, .column = 1, .left = 0}, "left"},
      {{.row = 2, .column = 1, .right = 0}, "right"},
      {{.row = 2, .column = 1, .right = -3}, "right"},
      {{.row = 2, .column = 1, .centre = -1}, "centre"},
      {{.row = 2, .column = 1, .lean = static_cast<Lean>(2)}, "lean"},
      {{.row = 2, .column = 1, .place = static_cast<Centre>(3)}, "place"},
  };
  Grid grid(4, 8);
  const Grid before = grid;
  for (const Case& c : cases) {
    CHECK_THROWS_MATCHES(grid.cross(c.crossing), Error, refused(ErrorCode::bad_argument, place_of(2, 1, c.field)));
  }
  CHECK(grid == before);
}

TEST_CASE("crossings after one row share no column; after other rows they may", "[grid][error]") {
  Grid grid(4, 12);
  grid.cross({.row = 2, .column = 4, .left = 2, .right = 2});
  const Grid before = grid;
  for (const int column : {2, 3, 4, 5, 6, 7}) {  // 2 + 3 reaches column 4, 7 is its last
    CHECK_THROWS_MATCHES(grid.cross({.row = 2, .column = column, .left = 1, .centre = 1, .right = 1}), Error,
                         refused(ErrorCode::stitch_taken, 2, column));
  }
  CHECK_THROWS_MATCHES(grid.cross({.row = 2, .column = 0, .left = 6, .right = 6}), Error,
                       refused(ErrorCode::stitch_taken, 2, 0));  // one that covers it
  CHECK(grid == before);
  grid.cross({.row = 2, .column = 8, .left = 1, .centre = 1, .right = 1});  // the next column
  grid.cross({.row = 2, .column = 1, .left = 1, .centre = 1, .right = 1});  // ends just before
  grid.cross({.row = 3, .column = 4, .left = 2, .right = 2});
  grid.cross({.row = 1, .column = 4, .left = 2, .right = 2});
  CHECK(grid.crossings().size() == 5);
}

TEST_CASE("crossings are kept by row, then column, whatever the order they were made in", "[grid]") {
  const std::array crossings = {Crossing{.row = 1, .column = 0}, Crossing{.row = 1, .column = 2},
                                Crossing{.row = 3, .column = 1}, Crossing{.row = 4, .column = 0}};
  Grid forward(4, 4);
  Grid backward(4, 4);
  for (const Crossing& crossing : crossings) forward.cross(crossing);
  for (auto crossing = crossings.rbegin(); crossing != crossings.rend(); ++crossing) backward.cross(*crossing);
  CHECK(forward == backward);
  CHECK(std::vector(forward.crossings().begin(), forward.crossings().end()) ==
        std::vector(crossings.begin(), crossings.end()));
}

TEST_CASE("a crossing without a centre is kept with its place as between, so that equal cloth is equal", "[grid]") {
  Grid one(2, 2);
  Grid other(2, 2);
  one.cross({.row = 1, .column = 0, .place = Centre::front});
  other.cross({.row = 1, .column = 0, .place = Centre::behind});
  CHECK(one == other);
  CHECK(one.hash() == other.hash());
  CHECK(one.crossings()[0].place == Centre::between);
}

TEST_CASE("no tuck or slip stands in row r of a crossing's span, the centre included", "[grid][error]") {
  // DEVELOPERS.md, crossings: a crossing moves closed loops. The row above may hold them, at the new columns.
  for (const Cell cell : {Cell::tuck, Cell::slip}) {
    for (const int column : {1, 2, 3}) {
      Grid below(4, 5);
      below.set(2, column, cell);
      const Grid before = below;
      const Crossing crossing{.row = 2, .column = 1, .left = 1, .centre = 1, .right = 1};
      CHECK_THROWS_MATCHES(below.cross(crossing), Error, refused(ErrorCode::crossing_over_stack, 2, column));
      CHECK(below == before);

      Grid above(4, 5);
      above.set(3, column, cell);
      above.cross(crossing);
      CHECK(above.crossings().size() == 1);
    }
  }
}

TEST_CASE("no stitch is missing in rows r and r+1 of a crossing's span", "[grid][error]") {
  for (const int row : {2, 3}) {
    for (const int column : {1, 2, 3, 4}) {
      Grid grid(4, 6);
      grid.set(row, column, Cell::none);
      const Grid before = grid;
      CHECK_THROWS_MATCHES(grid.cross({.row = 2, .column = 1, .left = 2, .right = 2}), Error,
                           refused(ErrorCode::crossing_over_none, row, column));
      CHECK(grid == before);
    }
  }
}

TEST_CASE("the whole centre may be bare in both rows, at the columns it moves to; part of it may not",
          "[grid][error]") {
  // Groups 1 / 2 / 3 from column 0: below, the centre is columns 1 and 2; above, columns 3 and 4.
  const Crossing crossing{.row = 1, .column = 0, .left = 1, .centre = 2, .right = 3};
  CHECK(Grid::from_text("kkk..k\n"
                        "x 0 1/2/3 R between\n"
                        "k..kkk\n")
            .crossings()
            .size() == 1);

  struct Case {
    const char* text;
    int row;
    int column;
    const char* reason;
  };
  const Case cases[] = {
      {"k..kkk\nk..kkk\n", 1, 1, "the bare columns did not move with the centre"},
      {"kkk..k\nk.kkkk\n", 1, 1, "half the centre is bare below"},
      {"kkk.kk\nk..kkk\n", 1, 1, "half the centre is bare above"},
      {"kkkkkk\nk..kkk\n", 1, 1, "bare below only"},
      {"kkk..k\nkkkkkk\n", 2, 3, "bare above only"},
      {"kkk..k\n...kkk\n", 1, 0, "an outer stitch is bare too"},
      {"kkk...\nk..kkk\n", 2, 5, "an outer stitch is bare above"},
  };
  for (const Case& c : cases) {
    INFO(c.reason);
    Grid grid = Grid::from_text(c.text);
    const Grid before = grid;
    CHECK_THROWS_MATCHES(grid.cross(crossing), Error, refused(ErrorCode::crossing_over_none, c.row, c.column));
    CHECK(grid == before);
  }
}

TEST_CASE("after the last row comes row 1 of the next copy: a seam crossing asks the same of it", "[grid][error]") {
  Grid grid(3, 4);
  grid.set(1, 2, Cell::none);
  CHECK_THROWS_MATCHES(grid.cross({.row = 3, .column = 1}), Error, refused(ErrorCode::crossing_over_none, 1, 2));
  grid.set(1, 2, Cell::tuck);  // row r+1 may hold a stack: the new one begins on the crossed loops
  grid.cross({.row = 3, .column = 1});
  CHECK(grid.crossings().size() == 1);
  CHECK_THROWS_MATCHES(grid.set(1, 1, Cell::none), Error, refused(ErrorCode::crossing_over_none, 1, 1));
  CHECK(grid.at(1, 1) == Cell::knit);
}

TEST_CASE("a cell set below or above a crossing keeps its rules, or is refused at its own place", "[grid][error]") {
  struct Case {
    int row;
    int column;
    Cell cell;
    ErrorCode code;
  };
  const Case cases[] = {
      {2, 1, Cell::tuck, ErrorCode::crossing_over_stack}, {2, 2, Cell::slip, ErrorCode::crossing_over_stack},
      {2, 3, Cell::none, ErrorCode::crossing_over_none},  {3, 1, Cell::none, ErrorCode::crossing_over_none},
      {2, 2, Cell::none, ErrorCode::crossing_over_none},
  };
  Grid grid(4, 5);
  grid.cross({.row = 2, .column = 1, .left = 1, .centre = 1, .right = 1});
  const Grid before = grid;
  for (const Case& c : cases) {
    CHECK_THROWS_MATCHES(grid.set(c.row, c.column, c.cell), Error, refused(c.code, c.row, c.column));
    CHECK(grid == before);
  }
  grid.set(2, 2, Cell::purl);  // purls may cross
  grid.set(3, 1, Cell::slip);  // row r+1 may hold a stack
  grid.set(2, 0, Cell::tuck);  // beside the span
  grid.set(2, 4, Cell::none);
  grid.set(1, 1, Cell::tuck);  // two rows below
  CHECK(grid.crossings().size() == 1);
}

TEST_CASE("a bare centre stays bare: one stitch set into it is refused at its place", "[grid][error]") {
  Grid grid = Grid::from_text(
      "k..k\n"
      "x 0 1/2/1 L behind\n"
      "k..k\n");
  const Grid before = grid;
  CHECK_THROWS_MATCHES(grid.set(1, 2, Cell::knit), Error, refused(ErrorCode::crossing_over_none, 1, 2));
  CHECK_THROWS_MATCHES(grid.set(2, 1, Cell::knit), Error, refused(ErrorCode::crossing_over_none, 2, 1));
  CHECK(grid == before);
}

TEST_CASE("a crossing taken away leaves the grid as it was; where there is none, it is refused", "[grid][error]") {
  Grid grid(4, 6);
  const Grid before = grid;
  grid.cross({.row = 2, .column = 1, .left = 2, .right = 2});
  CHECK_THROWS_MATCHES(grid.uncross(2, 2), Error, refused(ErrorCode::off_grid, 2, 2));  // inside, not its start
  CHECK_THROWS_MATCHES(grid.uncross(3, 1), Error, refused(ErrorCode::off_grid, 3, 1));
  CHECK(grid.crossings().size() == 1);
  grid.uncross(2, 1);
  CHECK(grid == before);
}

TEST_CASE("describe says size, side, cells by kind and crossings in one line", "[grid]") {
  CHECK(Grid(1, 1).describe() == "1 stitch x 1 row, RS: 1 knit; no crossings");
  const Grid grid = Grid::from_text(
      "kkp.k\n"
      "x 0 1/1 R\n"
      "kktsk\n");
  CHECK(grid.describe() == "5 stitches x 2 rows, RS: 6 knit, 1 purl, 1 tuck, 1 slip, 1 none; 1 crossing");
}

namespace {

/// FNV-1a, 64 bits, written from its definition.
std::uint64_t fnv1a(std::string_view bytes) {
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const char byte : bytes) {
    hash ^= static_cast<unsigned char>(byte);
    hash *= 0x100000001b3U;
  }
  return hash;
}

}  // namespace

TEST_CASE("the hash is FNV-1a over the documented bytes", "[grid]") {
  // Test vectors of RFC 9923, The FNV Non-Cryptographic Hash Algorithm (draft-eastlake-fnv).
  REQUIRE(fnv1a("") == 0xcbf29ce484222325U);
  REQUIRE(fnv1a("a") == 0xaf63dc4c8601ec8cU);
  REQUIRE(fnv1a("foobar") == 0x85944171f73967e8U);

  Grid grid = Grid::from_text(
      "kkkk\n"
      "kpts\n"
      "kkk.\n");
  grid.cross({.row = 2, .column = 0});
  std::string bytes;
  const auto add_number = [&](int number) {  // the lowest byte first
    for (int i = 0; i < 4; ++i) bytes += static_cast<char>((number >> (8 * i)) & 0xff);
  };
  for (const int number : {3, 4}) add_number(number);
  for (const int cell : {0, 0, 0, 4, 0, 1, 2, 3, 0, 0, 0, 0}) bytes += static_cast<char>(cell);
  for (const int number : {2, 0, 1, 0, 1}) add_number(number);
  bytes += static_cast<char>(1);  // right
  bytes += static_cast<char>(1);  // between
  CHECK(grid.hash() == fnv1a(bytes));
}

TEST_CASE("grids that differ in one thing differ in their hash", "[grid]") {
  const Grid base(4, 6);
  std::vector<Grid> others;
  others.emplace_back(6, 4);  // as many cells
  for (const Cell cell : {Cell::purl, Cell::tuck, Cell::slip, Cell::none}) {
    others.push_back(base);
    others.back().set(2, 3, cell);
  }
  for (const Crossing& crossing : {Crossing{.row = 1, .column = 0, .left = 1, .centre = 1, .right = 2},
                                   Crossing{.row = 1, .column = 0, .left = 2, .centre = 1, .right = 1},
                                   Crossing{.row = 1, .column = 0, .left = 1, .centre = 2, .right = 1},
                                   Crossing{.row = 1, .column = 1, .left = 1, .centre = 1, .right = 2},
                                   Crossing{.row = 2, .column = 0, .left = 1, .centre = 1, .right = 2}}) {
    for (const Lean lean : {Lean::left, Lean::right}) {
      for (const Centre place : {Centre::front, Centre::between, Centre::behind}) {
        Crossing varied = crossing;
        varied.lean = lean;
        varied.place = place;
        others.push_back(base);
        others.back().cross(varied);
      }
    }
  }
  others.push_back(base);
  for (std::size_t i = 0; i < others.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      CHECK(others[i].hash() != others[j].hash());
      CHECK_FALSE(others[i] == others[j]);
    }
  }
}

TEST_CASE("a crossing in the way is named with all its columns", "[grid]") {
  Grid grid(2, 4);
  grid.cross(Crossing{.row = 1, .column = 0, .left = 2, .right = 2});
  try {
    grid.cross(Crossing{.row = 1, .column = 1, .left = 1, .right = 1});
    FAIL("two crossings shared a stitch");
  } catch (const Error& error) {
    CHECK(std::string(error.what()).find("after row 1, columns 0 to 3") != std::string::npos);
  }
}

}  // namespace grid_test
