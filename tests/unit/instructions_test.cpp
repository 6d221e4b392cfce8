#include "latchwork/instructions.hpp"
#include "labelled.hpp"

#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "text.hpp"

namespace instructions_test {

using namespace latchwork;
using latchwork_test::holds;
using latchwork_test::refused_field;
using latchwork_test::told_of;

namespace {

Panel panel_of(const Grid& grid) {
  return {"Sample", Strip{"sample", "sample", grid}};
}

/// Ten stitches, twelve rows: a purl wale in column 1 and a 2/2 right cross on columns 4 to 7 after rows 3, 7 and 11.
/// Needles L5-R5, so column 1 is on R4 and columns 7, 6, 5, 4 on L3, L2, L1, R1.
Panel rope_panel() {
  Grid grid(12, 10);
  for (int row = 1; row <= 11; ++row) grid.set(row, 1, Cell::purl);
  for (const int row : {3, 7, 11}) {
    grid.cross({.row = row, .column = 4, .left = 2, .right = 2, .lean = Lean::right});
  }
  return panel_of(grid);
}

Stop rope_stop(int row, int from_row) {
  Stop stop;
  stop.row = row;
  stop.carriage_right = row % 2 == 0;
  stop.effort_ms = 60'000;
  Reform reform;
  reform.needle = 4;
  reform.column = 1;
  reform.from_row = from_row;
  reform.rungs.assign(static_cast<std::size_t>(row - from_row), Cell::purl);
  stop.reforms.push_back(reform);
  CrossingStep step;
  step.crossing = {.row = row, .column = 4, .left = 2, .right = 2, .lean = Lean::right};
  // DEVELOPERS.md, order of putting back: a right cross on the RS = first put the operator's right-hand group on the
  // left-hand needles.
  step.returns.push_back({GroupName::left, 2, -1, -3, {2}});
  step.returns.push_back({GroupName::right, 2, -3, -1, {2}});
  stop.crossings.push_back(step);
  return stop;
}

Plan empty_plan(int rows, int columns, int leftmost) {
  Plan plan;
  plan.rows = rows;
  plan.columns = columns;
  plan.leftmost = leftmost;
  plan.status = PlanStatus::optimal;
  for (int column = 0; column < columns; ++column) plan.columns_on.push_back(column);
  return plan;
}

Plan rope_plan() {
  Plan plan = empty_plan(12, 10, -5);
  plan.stops = {rope_stop(3, 0), rope_stop(7, 3), rope_stop(11, 7)};
  return plan;
}

/// The line of a text that holds `part`.
std::string line_with(const std::string& text, const std::string& part) {
  const std::size_t at = text.find(part);
  if (at == std::string::npos) return {};
  const std::size_t from = text.rfind('\n', at) + 1;
  return text.substr(from, text.find('\n', at) - from);
}

/// The words of one batch over these rungs, on needle R1 of a panel high enough.
std::string words_of(const std::vector<Cell>& rungs) {
  const int depth = static_cast<int>(rungs.size());
  Plan plan = empty_plan(40, 4, -2);
  Stop stop;
  stop.row = depth + 1;
  Reform reform;
  reform.needle = 1;
  reform.from_row = 1;
  reform.rungs = rungs;
  stop.reforms.push_back(reform);
  plan.stops.push_back(stop);
  const std::string line = line_with(told_of(panel_of(Grid(40, 4)), plan), "R1: drop");
  const std::size_t from = line.find(" as ") + 4;
  return line.substr(from, line.size() - 1 - from);
}

}  // namespace

TEST_CASE("a small panel's instructions, checked by hand", "[instructions]") {
  CHECK(told_of(rope_panel(), rope_plan()) ==
        R"(Machine instructions: Sample

10 stitches x 12 rows, standard machine: 200 needles, 4.5 mm apart.
The wrong side (WS) faces you all the time; left and right are yours as you stand at the bed.

Abbreviations
  COL              carriage on the left
  COR              carriage on the right
  L5, R5           needles, counted outward from the middle of the bed; L5-R5: all from L5 to R5
  RC               row counter
  RS               right side, which faces away from you
  WS               wrong side, which faces you
  p                purl: draw the rung through towards you with the latch tool
  3 p              3 rungs as p
  2/2 right cross  2 stitches pass in front of 2 and lean right, as seen on the RS

Take care
  - Latch tools and needles are pointed and sprung: keep fingers clear of the carriage's way, and keep tools from small children.
  - Never force a tight crossing: ease the stitches first.
  - Whatever it becomes: nothing soft or loose lies with a sleeping infant.
  - If it becomes a cushion, its filling follows local fire rules; if it is for a child, no cords, openings or long loops; local codes come first.

At every stop
  - Knit to each row counter reading, stop, and do what stands beside it, one kind of work after another in the order listed.
  - Re-form needles one at a time, in the order listed: one sweep of the bed from your left.
  - At each: tool into the loop as many rows down as told, then drop; work every rung, the lowest first; hang the last loop on its needle.
  - Cross after re-forming. The stitches put back first show in front on the right side: keep to the order.

Crossings
  X1  2/2 right cross: lift the left 2 on a 2-prong tool, the right 2 on another; put back first the right 2 on the left 2 needles, then the left 2 on the right 2 needles.

Steps
      Cast on L5-R5 (10 needles, each with a loop of its own). Set RC 000, COR.
   1  RC 003 COL  R4: drop 3 rows to the cast-on, re-form rows 1-3 as 3 p; L3-R1: cross X1.
   2  RC 007 COL  R4: drop 4 rows to row 3, re-form rows 4-7 as 4 p; L3-R1: cross X1.
   3  RC 011 COL  R4: drop 4 rows to row 7, re-form rows 8-11 as 4 p; L3-R1: cross X1.
      Knit to RC 012, COR. Bind off, or take the panel off on waste yarn.
)");
}

TEST_CASE("rungs are folded into runs and repeats, lowest first", "[instructions]") {
  const auto [letters, words] = GENERATE(table<std::string, std::string>({{"p", "p"},
                                                                          {"pppp", "4 p"},
                                                                          {"tptptptp", "4 x (t, p)"},
                                                                          {"tptpt", "2 x (t, p), t"},
                                                                          {"ppkp", "2 p, k, p"},
                                                                          {"kppkpp", "2 x (k, 2 p)"},
                                                                          {"tttptttp", "2 x (3 t, p)"},
                                                                          {"kkppk", "2 k, 2 p, k"},
                                                                          {"kspksp", "2 x (k, s, p)"}}));
  std::vector<Cell> rungs;
  for (const char letter : letters) rungs.push_back(*cell_of(letter));
  INFO(letters);
  CHECK(words_of(rungs) == words);
}

TEST_CASE("needles that are worked alike are folded into ranges, over the middle of the bed too", "[instructions]") {
  Plan plan = empty_plan(8, 12, -6);
  Stop stop;
  stop.row = 4;
  for (const int needle : {-5, -2, -1, 1, 4}) {
    Reform reform;
    reform.needle = needle;
    reform.from_row = 2;
    reform.rungs = {Cell::purl, needle == 4 ? Cell::knit : Cell::purl};
    stop.reforms.push_back(reform);
  }
  plan.stops.push_back(stop);
  const std::string text = told_of(panel_of(Grid(8, 12)), plan);
  CHECK(holds(text, "   1  RC 004 COR  sweep down to row 2 | L5, L2-R1: 2 rows as 2 p | R4: 2 rows as p, k.\n"));
  plan.stops[0].reforms.pop_back();
  CHECK(holds(told_of(panel_of(Grid(8, 12)), plan),
              "   1  RC 004 COR  L5, L2-R1: drop 2 rows to row 2, re-form rows 3-4 as 2 p.\n"));
}

// DEVELOPERS.md, stops: within a stop a dropped neighbour would run, so wales are worked in one sweep of the bed.
TEST_CASE("where like needles are listed together, out of the order of the bed, the words say to sweep it all the same",
          "[instructions]") {
  Plan plan = empty_plan(8, 12, -6);
  plan.stops.resize(1);
  plan.stops[0].row = 2;
  for (const int needle : {-6, -1, 3}) {
    Reform reform;
    reform.needle = needle;
    reform.rungs = {needle == -1 ? Cell::knit : Cell::purl, Cell::purl};
    plan.stops[0].reforms.push_back(reform);
  }
  const std::string text = told_of(panel_of(Grid(8, 12)), plan);
  REQUIRE(holds(text, "sweep down to the cast-on | L6: 2 rows as 2 p | L1: 2 rows as k, p | R3: 2 rows as 2 p."));
  CHECK(holds(text, "Re-form needles one at a time, in the order listed: one sweep of the bed from your left.\n"));
  CHECK(holds(text, "A sweep tells, from one | to the next, how many rows each of the needles drops"));
  std::swap(plan.stops[0].reforms[0], plan.stops[0].reforms[2]);
  const std::string backward = told_of(panel_of(Grid(8, 12)), plan);
  CHECK(holds(backward, "sweep down to the cast-on | R3: 2 rows as 2 p | L1: 2 rows as k, p | L6: 2 rows as 2 p."));
  CHECK(holds(backward, "Re-form needles one at a time, in the order listed.\n"));
}

TEST_CASE("a run of stops that comes again is told once, with every row counter reading", "[instructions]") {
  Plan plan = empty_plan(40, 6, -3);
  for (const int start : {0, 10, 20}) {
    for (const int offset : {4, 7}) {
      Stop stop;
      stop.row = start + offset;
      stop.carriage_right = stop.row % 2 == 0;
      Reform reform;
      reform.needle = offset == 4 ? -2 : 2;
      reform.from_row = stop.row - 2;
      reform.rungs = {Cell::tuck, Cell::purl};
      stop.reforms.push_back(reform);
      plan.stops.push_back(stop);
    }
  }
  const std::string text = told_of(panel_of(Grid(40, 6)), plan);
  CHECK(holds(text,
              "   1  RC 004 COR  L2: drop 2 rows to row 2, re-form rows 3-4 as t, p.\n"
              "   2  RC 007 COL  R2: drop 2 rows to row 5, re-form rows 6-7 as t, p.\n"
              "      Repeat stops 1-2 every 10 rows, 2 more times:\n"
              "        RC 014 COR as 1, RC 017 COL as 2\n"
              "        RC 024 COR as 1, RC 027 COL as 2\n"
              "      Knit to RC 040, COR."));
}

TEST_CASE("a stop that comes again is folded only where that saves words", "[instructions]") {
  const auto text_for = [](int times) {
    Plan plan = empty_plan(60, 10, -5);
    for (int i = 0; i < times; ++i) plan.stops.push_back(rope_stop(7 + 4 * i, 3 + 4 * i));
    return told_of(panel_of(Grid(60, 10)), plan);
  };
  CHECK_FALSE(holds(text_for(2), "Repeat"));
  CHECK(holds(text_for(5),
              "      Repeat stop 1 every 4 rows, 4 more times:\n"
              "        RC 011 COL, RC 015 COL, RC 019 COL, RC 023 COL\n"));
}

TEST_CASE("scattered needles that are worked together at several stops are listed once", "[instructions]") {
  const auto text_for = [](const std::vector<int>& rows) {
    Plan plan = empty_plan(40, 12, -6);
    for (const int row : rows) {
      Stop stop;
      stop.row = row;
      for (const int needle : {-5, -2, -1, 4}) {
        Reform reform;
        reform.needle = needle;
        reform.from_row = row - 2;
        reform.rungs = {Cell::purl, Cell::purl};
        stop.reforms.push_back(reform);
      }
      plan.stops.push_back(stop);
    }
    return told_of(panel_of(Grid(40, 12)), plan);
  };
  const std::string twice = text_for({4, 9});
  CHECK(holds(twice, "Needles worked together\n  set 1  L5, L2-L1, R4\n"));
  CHECK(holds(twice, "RC 009 COL  set 1: drop 2 rows to row 7, re-form rows 8-9 as 2 p.\n"));
  CHECK_FALSE(holds(text_for({4}), "set 1"));
}

TEST_CASE("a sweep of several kinds tells each range's own depth, and has a name where it is told again",
          "[instructions]") {
  const auto sweep_stop = [](int row, int purls_from) {
    Stop stop;
    stop.row = row;
    stop.carriage_right = row % 2 == 0;
    for (const int needle : {-5, -4, -1, 4}) {
      Reform reform;
      reform.needle = needle;
      reform.from_row = needle == -1 ? row - 3 : purls_from;
      reform.rungs.assign(static_cast<std::size_t>(row - reform.from_row), Cell::purl);
      if (needle == -1) reform.rungs.front() = Cell::tuck;
      stop.reforms.push_back(reform);
    }
    return stop;
  };
  Plan plan = empty_plan(40, 12, -6);
  plan.stops = {sweep_stop(4, 0), sweep_stop(9, 5), sweep_stop(15, 10)};
  const std::string text = told_of(panel_of(Grid(40, 12)), plan);
  CHECK(holds(
      text,
      "Sweeps worked more than once\n  sweep 1  L5-L4: 4 rows as 4 p | L1: 3 rows as t, 2 p | R4: 4 rows as 4 p\n"));
  CHECK(holds(text, "RC 004 COR  sweep 1 down to the cast-on and row 1.\n"));
  CHECK(holds(text, "RC 009 COL  sweep 1 down to rows 5 and 6.\n"));
  CHECK(holds(text,
              "RC 015 COL  sweep down to rows 10 and 12 | L5-L4: 5 rows as 5 p | L1: 3 rows as t, 2 p | R4: 5 rows"));
}

TEST_CASE("tucks side by side bring the rule of the lower row, and single ones do not", "[instructions]") {
  const auto text_for = [](int second_needle) {
    Plan plan = empty_plan(8, 8, -4);
    Stop stop;
    stop.row = 2;
    for (const int needle : {-1, second_needle}) {
      Reform reform;
      reform.needle = needle;
      reform.rungs = {Cell::tuck, Cell::purl};
      stop.reforms.push_back(reform);
    }
    plan.stops.push_back(stop);
    return told_of(panel_of(Grid(8, 8)), plan);
  };
  CHECK(holds(text_for(1), "take the rung of the lower row first"));
  CHECK_FALSE(holds(text_for(2), "take the rung of the lower row first"));
}

TEST_CASE("holds tell when the carriage is set to hold and back", "[instructions]") {
  Plan plan = empty_plan(8, 6, -3);
  plan.stops.resize(3);
  plan.stops[0].row = 2;
  plan.stops[0].holds = {-2, 1};
  plan.stops[1].row = 3;
  plan.stops[1].carriage_right = false;
  plan.stops[1].releases = {-2};
  plan.stops[2].row = 4;
  plan.stops[2].releases = {1};
  const std::string text = told_of(panel_of(Grid(8, 6)), plan);
  CHECK(holds(text, "RC 002 COR  hold L2, R1; set the carriage to hold.\n"));
  CHECK(holds(text, "RC 003 COL  release L2.\n"));
  CHECK(holds(text, "RC 004 COR  release R1; set the carriage back to knit.\n"));
}

// DOMAIN 4: what is put back first shows in front, so that a crossing's name and its order tell one story.
TEST_CASE("a crossing whose groups go back in another order than its name says is refused", "[instructions][error]") {
  const Panel panel("Sample", rope(2, 2, 8, Lean::left));
  Plan made = plan(panel.grid(), Machine{});
  REQUIRE_FALSE(made.stops.empty());
  REQUIRE_FALSE(made.stops[0].crossings.empty());
  CHECK_NOTHROW(instructions(panel, made, Machine{}));
  made.stops[0].crossings[0].crossing.lean = Lean::right;
  Place place;
  place.row = made.stops[0].row;
  place.column = made.stops[0].crossings[0].crossing.column;
  place.field = "stops[0].crossings[0].returns";
  CHECK_THROWS_MATCHES(instructions(panel, made, Machine{}), Error,
                       latchwork_test::refused(ErrorCode::bad_argument, place));
}

// What stands in a key is what the reader meets below it (DOMAIN 10: those used and no others).
TEST_CASE("the key's samples are the sheet's own", "[instructions]") {
  Grid grid(20, 9);
  Plan plan = empty_plan(20, 9, -5);
  plan.stops.resize(1);
  plan.stops[0].row = 9;
  CrossingStep step;
  step.crossing = {
      .row = 9, .column = 2, .left = 2, .centre = 2, .right = 1, .lean = Lean::left, .place = Centre::front};
  step.returns = {
      {GroupName::centre, 2, -2, -1, {2}}, {GroupName::right, 1, -3, 2, {1}}, {GroupName::left, 2, 1, -3, {2}}};
  plan.stops[0].crossings.push_back(step);
  const std::vector<Cell> rungs{Cell::knit, Cell::knit, Cell::tuck, Cell::purl, Cell::tuck,
                                Cell::purl, Cell::tuck, Cell::purl, Cell::knit};
  plan.stops[0].reforms.resize(1);
  plan.stops[0].reforms[0].needle = -5;
  plan.stops[0].reforms[0].rungs = rungs;
  const std::string text = told_of(panel_of(grid), plan);
  CHECK(holds(text, "re-form rows 1-9 as 2 k, 3 x (t, p), k;"));
  CHECK(holds(text,
              "  L5, R4            needles, counted outward from the middle of the bed; L5-R4: all from L5 to R4\n"));
  CHECK(holds(text, "  3 x (t, p)        work what is in brackets 3 times\n"));
  CHECK(holds(text, "  2 k               2 rungs as k\n"));
  CHECK(holds(
      text, "  1/2/2 left cross  1 stitch passes in front of 2 and leans left, as seen on the RS; 2 in the centre\n"));
}

TEST_CASE("the key has hold wherever the word is used", "[instructions]") {
  const std::string entry = "\n  hold ";
  Plan plan = rope_plan();
  CHECK_FALSE(holds(told_of(rope_panel(), plan), entry));
  for (Stop& stop : plan.stops) stop.crossings[0].ease = true;
  const std::string eased = told_of(rope_panel(), plan);
  REQUIRE(holds(eased, "bring these needles out to hold"));
  CHECK(holds(eased, entry));
  CHECK_FALSE(holds(eased, "\n  release "));
}

TEST_CASE("needles that begin or end work at a stop are cast on and bound off", "[instructions]") {
  Plan plan = empty_plan(8, 4, -2);
  plan.columns_on = {0, 1, 3};  // column 2 is on L1
  plan.stops.resize(2);
  plan.stops[0].row = 4;
  plan.stops[0].shapings = {{-1, 2, true}};
  plan.stops[1].row = 6;
  plan.stops[1].shapings = {{-1, 2, false}};
  const std::string text = told_of(panel_of(Grid::from_text("kk.k\nkk.k\nkkkk\nkkkk\nkk.k\nkk.k\nkk.k\nkk.k\n")), plan);
  CHECK(holds(text, "Cast on L2, R1-R2 (3 needles); leave L1 out of work. Set RC 000, COR.\n"));
  CHECK(holds(text, "RC 004 COR  bring L1 to work and cast on.\n"));
  CHECK(holds(text, "RC 006 COR  bind off L1 and put it out of work.\n"));
}

// DEVELOPERS.md, order of putting back: a centre in front is put back first or never lifted, between second, behind
// last.
TEST_CASE("a centre's place in the order is told, and where it stays it is not lifted", "[instructions]") {
  const auto text_for = [](const std::vector<GroupReturn>& returns, Centre place) {
    Grid grid(8, 9);
    CrossingStep step;
    step.crossing = {.row = 4, .column = 2, .left = 2, .centre = 1, .right = 2, .lean = Lean::left, .place = place};
    step.returns = returns;
    step.ease = true;
    grid.cross(step.crossing);
    Plan plan = empty_plan(8, 9, -5);
    plan.stops.resize(1);
    plan.stops[0].row = 4;
    plan.stops[0].crossings.push_back(step);
    return told_of(panel_of(grid), plan);
  };
  // The block is L3-R2; a left cross puts the operator's left-hand group back first.
  const GroupReturn left_hand{GroupName::right, 2, -3, 1, {2}};
  const GroupReturn right_hand{GroupName::left, 2, 1, -3, {2}};
  const std::string front = text_for({{GroupName::centre, 1, -1, -1, {}}, left_hand, right_hand}, Centre::front);
  CHECK(holds(front,
              "  X1  2/1/2 left cross, centre in front on the RS: lift the left 2 on a 2-prong tool, the right 2 on "
              "another; the centre stitch stays where it is; put back first the left 2 on the right 2 "
              "needles, then the right 2 on the left 2 needles; bring these needles out to hold, and let the "
              "next row knit "
              "them back.\n"));
  CHECK(holds(front, "RC 004 COR  L3-R2: cross X1.\n"));
  const std::string between = text_for({left_hand, {GroupName::centre, 1, -1, -1, {1}}, right_hand}, Centre::between);
  CHECK(holds(
      between,
      "lift the left 2 on a 2-prong tool, the centre stitch on a 1-prong tool, the right 2 on a 2-prong tool; put "
      "back first the left 2 on the right 2 needles, then the centre stitch on its own needle, then the right 2 "
      "on the left 2 needles"));
}

TEST_CASE("of a panel without a stitch there is nothing to cast on, knit or bind off", "[instructions]") {
  const Panel nothing("nothing", ladder(4).filled_up(3));
  Plan plan = empty_plan(3, 4, -2);
  plan.columns_on.clear();
  const std::string text = told_of(nothing, plan);
  CHECK(text.ends_with("Steps\n      No needle takes a stitch: there is nothing to knit.\n"));
  CHECK(holds(text, "4 columns x 3 rows (no stitch in row 1), "));
  for (const char* never : {"Cast on", "Knit to", "Bind off", "Take care"}) CHECK_FALSE(holds(text, never));
}

TEST_CASE("a panel without hand work says so, and how many rows to knit", "[instructions]") {
  const std::string text = told_of(panel_of(Grid(4, 4)), empty_plan(4, 4, -2));
  CHECK(holds(text,
              "\nSteps\n"
              "      Cast on L2-R2 (4 needles). Set RC 000, COR.\n"
              "      No hand work: knit 4 rows, to RC 004, COR. Bind off, or take the panel off on waste yarn.\n"));
  CHECK_FALSE(holds(text, "At every stop"));
  CHECK_FALSE(holds(told_of(rope_panel(), rope_plan()), "No hand work"));
}

TEST_CASE("tucks bring how many wait on one stitch and the advice to count by the row counter, once",
          "[instructions]") {
  const auto told = [](const char* rows) {
    const Grid grid = Grid::from_text(rows);
    const Panel panel = panel_of(grid);
    return instructions(panel, latchwork::plan(grid, Machine{}), Machine{});
  };
  const std::string count = "Go by the row counter: where there are tucks the cloth shows fewer stitches than rows";
  const std::string one = told("kkkkk\nkkpkk\nkktkk\nkkkkk\nkkpkk\nkktkk\nkkkkk");
  CHECK(holds(one, count));
  CHECK(one.find(count) == one.rfind(count));
  CHECK_FALSE(holds(one, "tucks wait on one stitch"));
  const std::string three = told("kkkkk\nkkpkk\nkktkk\nkktkk\nkktkk\nkkpkk\nkktkk\nkkkkk");
  CHECK(holds(three, count));
  // At most four in succession, for the hook's sake: study notes after Spencer, Knitting Technology (standards, 9).
  CHECK(holds(three,
              "Up to 3 tucks wait on one stitch until a loop is drawn through them all, and must fit into the "
              "hook: four are usual at most."));
  // By hold: the needle waits for two rows.
  Plan held = empty_plan(6, 5, -3);
  held.stops.resize(2);
  held.stops[0].row = 2;
  held.stops[0].holds = {-1};
  held.stops[1].row = 4;
  held.stops[1].releases = {-1};
  CHECK(holds(told_of(panel_of(Grid(6, 5)), held), "Up to 2 tucks wait on one stitch"));
  CHECK_FALSE(holds(told("kkkkk\nkkpkk\nkkkkk"), "tucks"));
}

TEST_CASE("columns without a stitch in row 1 explain why fewer needles are cast on", "[instructions]") {
  Plan plan = empty_plan(1, 5, -3);
  plan.columns_on = {0, 1, 3, 4};
  const std::string text = told_of(panel_of(Grid::from_text("kk.kk\n")), plan);
  CHECK(holds(text, "\n5 columns x 1 row (4 stitches in row 1), "));
  CHECK(holds(text, "Cast on L3-L2, R1-R2 (4 needles); leave L1 out of work."));
}

TEST_CASE("cautions are those that fit", "[instructions]") {
  const std::string plain = told_of(panel_of(Grid(4, 4)), empty_plan(4, 4, -2));
  CHECK_FALSE(holds(plain, "pointed"));
  CHECK_FALSE(holds(plain, "force"));
  CHECK_FALSE(holds(plain, "rest your hands"));
  CHECK_FALSE(holds(plain, "small fingers"));
  CHECK(holds(plain, "sleeping infant"));
  // Standards, section 11: cushion filling; cords, openings and loops on things for children; local codes.
  for (const char* part : {"filling", "fire rules", "cords", "openings", "long loops", "local codes come first"}) {
    INFO(part);
    CHECK(holds(plain, part));
  }
  Plan long_work = rope_plan();
  long_work.stops[0].effort_ms = 9'000'000;
  const std::string rope = told_of(rope_panel(), long_work);
  CHECK(holds(rope, "Never force a tight crossing"));
  CHECK(holds(rope, "About 2 h 32 min of hand work: rest your hands"));
  Grid ladder(4, 5);
  for (int row = 1; row <= 4; ++row) ladder.set(row, 2, Cell::none);
  Plan beside_ladder = empty_plan(4, 5, -3);
  beside_ladder.columns_on = {0, 1, 3, 4};
  CHECK(holds(told_of(panel_of(ladder), beside_ladder), "Ladders can catch small fingers"));
  // Beyond the last stitch of a shaped edge no yarn runs bare.
  Grid narrowed(4, 5);
  for (const int column : {0, 1, 4}) narrowed.set(4, column, Cell::none);
  CHECK_FALSE(holds(told_of(panel_of(narrowed), empty_plan(4, 5, -3)), "Ladders"));
}

TEST_CASE("what cannot be made is told before anything else, with its place and what would help", "[instructions]") {
  // A tuck in the outermost wale has no rungs on one side (DEVELOPERS.md, edges); three stitches need a tool of three.
  Grid grid = Grid::from_text("kkkkkkkk\nkkkkkkkk\ntkkkkkkk\nkkkkkkkk\n");
  grid.cross({.row = 3, .column = 2, .left = 3, .right = 3, .lean = Lean::right});
  Machine machine;
  machine.prongs = {};
  const std::vector<Finding> found = findings(grid, machine);
  const Plan made = plan(grid, machine);
  REQUIRE(made.status != PlanStatus::infeasible);
  const std::string text = instructions(panel_of(grid), made, machine);
  const std::size_t told =
      text.find("\nCannot be made on this machine as it stands, though the steps below have it in them\n");
  REQUIRE(told != std::string::npos);
  CHECK(told < text.find("\nAbbreviations\n"));
  std::size_t errors = 0;
  for (const Finding& finding : found) {
    INFO(finding.message);
    const std::string line = line_with(text, finding.message);
    CHECK(line.empty() == (finding.severity != Severity::error));
    if (finding.severity != Severity::error) continue;
    ++errors;
    CHECK(holds(line, ". What would help: " + finding.suggestion));
  }
  CHECK(errors == 2);
  // The column of the RS as the needle it is on: eight stitches, L4 to R4, column 0 on R4.
  CHECK(holds(line_with(text, "tuck"), "(needle R4)"));
  CHECK(holds(line_with(text, "pronged tool"), "(needles L4-R2)"));
  CHECK_FALSE(holds(told_of(rope_panel(), rope_plan()), "annot be made"));
}

TEST_CASE("an infeasible plan says why and what would help, and gives no steps", "[instructions]") {
  Plan plan = empty_plan(4, 4, -2);
  plan.status = PlanStatus::infeasible;
  Finding finding;
  finding.message = "row 2, column 1: no batch can reach this purl";
  finding.suggestion = "cross later";
  plan.findings.push_back(finding);
  const std::string text = told_of(panel_of(Grid(4, 4)), plan);
  CHECK(holds(text,
              "This panel cannot be made on this machine as it stands\n"
              "  - row 2, column 1: no batch can reach this purl. What would help: cross later\n"));
  CHECK_FALSE(holds(text, "Steps"));
}

TEST_CASE("instructions refuse a plan of another size", "[instructions][error]") {
  CHECK_THROWS_MATCHES(instructions(panel_of(Grid(4, 5)), empty_plan(4, 4, -2), Machine{}), Error,
                       refused_field(ErrorCode::size_mismatch, "plan"));
}

TEST_CASE("work that comes again along the bed is told once, with how far on and where it ends", "[instructions]") {
  std::vector<Strip> strips{stockinette(1)};
  for (int i = 0; i < 5; ++i) {
    for (Strip strip : {reverse(1), stockinette(1), tuck_rib(1), stockinette(1)}) strips.push_back(std::move(strip));
    strips.push_back(rope(2, 2, 4, i < 4 ? Lean::right : Lean::left));
  }
  const Panel panel = join_strips("Sample", 8, strips);
  const std::string text = instructions(panel, plan(panel.grid(), Machine{}), Machine{});
  CHECK(holds(text, "4 x ["));
  CHECK(holds(text, "], each 8 needles further right, to "));
  CHECK(holds(text, "\n  each 8 needles further right  what is in the brackets [ ] so many times,"));
  // Where fewer letters tell it as it stands it is told so.
  const Panel two = join_strips("Two", 8, std::vector<Strip>{stockinette(1), reverse(1), stockinette(2), reverse(1)});
  CHECK_FALSE(holds(instructions(two, plan(two.grid(), Machine{}), Machine{}), " x ["));
}

}  // namespace instructions_test
