#include "latchwork/chart.hpp"

#include <map>
#include <set>
#include <string>
#include <vector>

#include "catch.hpp"
#include "chart_picture.hpp"
#include "latchwork/motif.hpp"

namespace chart_text_test {

using namespace latchwork;
using namespace latchwork_test;

TEST_CASE("columns are named as the side asks: numbers from the left, or needles", "[chart]") {
  const Panel panel = panel_of(Grid(2, 5));
  const std::string right = chart_svg(panel);
  for (const char* name : {">0<", ">4<"}) CHECK(holds(right, name));
  // Five stitches centred with the odd one on the operator's left: L3..R2 (DEVELOPERS.md, sides).
  const std::string wrong = chart_text(panel, seen_from(Side::operator_view));
  CHECK(holds(wrong, "         LLLRR\n  needle 32112\n"));
}

TEST_CASE("the text chart shows crossings between the rows they are made between", "[chart]") {
  Grid grid = Grid::from_text("kpkkkk\nktkkkk\nkkkkkk\n");
  grid.cross({.row = 2, .column = 2, .left = 2, .right = 2, .lean = Lean::right});
  CHECK(chart_text(panel_of(grid)) ==
        "Right side (RS) of Sample\n"
        "6 stitches x 3 rows, read from the bottom up; columns counted from 0 at the left.\n"
        "On the bed the wrong side faces you, left and right exchanged: see the operator's view.\n"
        "\n"
        "  3      |-||||\n"
        "           ..//\n"
        "  2      |n||||\n"
        "  1      ||||||\n"
        "  column 012345\n"
        "\n"
        "Key\n"
        "  |        knit: a face loop\n"
        "  -        purl: a back loop\n"
        "  n        tuck: held with the loop below until the next | or - above takes it\n"
        "  ..//     2/2 right cross\n"
        "  In a crossing / is the group that passes in front, . the other; it stands between the rows it is made "
        "between.\n");
}

TEST_CASE("where the centre of a crossing lies has its own sign, from either side", "[chart]") {
  Grid grid(2, 16);
  int column = 0;
  for (const Centre place : {Centre::front, Centre::between, Centre::behind}) {
    grid.cross({.row = 1, .column = column, .left = 2, .centre = 1, .right = 2, .lean = Lean::right, .place = place});
    column += 5;
  }
  const std::string right = chart_text(panel_of(grid));
  CHECK(holds(right, "..#//..=//..://"));
  CHECK(holds(right, ", # a centre in front of both, = a centre between them, : a centre behind both; it stands"));
  // What lies in front on the RS lies behind on the WS.
  CHECK(holds(chart_text(panel_of(grid), seen_from(Side::operator_view)), "..#//..=//..://"));
  grid.uncross(1, 10);
  grid.uncross(1, 5);
  CHECK(holds(chart_text(panel_of(grid), seen_from(Side::operator_view)), "..://\n"));
  CHECK_FALSE(holds(chart_text(panel_of(grid)), "a centre behind"));
}

TEST_CASE("the operator's text chart is the turned grid's", "[chart]") {
  Grid grid = Grid::from_text("kpkkkk\nktkkkk\nkkkkkk\n");
  grid.cross({.row = 2, .column = 2, .left = 2, .right = 2, .lean = Lean::right});
  const std::string text = chart_text(panel_of(grid), seen_from(Side::operator_view));
  CHECK(holds(text,
              "  3      ----|-\n"
              "         ..//\n"
              "  2      ----n-\n"
              "  1      ------\n"
              "         LLLRRR\n"
              "  needle 321123\n"));
}

TEST_CASE("a strip's letters are shown whole, on one column too", "[chart]") {
  std::vector<Strip> strips;
  for (int i = 0; i < 27; ++i) strips.push_back(strip_of("strip " + std::to_string(i + 1), i == 26 ? 1 : 2));
  strips.push_back(strip_of("last", 2));
  const Panel panel = join_strips("Sample", 2, strips);
  const std::string text = chart_text(panel);
  // The 27th strip, AA, is one column wide: its letters are written downward. The 28th, AB, has room.
  CHECK(holds(text, "X  Y  Z  A AB\n"));
  CHECK(holds(text, "A\n\nKey\n"));
  CHECK(holds(text, "  AA: strip 27\n"));
  const Picture picture(panel, {});
  const auto letters = texts(picture.svg, "strips");
  REQUIRE(letters.size() == 28);
  CHECK(letters[26].second == "AA");
  CHECK(letters[27].second == "AB");
}

TEST_CASE("letters and names of the strips are shown for every band", "[chart]") {
  const std::vector<Strip> lower{strip_of("edge", 2), strip_of("rope", 4), strip_of("edge", 2)};
  const std::vector<Strip> upper{strip_of("moss", 8)};
  const Panel panel = join_strips("Sample", 2, upper).above(join_strips("Sample", 3, lower));
  const std::string text = chart_text(panel);
  // Each band's letters stand below its own rows.
  CHECK(holds(text,
              "  5      ||||||||\n"
              "  4      ||||||||\n"
              "   strip C_______\n"
              "  3      ||||||||\n"
              "  2      ||||||||\n"
              "  1      ||||||||\n"
              "  column 01234567\n"
              "   strip A_B___A_\n"));
  CHECK(holds(text, "  A_       strip A in the rows above, as wide as its columns\n"));
  CHECK_FALSE(holds(text, "(blank)"));
  CHECK(holds(text, "  A: edge\n  B: rope\n  C: moss\n"));
  const Picture picture(panel, {});
  const auto letters = texts(picture.svg, "strips");
  REQUIRE(letters.size() == 4);
  std::map<std::string, std::set<double>> heights;
  for (const auto& [place, letter] : letters) heights[letter].insert(place.y);
  // The upper band's stand above the lower one's, all above the cells.
  CHECK(*heights["C"].begin() < *heights["A"].begin());
  CHECK(heights["A"] == heights["B"]);
  CHECK(*heights["A"].begin() < picture.corner.y);
  const std::string words = joined_words(picture.svg);
  for (const char* part : {"A: edge", "B: rope", "C: moss", "rows 4-5", "rows 1-3"}) {
    INFO(part);
    CHECK(holds(words, part));
  }
}

TEST_CASE("a blank of the text chart is an edge in every row, and no crossing is torn by one", "[chart]") {
  const std::vector<Strip> lower{strip_of("edge", 2), strip_of("moss", 2), strip_of("reverse", 2), strip_of("edge", 2)};
  const std::vector<Strip> upper{strip_of("edge", 2), rope(2, 2, 2, Lean::right), strip_of("edge", 2)};
  const Panel panel = join_strips("Sample", 2, upper).above(join_strips("Sample", 1, lower));
  for (const Side side : {Side::right_side, Side::operator_view}) {
    const std::string text = chart_text(panel, seen_from(side));
    CHECK(holds(text, " (blank)  edge of a strip in all rows\n"));
  }
  CHECK(holds(chart_text(panel),
              "  3      || |||| ||\n"
              "            ..//\n"
              "  2      || |||| ||\n"
              "   strip A_ D___ A_\n"
              "  1      || |||| ||\n"
              "  column 01 2345 67\n"
              "   strip A_ B_C_ A_\n"));
  // A crossing over the edge of two strips.
  Grid grid(3, 4);
  grid.cross({.row = 2, .column = 1, .left = 1, .right = 1, .lean = Lean::right});
  const Panel crossed("Sample", grid, {{1, 3, {{"a", "a", 0, 2, 1}, {"b", "b", 2, 2, 1}}}});
  CHECK(holds(chart_text(crossed),
              "  3      ||||\n"
              "          ./\n"
              "  2      ||||\n"
              "  1      ||||\n"
              "  column 0123\n"
              "   strip A_B_\n"));
}

TEST_CASE("a strip has the same letter seen from either side", "[chart]") {
  const std::vector<Strip> strips{strip_of("edge", 2), strip_of("rope", 4), strip_of("moss", 3)};
  const Panel panel = join_strips("Sample", 2, strips);
  for (const Side side : {Side::right_side, Side::operator_view}) {
    const std::string text = chart_text(panel, seen_from(side));
    for (const char* part : {"A: edge", "B: rope", "C: moss"}) CHECK(holds(text, part));
  }
  CHECK(holds(chart_text(panel, seen_from(Side::operator_view)), "   strip C   B    A\n"));
}

TEST_CASE("strips without a name are told apart by their texture", "[chart]") {
  const std::vector<Strip> strips{{"", "garter", Grid(1, 2)}, {"", "moss", Grid(1, 2)}};
  const std::string text = chart_text(join_strips("Sample", 2, strips));
  CHECK(holds(text, "  A: garter\n  B: moss\n"));
}

TEST_CASE("the text chart marks the rows in which strips begin again", "[chart]") {
  const std::vector<Strip> strips{strip_of("edge", 1), strip_of("two", 2, 2), strip_of("three", 2, 3)};
  CHECK(holds(chart_text(join_strips("Sample", 7, strips)),
              "  7      | || ||  + B C\n"
              "  6      | || ||\n"
              "  5      | || ||  + B\n"
              "  4      | || ||  + C\n"
              "  3      | || ||  + B\n"
              "  2      | || ||\n"
              "  1      | || ||\n"));
  const std::string text = chart_text(join_strips("Sample", 7, strips));
  CHECK(holds(text, "  + B      strip B's rows begin again with this row"));
  const std::vector<Strip> alone{strip_of("two", 2, 2)};
  const std::string one = chart_text(join_strips("Sample", 3, alone));
  CHECK(holds(one, "  3      ||  +\n  2      ||\n"));
  CHECK(holds(one, "  +        the rows begin again with this row"));
  const std::string none = chart_text(panel_of(Grid(3, 3)));
  CHECK_FALSE(holds(none, "+"));
  CHECK_FALSE(holds(none, "begin again"));
}

}  // namespace chart_text_test
