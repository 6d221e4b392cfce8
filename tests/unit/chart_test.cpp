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
#include "latchwork/instructions.hpp"
#include "latchwork/motif.hpp"
#include "random_grid.hpp"

using namespace latchwork;
using latchwork_test::Random;
using latchwork_test::refused_field;

namespace {

struct Point {
  double x = 0;
  double y = 0;
};

/// Corner points of a path's pieces, pen-up moves starting a new piece: enough of SVG for what charts hold.
std::vector<std::vector<Point>> pieces_of(const std::string& d) {
  std::vector<std::vector<Point>> pieces;
  Point pen;
  std::size_t i = 0;
  const auto number = [&] {
    while (i < d.size() && d[i] == ' ') ++i;
    std::size_t used = 0;
    const double value = std::stod(d.substr(i), &used);
    i += used;
    return value;
  };
  while (i < d.size()) {
    const char command = d[i++];
    switch (command) {
      case 'M':
        pen.x = number(), pen.y = number(), pieces.push_back({pen});
        continue;
      case 'm':
        pen.x += number(), pen.y += number(), pieces.push_back({pen});
        continue;
      case 'L':
        pen.x = number(), pen.y = number();
        break;
      case 'l':
        pen.x += number(), pen.y += number();
        break;
      case 'h':
        pen.x += number();
        break;
      case 'v':
        pen.y += number();
        break;
      case 'a':
        for (int k = 0; k < 5; ++k) number();
        pen.x += number(), pen.y += number();
        break;
      case 'z':
        pen = pieces.back().front();
        break;
      default:
        FAIL("unknown path command " << command);
    }
    pieces.back().push_back(pen);
  }
  return pieces;
}

/// A chart taken apart: path pieces by the class of their group.
struct Picture {
  std::string svg;
  std::map<std::string, std::vector<std::vector<Point>>> paths;
  Point corner;  // top left of the cells
  double cell_width = 0;
  double cell_height = 0;
  int rows = 0;

  Picture(const Panel& panel, const ChartOptions& options) : svg(chart_svg(panel, options)) {
    rows = panel.grid().rows();
    std::vector<std::string> groups;
    for (std::size_t at = svg.find('<'); at != std::string::npos; at = svg.find('<', at + 1)) {
      const std::string tag = svg.substr(at, svg.find('>', at) - at);
      if (tag.starts_with("<g")) {
        const std::size_t from = tag.find("class=\"lw-");
        groups.push_back(from == std::string::npos ? "" : tag.substr(from + 10, tag.find('"', from + 10) - from - 10));
      } else if (tag.starts_with("</g")) {
        groups.pop_back();
      } else if (tag.starts_with("<path")) {
        const std::size_t from = tag.find("d=\"") + 3;
        for (auto& piece : pieces_of(tag.substr(from, tag.find('"', from) - from))) {
          paths[groups.back()].push_back(piece);
        }
      }
    }
    const auto& border = paths.at("strip").back();
    corner = border.at(0);
    cell_width = (border.at(1).x - border.at(0).x) / panel.grid().columns();
    cell_height = (border.at(2).y - border.at(1).y) / rows;
  }
  int column_at(double x) const { return static_cast<int>(std::floor((x - corner.x) / cell_width)); }
  int row_at(double y) const { return rows - static_cast<int>(std::floor((y - corner.y) / cell_height)); }
  /// (row, column) of the middle of each piece.
  std::set<std::pair<int, int>> cells(const std::string& group) const {
    std::set<std::pair<int, int>> result;
    const auto found = paths.find(group);
    if (found == paths.end()) return result;
    for (const auto& piece : found->second) {
      result.insert(
          {row_at((piece.front().y + piece.back().y) / 2), column_at((piece.front().x + piece.back().x) / 2)});
    }
    return result;
  }
};

Panel panel_of(const Grid& grid) {
  return {"Sample", Strip{"sample", "sample", grid}};
}
ChartOptions seen_from(Side side) {
  ChartOptions options;
  options.side = side;
  return options;
}
bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// The words of the key alone.
std::string key_part(const std::string& svg) {
  return svg.substr(svg.find(">Key<"));
}

/// What stands between the tags, wrapped lines put together again.
std::string joined_words(const std::string& svg) {
  std::string words;
  for (std::size_t at = svg.find("<text"); at != std::string::npos; at = svg.find("<text", at + 1)) {
    const std::size_t from = svg.find('>', at) + 1;
    words += svg.substr(from, svg.find('<', from) - from) + " ";
  }
  return words;
}

/// A strip of `columns` stitches under its own name, repeated every `rows` rows.
Strip strip_of(const std::string& name, int columns, int rows = 1) {
  return {name, name, Grid(rows, columns)};
}

/// The texts of a group of the picture, with where they stand.
std::vector<std::pair<Point, std::string>> texts(const std::string& svg, const std::string& group) {
  std::vector<std::pair<Point, std::string>> result;
  const std::size_t open = svg.find("<g class=\"lw-" + group + "\"");
  if (open == std::string::npos) return result;
  const std::size_t close = svg.find("</g>", open);
  for (std::size_t at = svg.find("<text", open); at < close; at = svg.find("<text", at + 1)) {
    const std::size_t x = svg.find(" x=\"", at) + 4;
    const std::size_t y = svg.find(" y=\"", at) + 4;
    const std::size_t from = svg.find('>', at) + 1;
    result.push_back(
        {{std::stod(svg.substr(x)), std::stod(svg.substr(y))}, svg.substr(from, svg.find('<', from) - from)});
  }
  return result;
}

}  // namespace

TEST_CASE("a back loop is a dash in its own cell, and from the operator's side the face loops are", "[chart]") {
  const Grid grid = Grid::from_text("kkpk\npkkk\nkkkp\n");
  const Panel panel = panel_of(grid);
  const Picture right(panel, seen_from(Side::right_side));
  const Picture wrong(panel, seen_from(Side::operator_view));
  for (int row = 1; row <= grid.rows(); ++row) {
    for (int column = 0; column < grid.columns(); ++column) {
      INFO("row " << row << ", column " << column);
      const bool purl = grid.at(row, column) == Cell::purl;
      CHECK(right.cells("purl").count({row, column}) == (purl ? 1U : 0U));
      CHECK(wrong.cells("purl").count({row, grid.columns() - 1 - column}) == (purl ? 0U : 1U));
    }
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
  const Picture picture(panel_of(grid), {});
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

/// Between a dash and a line that do not meet.
double gap(const std::vector<Point>& dash, Point a, Point b) {
  return std::min(
      {distance(dash[0], a, b), distance(dash[1], a, b), distance(a, dash[0], dash[1]), distance(b, dash[0], dash[1])});
}

}  // namespace

TEST_CASE("the dashes in a crossing stand clear of its lines, as many in a group as it has purls", "[chart]") {
  const auto [left, right] = GENERATE(table<int, int>({{1, 1}, {2, 1}, {1, 2}, {2, 2}, {3, 3}, {4, 4}, {3, 2}}));
  const Lean lean = GENERATE(Lean::left, Lean::right);
  const Side side = GENERATE(Side::right_side, Side::operator_view);
  INFO(left << "/" << right << (lean == Lean::right ? " right" : " left"));
  const int width = left + right;
  Grid grid(3, width);
  for (int row = 1; row <= 3 && side == Side::right_side; ++row) {
    for (int column = 0; column < width; ++column) grid.set(row, column, Cell::purl);
  }
  grid.cross({.row = 1, .column = 0, .left = left, .right = right, .lean = lean});
  const Picture picture(panel_of(grid), seen_from(side));
  const auto& pieces = picture.paths.at("crossing");
  const auto& block = pieces[0];
  const auto& back = pieces[1];
  const auto& front = pieces[2];
  int in_front = 0;
  int behind = 0;
  for (std::size_t i = 3; i < pieces.size(); ++i) {
    const auto& dash = pieces[i];
    REQUIRE(dash.size() == 2);
    const double up = (front[0].y - dash[0].y) / (front[0].y - front[1].y);
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
  const auto dashes = [](const Grid& chart) { return Picture(panel_of(chart), {}).paths.at("crossing").size() - 3; };
  const std::string words = "too narrow for its mark is as in the row below";
  CHECK(dashes(grid) == 3);
  CHECK(holds(joined_words(chart_svg(panel_of(grid))), words));
  grid.set(1, 3, Cell::knit);  // below the one behind
  CHECK(dashes(grid) == 4);
  CHECK_FALSE(holds(joined_words(chart_svg(panel_of(grid))), words));
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
  for (const int row : {2, 5}) plan.stops.emplace_back().row = row;
  ChartOptions options;
  options.plan = &plan;
  const Picture picture(panel, options);
  std::vector<double> heights;
  for (const auto& piece : picture.paths.at("stop")) {
    heights.push_back(9 - (piece[0].y - picture.corner.y) / picture.cell_height);
  }
  REQUIRE(heights.size() == 2);
  CHECK(heights[0] == latchwork_test::Approx(2));
  CHECK(heights[1] == latchwork_test::Approx(5));
  CHECK(holds(picture.svg, ">2 COR<"));
  CHECK(holds(picture.svg, ">5 COL<"));
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
  CHECK(large < 400'000);
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
                               "a\0b\x07"
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
  CHECK_THROWS_MATCHES(chart_text(panel, options), Error, refused_field(ErrorCode::bad_argument, "plan"));
  ChartOptions flat;
  flat.stitch_height_mm = 0;
  CHECK_THROWS_MATCHES(chart_svg(panel, flat), Error, refused_field(ErrorCode::bad_argument, "stitch_height_mm"));
  ChartOptions wide;
  wide.stitch_width_mm = 6;
  CHECK_THROWS_MATCHES(chart_svg(panel, wide), Error, refused_field(ErrorCode::bad_argument, "stitch_width_mm"));
  CHECK_THROWS_MATCHES(chart_svg(panel, seen_from(static_cast<Side>(2))), Error,
                       refused_field(ErrorCode::bad_argument, "side"));
}
