// Grids as rows of letters.
#include <string>
#include <string_view>
#include <utility>

#include "catch.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"

namespace grid_text_test {

using namespace latchwork;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

Place on_line(int line, int row = 0, int column = -1) {
  Place place;
  place.line = line;
  place.row = row;
  place.column = column;
  return place;
}

}  // namespace

TEST_CASE("the top line of a text is the top row, as a chart is seen", "[grid][text]") {
  const Grid grid = Grid::from_text(
      "kp\n"
      "ts\n"
      "k.\n");
  CHECK(grid.rows() == 3);
  CHECK(grid.columns() == 2);
  CHECK(grid.at(1, 1) == Cell::none);
  CHECK(grid.at(2, 0) == Cell::tuck);
  CHECK(grid.at(2, 1) == Cell::slip);
  CHECK(grid.at(3, 1) == Cell::purl);
}

TEST_CASE("a crossing line puts the crossing after the row just below it, the first line on the seam", "[grid][text]") {
  const Grid grid = Grid::from_text(
      "x 0 1/1 L\n"
      "kkkkkkkk\n"
      "x 0 2/1 R\n"
      "x 4 1/2/1 L behind\n"
      "kkkkkkkk\n");
  REQUIRE(grid.crossings().size() == 3);
  CHECK(grid.crossings()[0] == Crossing{.row = 1, .column = 0, .left = 2, .right = 1, .lean = Lean::right});
  CHECK(
      grid.crossings()[1] ==
      Crossing{.row = 1, .column = 4, .left = 1, .centre = 2, .right = 1, .lean = Lean::left, .place = Centre::behind});
  CHECK(grid.crossings()[2] == Crossing{.row = 2, .column = 0, .left = 1, .right = 1, .lean = Lean::left});
}

TEST_CASE("to_text writes what from_text reads, in one form", "[grid][text]") {
  const std::string text =
      "x 0 1/1 L\n"
      "kkkkpp.s\n"
      "x 0 2/1 R\n"
      "x 3 1/1/1 L front\n"
      "kkkkppks\n"
      "x 1 1/2/1 R between\n"
      "kkkkkktt\n";
  CHECK(Grid::from_text(text).to_text() == text);
}

TEST_CASE("blank lines, spaces at both ends of a line, tabs and carriage returns are passed over", "[grid][text]") {
  const Grid plain = Grid::from_text("kp\nx 0 1/1 R\nkk\n");
  CHECK(Grid::from_text("kp\nx 0 1/1 R\nkk") == plain);
  CHECK(Grid::from_text("\n\n  kp  \n\tx  0\t1/1   R \n\n kk\n\n") == plain);
  CHECK(Grid::from_text("kp\r\nx 0 1/1 R\r\nkk\r\n") == plain);
}

TEST_CASE("a letter that is no cell is refused with its line, row and column", "[grid][text][error]") {
  struct Case {
    std::string text;
    int line;
    int row;
    int column;
  };
  const Case cases[] = {
      {"kk\nkq\n", 2, 1, 1},
      {"kk\n\n kK\n", 3, 1, 1},  // columns count from the first letter
      {"-k\nkk\n", 1, 2, 0},
      {"k k\nkkk\n", 1, 2, 1},  // a space inside a row is no cell
      {std::string("k\0k\nkkk", 7), 1, 2, 1},
      {"kkk\nk\xC3\xA9\n", 2, 1, 1},  // two bytes of one letter past ASCII
  };
  for (const Case& c : cases) {
    INFO(c.text);
    CHECK_THROWS_MATCHES(Grid::from_text(c.text), Error,
                         refused(ErrorCode::bad_letter, on_line(c.line, c.row, c.column)));
  }
}

TEST_CASE("the message for a bad letter is plain text even where the letter is not", "[grid][text][error]") {
  try {
    Grid::from_text("k\xFFk");
    FAIL("not refused");
  } catch (const Error& error) {
    for (const char letter : std::string_view(error.what())) CHECK((letter >= ' ' && letter <= '~'));
    CHECK(std::string_view(error.what()).find("0xFF") != std::string_view::npos);
    // Counted from 1, as a panel file's message counts the letters of its rows.
    CHECK(std::string_view(error.what()).find("line 1: letter 2 is") == 0);
  }
}

TEST_CASE("a letter of several bytes makes no row too long: it is told, whole", "[grid][text][error]") {
  const std::string message = "letter 2 is '\xC3\xA9', which stands for no cell";
  for (const auto& [text, place] :
       {std::pair{"k\xC3\xA9\xC3\xA9\nx 0 1/1 R\nkkk\n\nkkk", on_line(1, 3, 1)},
        std::pair{"kk\nk\xC3\xA9\nkk\n", on_line(2, 2, 1)}, std::pair{"k\xC3\xA9\nkkk\nkkk", on_line(1, 3, 1)}}) {
    INFO(text);
    CHECK_THROWS_MATCHES(Grid::from_text(text), Error, refused(ErrorCode::bad_letter, place));
    try {
      Grid::from_text(text);
    } catch (const Error& error) {
      CHECK(std::string_view(error.what()).find(message) != std::string_view::npos);
    }
  }
}

TEST_CASE("a row of another length is refused with its line", "[grid][text][error]") {
  CHECK_THROWS_MATCHES(Grid::from_text("kkk\n\nkk\n"), Error, refused_field(ErrorCode::size_mismatch, "columns", 3));
  CHECK_THROWS_MATCHES(Grid::from_text("kkk\nkkkk\n"), Error, refused_field(ErrorCode::size_mismatch, "columns", 2));
}

TEST_CASE("a text without a row, or a crossing with no row below it, is refused", "[grid][text][error]") {
  CHECK_THROWS_MATCHES(Grid::from_text(""), Error, refused(ErrorCode::bad_syntax, on_line(1)));
  CHECK_THROWS_MATCHES(Grid::from_text("\n \n"), Error, refused(ErrorCode::bad_syntax, on_line(1)));
  CHECK_THROWS_MATCHES(Grid::from_text("x 0 1/1 R\n"), Error, refused(ErrorCode::bad_syntax, on_line(1)));
  CHECK_THROWS_MATCHES(Grid::from_text("kk\nkk\nx 0 1/1 R\n"), Error, refused(ErrorCode::bad_syntax, on_line(3)));
}

TEST_CASE("a crossing line that is not well-formed is refused with its line", "[grid][text][error]") {
  const char* lines[] = {
      "x",
      "x 0",
      "x 0 1/1",
      "x 0 1 R",
      "x 0 1/ R",
      "x 0 /1 R",
      "x 0 1/1/ R",
      "x 0 1/1/ R front",
      "x 0 1/1/1/1 R front",
      "x 0 1/1 r",
      "x 0 1/1 RC",
      "x zero 1/1 R",
      "x 0 1/1x R",
      "x 0 +1/1 R",
      "x 0 1.0/1 R",
      "x 0 1/1 R front",  // no centre to place
      "x 0 1/1/1 R",      // a centre without its place
      "x 0 1/1/1 R middle",
      "x 0 1/1/1 R front L",
      "x0 1/1 R",
      "xx",
  };
  for (const char* line : lines) {
    INFO(line);
    CHECK_THROWS_MATCHES(Grid::from_text("kkkk\n" + std::string(line) + "\nkkkk\n"), Error,
                         refused(ErrorCode::bad_syntax, on_line(2)));
  }
}

TEST_CASE("what cross() refuses is refused with the line too", "[grid][text][error]") {
  CHECK_THROWS_MATCHES(Grid::from_text("kkk\nx 2 1/1 R\nkkk\n"), Error, refused(ErrorCode::off_grid, on_line(2, 1, 2)));
  CHECK_THROWS_MATCHES(Grid::from_text("kkk\nx 0 1/1 R\nx 1 1/1 R\nkkk\n"), Error,
                       refused(ErrorCode::stitch_taken, on_line(2, 1, 0)));
  CHECK_THROWS_MATCHES(Grid::from_text("kkk\nx 0 1/1 R\nktk\n"), Error,
                       refused(ErrorCode::crossing_over_stack, on_line(2, 1, 1)));
  CHECK_THROWS_MATCHES(Grid::from_text(".kk\nx 0 1/1 R\nkkk\n"), Error,
                       refused(ErrorCode::crossing_over_none, on_line(2, 2, 0)));
  CHECK_THROWS_MATCHES(Grid::from_text("kkk\nx -1 1/1 R\nkkk\n"), Error,
                       refused(ErrorCode::off_grid, on_line(2, 1, -1)));
}

TEST_CASE("a number past any integer, and a text past the limits, are too large", "[grid][text][error]") {
  CHECK_THROWS_MATCHES(Grid::from_text("kkk\nx 0 99999999999/1 R\nkkk\n"), Error,
                       refused(ErrorCode::too_large, on_line(2)));
  CHECK_THROWS_MATCHES(Grid::from_text(std::string(Grid::max_side + 1, 'k')), Error,
                       refused_field(ErrorCode::too_large, "columns", 1));
  std::string tall;
  for (int row = 0; row <= Grid::max_side; ++row) tall += "k\n";
  CHECK_THROWS_MATCHES(Grid::from_text(tall), Error, refused_field(ErrorCode::too_large, "rows", Grid::max_side + 1));
}

}  // namespace grid_text_test
