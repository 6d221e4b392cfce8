#include "latchwork/move.hpp"

#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"
#include "hand_moves.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/simulate.hpp"

namespace move_test {

using namespace latchwork;
using latchwork_test::HandMoves;
using latchwork_test::refused_field;

namespace {

/// A plan on L2..R2 with all four needles cast on.
Plan plan_of(int rows) {
  Plan plan;
  plan.rows = rows;
  plan.columns = 4;
  plan.leftmost = -2;
  plan.columns_on = {0, 1, 2, 3};
  return plan;
}

Stop stop_after(int row) {
  Stop stop;
  stop.row = row;
  return stop;
}

}  // namespace

TEST_CASE("a plain plan is a cast-on and one pass a row", "[move]") {
  CHECK(moves(plan_of(3)) == HandMoves().cast_on(-2, 2).pass(3).all());
}

TEST_CASE("needles left out of the cast-on part it, counted from the operator's right as column 0", "[move]") {
  Plan plan = plan_of(1);
  plan.columns_on = {0, 2, 3};
  CHECK(moves(plan) == HandMoves().cast_on(2, 2).cast_on(-2, -1).pass().all());
}

TEST_CASE("inside a stop come releases, re-forms, crossings, shapings and holds, after the row's pass", "[move]") {
  Plan plan = plan_of(2);
  Stop stop = stop_after(1);
  stop.releases = {1};
  stop.reforms = {{.needle = -2, .column = 3, .wale = 0, .from_row = 0, .rungs = {Cell::purl}}};
  stop.crossings = {{.crossing = {.row = 1, .column = 1},
                     .returns = {{.group = GroupName::left, .from_needle = 1, .to_needle = -1, .prongs = {1}},
                                 {.group = GroupName::right, .from_needle = -1, .to_needle = 1, .prongs = {1}}},
                     .ease = true}};
  stop.shapings = {{.needle = 2, .column = 0, .on = false}};
  stop.holds = {-2, 1};
  plan.stops = {stop};
  CHECK(moves(plan) == HandMoves()
                           .cast_on(-2, 2)
                           .pass()
                           .release(1)
                           .dropped(-2, 0)
                           .toward(-2, 1)
                           .hang(-2)
                           .lift(0, 1, 1)
                           .lift(1, -1, -1)
                           .back(0, -1, -1)
                           .back(1, 1, 1)
                           .bind_off(2)
                           .hold(-2)
                           .hold(1)
                           .pass()
                           .all());
}

TEST_CASE("a stop at row 0 comes before the first pass, one at the last row after it", "[move]") {
  Plan plan = plan_of(1);
  plan.stops = {stop_after(0), stop_after(1)};
  plan.stops[0].holds = {1};
  plan.stops[1].releases = {1};
  CHECK(moves(plan) == HandMoves().cast_on(-2, 2).hold(1).pass().release(1).all());
}

TEST_CASE("rungs are taken lowest first, a slip on the side that its closing stitch asks for", "[move]") {
  Plan plan = plan_of(7);
  Stop stop = stop_after(7);
  stop.reforms = {
      {.needle = 1,
       .column = 1,
       .wale = 0,
       .from_row = 1,
       .rungs = {Cell::slip, Cell::tuck, Cell::purl, Cell::slip, Cell::knit, Cell::slip}}};  // the last is left open
  plan.stops = {stop};
  CHECK(moves(plan) == HandMoves()
                           .cast_on(-2, 2)
                           .pass(7)
                           .dropped(1, 1)
                           .before(1, 2)
                           .behind(1, 3)
                           .toward(1, 4)
                           .aside(1, 5)
                           .away(1, 6)
                           .aside(1, 7)
                           .hang(1)
                           .all());
}

TEST_CASE("a group on several tools is lifted and put back from the operator's left, over the bed's centre", "[move]") {
  Plan plan;
  plan.rows = 1;
  plan.columns = 9;
  plan.leftmost = -4;
  Stop stop = stop_after(1);
  stop.crossings = {
      {.crossing = {},
       .returns = {
           {.group = GroupName::left, .stitches = 4, .from_needle = 2, .to_needle = -4, .prongs = {3, 3}},
           {.group = GroupName::centre, .stitches = 1, .from_needle = 1, .to_needle = 1, .prongs = {}},
           {.group = GroupName::right, .stitches = 4, .from_needle = -4, .to_needle = 2, .prongs = {2, 2}},
       }}};
  plan.stops = {stop};
  CHECK(moves(plan) == HandMoves()
                           .pass()
                           .lift(0, 2, 4)
                           .lift(1, 5, 5)
                           .lift(2, -4, -3)
                           .lift(3, -2, -1)
                           .back(0, -4, -2)
                           .back(1, -1, -1)
                           .back(2, 2, 3)
                           .back(3, 4, 5)
                           .all());
}

TEST_CASE("tools are counted anew for each crossing, since all are empty again", "[move]") {
  Plan plan = plan_of(1);
  Stop stop = stop_after(1);
  const auto swap = [](int left, int right) {
    return CrossingStep{.crossing = {},
                        .returns = {{.from_needle = right, .to_needle = left, .prongs = {1}},
                                    {.from_needle = left, .to_needle = right, .prongs = {1}}}};
  };
  stop.crossings = {swap(-2, -1), swap(1, 2)};
  plan.stops = {stop};
  const std::vector<Move> all = moves(plan);
  CHECK(all[6].tool == 0);
  CHECK(all[7].tool == 1);
}

TEST_CASE("a plan is followed by the row counter: stops come when their row does, others never", "[move]") {
  Plan plan = plan_of(2);
  for (const int row : {2, 5, -1, 1}) plan.stops.push_back(stop_after(row));
  for (Stop& stop : plan.stops) stop.holds = {stop.row};
  const auto held = [](int needle) { return HandMoves().hold(needle).all().front(); };
  CHECK(moves(plan) == std::vector{HandMoves().cast_on(-2, 2).all().front(), HandMoves().pass().all().front(), held(1),
                                   HandMoves().pass().all().front(), held(2)});
}

TEST_CASE("any plan is translated, however wrong its numbers are", "[move]") {
  static constexpr int least = std::numeric_limits<int>::min();
  static constexpr int most = std::numeric_limits<int>::max();
  const int number = GENERATE(least, least + 1, -1, 0, 1, most - 1, most);
  CAPTURE(number);
  Plan plan;
  plan.rows = 1;
  plan.columns = number;
  plan.leftmost = number;
  plan.columns_on = {number, most, least, 0};
  Stop stop = stop_after(1);
  stop.releases = {number};
  stop.reforms = {{.needle = number,
                   .column = number,
                   .wale = number,
                   .from_row = number,
                   .rungs = {Cell::none, Cell::slip, Cell::knit, static_cast<Cell>(77)}}};
  stop.crossings = {
      {.crossing = {.row = number, .column = number},
       .returns = {
           {.stitches = number, .from_needle = number, .to_needle = number, .prongs = {number, 0, -3, 1, most}}}}};
  stop.shapings = {{.needle = number, .column = number, .on = true}};
  stop.holds = {number};
  plan.stops = {stop};
  const std::vector<Move> all = moves(plan);
  CHECK(all.size() >= 8);
  for (const Move& move : all) CHECK_FALSE(describe(move).empty());
  const Fabric fabric = simulate({.leftmost = -2, .columns = 4}, all);  // nonsense is a fault, never a crash
  CHECK(fabric.faults.size() == 1);
  CHECK_FALSE(fabric.grid.has_value());
}

TEST_CASE("a plan of more rows than a grid can have is refused", "[move][error]") {
  Plan plan;
  plan.rows = Grid::max_side + 1;
  CHECK_THROWS_MATCHES(moves(plan), Error, refused_field(ErrorCode::too_large, "rows"));
  plan.rows = -5;
  CHECK(moves(plan).empty());
}

TEST_CASE("each move is told in words with its needles and rows", "[move]") {
  const std::vector<Move> all = HandMoves()
                                    .cast_on(-2, 3)
                                    .pass()
                                    .into(-3, 8)
                                    .drop(-3, 8)
                                    .behind(-3, 9)
                                    .before(-3, 9)
                                    .aside(-3, 9)
                                    .toward(-3, 9)
                                    .away(-3, 9)
                                    .hang(-3)
                                    .lift(0, 1, 2)
                                    .back(0, -2, -1)
                                    .hold(4)
                                    .release(4)
                                    .bind_off(4)
                                    .all();
  const std::vector<std::string> words = {
      "needles L2 to R3: cast on",
      "one pass of the carriage",
      "needle L3: latch tool into the loop of row 8",
      "needle L3: drop the stitch down to the loop of row 8",
      "needle L3: pass the tool behind the rung of row 9, which goes into the stitch",
      "needle L3: pass the tool in front of the rung of row 9, which stays on the right side",
      "needle L3: leave the rung of row 9 on your side of the stitch",
      "needle L3: draw the rung of row 9 through, toward you",
      "needle L3: draw the rung of row 9 through, away from you",
      "needle L3: hang the loop from the latch tool",
      "needles R1 to R2: lift the stitches to pronged tool 1",
      "needles L2 to L1: put back the stitches from pronged tool 1",
      "needle R4: put in hold",
      "needle R4: back to work",
      "needle R4: bind off",
  };
  REQUIRE(all.size() == words.size());
  for (std::size_t i = 0; i < all.size(); ++i) CHECK(describe(all[i]) == words[i]);
  CHECK(describe({.kind = static_cast<MoveKind>(99)}) == "move of unknown kind 99");
}

}  // namespace move_test
