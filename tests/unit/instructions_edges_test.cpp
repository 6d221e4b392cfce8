// The words for needles that begin and end work: the cast-on that a plan relies on, decreases and increases.
#include <string>
#include <vector>

#include "catch.hpp"
#include "labelled.hpp"
#include "latchwork/instructions.hpp"
#include "latchwork/move.hpp"
#include "latchwork/shaping.hpp"
#include "latchwork/simulate.hpp"
#include "text.hpp"

namespace instructions_edges_test {

using namespace latchwork;
using latchwork_test::holds;
using latchwork_test::told_of;

namespace {

Panel panel_of(const Grid& grid) {
  return {"Sample", Strip{"sample", "sample", grid}};
}

/// The words of the machine's own plan, which is verified first.
std::string words_of(const Grid& grid) {
  const Plan made = plan(grid, Machine{});
  REQUIRE(verify(grid, made).verified);
  return instructions(panel_of(grid), made, Machine{});
}

Plan bare_plan(int rows, int columns, int leftmost) {
  Plan plan;
  plan.rows = rows;
  plan.columns = columns;
  plan.leftmost = leftmost;
  plan.status = PlanStatus::optimal;
  for (int column = 0; column < columns; ++column) plan.columns_on.push_back(column);
  return plan;
}

Stop stop_after(int row) {
  Stop stop;
  stop.row = row;
  stop.carriage_right = row % 2 == 0;
  return stop;
}

Reform reform(int needle, int from_row, int row) {
  Reform out;
  out.needle = needle;
  out.from_row = from_row;
  out.rungs.assign(static_cast<std::size_t>(row - from_row), Cell::purl);
  return out;
}

constexpr const char* own_loops = "each with a loop of its own";

}  // namespace

// DEVELOPERS.md, stops: from row 0 a batch goes only where the cast-on gives each needle a loop of its own.
TEST_CASE("a cast-on that the work goes into is told to give each needle a loop of its own", "[instructions]") {
  CHECK(holds(words_of(Grid::from_text("kkkkk\nkkkkk\nkkpkk\n")),
              "Cast on L3-R2 (5 needles, each with a loop of its own). Set RC 000, COR."));
  CHECK_FALSE(holds(words_of(Grid::from_text("kkkkk\nkkpkk\nkkkkk\n")), own_loops));
  CHECK_FALSE(holds(words_of(Grid(3, 5)), own_loops));
  // A needle held over the cast-on loop: a stack of tucks from row 1 on, closed by a knit.
  Plan held = bare_plan(4, 5, -3);
  held.stops = {stop_after(0), stop_after(2)};
  held.stops[0].holds = {1};
  held.stops[1].releases = {1};
  CHECK(holds(told_of(panel_of(Grid(4, 5)), held), own_loops));
  held.stops[0].row = 1;
  held.stops[0].carriage_right = false;
  CHECK_FALSE(holds(told_of(panel_of(Grid(4, 5)), held), own_loops));
}

TEST_CASE("so is one that is made on the way", "[instructions]") {
  Plan plan = bare_plan(8, 8, -4);
  plan.columns_on = {2, 3, 4, 5};  // on R2, R1, L1, L2
  plan.stops = {stop_after(3), stop_after(6)};
  plan.stops[0].shapings = {{-4, 7, true}, {-3, 6, true}, {3, 1, true}};
  const Grid grid = Grid::from_text(".kkkkkkk\n.kkkkkkk\n.kkkkkkk\n.kkkkkkk\n.kkkkkkk\n..kkkk..\n..kkkk..\n..kkkk..\n");
  const std::string plain = told_of(panel_of(grid), plan);
  CHECK(holds(plain, "RC 003 COL  increase 1: bring R3 to work and cast on; bring L4-L3 to work and cast on.\n"));
  plan.stops[1].reforms = {reform(-3, 3, 6), reform(3, 3, 6)};
  CHECK(holds(told_of(panel_of(grid), plan),
              "RC 003 COL  increase 1: bring R3 to work and cast on, a loop of its own on it; bring L4-L3 to work and "
              "cast on, a loop of its own on each.\n"));
}

// Common practice, no source: one stitch at an edge is decreased or increased, several are bound off or cast on; so say
// outline_text() and DEVELOPERS.md, shaping.
TEST_CASE("one stitch at an edge is decreased or increased, several are bound off or cast on, as the shape says",
          "[instructions][shaping]") {
  const EdgeShape left{.events = {{2, 1}, {4, 3}, {6, -1}, {8, -3}}};
  const EdgeShape right{.events = {{2, 1}, {4, 2}, {6, -1}, {8, -1}}};
  const Outline outline = outlined(10, 12, left, right);
  const std::string shape = outline_text(outline);
  CHECK(holds(shape, "RC 2: decrease 1 at each side.\n"));
  CHECK(holds(shape, "RC 4: bind off 3 at the left edge, bind off 2 at the right edge.\n"));
  CHECK(holds(shape, "RC 6: increase 1 at each side.\n"));
  CHECK(holds(shape, "RC 8: cast on 3 at the left edge, increase 1 at the right edge.\n"));
  const std::string words = words_of(shaped(panel_of(Grid(10, 12)), outline).grid());
  // Twelve stitches on L6..R6; the left edge of the right side is on the operator's right.
  CHECK(
      holds(words,
            "RC 002 COR  decrease 1 at each side: move the stitch on L6 to L5, that on R6 to R5 and put L6, R6 out of "
            "work.\n"));
  CHECK(holds(
      words,
      "RC 004 COR  bind off L5-L4, R3-R5 and put them out of work, L5-L4 with a length of yarn, as the carriage is "
      "at the other edge.\n"));
  CHECK(holds(words, "RC 006 COR  increase 1 at each side: bring L4, R3 to work and cast on.\n"));
  CHECK(holds(words, "RC 008 COR  increase 1: bring L5 to work and cast on; bring R4-R6 to work and cast on.\n"));
}

TEST_CASE("where the last stitch was bound off before the last row the words end there", "[instructions]") {
  const std::string off = "Bind off, or take the panel off on waste yarn.";
  const std::string bare = words_of(Grid::from_text("....\n....\nkkkk\nkkkk\nkkkk\n"));
  CHECK(
      bare.ends_with("   1  RC 003 COL  bind off L2-R2 and put them out of work.\n"
                     "      No stitch is left on the bed: the panel ends here. Nothing is knitted in rows 4 to 5.\n"));
  CHECK_FALSE(holds(bare, off));
  CHECK(words_of(Grid::from_text("....\nkkkk\nkkkk\n")).ends_with("Nothing is knitted in row 3.\n"));
  // Some stitches still hang.
  CHECK(words_of(Grid::from_text("..kk\nkkkk\n")).ends_with("Knit to RC 002, COR. " + off + "\n"));
  // All do again: bare rows inside, and a new cast-on.
  CHECK(words_of(Grid::from_text("kkkk\n....\nkkkk\n")).ends_with("Knit to RC 003, COL. " + off + "\n"));
}

TEST_CASE("a stitch that cannot be moved onto a neighbour is bound off", "[instructions]") {
  Plan plan = bare_plan(8, 6, -3);
  plan.stops = {stop_after(4), stop_after(7)};
  Grid grid(8, 6);
  const auto words = [&] { return told_of(panel_of(grid), plan); };
  plan.stops[0].shapings = {{-3, 5, false}};
  CHECK(holds(words(), "RC 004 COR  decrease 1: move the stitch on L3 to L2 and put L3 out of work.\n"));
  // A ladder beside it.
  plan.columns_on = {0, 1, 2, 3, 5};
  grid.set(1, 4, Cell::none);
  CHECK(holds(words(), "RC 004 COR  bind off L3 and put it out of work.\n"));
  plan.columns_on = {0, 1, 2, 3, 4, 5};
  grid.set(1, 4, Cell::knit);
  // A neighbour that is dropped past the row later on: what was moved onto it would run.
  plan.stops[1].reforms = {reform(-2, 3, 7)};
  CHECK(holds(words(), "RC 004 COR  bind off L3 and put it out of work.\n"));
  // Down to that row, and no further: the tool goes into both.
  const std::string both = "the tool goes into both loops";
  CHECK_FALSE(holds(words(), both));
  plan.stops[1].reforms = {reform(-2, 4, 7)};
  CHECK(holds(words(), "decrease 1: move the stitch on L3 to L2"));
  CHECK(holds(words(), both));
  // Inside, where a ladder begins.
  plan.stops[0].shapings = {{1, 2, false}};
  CHECK(holds(words(), "RC 004 COR  bind off R1 and put it out of work.\n"));
}

// Two of each tool are at hand (machine.hpp): 3 + 3 stitches on tools of one prong take six.
TEST_CASE("tools that a crossing needs and that are not at hand are told beside it", "[instructions]") {
  Grid grid(6, 8);
  grid.cross({.row = 3, .column = 1, .left = 3, .right = 3, .lean = Lean::right});
  const auto words = [&](std::vector<int> prongs) {
    Machine machine;
    machine.prongs = std::move(prongs);
    return instructions(panel_of(grid), plan(grid, machine), machine);
  };
  CHECK_FALSE(holds(words({3}), "Not at hand"));
  CHECK_FALSE(holds(words({1, 2}), "Not at hand"));
  CHECK(holds(words({1}),
              " needles; bring these needles out to hold, and let the next row knit them back. Not at hand: "
              "4 of the 1-prong tools.\n"));
  CHECK(holds(words({2}), " Not at hand: 2 of the 2-prong tools.\n"));
  CHECK(holds(words({}), " Not at hand: 2 of the 3-prong tools.\n"));
}

// A rhythm is stops: where nothing is worked by hand there is none to keep.
TEST_CASE("a regular plan without hand work tells no rhythm", "[instructions]") {
  const Grid plain(8, 5);
  const Plan regular = plan_regular(plain, Machine{});
  REQUIRE(regular.rhythm);
  CHECK_FALSE(holds(instructions(panel_of(plain), regular, Machine{}), "Regular schedule"));
  Grid purl(8, 5);
  purl.set(2, 2, Cell::purl);
  CHECK(holds(instructions(panel_of(purl), plan_regular(purl, Machine{}), Machine{}), "Regular schedule"));
}

// DEVELOPERS.md, stacks: the closing cell says on which side a slip's strand lies, whatever stands between.
TEST_CASE("the key tells slips and tucks by what closes their stack", "[instructions]") {
  Plan plan = bare_plan(8, 4, -2);
  plan.stops = {stop_after(4)};
  plan.stops[0].reforms = {reform(1, 0, 4)};
  plan.stops[0].reforms[0].rungs = {Cell::slip, Cell::tuck, Cell::purl, Cell::purl};
  const std::string text = told_of(panel_of(Grid(8, 4)), plan);
  REQUIRE(holds(text, "re-form rows 1-4 as s, t, 2 p"));
  CHECK(holds(text,
              "slip: leave the rung out; tool in front of it if the next loop above is purled, rung on your side if "
              "it is knit\n"));
  CHECK(holds(text, "tuck: tool behind the rung; the next loop above takes it along\n"));
  // So goes the tool, too: the slip below a tuck and a purl is passed in front.
  for (const Move& move : moves(plan)) {
    if (move.row == 1) CHECK(move.kind == MoveKind::rung_before);
  }
}

}  // namespace instructions_edges_test
