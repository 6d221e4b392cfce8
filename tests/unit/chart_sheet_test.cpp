#include <cmath>
#include <set>
#include <string>
#include <tuple>
#include <utility>

#include "catch.hpp"
#include "chart_picture.hpp"
#include "latchwork/chart.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/plan.hpp"

using namespace latchwork;
using namespace latchwork_test;

namespace {

ChartOptions sheet(int first, int last, Side side = Side::right_side) {
  ChartOptions options = seen_from(side, Blank::knit);
  options.first_row = first;
  options.last_row = last;
  return options;
}

Grid two_crossings() {
  Grid grid = Grid::from_text("kkkk\nkpkk\nkkkk\nkkpk\nkkkk\nptkk\n");
  grid.cross({.row = 3, .column = 0, .left = 2, .right = 2, .lean = Lean::right});
  grid.cross({.row = 6, .column = 0, .left = 2, .right = 2, .lean = Lean::left});
  return grid;
}

}  // namespace

TEST_CASE("sheets show each row once, and each crossing on the sheet of the row above it", "[chart]") {
  const Panel panel = panel_of(two_crossings());
  const Picture whole(panel, sheet(1, 0));
  const int cut = GENERATE(2, 3, 4);
  Picture low(panel, sheet(1, cut));
  Picture high(panel, sheet(cut + 1, 6));
  // A sheet's rows are counted from the panel's first.
  const auto in_panel = [](const Picture& picture, int first, int rows, const char* group) {
    std::set<std::pair<int, int>> cells;
    const auto found = picture.paths.find(group);
    if (found == picture.paths.end()) return cells;
    const double height = 16;
    for (const auto& piece : found->second) {
      const double y = (piece.front().y + piece.back().y) / 2;
      const double x = (piece.front().x + piece.back().x) / 2;
      cells.insert(
          {first + rows - 1 - static_cast<int>(std::floor((y - picture.corner.y) / height)), picture.column_at(x)});
    }
    return cells;
  };
  std::set<std::pair<int, int>> purls = in_panel(low, 1, cut, "purl");
  purls.merge(in_panel(high, cut + 1, 6 - cut, "purl"));
  CHECK(purls == in_panel(whole, 1, 6, "purl"));
  CHECK(purls == std::set<std::pair<int, int>>{{1, 0}, {3, 2}, {5, 1}});
  // The crossing after row 3 is drawn in row 4; the one after the last row above it.
  CHECK(low.paths.count("crossing") == (cut >= 4 ? 1U : 0U));
  CHECK(high.paths.at("crossing").size() == (cut >= 4 ? 3U : 6U));
}

TEST_CASE("a sheet says which rows it shows, and its stops are those after its rows and before its first", "[chart]") {
  const Panel panel = panel_of(two_crossings());
  Machine machine;
  const Plan made = plan(panel.grid(), machine);
  REQUIRE(made.status != PlanStatus::infeasible);
  ChartOptions options = sheet(4, 6, Side::operator_view);
  options.plan = &made;
  const std::string words = joined_words(chart_svg(panel, options));
  CHECK(holds(words, ", rows 4 to 6 "));
  CHECK(holds(words, "Of 4 stitches x 6 rows"));
  CHECK(holds(words, " 3 COL"));  // its crossing stands in row 4
  CHECK(holds(chart_text(panel, options), "  3 COL*\n"));
  options.first_row = 1;
  options.last_row = 3;
  CHECK(holds(joined_words(chart_svg(panel, options)), " 3 COL"));
  options.last_row = 2;
  CHECK_FALSE(holds(joined_words(chart_svg(panel, options)), " 3 COL"));
  CHECK_FALSE(holds(joined_words(chart_svg(panel)), ", rows 1"));
}

TEST_CASE("the sheets of a chart in text put together are its rows, with the crossings between them", "[chart]") {
  const Panel panel = panel_of(two_crossings());
  const auto rows = [](const std::string& text) {
    const std::size_t from = text.find("\n\n") + 2;
    return text.substr(from, text.find("  column ") - from);
  };
  for (int cut = 1; cut < 6; ++cut) {
    INFO("cut above row " << cut);
    CHECK(rows(chart_text(panel, sheet(cut + 1, 6))) + rows(chart_text(panel, sheet(1, cut))) ==
          rows(chart_text(panel)));
  }
}

TEST_CASE("a sheet's key holds what stands on it and no more, its strips under their letters", "[chart]") {
  Grid grid = Grid::from_text("kkkk\nkkkk\nkpkk\nkkkk\nkktk\nkkkk\n");
  grid.cross({.row = 5, .column = 0, .left = 2, .right = 2, .lean = Lean::left});
  const std::vector<Strip> low{strip_of("moss", 2, 2), strip_of("basket", 2, 2)};
  const std::vector<Strip> high{strip_of("basket", 2, 2), strip_of("wave", 2, 2)};
  const Panel strips = join_strips("Sample", 4, high).above(join_strips("Sample", 4, low));
  const Panel panel = panel_of(grid);
  for (const Side side : {Side::right_side, Side::operator_view}) {
    const std::string plain = chart_text(panel, sheet(4, 4, side)).substr(0, 4000);
    CHECK_FALSE(holds(plain, "tuck"));
    CHECK_FALSE(holds(plain, "cross"));
    CHECK(holds(plain, ", row 4\n"));
    const std::string purled = key_part(chart_svg(panel, sheet(4, 5, side)));
    CHECK_FALSE(holds(purled, "tuck:"));
    CHECK_FALSE(holds(purled, "2/2"));
    CHECK(holds(key_part(chart_svg(panel, sheet(6, 6, side))), "2/2"));
    CHECK_FALSE(holds(key_part(chart_svg(panel, sheet(5, 5, side))), "2/2"));
    // The arch that closes on this sheet stands on it, its leg on the one below.
    CHECK(holds(key_part(chart_svg(panel, sheet(3, 3, side))), "tuck:"));
    CHECK(holds(key_part(chart_svg(strips, sheet(5, 8, side))), "wave"));
    CHECK_FALSE(holds(key_part(chart_svg(strips, sheet(5, 8, side))), "moss"));
    CHECK_FALSE(holds(key_part(chart_svg(strips, sheet(3, 3, side))), "begin again"));
    CHECK(holds(key_part(chart_svg(strips, sheet(2, 3, side))), "begin again"));
  }
}

TEST_CASE("a chart in text marks every loop, whichever are blank in a picture", "[chart]") {
  const Panel panel = panel_of(two_crossings());
  CHECK(chart_text(panel, seen_from(Side::right_side, Blank::purl)) ==
        chart_text(panel, seen_from(Side::right_side, Blank::knit)));
}

TEST_CASE("a chart refuses rows that the panel does not have", "[chart][error]") {
  const Panel panel = panel_of(Grid(6, 3));
  for (const auto& [first, last, field] :
       {std::tuple{0, 0, "first_row"}, std::tuple{7, 0, "first_row"}, std::tuple{-1, 3, "first_row"},
        std::tuple{1, 7, "last_row"}, std::tuple{4, 3, "last_row"}, std::tuple{1, -1, "last_row"}}) {
    CHECK_THROWS_MATCHES(chart_svg(panel, sheet(first, last)), Error, refused_field(ErrorCode::bad_argument, field));
    CHECK_THROWS_MATCHES(chart_text(panel, sheet(first, last)), Error, refused_field(ErrorCode::bad_argument, field));
  }
  CHECK_THROWS_MATCHES(chart_svg(panel, seen_from(Side::right_side, static_cast<Blank>(3))), Error,
                       refused_field(ErrorCode::bad_argument, "blank"));
}

TEST_CASE("the middle of the bed is marked between L1 and R1, from the operator's side alone", "[chart]") {
  const Panel panel = panel_of(Grid(3, 5));
  Machine machine;
  machine.leftmost = GENERATE(-1, -2, -4, -5, 1);
  ChartOptions options = seen_from(Side::operator_view);
  options.machine = &machine;
  const Picture picture(panel, options);
  if (machine.leftmost <= -5 || machine.leftmost > 0) {
    CHECK(picture.paths.count("bed-middle") == 0);
    CHECK_FALSE(holds(joined_words(picture.svg), "middle of the bed"));
  } else {
    const double x = picture.paths.at("bed-middle").front().front().x;
    CHECK(x == Approx(picture.corner.x - machine.leftmost * picture.cell_width));
    CHECK(holds(joined_words(picture.svg), "middle of the bed, between L1 and R1"));
  }
  CHECK(Picture(panel, seen_from(Side::right_side)).paths.count("bed-middle") == 0);
}
