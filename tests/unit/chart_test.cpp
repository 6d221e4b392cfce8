#include "latchwork/chart.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "chart_picture.hpp"
#include "latchwork/instructions.hpp"
#include "latchwork/motif.hpp"
#include "random_grid.hpp"

namespace chart_test {

using namespace latchwork;
using namespace latchwork_test;

TEST_CASE("a back loop is a dash in its own cell, and from the operator's side the face loops are", "[chart]") {
  const Grid grid = Grid::from_text("kkpk\npkkk\nkkkp\n");
  const Panel panel = panel_of(grid);
  const Picture right(panel, seen_from(Side::right_side, Blank::knit));
  const Picture wrong(panel, seen_from(Side::operator_view, Blank::knit));
  for (int row = 1; row <= grid.rows(); ++row) {
    for (int column = 0; column < grid.columns(); ++column) {
      INFO("row " << row << ", column " << column);
      const bool purl = grid.at(row, column) == Cell::purl;
      CHECK(right.cells("purl").count({row, column}) == (purl ? 1U : 0U));
      CHECK(wrong.cells("purl").count({row, grid.columns() - 1 - column}) == (purl ? 0U : 1U));
    }
  }
}

TEST_CASE("a face loop is an upright stroke in its own cell where back loops are blank", "[chart]") {
  const Grid grid = Grid::from_text("kkpk\npkkk\nkkkp\n");
  const Panel panel = panel_of(grid);
  const Picture right(panel, seen_from(Side::right_side, Blank::purl));
  const Picture wrong(panel, seen_from(Side::operator_view, Blank::purl));
  CHECK(right.paths.count("purl") == 0);
  for (int row = 1; row <= grid.rows(); ++row) {
    for (int column = 0; column < grid.columns(); ++column) {
      INFO("row " << row << ", column " << column);
      const bool knit = grid.at(row, column) == Cell::knit;
      CHECK(right.cells("knit").count({row, column}) == (knit ? 1U : 0U));
      CHECK(wrong.cells("knit").count({row, grid.columns() - 1 - column}) == (knit ? 0U : 1U));
    }
  }
  for (const auto& stroke : right.paths.at("knit")) CHECK(stroke.front().x == stroke.back().x);
}

TEST_CASE("the loops that are fewer from the side shown are marked, and words and key say which are not", "[chart]") {
  const Panel panel = panel_of(Grid::from_text("kkpk\npkkk\nkkkp\n"));
  CHECK(chart_svg(panel) == chart_svg(panel, seen_from(Side::right_side, Blank::knit)));
  CHECK(chart_svg(panel, seen_from(Side::operator_view)) ==
        chart_svg(panel, seen_from(Side::operator_view, Blank::purl)));
  CHECK(holds(joined_words(chart_svg(panel)), "A cell without a mark is a face loop, as it looks from here."));
  CHECK(holds(joined_words(chart_svg(panel, seen_from(Side::operator_view))),
              "A cell without a mark is a back loop, as it looks from here."));
  const Panel even = panel_of(Grid::from_text("kp\npk\n"));
  for (const Side side : {Side::right_side, Side::operator_view}) {
    CHECK(chart_svg(even, seen_from(side)) == chart_svg(even, seen_from(side, Blank::knit)));
  }
}

TEST_CASE("every chart's title names the side it shows", "[chart]") {
  const Panel panel = panel_of(Grid(2, 2));
  for (const std::string& chart : {chart_svg(panel), chart_text(panel)}) {
    CHECK(holds(chart, "Right side (RS) of Sample"));
  }
  for (const std::string& chart :
       {chart_svg(panel, seen_from(Side::operator_view)), chart_text(panel, seen_from(Side::operator_view))}) {
    CHECK(holds(chart, "Operator's view: wrong side (WS) of Sample, as it faces you on the bed") !=
          holds(chart, "Operator&#39;s view: wrong side (WS) of Sample, as it faces you on the bed"));
  }
}

// The Craft Yarn Council's terms: in a right cross the front group leans right, in n/m RC it has n stitches. Turning
// the fabric over keeps the hand (standards, section 12).
TEST_CASE("the band drawn last, in front, leans as the crossing says, from either side", "[chart]") {
  const auto [left, right, lean] = GENERATE(table<int, int, Lean>(
      {{3, 3, Lean::right}, {3, 3, Lean::left}, {2, 1, Lean::right}, {1, 3, Lean::right}, {1, 3, Lean::left}}));
  const Side side = GENERATE(Side::right_side, Side::operator_view);
  Grid grid(4, 9);
  grid.cross({.row = 2, .column = 1, .left = left, .right = right, .lean = lean});
  const Picture picture(panel_of(grid), seen_from(side));
  const auto& bands = picture.paths.at("crossing");
  REQUIRE(bands.size() >= 3);  // the block, the back band, the front band; then dashes
  const auto& front = bands[2];
  // From the other side the same lean is made by the other group, which stands on the other side of the block.
  const int stitches = (lean == Lean::right) == (side == Side::right_side) ? left : right;
  const int width = left + right;
  const int start = side == Side::right_side ? 1 : 9 - 1 - width;
  const double rise = (front[1].x - front[0].x) / picture.cell_width;
  CHECK(front[1].y < front[0].y);
  CHECK(rise == latchwork_test::Approx(lean == Lean::right ? width - stitches : stitches - width));
  CHECK((front[2].x - front[1].x) / picture.cell_width == latchwork_test::Approx(stitches));
  const double foot = (front[0].x - picture.corner.x) / picture.cell_width;
  CHECK(foot == latchwork_test::Approx(lean == Lean::right ? start : start + width - stitches));
  CHECK(picture.row_at((front[0].y + front[1].y) / 2) == 3);  // in the row knitted after it
}

// Beside it at the machine lie instructions that name crossings as on the RS. Turned, an n/m cross of the same hand has
// its groups exchanged and its centre on the other side (DEVELOPERS.md, views), so the turned crossing's own name would
// be another.
TEST_CASE("the operator's key names a crossing as on the RS and says that it is drawn as it looks from there",
          "[chart]") {
  const auto [left, centre, right, lean, place, name] = GENERATE(table<int, int, int, Lean, Centre, std::string>(
      {{2, 0, 1, Lean::right, Centre::between, "2/1 right cross"},
       {2, 0, 1, Lean::left, Centre::between, "1/2 left cross"},
       {2, 1, 2, Lean::right, Centre::behind, "2/1/2 right cross, centre behind"},
       {1, 1, 3, Lean::left, Centre::front, "3/1/1 left cross, centre in front"}}));
  Grid grid(4, 6);
  grid.cross({.row = 2, .column = 0, .left = left, .centre = centre, .right = right, .lean = lean, .place = place});
  const Panel panel = panel_of(grid);
  const std::string there = name + " on the RS, as it looks from here";
  CHECK(holds(joined_words(chart_svg(panel, seen_from(Side::operator_view))), there));
  CHECK(holds(chart_text(panel, seen_from(Side::operator_view)), there));
  CHECK(holds(joined_words(chart_svg(panel)), name + ", made before this row"));
  CHECK(holds(chart_text(panel), " " + name + "\n"));
}

TEST_CASE("a centre group is drawn in front, between or behind, and from the other side the other way", "[chart]") {
  const auto [place, at, at_turned] = GENERATE(table<Centre, std::size_t, std::size_t>(
      {{Centre::front, 3, 1}, {Centre::between, 2, 2}, {Centre::behind, 1, 3}}));
  Grid grid(4, 5);
  grid.cross({.row = 2, .column = 0, .left = 2, .centre = 1, .right = 2, .lean = Lean::right, .place = place});
  const auto upright = [](const std::vector<Point>& band) { return band[0].x == latchwork_test::Approx(band[1].x); };
  const Picture right(panel_of(grid), seen_from(Side::right_side));
  const Picture wrong(panel_of(grid), seen_from(Side::operator_view));
  CHECK(upright(right.paths.at("crossing")[at]));
  CHECK(upright(wrong.paths.at("crossing")[at_turned]));
}

TEST_CASE("a purl that crosses behind has its dash where its band is seen", "[chart]") {
  const auto [front, back] = GENERATE(table<int, int>({{1, 1}, {2, 1}, {3, 1}, {3, 2}, {3, 3}, {4, 4}}));
  Grid grid(3, front + back);
  for (int column = 0; column < back; ++column) grid.set(2, column, Cell::purl);
  grid.cross({.row = 1, .column = 0, .left = front, .right = back, .lean = Lean::right});
  const Picture picture(panel_of(grid), seen_from(Side::right_side, Blank::knit));
  const auto& pieces = picture.paths.at("crossing");
  REQUIRE(pieces.size() == 3U + static_cast<std::size_t>(back));
  for (std::size_t i = 3; i < pieces.size(); ++i) {
    const auto& dash = pieces[i];
    const double height = (picture.corner.y + 2 * picture.cell_height - dash[0].y) / picture.cell_height;  // 0..1
    CHECK(height > 0);
    CHECK(height < 1);
    // The front band's left edge at that height; the dash lies to the left of it, on the back band.
    const double edge = picture.corner.x + height * back * picture.cell_width;
    const double band = picture.corner.x + (1 - height) * front * picture.cell_width;
    CHECK(dash[1].x < edge + 0.01);
    CHECK(dash[0].x > band - 0.01);
  }
}

namespace {

double distance(Point from, Point a, Point b) {
  const double length = (b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y);
  const double along = std::clamp(((from.x - a.x) * (b.x - a.x) + (from.y - a.y) * (b.y - a.y)) / length, 0.0, 1.0);
  return std::hypot(from.x - a.x - along * (b.x - a.x), from.y - a.y - along * (b.y - a.y));
}

/// Between a mark and a line that do not meet.
double gap(const std::vector<Point>& dash, Point a, Point b) {
  return std::min(
      {distance(dash[0], a, b), distance(dash[1], a, b), distance(a, dash[0], dash[1]), distance(b, dash[0], dash[1])});
}

}  // namespace

TEST_CASE("the marks in a crossing stand clear of its lines, as many in a group as it has loops of their kind",
          "[chart]") {
  const auto [left, right] = GENERATE(table<int, int>({{1, 1}, {2, 1}, {1, 2}, {2, 2}, {3, 3}, {4, 4}, {3, 2}}));
  const Lean lean = GENERATE(Lean::left, Lean::right);
  const Side side = GENERATE(Side::right_side, Side::operator_view);
  const Blank blank = GENERATE(Blank::knit, Blank::purl);
  INFO(left << "/" << right << (lean == Lean::right ? " right" : " left"));
  const int width = left + right;
  Grid grid(3, width);
  // Such that every loop is one that is marked, from the side looked at.
  for (int row = 1; row <= 3 && (side == Side::right_side) == (blank == Blank::knit); ++row) {
    for (int column = 0; column < width; ++column) grid.set(row, column, Cell::purl);
  }
  grid.cross({.row = 1, .column = 0, .left = left, .right = right, .lean = lean});
  const Picture picture(panel_of(grid), seen_from(side, blank));
  const auto& pieces = picture.paths.at("crossing");
  const auto& block = pieces[0];
  const auto& back = pieces[1];
  const auto& front = pieces[2];
  int in_front = 0;
  int behind = 0;
  for (std::size_t i = 3; i < pieces.size(); ++i) {
    const auto& dash = pieces[i];
    REQUIRE(dash.size() == 2);
    CHECK((blank == Blank::purl) == (dash[0].x == dash[1].x));
    const double up = (front[0].y - (dash[0].y + dash[1].y) / 2) / (front[0].y - front[1].y);
    const double edge = front[0].x + up * (front[1].x - front[0].x);
    const double middle = (dash[0].x + dash[1].x) / 2;
    const bool on_front = middle > edge && middle < edge + (front[2].x - front[1].x);
    ++(on_front ? in_front : behind);
    for (std::size_t k = 0; k < 4; ++k) {
      // Half the strokes of dash and line, and white between them.
      CHECK(gap(dash, block[k], block[(k + 1) % 4]) > 0.8 + 0.6 + 0.3);
      CHECK(gap(dash, front[k], front[(k + 1) % 4]) > 0.8 + 0.6 + 0.2);
      if (!on_front) CHECK(gap(dash, back[k], back[(k + 1) % 4]) > 0.8 + 0.6 + 0.2);
    }
  }
  const bool says_so = holds(joined_words(picture.svg), "too narrow for its mark");
  const bool left_leads = (lean == Lean::right) == (side == Side::right_side);
  const int front_stitches = left_leads ? left : right;
  CHECK((in_front == front_stitches || (in_front == 0 && says_so)));
  CHECK((behind == width - front_stitches || (behind == 0 && says_so)));
  CHECK(in_front + behind > 0);
}

TEST_CASE("a stitch of a crossing goes without its mark only where each such stitch is as in the row below",
          "[chart]") {
  Grid grid(6, 4);
  for (int row = 1; row <= 6; ++row) {
    for (int column = 0; column < 4; ++column) grid.set(row, column, Cell::purl);
  }
  grid.cross({.row = 1, .column = 0, .left = 3, .right = 1, .lean = Lean::right});  // little is seen of the one behind
  const auto dashes = [](const Grid& chart) {
    return Picture(panel_of(chart), seen_from(Side::right_side, Blank::knit)).paths.at("crossing").size() - 3;
  };
  const std::string words = "too narrow for its mark is as in the row below";
  CHECK(dashes(grid) == 3);
  const ChartOptions knits_blank = seen_from(Side::right_side, Blank::knit);
  CHECK(holds(joined_words(chart_svg(panel_of(grid), knits_blank)), words));
  grid.set(1, 3, Cell::knit);  // below the one behind
  CHECK(dashes(grid) == 4);
  CHECK_FALSE(holds(joined_words(chart_svg(panel_of(grid), knits_blank)), words));
}

TEST_CASE("a tuck's arch has legs in every tucked row and closes in the row that takes its loops", "[chart]") {
  const Picture picture(panel_of(Grid::from_text("kpk\nktk\nktk\nkkk\n")), {});
  std::set<int> legs;
  int caps = 0;
  for (const auto& piece : picture.paths.at("tuck")) {
    CHECK(picture.column_at((piece.front().x + piece.back().x) / 2) == 1);
    if (piece.size() == 2) legs.insert(picture.row_at((piece[0].y + piece[1].y) / 2));
    if (piece.size() == 4) {
      ++caps;
      CHECK(picture.row_at(piece[1].y) == 4);
    }
  }
  CHECK(legs == std::set<int>{2, 3});
  CHECK(caps == 1);
}

// Standards 2.2: a slip whose float lies on the side looked at carries a bar. Closed by a purl it lies on the RS.
TEST_CASE("a slip has a bar on the side where its strand lies", "[chart]") {
  const Grid grid = Grid::from_text("kkkpk\nkskss\nkkkkk\n");
  const auto bars = [&](Side side) {
    const Picture picture(panel_of(grid), seen_from(side));
    std::set<int> columns;
    for (const auto& piece : picture.paths.at("slip")) {
      if (piece.size() == 2) columns.insert(picture.column_at((piece[0].x + piece[1].x) / 2));
    }
    return columns;
  };
  CHECK(bars(Side::right_side) == std::set<int>{3});
  CHECK(bars(Side::operator_view) == std::set<int>{0, 3});  // columns 4 and 1 on the RS
}

TEST_CASE("the key holds the symbols used and no others", "[chart]") {
  const Panel plain = panel_of(Grid(2, 2));
  const std::string key = key_part(chart_svg(plain));
  CHECK(holds(key, "knit: a face loop"));
  for (const char* word : {"purl", "tuck", "slip", "no stitch", "cross", "stop", "strip", "again", "centre"}) {
    INFO(word);
    CHECK_FALSE(holds(key, word));
  }
  Grid grid = Grid::from_text("kkpkkk\nktskkp\nkkkkkp\n");
  grid.cross({.row = 2, .column = 3, .left = 1, .right = 1, .lean = Lean::left});
  Panel full = panel_of(grid);
  full.set_axis_half_columns(6);
  Plan plan;
  plan.rows = 3;
  plan.columns = 6;
  plan.leftmost = -3;
  plan.stops.emplace_back().row = 2;
  ChartOptions options;
  options.plan = &plan;
  const std::string all = key_part(chart_svg(full, options));
  for (const char* word :
       {"knit: ", "purl: ", "tuck: ", "in front, a float", "1/1 left cross", "stop after", "centre line"}) {
    INFO(word);
    CHECK(holds(all, word));
  }
  for (const char* word : {"passes behind", "right cross", "no stitch", "edge of a strip"}) {
    INFO(word);
    CHECK_FALSE(holds(all, word));
  }
}

TEST_CASE("each stop is marked at the upper edge of its row, with row counter and carriage side", "[chart]") {
  const Panel panel = panel_of(Grid(9, 4));
  Plan plan;
  plan.rows = 9;
  plan.columns = 4;
  plan.leftmost = -2;
  for (const int row : {2, 5, 7, 8}) plan.stops.emplace_back().row = row;
  plan.stops[1].releases = {-2};
  plan.stops[3].releases = {-2};
  ChartOptions options;
  options.plan = &plan;
  const Picture picture(panel, options);
  // A line across only where the work is other than at every stop below.
  std::vector<double> heights;
  for (const auto& piece : picture.paths.at("stop")) {
    heights.push_back(9 - (piece[0].y - picture.corner.y) / picture.cell_height);
  }
  REQUIRE(heights.size() == 2);
  CHECK(heights[0] == latchwork_test::Approx(2));
  CHECK(heights[1] == latchwork_test::Approx(5));
  CHECK(holds(picture.svg, ">2 COR<"));
  CHECK(holds(picture.svg, ">5 COL<"));
  CHECK(holds(picture.svg, ">7 COL<"));
  CHECK(holds(picture.svg, ">8 COR<"));
  CHECK(picture.paths.at("stop-mark").size() == 4);
  const std::string alone = "alone:";  // one word, which no line breaks
  CHECK(holds(picture.svg, alone));
  plan.stops.resize(2);
  const Picture both(panel, options);
  CHECK(both.paths.at("stop").size() == 2);
  CHECK_FALSE(holds(both.svg, alone));
}

TEST_CASE("two stops a row apart both have their row and side, at flat gauges too", "[chart]") {
  const Panel panel = panel_of(Grid(30, 40));
  for (const double stitch_height_mm : {0.6, 0.7, 0.75, 1.0}) {
    Plan plan;
    plan.rows = 30;
    plan.columns = 40;
    plan.leftmost = -20;
    for (const int row : {9, 10, 15, 16, 30}) plan.stops.emplace_back().row = row;
    ChartOptions options;
    options.plan = &plan;
    options.stitch_width_mm = 1;
    options.stitch_height_mm = stitch_height_mm;
    const Picture picture(panel, options);
    CAPTURE(stitch_height_mm);
    for (const char* mark : {">9 COL<", ">10 COR<", ">15 COL<", ">16 COR<", ">30 COR<"}) {
      CHECK(holds(picture.svg, mark));
    }
  }
}

TEST_CASE("cells have the gauge's proportions", "[chart]") {
  ChartOptions options;
  const Picture plain(panel_of(Grid(3, 3)), options);
  CHECK(plain.cell_width / plain.cell_height == latchwork_test::Approx(1.3));
  options.stitch_width_mm = 4.2;
  options.stitch_height_mm = 2.0;
  const Picture garter(panel_of(Grid(3, 3)), options);
  CHECK(garter.cell_width / garter.cell_height == latchwork_test::Approx(2.1));
}

TEST_CASE("the centre line ends at the frame, below the letters of strips", "[chart]") {
  const std::vector<Strip> strips{strip_of("edge", 2), strip_of("middle", 1), strip_of("edge", 2)};
  Panel panel = join_strips("Sample", 4, strips);
  panel.set_axis_half_columns(5);
  const Picture picture(panel, {});
  const auto& line = picture.paths.at("centre").at(0);
  CHECK(line[0].y == latchwork_test::Approx(picture.corner.y));
  CHECK(line[1].y > picture.corner.y + 4 * picture.cell_height);
}

TEST_CASE("a chart of ten thousand cells stays well below a megabyte and grows with its cells", "[chart]") {
  const auto bytes = [](int side) {
    Random random(7);
    return chart_svg(panel_of(latchwork_test::random_grid(random, {.rows = side, .columns = side}))).size();
  };
  const std::size_t small = bytes(50);
  const std::size_t large = bytes(100);
  CHECK(large < 420'000);
  CHECK(static_cast<double>(large) < 4.5 * static_cast<double>(small));
}

TEST_CASE("random charts have balanced tags, no scripts and nothing that two charts on one page would share",
          "[chart]") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    INFO("seed " << seed);
    Random random(seed);
    const Panel panel = panel_of(latchwork_test::any_grid(random));
    for (const Side side : {Side::right_side, Side::operator_view}) {
      const std::string svg = chart_svg(panel, seen_from(side));
      int depth = 0;
      for (std::size_t at = svg.find('<'); at != std::string::npos; at = svg.find('<', at + 1)) {
        const std::size_t end = svg.find('>', at);
        REQUIRE(end != std::string::npos);
        if (svg[at + 1] == '/') {
          --depth;
        } else if (svg[end - 1] != '/') {
          ++depth;
        }
        REQUIRE(depth >= 0);
      }
      CHECK(depth == 0);
      for (const char* bad : {"<script", " id=", "href", "nan", "style"}) CHECK_FALSE(holds(svg, bad));
      CHECK(chart_text(panel, seen_from(side)).size() > 40);
    }
  }
}

TEST_CASE("a name with signs of markup is shown and not obeyed", "[chart]") {
  const Panel panel("<b>\"rope\" & 'moss'</b>", Strip{"s", "s", Grid(1, 1)});
  const std::string svg = chart_svg(panel);
  CHECK_FALSE(holds(svg, "<b>"));
  CHECK(holds(svg, "&lt;b&gt;&quot;rope&quot; &amp;"));
}

// XML 1.0 has no character below U+0020 but tab and line ends, and neither U+FFFE nor U+FFFF (section 2.2, Char).
TEST_CASE("what is no text in a name is shown as a question mark, in every output alike", "[chart]") {
  const std::string name = std::string(
                               "a\x01"
                               "b\x07"
                               "c\nd\te\x7F"
                               "f\xC2\x85g\xEF\xBF\xBEh\xEF\xBF\xBFi\xE2\x80\xA8j",
                               26) +
                           "\xC3\xA9";
  const std::string shown = "a?b?c?d?e?f?g?h?i?j\xC3\xA9";
  const std::vector<Strip> strips{{name, "one", Grid(2, 2)}, {"two", "two", Grid(2, 2)}};
  const Panel panel = join_strips(name, 2, strips);
  const std::string svg = chart_svg(panel);
  const std::string text = chart_text(panel);
  CHECK(holds(svg, "<title>Right side (RS) of " + shown + "</title>"));
  CHECK(holds(joined_words(svg), "A: " + shown));
  CHECK(text.starts_with("Right side (RS) of " + shown + "\n"));
  CHECK(holds(text, "  A: " + shown + ", repeats"));
  Machine machine;
  machine.name = name;
  Plan plan;
  plan.rows = 2;
  plan.columns = 4;
  plan.leftmost = -2;
  plan.columns_on = {0, 1, 2, 3};
  const std::string words = instructions(panel, plan, machine);
  CHECK(words.starts_with("Machine instructions: " + shown + "\n"));
  CHECK(holds(words, ", " + shown + " machine: "));
}

TEST_CASE("a chart refuses a plan of another size, a cell without proportions and a side that is none",
          "[chart][error]") {
  const Panel panel = panel_of(Grid(3, 3));
  Plan plan;
  plan.rows = 3;
  plan.columns = 4;
  plan.leftmost = -2;
  ChartOptions options;
  options.plan = &plan;
  CHECK_THROWS_MATCHES(chart_svg(panel, options), Error, refused_field(ErrorCode::size_mismatch, "plan"));
  plan.columns = 3;
  plan.stops.emplace_back().row = 4;
  CHECK_THROWS_MATCHES(chart_text(panel, options), Error, refused(ErrorCode::bad_argument, stop_place(0, 4)));
  plan.stops[0].row = 2;
  plan.stops.emplace_back().row = 2;
  CHECK_THROWS_MATCHES(chart_svg(panel, options), Error, refused(ErrorCode::bad_argument, stop_place(1, 2)));
  ChartOptions flat;
  flat.stitch_height_mm = 0;
  CHECK_THROWS_MATCHES(chart_svg(panel, flat), Error, refused_field(ErrorCode::bad_argument, "stitch_height_mm"));
  ChartOptions wide;
  wide.stitch_width_mm = 6;
  CHECK_THROWS_MATCHES(chart_svg(panel, wide), Error, refused_field(ErrorCode::bad_argument, "stitch_width_mm"));
  CHECK_THROWS_MATCHES(chart_svg(panel, seen_from(static_cast<Side>(2))), Error,
                       refused_field(ErrorCode::bad_argument, "side"));
}

TEST_CASE("a chart is not drawn for a machine out of its ranges", "[chart][error]") {
  const Panel panel("a", stockinette(3));
  Machine machine;
  machine.needles = -3;
  ChartOptions options;
  options.machine = &machine;
  for (const Side side : {Side::right_side, Side::operator_view}) {
    options.side = side;
    CHECK_THROWS_MATCHES(chart_svg(panel, options), Error, refused_field(ErrorCode::bad_argument, "machine.needles"));
    CHECK_THROWS_MATCHES(chart_text(panel, options), Error, refused_field(ErrorCode::bad_argument, "machine.needles"));
  }
}

}  // namespace chart_test
