#include "latchwork/wale.hpp"

#include <vector>

#include "catch.hpp"
#include "latchwork/error.hpp"

namespace wale_test {

using namespace latchwork;
using latchwork_test::refused;

TEST_CASE("without crossings a wale is a column", "[wale]") {
  const Wales wales(Grid(3, 2));
  REQUIRE(wales.all().size() == 2);
  CHECK(wales.all()[0] == Wale{0, 1, {0, 0, 0}});
  CHECK(wales.all()[1] == Wale{1, 1, {1, 1, 1}});
  CHECK(wales.all()[1].last_row() == 3);
  CHECK(wales.at(3, 1) == 1);
}

TEST_CASE("a crossing moves its outer groups past each other and the centre between them", "[wale]") {
  // Groups 1 / 2 / 3 from column 0 after row 1: columns 0 | 1 2 | 3 4 5 become 3 4 5 | 1 2 | 0.
  const Wales wales(
      Grid::from_text("kkkkkk\n"
                      "x 0 1/2/3 R behind\n"
                      "kkkkkk\n"));
  const std::vector<int> above = {5, 3, 4, 0, 1, 2};
  REQUIRE(wales.all().size() == 6);
  for (int x = 0; x < 6; ++x) {
    CHECK(wales.all()[static_cast<std::size_t>(x)] == Wale{x, 1, {x, above[static_cast<std::size_t>(x)]}});
    CHECK(wales.at(2, above[static_cast<std::size_t>(x)]) == x);
  }
}

TEST_CASE("a wale goes the same way whatever the lean and wherever the centre lies", "[wale]") {
  Grid base(2, 5);
  base.cross({.row = 1, .column = 0, .left = 2, .centre = 1, .right = 2});
  const Wales expected(base);
  for (const Lean lean : {Lean::left, Lean::right}) {
    for (const Centre place : {Centre::front, Centre::between, Centre::behind}) {
      Grid grid(2, 5);
      grid.cross({.row = 1, .column = 0, .left = 2, .centre = 1, .right = 2, .lean = lean, .place = place});
      const Wales wales(grid);
      CHECK(std::vector(wales.all().begin(), wales.all().end()) ==
            std::vector(expected.all().begin(), expected.all().end()));
    }
  }
}

TEST_CASE("none belongs to no wale; a wale's rows are one run, and above a hole another wale begins", "[wale]") {
  const Wales wales(
      Grid::from_text("kk.\n"
                      "k.k\n"
                      "kkk\n"));
  REQUIRE(wales.all().size() == 4);
  CHECK(wales.all()[0] == Wale{0, 1, {0, 0, 0}});
  CHECK(wales.all()[1] == Wale{1, 1, {1}});
  CHECK(wales.all()[2] == Wale{2, 1, {2, 2}});
  CHECK(wales.all()[3] == Wale{1, 3, {1}});  // ordered by row, then column, of the lowest cell
  CHECK(wales.at(2, 1) == -1);
  CHECK(wales.at(3, 2) == -1);
  CHECK(wales.at(3, 1) == 3);
}

TEST_CASE("a grid of no stitches has no wales", "[wale]") {
  const Wales wales(Grid::from_text("..\n..\n"));
  CHECK(wales.all().empty());
  CHECK(wales.at(1, 0) == -1);
}

TEST_CASE("a crossing on the seam moves nothing in the panel reading", "[wale]") {
  const Wales wales(
      Grid::from_text("x 0 1/1 R\n"
                      "kk\n"
                      "kk\n"));
  CHECK(wales.all()[0] == Wale{0, 1, {0, 0}});
  CHECK(wales.all()[1] == Wale{1, 1, {1, 1}});
}

TEST_CASE("a crossing goes round a ladder that is its centre", "[wale]") {
  const Wales wales(
      Grid::from_text("k.k\n"
                      "x 0 1/1/1 L behind\n"
                      "k.k\n"));
  REQUIRE(wales.all().size() == 2);
  CHECK(wales.all()[0] == Wale{0, 1, {0, 2}});
  CHECK(wales.all()[1] == Wale{2, 1, {2, 0}});
}

TEST_CASE("a place off the grid is refused", "[wale][error]") {
  const Wales wales(Grid(3, 2));
  CHECK_THROWS_MATCHES(wales.at(0, 0), Error, refused(ErrorCode::off_grid, 0, 0));
  CHECK_THROWS_MATCHES(wales.at(4, 0), Error, refused(ErrorCode::off_grid, 4, 0));
  CHECK_THROWS_MATCHES(wales.at(1, 2), Error, refused(ErrorCode::off_grid, 1, 2));
  CHECK_THROWS_MATCHES(wales.at(1, -1), Error, refused(ErrorCode::off_grid, 1, -1));
}

TEST_CASE("wales are equal where they and their grids' sizes are", "[wale]") {
  CHECK(Wales(Grid(3, 2)) == Wales(Grid(3, 2)));
  CHECK(Wales(Grid::from_text("kp\n")) == Wales(Grid::from_text("kk\n")));
  CHECK(Wales(Grid::from_text("kk\n")) != Wales(Grid::from_text("k.\n")));
  CHECK(Wales(Grid::from_text("..\n")) != Wales(Grid::from_text("...\n...\n")));
}

}  // namespace wale_test
