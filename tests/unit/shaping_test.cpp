#include "latchwork/shaping.hpp"

#include <cmath>
#include <limits>
#include <map>
#include <random>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/instructions.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"

namespace shaping_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

Panel panel_of(const char* text) {
  return Panel("sample", Strip{"sample", "sample", Grid::from_text(text)});
}
Panel plain(int rows, int columns) {
  return Panel("plain", Strip{"plain", "plain", Grid(rows, columns)});
}

Place at_outline(Place place) {
  place.field = "outline";
  return place;
}
std::vector<int> firsts(const Outline& outline) {
  std::vector<int> out;
  for (const RowSpan& span : outline.rows) out.push_back(span.first);
  return out;
}
Outline sloped(int rows, int columns, std::vector<EdgePoint> points, EdgeLine line = EdgeLine::straight, int step = 1) {
  return outlined(rows, columns, {.points = std::move(points), .line = line}, {}, step);
}
Outline stepped(int rows, int columns, std::vector<EdgeEvent> left, std::vector<EdgeEvent> right = {}) {
  return outlined(rows, columns, {.events = std::move(left)}, {.events = std::move(right)});
}

}  // namespace

TEST_CASE("events spread evenly over rows shape an edge at the rows in which they stand", "[shaping][spacing]") {
  for (const int step : {1, 2}) {
    for (const SpacingEnds ends : {SpacingEnds::in_the_round, SpacingEnds::flat, SpacingEnds::half_ends}) {
      const Spacing spacing = spaced_evenly(53, 7, ends, step);
      const std::vector<EdgeEvent> events = edge_events(spacing, 1, 10);
      CHECK(events.size() < 7);  // two lengths of gap, told by their times
      const EdgeShape edge{.events = events};
      std::vector<int> rows;
      for (const ShapingStep& each : shaping_steps(outlined(70, 30, edge, {}))) {
        CHECK((each.left == 1 && each.right == 0));
        rows.push_back(each.row - 10);
      }
      CHECK(rows == spacing.positions);
    }
  }
  CHECK(edge_events(spaced_evenly(12, 3), 2) == std::vector<EdgeEvent>{{4, 2, 4, 3}});
  CHECK(edge_events(spaced_evenly(12, 1), -1) == std::vector<EdgeEvent>{{12, -1, 1, 1}});

  const auto refused_at = [](const char* field, const Spacing& spacing, int stitches, int above,
                             ErrorCode code = ErrorCode::bad_argument) {
    CHECK_THROWS_MATCHES(edge_events(spacing, stitches, above), Error, refused_field(code, field));
  };
  refused_at("stitches", spaced_evenly(12, 3), 0, 0);
  refused_at("stitches", spaced_evenly(12, 3), std::numeric_limits<int>::min(), 0);
  refused_at("above", spaced_evenly(12, 3), 1, -1);
  refused_at("spacing", spaced_evenly(2000, 1001), 1, 0, ErrorCode::too_large);
  Spacing spoiled = spaced_evenly(12, 3);
  spoiled.positions[2] = spoiled.positions[1];
  refused_at("spacing.positions[2]", spoiled, 1, 0);
  spoiled.positions[0] = std::numeric_limits<int>::min();
  refused_at("spacing.positions[0]", spoiled, 1, 0);
}

TEST_CASE("an edge of points lies in each row where the line is in the middle of that row", "[shaping]") {
  // 4 columns over 8 rows: in the middle of rows 1 to 8 the line is 0.25, 0.75, ... 3.75 columns in.
  CHECK(firsts(sloped(8, 10, {{0, 0}, {8, 4}})) == std::vector<int>{0, 1, 1, 2, 2, 3, 3, 4});
  // In even rows only: the middle of rows 1-2, 3-4, ... is 0.5, 1.5, 2.5, 3.5; halves go up.
  CHECK(firsts(sloped(8, 10, {{0, 0}, {8, 4}}, EdgeLine::straight, 2)) == std::vector<int>{1, 1, 2, 2, 3, 3, 4, 4});
  // Straight up below the first point and above the last; a step where two points stand at one row.
  CHECK(firsts(sloped(6, 10, {{2, 1}, {4, 1}, {4, 3}})) == std::vector<int>{1, 1, 1, 1, 3, 3});
  CHECK(firsts(sloped(3, 10, {})) == std::vector<int>{0, 0, 0});
}

TEST_CASE("a curve goes through its points and turns only at them", "[shaping]") {
  // An armhole: steep at first, then straight up. Monotone between points, flat where it turns.
  const Outline outline = sloped(40, 40, {{0, 0}, {10, 8}, {40, 12}}, EdgeLine::curve);
  const std::vector<int> in = firsts(outline);
  for (std::size_t i = 1; i < in.size(); ++i) CHECK((in[i] >= in[i - 1] && in[i] <= 12));
  CHECK((in[9] == 8 || in[9] == 7));
  CHECK(in[39] == 12);
  // Half of an S: the curve through three points of one line is that line.
  CHECK(sloped(12, 20, {{0, 0}, {4, 2}, {12, 6}}, EdgeLine::curve) == sloped(12, 20, {{0, 0}, {12, 6}}));
  // A wave comes back no further than its points.
  for (const int inset : firsts(sloped(60, 20, {{0, 0}, {20, 5}, {40, 0}, {60, 5}}, EdgeLine::curve))) {
    CHECK((inset >= 0 && inset <= 5));
  }
}

TEST_CASE("events shape each edge by itself: decreases, bind-offs, increases, casts on", "[shaping]") {
  const Outline outline = outlined(10, 12, {.events = {{2, 3}, {4, 1, 2, 3}}}, {.start = 2, .events = {{5, -2}}});
  CHECK(firsts(outline) == std::vector<int>{0, 0, 3, 3, 4, 4, 5, 5, 6, 6});
  CHECK(outline.rows[4].last == 9);
  CHECK(outline.rows[5].last == 11);
  const std::vector<ShapingStep> steps = shaping_steps(outline);
  REQUIRE(steps.size() == 5);
  CHECK(steps[0] == ShapingStep{2, 3, 0});
  CHECK(steps[2] == ShapingStep{5, 0, -2});
}

TEST_CASE("a shape in words folds like steps at even intervals", "[shaping]") {
  const EdgeShape edge{.events = {{12, 1, 6, 5}}};
  CHECK(outline_text(outlined(60, 40, edge, edge)) ==
        "Begin with 40 stitches, columns 0 to 39.\n"
        "RC 12: decrease 1 at each side, then every 6th row 4 times.\n"
        "RC 60: 30 stitches, columns 5 to 34.");
  CHECK(outline_text(stepped(20, 20, {{4, 4}, {6, 1, 2, 3}}, {{4, 4}, {5, -2}})) ==
        "Begin with 20 stitches, columns 0 to 19.\n"
        "RC 4: bind off 4 at each side.\n"
        "RC 5: cast on 2 at the right edge.\n"
        "RC 6: decrease 1 at the left edge, then every 2nd row 2 times.\n"
        "RC 20: 11 stitches, columns 7 to 17.");
  // 5 over 22 rows: steps 4 or 5 rows apart, told with their rows.
  CHECK(
      outline_text(sloped(22, 9, {{0, 0}, {22, 5}})) ==
      "Begin with 9 stitches, columns 0 to 8.\n"
      "RC 2: decrease 1 at the left edge, then every 4th row 2 times, every 5th row 2 times, spread evenly: RC 7, 11, "
      "15, 20.\n"
      "RC 22: 4 stitches, columns 5 to 8.");
  // 4, 4, 5, 5 are no even order of these; 4, 6 and then 5 are three lengths.
  const auto decreased = [](const std::vector<int>& rows) {
    EdgeShape steps;
    for (const int row : rows) steps.events.push_back({row, 1});
    return outline_text(outlined(30, 9, steps, {}));
  };
  CHECK(decreased({2, 6, 10, 15, 20}).find("every 4th row 2 times, every 5th row 2 times: RC 6, 10, 15, 20.\n") !=
        std::string::npos);
  CHECK(decreased({2, 6, 12, 17})
            .find("RC 2: decrease 1 at the left edge, then every 4th row 1 time, every 6th row 1 "
                  "time, spread evenly: RC 6, 12.\nRC 17: decrease 1 at the left edge.\n") != std::string::npos);
  CHECK(outline_text(Outline{{{0, 0}}}) == "Begin with 1 stitch, column 0.\nRC 1: 1 stitch, column 0.");
}

TEST_CASE("edges that shape at different rows are told each by itself where that is shorter", "[shaping]") {
  CHECK(outline_text(stepped(60, 40, {{6, 1, 6, 8}}, {{9, 1, 6, 8}})) ==
        "Begin with 40 stitches, columns 0 to 39.\n"
        "RC 6: decrease 1 at the left edge, then every 6th row 7 times.\n"
        "Meanwhile, RC 9: decrease 1 at the right edge, then every 6th row 7 times.\n"
        "RC 60: 24 stitches, columns 8 to 31.");
  // The right edge begins: it is told first. What both do at once, again and again, stays one line.
  CHECK(outline_text(stepped(60, 60, {{4, 1, 4, 4}, {30, 1, 4, 4}}, {{3, 1, 2, 8}, {30, 1, 4, 4}})) ==
        "Begin with 60 stitches, columns 0 to 59.\n"
        "RC 3: decrease 1 at the right edge, then every 2nd row 7 times.\n"
        "Meanwhile, RC 4: decrease 1 at the left edge, then every 4th row 3 times.\n"
        "RC 30: decrease 1 at each side, then every 4th row 3 times.\n"
        "RC 60: 40 stitches, columns 8 to 47.");
}

namespace {

/// Reads the words back: every step that they tell, by row.
std::vector<ShapingStep> steps_told(const std::string& text) {
  static const std::regex line(
      "(?:Meanwhile, )?RC (\\d+): ((?:(?:decrease|increase|bind off|cast on) \\d+ at (?:each side|the left edge|the "
      "right "
      "edge)(?:, )?)+)(?:then every (?:(\\d+)\\w+ )?row (\\d+) times?(?:, every \\d+\\w+ row (\\d+) times?(?:, spread "
      "evenly)?: RC ([\\d, ]+))?)?\\.");
  static const std::regex deed(
      "(decrease|increase|bind off|cast on) (\\d+) at (each side|the left edge|the right edge)");
  std::map<int, ShapingStep> by_row;
  std::istringstream in(text);
  std::string words;
  while (std::getline(in, words)) {
    if (words.find(" at ") == std::string::npos) continue;  // the first and the last
    std::smatch parts;
    INFO(words);
    REQUIRE(std::regex_match(words, parts, line));
    std::vector<int> rows{std::stoi(parts[1])};
    const int times = parts[4].matched ? std::stoi(parts[4]) : 0;
    if (parts[6].matched) {
      std::istringstream list(parts[6]);
      for (std::string row; std::getline(list, row, ',');) rows.push_back(std::stoi(row));
      CHECK(static_cast<int>(rows.size()) == 1 + times + std::stoi(parts[5]));
    } else {
      const int every = parts[3].matched ? std::stoi(parts[3]) : 1;
      for (int i = 0; i < times; ++i) rows.push_back(rows.back() + every);
    }
    const std::string deeds = parts[2];
    for (auto each = std::sregex_iterator(deeds.begin(), deeds.end(), deed); each != std::sregex_iterator(); ++each) {
      const std::string what = (*each)[1];
      const std::string where = (*each)[3];
      const int stitches = std::stoi((*each)[2]) * (what == "decrease" || what == "bind off" ? 1 : -1);
      for (const int row : rows) {
        ShapingStep& step = by_row[row];
        step.row = row;
        if (where != "the right edge") step.left += stitches;
        if (where != "the left edge") step.right += stitches;
      }
    }
  }
  std::vector<ShapingStep> out;
  for (const auto& [row, step] : by_row) out.push_back(step);
  return out;
}

}  // namespace

TEST_CASE("a shape in words, read back, is the shape", "[shaping]") {
  std::mt19937 random(5);
  const auto any = [&](int least, int most) { return std::uniform_int_distribution<int>(least, most)(random); };
  for (int i = 0; i < 200; ++i) {
    const auto events = [&] {
      std::vector<EdgeEvent> out;
      for (int n = any(0, 3); n > 0; --n) {
        const int row = any(1, 40);
        const int every = any(1, 6);
        out.push_back({row,
                       any(0, 3) == 0   ? any(2, 3)
                       : any(0, 3) == 0 ? -1
                                        : 1,
                       every, any(1, 1 + (59 - row) / every)});
      }
      return out;
    };
    const EdgeShape left{.start = 200, .events = events()};
    const EdgeShape right{.start = 200, .events = events()};
    const Outline outline = outlined(60, 1000, left, right);
    const std::string text = outline_text(outline);
    INFO(text);
    CHECK(steps_told(text) == shaping_steps(outline));
  }
}

TEST_CASE("a shape in two pieces is refused at the row that stands on nothing", "[shaping][error]") {
  Place place;
  place.field = "outline";
  place.row = 3;
  const EdgeShape left{.points = {{0, 0}, {2, 0}, {2, 20}, {4, 20}}};
  const EdgeShape right{.points = {{0, 20}, {2, 20}, {2, 0}, {4, 0}}};
  CHECK_THROWS_MATCHES(outlined(4, 40, left, right), Error, refused(ErrorCode::bad_argument, place));
  const Outline pieces{{{0, 19}, {0, 19}, {20, 39}, {20, 39}}};
  CHECK_THROWS_MATCHES(shaped(plain(4, 40), pieces), Error, refused(ErrorCode::bad_argument, place));
  CHECK_THROWS_MATCHES(shape_findings(Grid(4, 40), pieces), Error, refused(ErrorCode::bad_argument, place));
  CHECK_THROWS_MATCHES(outline_text(pieces), Error, refused(ErrorCode::bad_argument, place));
  place.field = "grid";
  place.row = 2;
  CHECK_THROWS_MATCHES(outline_of(Grid::from_text("..kk\nkk..")), Error, refused(ErrorCode::bad_argument, place));
  // One column is enough.
  CHECK_NOTHROW(shaped(plain(4, 40), Outline{{{0, 20}, {0, 20}, {20, 39}, {20, 39}}}));
}

TEST_CASE("a shaped panel has no stitch outside, knit edge stitches, and its shape can be read back", "[shaping]") {
  const Panel panel = panel_of(
      "kppppk\n"
      "kppppk\n"
      "kppppk\n"
      "kppppk");
  const Outline outline = stepped(4, 6, {{2, 1}}, {{1, 2}});
  const Panel out = shaped(panel, outline);
  CHECK(out.grid().to_text() == Grid::from_text(".kpk..\n.kpk..\nkppk..\nkppppk").to_text());
  CHECK(outline_of(out.grid()) == outline);
  CHECK(out.name() == panel.name());
  CHECK(out.bands()[0] == panel.bands()[0]);
  CHECK(shaped(panel, outline, {.edge_stitches = 0}).grid() == Grid::from_text(".ppp..\n.ppp..\nkppp..\nkppppk"));
  // What became edge stitches is told, once for what touches; the six purls of columns 1 and 3.
  const std::vector<Finding> found = shape_findings(panel.grid(), outline);
  REQUIRE(found.size() == 2);
  CHECK(found[0].code == FindingCode::column_cut);
  CHECK(found[0].severity == Severity::advice);
  CHECK(shape_findings(panel.grid(), outline, {.edge_stitches = 0}).empty());
}

TEST_CASE("a crossing that the edge cuts is a finding, refused at its place, or knitted plain when asked",
          "[shaping]") {
  const Panel panel = panel_of(
      "kkkkkkkk\n"
      "kkkkkkkk\n"
      "x 1 2/2 R\n"
      "kkkkkkkk\n"
      "kkkkkkkk");
  const Outline outline = stepped(4, 8, {{1, 2}});
  const std::vector<Finding> found = shape_findings(panel.grid(), outline);
  REQUIRE(found.size() == 1);
  CHECK(found[0].code == FindingCode::crossing_cut);
  CHECK(found[0].severity == Severity::error);
  CHECK((found[0].place.row == 2 && found[0].place.column == 1 && found[0].last_column == 4));
  CHECK((found[0].value == 1 && found[0].limit == 4));
  CHECK(
      found[0].suggestion ==
      "move the edge out by 1 column; or move it in by 3 columns, so that the crossing falls away; or leave it out and "
      "knit its stitches plain");
  CHECK_THROWS_MATCHES(shaped(panel, outline), Error, refused(ErrorCode::crossing_cut, at_outline(found[0].place)));
  const Panel knitted = shaped(panel, outline, {.cut = CutWork::knit});
  CHECK(knitted.grid() == Grid::from_text("..kkkkkk\n..kkkkkk\n..kkkkkk\nkkkkkkkk"));
  // One row on it is whole; outside altogether it is no work at all, and not told.
  const Outline later = stepped(4, 8, {{3, 2}});
  CHECK(shape_findings(panel.grid(), later).empty());
  CHECK(shaped(panel, later).grid().crossings().size() == 1);
  const Outline beyond = stepped(4, 8, {{1, 5}});
  CHECK(shape_findings(panel.grid(), beyond).empty());
  CHECK(shaped(panel, beyond).grid().crossings().empty());
}

TEST_CASE("a cut crossing that is whole some rows on or back is told by how many", "[shaping]") {
  const Panel panel = panel_of(
      "kkkkkk\n"
      "kkkkkk\n"
      "x 0 1/1 L\n"
      "kkkkkk\n"
      "kkkkkk\n"
      "kkkkkk\n"
      "kkkkkk");
  // After row 4 the edge moves in: the crossing there is cut off, two rows earlier it is not, one row earlier neither.
  const std::vector<Finding> found = shape_findings(panel.grid(), stepped(6, 6, {{4, 1}}));
  REQUIRE(found.size() == 1);
  CHECK(found[0].suggestion.find("make the crossing 1 row earlier") != std::string::npos);
}

TEST_CASE("a crossing after the last row lies in that row alone", "[shaping]") {
  const Panel panel = panel_of(
      "x 0 2/2 R\n"
      "kkkkkkkk\n"
      "kkkkkkkk\n"
      "kkkkkkkk\n"
      "ppppkkkk");
  const Crossing& crossing = panel.grid().crossings()[0];
  REQUIRE(crossing.row == 4);
  // Outside in the last row it falls away, whatever row 1 has.
  const Outline narrower = stepped(4, 8, {{2, 4}});
  CHECK(shape_findings(panel.grid(), narrower, {.edge_stitches = 0}).empty());
  const Panel shaped_to = shaped(panel, narrower, {.edge_stitches = 0});
  CHECK(shaped_to.grid() == Grid::from_text("....kkkk\n....kkkk\nkkkkkkkk\nppppkkkk"));
  // Cut in the last row it is told of that row; left out, no other row is knitted plain: none follows.
  const Outline cutting = stepped(4, 8, {{3, 1}});
  const std::vector<Finding> cut = shape_findings(panel.grid(), cutting, {.edge_stitches = 0});
  REQUIRE(cut.size() == 1);
  CHECK(cut[0].code == FindingCode::crossing_cut);
  CHECK((cut[0].place.row == 4 && cut[0].value == 1 && cut[0].limit == 4));
  CHECK(cut[0].message ==
        "the edge cuts the 2/2 RC after row 4, columns 0 to 3: 1 of its 4 stitches is outside in row 4");
  CHECK_THROWS_MATCHES(shaped(panel, cutting), Error, refused(ErrorCode::crossing_cut, at_outline(cut[0].place)));
  CHECK_THROWS_WITH(
      shaped(panel, cutting),
      "the edge cuts crossing 2/2 RC after row 4, columns 0 to 3: 1 of its 4 stitches is outside in row 4");
  CHECK(shaped(panel, cutting, {.edge_stitches = 0, .cut = CutWork::knit}).grid() ==
        Grid::from_text(".kkkkkkk\nkkkkkkkk\nkkkkkkkk\nppppkkkk"));
  // A piece that widens has it whole at its end; row 1, which a tile has there, is named.
  const Outline widening = outlined(4, 8, {.start = 3, .events = {{2, -3}}}, {});
  const std::vector<Finding> seam = shape_findings(panel.grid(), widening, {.edge_stitches = 0});
  REQUIRE(seam.size() == 1);
  CHECK(seam[0].code == FindingCode::crossing_cut);
  CHECK((seam[0].place.row == 4 && seam[0].value == 3 && seam[0].limit == 4));
  CHECK(
      seam[0].message ==
      "the 2/2 RC after row 4, columns 0 to 3, the panel's last, is kept only where row 1 has its stitches too, and 3 "
      "of its 4 are outside there");
  CHECK(seam[0].suggestion ==
        "move the edge out by 3 columns in row 1; or make the crossing 1 row earlier; or leave it out and knit its "
        "stitches plain");
  CHECK_THROWS_MATCHES(shaped(panel, widening), Error, refused(ErrorCode::crossing_cut, at_outline(seam[0].place)));
  CHECK(shaped(panel, widening, {.edge_stitches = 0, .cut = CutWork::knit}).grid() ==
        Grid::from_text("kkkkkkkk\nkkkkkkkk\n...kkkkk\n...pkkkk"));
  // Whole in both it stays.
  const Outline neither = stepped(4, 8, {}, {{1, 2}});
  CHECK(shape_findings(panel.grid(), neither, {.edge_stitches = 0}).empty());
  CHECK(shaped(panel, neither, {.edge_stitches = 0}).grid().crossings().size() == 1);
}

TEST_CASE("the words of a cut crossing name the row that it is cut in", "[shaping]") {
  const Panel panel = panel_of(
      "kkkkkk\n"
      "kkkkkk\n"
      "x 0 1/1 L\n"
      "kkkkkk\n"
      "kkkkkk");
  const auto message = [&](const Outline& outline) {
    const std::vector<Finding> found = shape_findings(panel.grid(), outline);
    REQUIRE(found.size() == 1);
    return found[0].message;
  };
  CHECK(message(stepped(4, 6, {{2, 1}})) ==
        "the edge cuts the 1/1 LC after row 2, columns 0 to 1: 1 of its 2 stitches is outside in row 3");
  CHECK(message(outlined(4, 6, {.start = 1, .events = {{2, -1}}}, {})) ==
        "the edge cuts the 1/1 LC after row 2, columns 0 to 1: 1 of its 2 stitches is outside in row 2");
}

TEST_CASE("a stack that the edge cuts open is a finding, refused at its place, or knitted plain when asked",
          "[shaping]") {
  const Panel panel = panel_of(
      "kkkkk\n"
      "kktkk\n"
      "kktkk\n"
      "kkkkk");
  // The edge takes the closing cell of column 2 away.
  const Outline outline = stepped(4, 5, {{3, 3}});
  const std::vector<Finding> found = shape_findings(panel.grid(), outline, {.edge_stitches = 0});
  REQUIRE(found.size() == 1);
  CHECK(found[0].code == FindingCode::stack_cut);
  CHECK((found[0].place.row == 2 && found[0].place.column == 2 && found[0].last_row == 3));
  CHECK(found[0].suggestion == "move the edge out by 1 column; or knit the stack plain");
  CHECK_THROWS_MATCHES(shaped(panel, outline), Error, refused(ErrorCode::bad_argument, at_outline(found[0].place)));
  CHECK(shaped(panel, outline, {.cut = CutWork::knit}).grid() == Grid::from_text("...kk\nkkkkk\nkkkkk\nkkkkk"));
}

TEST_CASE("a shaped panel is planned, verified, and worded stop by stop", "[shaping]") {
  const Panel panel = panel_of(
      "kkpkkkpk\n"
      "kkpkkkpk\n"
      "x 2 1/1 R\n"
      "kkpkkkpk\n"
      "kkpkkkpk\n"
      "kkpkkkpk\n"
      "kkpkkkpk");
  const Panel out = shaped(panel, stepped(6, 8, {{2, 1}, {5, -1}}, {{4, 2}}));
  const Machine machine = Machine::generic(MachineClass::standard);
  const Plan made = plan(out.grid(), machine, {});
  REQUIRE(made.status == PlanStatus::optimal);
  CHECK(verify(out.grid(), made).verified);
  const std::string words = instructions(out, made, machine);
  // RS column 0 of eight stitches on L4..R4 is R4; columns 7 and 6 are L4 and L3.
  CHECK(words.find("decrease 1: move the stitch on R4 to R3 and put R4 out of work") != std::string::npos);
  CHECK(words.find("bind off L4-L3 and put them out of work") != std::string::npos);
  CHECK(words.find("increase 1: bring R4 to work and cast on") != std::string::npos);
  int ends = 0;
  for (const Finding& finding : findings(out.grid(), machine)) {
    CHECK(finding.severity != Severity::error);
    ends += finding.code == FindingCode::wale_ends || finding.code == FindingCode::wale_begins ? 1 : 0;
  }
  CHECK(ends == 3);
}

TEST_CASE("a shape that cannot be is refused with its field, and its row", "[shaping][error]") {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  struct Case {
    EdgeShape left, right;
    const char* field;
    int row = 0;
  };
  const Case cases[] = {
      {{.points = {{-1, 0}}}, {}, "left.points[0].row"},
      {{.points = {{4, 0}, {3, 0}}}, {}, "left.points[1].row"},
      {{}, {.points = {{11, 0}}}, "right.points[0].row"},
      {{.points = {{0, nan}}}, {}, "left.points[0].columns"},
      {{.points = {{0, 8.5}}}, {}, "left.points[0].columns"},
      {{.points = {{0, 1}}, .start = 1}, {}, "left"},
      {{.points = {{0, 1}}, .events = {{1, 1}}}, {}, "left"},
      {{.line = static_cast<EdgeLine>(2)}, {}, "left.line"},
      {{.start = -1}, {}, "left.start"},
      {{.events = {{0, 1}}}, {}, "left.events[0].row"},
      {{.events = {{10, 1}}}, {}, "left.events[0].row"},
      {{.events = {{1, 0}}}, {}, "left.events[0].stitches"},
      {{.events = {{1, std::numeric_limits<int>::min()}}}, {}, "left.events[0].stitches"},
      {{.events = {{1, 1, 0}}}, {}, "left.events[0].every"},
      {{.events = {{1, 1, 4, 4}}}, {}, "left.events[0].times"},
      {{.events = {{1, 1, std::numeric_limits<int>::max(), 2}}}, {}, "left.events[0].times"},
      {{.events = {{3, -1}}}, {}, "left", 4},
      {{}, {.events = {{3, 9}}}, "right", 4},
      {{.events = {{3, 4}}}, {.events = {{5, 4}}}, "outline", 6},
      {{.start = 4}, {.start = 4}, "outline", 1},
  };
  for (const Case& each : cases) {
    INFO(each.field << ", row " << each.row);
    Place place;
    place.field = each.field;
    place.row = each.row;
    CHECK_THROWS_MATCHES(outlined(10, 8, each.left, each.right), Error, refused(ErrorCode::bad_argument, place));
  }
  const EdgeShape many{.points = std::vector<EdgePoint>(max_edge_items + 1)};
  CHECK_THROWS_MATCHES(outlined(10, 8, many, {}), Error, refused_field(ErrorCode::too_large, "left.points"));
  CHECK_THROWS_MATCHES(outlined(0, 8, {}, {}), Error, refused_field(ErrorCode::bad_argument, "rows"));
  CHECK_THROWS_MATCHES(outlined(10, 8, {}, {}, 0), Error, refused_field(ErrorCode::bad_argument, "step"));
  // On even rows only, all times of an event too.
  const auto on_even = [](EdgeEvent event) { return outlined(20, 30, {.events = {event}}, {}, 2); };
  for (const ShapingStep& step : shaping_steps(on_even({4, 1, 6, 3}))) CHECK(step.row % 2 == 0);
  CHECK(shaping_steps(on_even({4, 1, 1, 1})).size() == 1);  // once: there is no next time to be odd
  CHECK_THROWS_MATCHES(on_even({5, 1, 6, 2}), Error, refused_field(ErrorCode::bad_argument, "left.events[0].row"));
  CHECK_THROWS_MATCHES(on_even({4, 1, 3, 2}), Error, refused_field(ErrorCode::bad_argument, "left.events[0].every"));
  CHECK_THROWS_MATCHES(outlined(20, 30, {}, {.events = {{2, 1}, {7, 1}}}, 2), Error,
                       refused_field(ErrorCode::bad_argument, "right.events[1].row"));
  for (const SpacingEnds ends : {SpacingEnds::in_the_round, SpacingEnds::flat}) {
    const EdgeShape spread{.events = edge_events(spaced_evenly(60, 7, ends, 2))};
    for (const ShapingStep& step : shaping_steps(outlined(62, 30, spread, spread, 2))) CHECK(step.row % 2 == 0);
  }
  Place bare;
  bare.row = 2;
  bare.field = "grid";
  CHECK_THROWS_MATCHES(outline_of(Grid::from_text("kk\n..\nkk")), Error, refused(ErrorCode::bad_argument, bare));
}

TEST_CASE("an outline that is not the grid's is refused", "[shaping][error]") {
  const Panel panel = plain(2, 4);
  CHECK_THROWS_MATCHES(shaped(panel, Outline{{{0, 3}}}), Error, refused_field(ErrorCode::size_mismatch, "outline"));
  Place place;
  place.field = "outline";
  place.row = 2;
  CHECK_THROWS_MATCHES(shaped(panel, Outline{{{0, 3}, {0, 4}}}), Error, refused(ErrorCode::size_mismatch, place));
  for (const RowSpan span : {RowSpan{2, 1}, RowSpan{-1, 3}, RowSpan{0, std::numeric_limits<int>::max()}}) {
    CHECK_THROWS_MATCHES(shaped(panel, Outline{{{0, 3}, span}}), Error, refused(ErrorCode::bad_argument, place));
  }
  CHECK_THROWS_MATCHES(outline_text(Outline{}), Error, refused_field(ErrorCode::bad_argument, "outline"));
  const Outline all{{{0, 3}, {0, 3}}};
  CHECK_THROWS_MATCHES(shaped(panel, all, {.edge_stitches = 101}), Error,
                       refused_field(ErrorCode::bad_argument, "edge_stitches"));
  CHECK_THROWS_MATCHES(shape_findings(panel.grid(), all, {.cut = static_cast<CutWork>(2)}), Error,
                       refused_field(ErrorCode::bad_argument, "cut"));
}

TEST_CASE("a crossing that is kept and reaches into the edge stitches is told", "[shaping]") {
  Grid grid(4, 6);
  grid.cross({.row = 2, .column = 0, .left = 2, .right = 2});
  Outline whole;
  whole.rows.assign(4, {0, 5});
  const std::vector<Finding> found = shape_findings(grid, whole);
  REQUIRE(found.size() == 1);
  CHECK(found[0].code == FindingCode::column_cut);
  CHECK(found[0].severity == Severity::advice);
  CHECK(found[0].place.row == 2);
  CHECK(found[0].place.column == 0);
  CHECK(found[0].last_column == 3);
  CHECK(shape_findings(grid, whole, {.edge_stitches = 0}).empty());
  CHECK(shaped(Panel("p", Strip{"s", "s", grid}), whole).grid().crossings().size() == 1);
  grid = Grid(4, 6);
  grid.cross({.row = 2, .column = 1, .left = 2, .right = 2});
  CHECK(shape_findings(grid, whole).empty());
}

}  // namespace shaping_test
