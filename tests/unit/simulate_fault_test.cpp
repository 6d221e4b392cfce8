#include <string>
#include <vector>

#include "catch.hpp"
#include "hand_moves.hpp"
#include "latchwork/simulate.hpp"

namespace simulate_fault_test {

using namespace latchwork;
using latchwork_test::HandMoves;

namespace {

/// Needles L2, L1, R1, R2: RS columns 3, 2, 1, 0.
constexpr Bed four{.leftmost = -2, .columns = 4};

HandMoves on_four() {
  return HandMoves().cast_on(-2, 2);
}

/// That the moves end at the last one (or, with `at_end`, after it), at this place, and nothing is read.
void check_stuck(const HandMoves& moves, int row, int column, const std::string& message, bool at_end = false) {
  const Fabric fabric = simulate(four, moves);
  CHECK_FALSE(fabric.grid);
  REQUIRE(fabric.faults.size() == 1);
  const Fault& fault = fabric.faults.front();
  CHECK(fault.move == (at_end ? -1 : static_cast<std::int64_t>(moves.all().size()) - 1));
  CHECK(fault.place.row == row);
  CHECK(fault.place.column == column);
  CHECK(fault.message == message);
}

/// That all moves can be done, but no cell or crossing describes this place.
void check_unreadable(const HandMoves& moves, int row, int column, const std::string& message) {
  const Fabric fabric = simulate(four, moves);
  CHECK_FALSE(fabric.grid);
  REQUIRE_FALSE(fabric.faults.empty());
  const Fault& fault = fabric.faults.front();
  CHECK(fault.move == -1);
  CHECK(fault.place.row == row);
  CHECK(fault.place.column == column);
  CHECK(fault.message == message);
}

}  // namespace

// Every slot filled once.

TEST_CASE("a rung is used once", "[simulate][fault]") {
  check_stuck(on_four().pass(2).dropped(1, 0).away(1, 1).toward(1, 1), 1, 1,
              "RC 2: needle R1: the rung of row 1 is already used");
}

TEST_CASE("only rungs that the drop laid bare can be reached", "[simulate][fault]") {
  check_stuck(on_four().pass(3).dropped(1, 1).toward(1, 1), 1, 1,
              "RC 3: needle R1: no rung of row 1 hangs there; the ladder has rows 2 to 3");
  check_stuck(on_four().pass(3).dropped(1, 1).toward(1, 2).toward(1, 3).toward(1, 4), 3, 1,
              "RC 3: needle R1: no rung of row 4 hangs there; the ladder has rows 2 to 3");
  check_stuck(on_four().pass(3).into(1, 1).toward(1, 2), 2, 1,
              "RC 3: needle R1: the latch tool holds no stitch dropped from it");
  check_stuck(on_four().pass(3).dropped(1, 1).toward(-1, 2), 2, 2,
              "RC 3: needle L1: the latch tool holds no stitch dropped from it");
}

// A loop is drawn through exactly one older loop of its wale and every held strand between.

TEST_CASE("a rung left out of a wale is told where it hangs", "[simulate][fault]") {
  const char* const message =
      "row 2, column 1: its strand was left out of the wale that goes on above it; no cell describes that";
  check_unreadable(on_four().pass(3).dropped(1, 1).toward(1, 3).hang(1).pass(), 2, 1, message);
  check_unreadable(on_four().pass(2).dropped(1, 1).hang(1).pass(), 2, 1, message);
  check_unreadable(on_four().pass(2).dropped(1, 1).hang(1), 2, 1, message);
  check_unreadable(on_four().pass(2).dropped(1, 1).hang(1).bind_off(1).pass(), 2, 1, message);
}

TEST_CASE("a rung left out can be taken up by a later, deeper batch", "[simulate]") {
  const Fabric fabric = simulate(
      four, on_four().pass(2).dropped(1, 1).hang(1).pass().dropped(1, 0).away(1, 1).toward(1, 2).away(1, 3).hang(1));
  REQUIRE(fabric.grid);
  CHECK(fabric.grid->to_text() == Grid::from_text("kkkk\nkpkk\nkkkk").to_text());
}

// Common practice, no source: taking the higher rung first is another texture.
TEST_CASE("rungs taken out of order make a texture that no cell describes", "[simulate][fault]") {
  check_unreadable(on_four().pass(3).dropped(1, 1).behind(1, 3).toward(1, 2).hang(1).pass(), 2, 1,
                   "row 2, column 1: its strand is worked above that of row 3; no cell describes that");
}

TEST_CASE("the tool goes only into a loop that the wale has", "[simulate][fault]") {
  check_stuck(on_four().pass(2).into(1, 3), 2, 1, "RC 2: the wale on needle R1 has no loop of row 3");
  check_stuck(on_four().pass(2).into(1, -1), 1, 1, "RC 2: the wale on needle R1 has no loop of row -1");
  check_stuck(HandMoves().cast_on(1, 1).pass(2).cast_on(2, 2).pass().into(2, 1), 1, 0,
              "RC 3: the wale on needle R2 has no loop of row 1");
  check_stuck(on_four().pass().hold(1).pass().release(1).pass().into(1, 2), 2, 1,
              "RC 3: the wale on needle R1 has no loop of row 2: that row's strand is held");
  check_stuck(on_four().pass(3).dropped(1, 1).aside(1, 2).away(1, 3).hang(1).into(1, 2), 2, 1,
              "RC 3: the wale on needle R1 has no loop of row 2: that row's strand is a float");
  check_stuck(HandMoves().cast_on(1, 1).pass().into(2, 0), 1, 0,
              "RC 1: needle R2 has no stitch whose wale the latch tool could go into");
}

// Every loop drawn through once, or on exactly one needle, or bound off.

TEST_CASE("a stitch dropped with no tool in its wale would run", "[simulate][fault]") {
  const char* const message = "RC 2: needle R1: no tool is in a loop of this wale, so the dropped stitch would run";
  check_stuck(on_four().pass(2).drop(1, 1), 2, 1, message);
  check_stuck(on_four().pass(2).into(2, 1).drop(1, 1), 2, 1, message);
  check_stuck(on_four().pass(2).dropped(2, 1).toward(2, 2).hang(2).drop(1, 1), 2, 1, message);
}

TEST_CASE("a stitch ladders down to the loop that the tool is in, no further and no less", "[simulate][fault]") {
  check_stuck(on_four().pass(3).into(1, 1).drop(1, 2), 3, 1,
              "RC 3: needle R1: the latch tool is in the loop of row 1, so the stitch cannot ladder to row 2");
  check_stuck(on_four().pass(3).into(1, 2).drop(1, 1), 3, 1,
              "RC 3: needle R1: the latch tool is in the loop of row 2, so the stitch cannot ladder to row 1");
}

TEST_CASE("the latch tool holds one stitch at a time", "[simulate][fault]") {
  check_stuck(on_four().pass(2).dropped(1, 1).into(2, 1), 2, 1,
              "RC 2: the latch tool still holds the stitch dropped from needle R1");
}

// Nothing left on a tool.

TEST_CASE("the carriage cannot pass while a tool is in the work", "[simulate][fault]") {
  check_stuck(on_four().pass(2).into(1, 1).pass(), 2, 1, "RC 2: the latch tool is still in the wale of needle R1");
  check_stuck(on_four().pass(2).dropped(1, 1).toward(1, 2).pass(), 2, 1,
              "RC 2: the latch tool is still in the wale of needle R1");
  check_stuck(on_four().pass(2).lift(4, -2, -1).pass(), 2, 3,
              "RC 2: 2 stitches from needle L2 still on pronged tool 5");
}

TEST_CASE("no stitch may be left on a tool at the end", "[simulate][fault]") {
  check_stuck(on_four().pass(2).dropped(1, 1), 2, 1, "RC 2: the latch tool is still in the wale of needle R1", true);
  check_stuck(on_four().pass(2).lift(0, 1, 1), 2, 1, "RC 2: 1 stitch from needle R1 still on pronged tool 1", true);
}

TEST_CASE("nothing can be hung or put back from an empty tool", "[simulate][fault]") {
  check_stuck(on_four().pass().hang(1), 1, 1, "RC 1: nothing dropped is on the latch tool to hang on needle R1");
  check_stuck(on_four().pass().into(1, 1).hang(1), 1, 1,
              "RC 1: nothing dropped is on the latch tool to hang on needle R1");
  check_stuck(on_four().pass().back(0, 1, 1), 1, 1, "RC 1: pronged tool 1 has no stitch to put on needle R1");
}

// One wale to a needle.

TEST_CASE("a needle holds one stitch", "[simulate][fault]") {
  check_stuck(on_four().pass().lift(0, 1, 1).back(0, 2, 2), 1, 0,
              "RC 1: needle R2 already has a stitch; the one on pronged tool 1 would be its second");
  check_stuck(on_four().pass().dropped(1, 0).toward(1, 1).hang(2), 1, 0,
              "RC 1: needle R2 already has a stitch; the one on the latch tool would be its second");
  check_stuck(on_four().pass().cast_on(1, 1), 1, 1,
              "RC 1: needle R1 already has a stitch; a cast-on would be its second");
}

TEST_CASE("an empty needle has nothing to lift, drop, bind off or hold", "[simulate][fault]") {
  const HandMoves only = HandMoves().cast_on(1, 1).pass();
  check_stuck(HandMoves(only).lift(0, 1, 2), 1, 0, "RC 1: needle R2 has no stitch to lift");
  check_stuck(HandMoves(only).drop(2, 0), 1, 0, "RC 1: needle R2 has no stitch to drop");
  check_stuck(HandMoves(only).bind_off(2), 1, 0, "RC 1: needle R2 has no stitch to bind off");
  check_stuck(HandMoves(only).hold(2), 1, 0, "RC 1: needle R2 has no stitch to be moved to or from hold");
  check_stuck(HandMoves(only).release(2), 1, 0, "RC 1: needle R2 has no stitch to be moved to or from hold");
}

TEST_CASE("a pronged tool takes stitches once, and puts back as many as it has", "[simulate][fault]") {
  check_stuck(on_four().pass().lift(0, 1, 1).lift(0, 2, 2), 1, 0,
              "RC 1: needle R2 is lifted to pronged tool 1, which is full");
  check_stuck(on_four().pass().lift(0, 1, 2).back(0, 1, 1), 1, 1,
              "RC 1: pronged tool 1 has 2 stitches for 1 needle from R1");
  check_stuck(on_four().pass().lift(-1, 1, 2), 1, 1, "RC 1: needle R1 is lifted to no tool");
  check_stuck(on_four().pass().into(1, 0).lift(0, 1, 1), 1, 1, "RC 1: needle R1: the latch tool is still in the wale");
  check_stuck(on_four().pass().into(1, 0).bind_off(1), 1, 1, "RC 1: needle R1: the latch tool is still in the wale");
}

TEST_CASE("a needle left in hold with no stitch would catch the strand", "[simulate][fault]") {
  check_stuck(HandMoves().cast_on(-2, 1).pass().hold(1).lift(0, 1, 1).back(0, 2, 2).pass(), 2, 1,
              "RC 2: needle R1 is in hold with no stitch; the strand would lie in its hook");
}

TEST_CASE("needles are the panel's", "[simulate][fault]") {
  check_stuck(on_four().pass().hold(3), 1, -1, "RC 1: needle R3 is not among the panel's needles L2 to R2");
  check_stuck(on_four().pass().hold(-3), 1, -1, "RC 1: needle L3 is not among the panel's needles L2 to R2");
  check_stuck(on_four().pass().hold(0), 1, -1, "RC 1: there is no needle 0; needles are L1, L2, ... and R1, R2, ...");
  check_stuck(HandMoves().cast_on(2, -2), 1, 0, "RC 0: needles R2 to L2 run backwards");
  HandMoves strange;
  strange.add({.kind = static_cast<MoveKind>(15)});
  check_stuck(strange, 1, -1, "RC 0: a move of unknown kind 15; kinds are 0 to 14");
}

TEST_CASE("a wale cannot begin straight above one that has just ended", "[simulate][fault]") {
  check_stuck(on_four().pass().bind_off(1).cast_on(1, 1), 1, 1,
              "RC 1: needle R1: a stitch stands here in row 1; a cast-on straight above it is in no chart");
}

// Each pair passes at most once between two rows, and each connected block is one crossing with an order of its groups.

TEST_CASE("two stitches that pass twice between two rows are no crossing", "[simulate][fault]") {
  const HandMoves right = HandMoves().lift(0, 2, 2).lift(1, 1, 1).back(0, 1, 1).back(1, 2, 2);
  HandMoves twist = on_four().pass();
  for (int i = 0; i < 2; ++i) {
    for (const Move& move : right.all()) twist.add(move);
  }
  check_unreadable(HandMoves(twist).pass(), 1, 0,
                   "after row 1, columns 0 to 1: stitches pass and stay, or pass and end; no crossing describes that");
  for (const Move& move : right.all()) twist.add(move);
  check_unreadable(
      HandMoves(twist).pass(), 1, 0,
      "after row 1, columns 0 to 1: two stitches pass each other more than once; no crossing describes that");
}

TEST_CASE("stitches that change places otherwise than as two groups are no crossing", "[simulate][fault]") {
  // Column 0 goes to 1, 1 to 3, 2 to 0 and 3 to 2.
  check_unreadable(
      on_four()
          .pass()
          .lift(0, 2, 2)
          .lift(1, 1, 1)
          .lift(2, -1, -1)
          .lift(3, -2, -2)
          .back(0, 1, 1)
          .back(1, -2, -2)
          .back(2, 2, 2)
          .back(3, -1, -1)
          .pass(),
      1, 0,
      "after row 1, columns 0 to 3: stitches change places otherwise than as two groups round a centre; no "
      "crossing describes that");
}

TEST_CASE("a centre before the front group and behind the other has no order from front to back", "[simulate][fault]") {
  // Columns 0, 1, 2 on R1, L1, L2. Left over centre on the RS, centre over right, right over left: a ring.
  check_unreadable(
      HandMoves()
          .cast_on(-2, 1)
          .pass()
          .lift(0, 1, 1)
          .lift(1, -1, -1)
          .back(0, -1, -1)
          .back(1, 1, 1)  // left before centre
          .lift(0, -1, -1)
          .lift(1, -2, -2)
          .back(1, -1, -1)
          .back(0, -2, -2)  // right before left
          .lift(0, 1, 1)
          .lift(1, -1, -1)
          .back(0, -1, -1)
          .back(1, 1, 1)  // centre before right
          .pass(),
      1, 1,
      "after row 1, columns 1 to 3: the centre is before the front group and behind the other; no crossing "
      "describes that");
}

TEST_CASE("a stitch moved over bare needles alone is no crossing", "[simulate][fault]") {
  check_unreadable(
      HandMoves().cast_on(1, 1).pass().lift(0, 1, 1).back(0, -1, -1).pass(), 1, 1,
      "after row 1, columns 1 to 2: stitches change places otherwise than as two groups round a centre; no "
      "crossing describes that");
}

TEST_CASE("a tuck or slip below takes part in no crossing", "[simulate][fault]") {
  check_unreadable(
      on_four().pass().hold(2).pass().release(2).lift(0, 2, 2).lift(1, 1, 1).back(0, 1, 1).back(1, 2, 2).pass(), 2, 0,
      "after row 2, columns 0 to 1: a tuck or slip in this row takes part; no crossing describes that");
}

TEST_CASE("stitches that change places before the first row are no crossing", "[simulate][fault]") {
  check_unreadable(
      on_four().lift(0, 2, 2).lift(1, 1, 1).back(0, 1, 1).back(1, 2, 2).pass(), 1, 0,
      "after row 0, columns 0 to 1: stitches change places before the first row; no crossing describes that");
}

TEST_CASE("a stitch that passes and is bound off at once is no crossing", "[simulate][fault]") {
  check_unreadable(on_four().pass().lift(0, 2, 2).lift(1, 1, 1).back(0, 1, 1).back(1, 2, 2).bind_off(1).pass(), 1, 0,
                   "row 1, column 0: the stitch was moved to column 1 and bound off there; no crossing describes that");
}

TEST_CASE("a centre bare only in part, or only below, is no crossing", "[simulate][fault]") {
  const Bed five{.leftmost = -2, .columns = 5};  // columns 4 3 2 1 0 on L2 L1 R1 R2 R3
  const Fabric part = simulate(five, HandMoves()
                                         .cast_on(-2, 1)
                                         .cast_on(3, 3)
                                         .pass()
                                         .lift(0, -2, -2)
                                         .lift(1, 3, 3)
                                         .back(0, 3, 3)
                                         .back(1, -2, -2)
                                         .pass());
  REQUIRE(part.faults.size() == 1);
  CHECK(part.faults[0].message ==
        "after row 1, columns 0 to 4: only a part of the centre is bare; no crossing describes that");
  const Fabric below = simulate({.leftmost = -1, .columns = 3}, HandMoves()
                                                                    .cast_on(-1, -1)
                                                                    .cast_on(2, 2)
                                                                    .pass()
                                                                    .lift(0, -1, -1)
                                                                    .lift(1, 2, 2)
                                                                    .back(0, 2, 2)
                                                                    .back(1, -1, -1)
                                                                    .cast_on(1, 1)
                                                                    .pass());
  REQUIRE(below.faults.size() == 1);
  CHECK(below.faults[0].message ==
        "after row 1, columns 0 to 2: the centre is bare only below; no crossing describes that");
}

TEST_CASE("a crossing on the seam that the chart's rules forbid is told as a fault", "[simulate][fault]") {
  // Row 1 has no stitch in column 0, so a crossing after row 2, the last, cannot run on into it.
  const Fabric fabric = simulate(
      four,
      HandMoves().cast_on(-2, 1).pass().cast_on(2, 2).pass().lift(0, 2, 2).lift(1, 1, 1).back(0, 1, 1).back(1, 2, 2));
  CHECK_FALSE(fabric.grid);
  REQUIRE(fabric.faults.size() == 1);
  CHECK(fabric.faults[0].place.row == 2);
  CHECK(fabric.faults[0].place.column == 0);
}

TEST_CASE("no rows make no fabric", "[simulate][fault]") {
  const Fabric fabric = simulate(four, on_four());
  CHECK_FALSE(fabric.grid);
  REQUIRE(fabric.faults.size() == 1);
  CHECK(fabric.faults[0].message == "no row was knitted, so there is no fabric to read");
}

}  // namespace simulate_fault_test
