#include <cmath>
#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "chart_picture.hpp"
#include "latchwork/chart.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/plan.hpp"

namespace chart_sheet_test {

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

TEST_CASE("parts of a chart's columns show each column once, and a crossing whole or not at all", "[chart]") {
  Grid grid = Grid::from_text("kpkkkkp\nkkkpkkk\nkkkkkkk\npkkkpkk\n");
  grid.cross({.row = 2, .column = 1, .left = 2, .right = 2, .lean = Lean::right});
  const Panel panel = panel_of(grid);
  const Side side = GENERATE(Side::right_side, Side::operator_view);
  const auto part = [&](int first, int count) {
    ChartOptions options = seen_from(side, Blank::knit);
    options.first_column = first;
    options.columns = count;
    return options;
  };
  // Marks by columns of the whole chart, as it is seen.
  const char* marks = side == Side::right_side ? "purl" : "knit";
  const auto cells = [&](const Picture& picture, int first) {
    std::set<std::pair<int, int>> out;
    for (const auto& [row, column] : picture.cells(marks)) out.insert({row, column + first});
    return out;
  };
  const auto blank = side == Side::right_side ? Blank::knit : Blank::purl;
  for (const int cut : {1, 2, 3, 4, 5, 6}) {
    INFO("cut left of column " << cut);
    ChartOptions left = part(0, cut);
    ChartOptions right = part(cut, 0);
    ChartOptions all = part(0, 0);
    left.blank = right.blank = all.blank = blank;
    const Picture low(panel, left);
    const Picture high(panel, right);
    const Picture whole(panel, all);
    const bool front = side == Side::right_side;
    std::set<std::pair<int, int>> both = cells(low, front ? 0 : 7 - cut);
    both.merge(cells(high, front ? cut : 0));
    const bool torn = cut > 1 && cut < 5;
    if (!torn) CHECK(both == cells(whole, 0));
    CHECK(low.paths.count("crossing") == (cut >= 5 ? 1U : 0U));
    CHECK(high.paths.count("crossing") == (cut <= 1 ? 1U : 0U));
    for (const Picture* picture : {&low, &high}) {
      CHECK(picture->paths.count("cut-crossing") == (torn ? 1U : 0U));
      CHECK(holds(key_part(picture->svg), "part of a crossing that reaches past these columns") == torn);
      CHECK(holds(key_part(picture->svg), "2/2 right cross") == (picture->paths.count("crossing") == 1));
    }
    CHECK(holds(joined_words(low.svg), front ? ", column" : ", needle"));
    CHECK_FALSE(holds(joined_words(whole.svg), front ? ", column" : ", needle"));
  }
}

TEST_CASE("parts of a chart in text stand side by side as the whole does", "[chart]") {
  Grid grid = Grid::from_text("kpkkkkp\nkkkpkkk\nkkkkkkk\npkkkpkk\n");
  grid.cross({.row = 2, .column = 1, .left = 2, .right = 2, .lean = Lean::left});
  const Panel panel = panel_of(grid);
  const auto text_of = [&](int first, int count) {
    ChartOptions options;
    options.first_column = first;
    options.columns = count;
    return chart_text(panel, options);
  };
  // The rows alone, each as long as its columns; a line ends with its last mark.
  const auto rows_of = [](const std::string& text, std::size_t columns) {
    std::vector<std::string> rows;
    std::size_t from = text.find("\n\n") + 2;
    while (text.compare(from, 9, "  column ") != 0) {
      const std::size_t end = text.find('\n', from);
      std::string row = end < from + 9 ? "" : text.substr(from + 9, end - from - 9);
      row.resize(columns, ' ');
      rows.push_back(row);
      from = end + 1;
    }
    return rows;
  };
  const std::vector<std::string> whole = rows_of(text_of(0, 0), 7);
  REQUIRE(whole == std::vector<std::string>{"|-||||-", "|||-|||", " \\\\..  ", "|||||||", "-|||-||"});
  for (const int cut : {1, 5, 6}) {
    const auto left = rows_of(text_of(0, cut), static_cast<std::size_t>(cut));
    const auto right = rows_of(text_of(cut, 0), static_cast<std::size_t>(7 - cut));
    REQUIRE(left.size() + right.size() >= whole.size());
    std::vector<std::string> put;
    std::size_t l = 0;
    std::size_t r = 0;
    for (const std::string& row : whole) {  // the line of the crossing stands on its own part alone
      const bool crossing = row.find('.') != std::string::npos;
      const bool on_left = crossing && cut > 1;
      const std::string blank_left(static_cast<std::size_t>(cut), ' ');
      const std::string blank_right(static_cast<std::size_t>(7 - cut), ' ');
      put.push_back((crossing && !on_left ? blank_left : left.at(l++)) +
                    (crossing && on_left ? blank_right : right.at(r++)));
    }
    CHECK(put == whole);
  }
  CHECK(holds(text_of(0, 3), "~~\n"));
  CHECK(holds(text_of(0, 3), "part of a crossing that reaches past these columns"));
  CHECK(holds(text_of(3, 0), ", columns 3 to 6\n"));
  CHECK(holds(text_of(6, 1), ", column 6\n"));
}

TEST_CASE("strips keep their letters in parts of the columns, and only those that are shown are told", "[chart]") {
  const std::vector<Strip> strips{strip_of("moss", 2, 2), strip_of("basket", 4, 2), strip_of("wave", 2, 2)};
  const Panel panel = join_strips("Sample", 8, strips);
  ChartOptions options;
  options.first_column = 4;
  for (const Side side : {Side::right_side, Side::operator_view}) {
    options.side = side;
    for (const std::string& key : {key_part(chart_svg(panel, options)), chart_text(panel, options)}) {
      CHECK(holds(key, "B: basket, repeats every 2 rows"));
      CHECK(holds(key, "C: wave, repeats every 2 rows"));
      CHECK_FALSE(holds(key, "moss"));
    }
  }
}

TEST_CASE("a chart refuses columns that the panel does not have", "[chart][error]") {
  const Panel panel = panel_of(Grid(6, 3));
  for (const auto& [first, count, field] :
       {std::tuple{-1, 0, "first_column"}, std::tuple{3, 0, "first_column"}, std::tuple{0, 4, "columns"},
        std::tuple{2, 2, "columns"}, std::tuple{0, -1, "columns"}}) {
    ChartOptions options;
    options.first_column = first;
    options.columns = count;
    CHECK_THROWS_MATCHES(chart_svg(panel, options), Error, refused_field(ErrorCode::bad_argument, field));
    CHECK_THROWS_MATCHES(chart_text(panel, options), Error, refused_field(ErrorCode::bad_argument, field));
  }
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

}  // namespace chart_sheet_test
