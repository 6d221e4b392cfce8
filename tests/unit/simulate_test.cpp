#include "latchwork/simulate.hpp"

#include <stdexcept>
#include <string>
#include <vector>

#include "catch.hpp"
#include "hand_moves.hpp"
#include "latchwork/wale.hpp"

namespace simulate_test {

using namespace latchwork;
using latchwork_test::HandMoves;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

/// Needles L2, L1, R1, R2: RS columns 3, 2, 1, 0.
constexpr Bed four{.leftmost = -2, .columns = 4};

HandMoves on_four() {
  return HandMoves().cast_on(-2, 2);
}

/// The fabric as letters, or the first fault.
std::string knitted(const HandMoves& moves, const Bed& bed = four) {
  const Fabric fabric = simulate(bed, moves);
  CHECK(fabric.grid.has_value() == fabric.faults.empty());
  return fabric.grid ? fabric.grid->to_text() : fabric.faults.front().message;
}

std::string chart(const char* text) {
  return Grid::from_text(text).to_text();
}

/// The crossing that one stop's moves after row 1 make between two plain rows of the four needles.
std::string crossing_by(const HandMoves& stop) {
  HandMoves all = on_four().pass();
  for (const Move& move : stop.all()) all.add(move);
  const Fabric fabric = simulate(four, all.pass());
  if (!fabric.grid) return fabric.faults.front().message;
  if (fabric.grid->crossings().size() != 1) return "not one crossing";
  return crossing_name(fabric.grid->crossings().front());
}

}  // namespace

TEST_CASE("the carriage knits every needle in work, and loops are counted", "[simulate]") {
  const Fabric fabric = simulate(four, on_four().pass(2));
  CHECK(fabric.grid->to_text() == chart("kkkk\nkkkk"));
  CHECK(fabric.loops == 8);
  CHECK(fabric.faults.empty());
}

// Common practice, no source: the tool works from the operator's side, so what it draws toward itself is a back loop on
// the RS. Sides: JIS L 0201, items 1010 and 1020, and the mirrored view of 1090 and 1100 (standards 2.1).
TEST_CASE("a rung drawn toward the operator is a purl on the RS, in the mirrored column", "[simulate]") {
  CHECK(knitted(on_four().pass().dropped(-2, 0).toward(-2, 1).hang(-2).pass()) == chart("kkkk\nkkkp"));
  CHECK(knitted(on_four().pass().dropped(2, 0).toward(2, 1).hang(2).pass()) == chart("kkkk\npkkk"));
}

TEST_CASE("a knit by hand is the carriage's knit: re-forming all rungs as knits changes nothing", "[simulate]") {
  const int from = GENERATE(0, 1, 4, 5);
  HandMoves moves = on_four().pass(5).dropped(1, from);
  for (int row = from + 1; row <= 5; ++row) moves.away(1, row);
  moves.hang(1).pass();
  CHECK(knitted(moves) == knitted(on_four().pass(6)));
}

TEST_CASE("two rows as one stitch: the lower strand is held, the upper loop takes both", "[simulate]") {
  CHECK(knitted(on_four().pass(3).dropped(1, 1).behind(1, 2).toward(1, 3).hang(1).pass()) ==
        chart("kkkk\nkpkk\nktkk\nkkkk"));
}

// Common practice, no source: a tuck rib is one re-formed stitch for every two rows.
TEST_CASE("tuck then purl, repeated, is a tuck rib column, in one batch or in several", "[simulate]") {
  const std::string rib = chart("kkkk\nkpkk\nktkk\nkpkk\nktkk\nkkkk");
  CHECK(knitted(on_four().pass(5).dropped(1, 1).behind(1, 2).toward(1, 3).behind(1, 4).toward(1, 5).hang(1).pass()) ==
        rib);
  CHECK(knitted(on_four()
                    .pass(3)
                    .dropped(1, 1)
                    .behind(1, 2)
                    .toward(1, 3)
                    .hang(1)
                    .pass(2)
                    .dropped(1, 3)
                    .behind(1, 4)
                    .toward(1, 5)
                    .hang(1)
                    .pass()) == rib);
}

TEST_CASE("a tuck by hold is the same cloth as a tuck by tool", "[simulate]") {
  const std::string tucked = chart("kkkk\nkktk\nkktk\nkkkk");
  CHECK(knitted(on_four().pass().hold(-1).pass(2).release(-1).pass()) == tucked);
  CHECK(knitted(on_four().pass(4).dropped(-1, 1).behind(-1, 2).behind(-1, 3).away(-1, 4).hang(-1)) == tucked);
  // Rungs taken on the tool and closed by the carriage's next pass.
  CHECK(knitted(on_four().pass(3).dropped(-1, 1).behind(-1, 2).behind(-1, 3).hang(-1).pass()) == tucked);
}

TEST_CASE("a stack may stand on the cast-on's loop, and on the loop of a wale that begins later", "[simulate]") {
  CHECK(knitted(on_four().hold(1).pass().release(1).pass()) == chart("kkkk\nktkk"));
  CHECK(knitted(HandMoves().cast_on(-2, 1).pass().cast_on(2, 2).hold(2).pass().release(2).pass()) ==
        chart("kkkk\ntkkk\n.kkk"));
}

TEST_CASE("a strand passed by lies on the RS under a purl and on the WS under a knit, and is a slip", "[simulate]") {
  CHECK(knitted(on_four().pass(3).dropped(1, 1).before(1, 2).toward(1, 3).hang(1)) == chart("kpkk\nkskk\nkkkk"));
  CHECK(knitted(on_four().pass(3).dropped(1, 1).aside(1, 2).away(1, 3).hang(1)) == chart("kkkk\nkskk\nkkkk"));
  CHECK(knitted(on_four().pass(2).dropped(1, 1).aside(1, 2).hang(1).pass()) == chart("kkkk\nkskk\nkkkk"));
}

TEST_CASE("a strand that floats on the other side is described by no cell", "[simulate][fault]") {
  const Fabric before_knit = simulate(four, on_four().pass(3).dropped(1, 1).before(1, 2).away(1, 3).hang(1));
  const Fabric behind_purl = simulate(four, on_four().pass(3).dropped(1, 1).aside(1, 2).toward(1, 3).hang(1));
  for (const Fabric* fabric : {&before_knit, &behind_purl}) {
    CHECK_FALSE(fabric->grid);
    REQUIRE(fabric->faults.size() == 1);
    CHECK(fabric->faults[0].move == -1);
    CHECK(fabric->faults[0].place.row == 2);
    CHECK(fabric->faults[0].place.column == 1);
  }
  CHECK(
      before_knit.faults[0].message ==
      "row 2, column 1: its strand floats on the right side, but row 3 closes it with a knit; no cell describes that");
}

TEST_CASE("tucks and slips may stand in one stack, each strand where it was laid", "[simulate]") {
  CHECK(knitted(on_four().pass(4).dropped(1, 0).behind(1, 1).before(1, 2).behind(1, 3).toward(1, 4).hang(1)) ==
        chart("kpkk\nktkk\nkskk\nktkk"));
}

// S. Guagliumi, machine cable notes, susanguagliumi.com/category/cables [CB-21]: the group returned to the needles
// first shows on the knit side. For a knit-side right cross it travels to the operator's left.
TEST_CASE("the group put back first shows in front on the RS; mirror images need the opposite order", "[simulate]") {
  HandMoves lifted = HandMoves().lift(0, 1, 2).lift(1, -2, -1);  // operator's right-hand and left-hand group
  CHECK(crossing_by(HandMoves(lifted).back(0, -2, -1).back(1, 1, 2)) == "2/2 RC");
  CHECK(crossing_by(HandMoves(lifted).back(1, 1, 2).back(0, -2, -1)) == "2/2 LC");
}

// R. Gibbs, How to understand cable symbols, rachelgibbs.co.uk, and a designer's abbreviation sheet [CB-16, CB-17]:
// 2/1 RC brings F1 F2 b to b F1 F2; 2/1 LC brings b F1 F2 to F1 F2 b.
TEST_CASE("unequal groups travel past each other whole", "[simulate]") {
  CHECK(crossing_by(HandMoves().lift(0, 1, 2).lift(1, -1, -1).back(0, -1, 1).back(1, 2, 2)) == "2/1 RC");
  CHECK(crossing_by(HandMoves().lift(0, 2, 2).lift(1, -1, 1).back(1, 1, 2).back(0, -1, -1)) == "2/1 LC");
  CHECK(crossing_by(HandMoves().lift(0, 2, 2).lift(1, -1, 1).back(0, -1, -1).back(1, 1, 2)) == "1/2 RC");
}

TEST_CASE("a centre lies in front when it goes back first or is never lifted, then between, then behind",
          "[simulate]") {
  // Left group on R2 (column 0), centre on L1 and R1, right group on L2 (column 3).
  const HandMoves outer = HandMoves().lift(0, 2, 2).lift(2, -2, -2);
  const HandMoves all = HandMoves(outer).lift(1, -1, 1);
  CHECK(crossing_by(HandMoves(outer).back(0, -2, -2).back(2, 2, 2)) == "1/2/1 RC, centre front");
  CHECK(crossing_by(HandMoves(all).back(1, -1, 1).back(0, -2, -2).back(2, 2, 2)) == "1/2/1 RC, centre front");
  CHECK(crossing_by(HandMoves(all).back(0, -2, -2).back(1, -1, 1).back(2, 2, 2)) == "1/2/1 RC, centre between");
  CHECK(crossing_by(HandMoves(all).back(0, -2, -2).back(2, 2, 2).back(1, -1, 1)) == "1/2/1 RC, centre behind");
  CHECK(crossing_by(HandMoves(outer).back(2, 2, 2).back(0, -2, -2)) == "1/2/1 LC, centre front");
  CHECK(crossing_by(HandMoves(all).back(2, 2, 2).back(1, -1, 1).back(0, -2, -2)) == "1/2/1 LC, centre between");
  CHECK(crossing_by(HandMoves(all).back(2, 2, 2).back(0, -2, -2).back(1, -1, 1)) == "1/2/1 LC, centre behind");
}

TEST_CASE("a centre beside unequal groups shifts with them", "[simulate]") {
  // 2/1/1: left group R1 R2 (columns 0, 1), centre L1 (2), right L2 (3).
  const HandMoves all = HandMoves().lift(0, 1, 2).lift(1, -1, -1).lift(2, -2, -2);
  CHECK(crossing_by(HandMoves(all).back(0, -2, -1).back(2, 2, 2).back(1, 1, 1)) == "2/1/1 RC, centre behind");
}

// Over a ladder the groups pass nothing, so nobody can say where the ladder lies (DEVELOPERS.md, verification: what
// cannot be told).
TEST_CASE("a bare centre reads as between: where it lies cannot be told", "[simulate]") {
  HandMoves moves = HandMoves().cast_on(-2, -2).cast_on(1, 2).pass().lift(0, 1, 2).lift(1, -2, -2);
  moves.back(0, -2, -1).back(1, 2, 2).pass();
  CHECK(knitted(moves) == chart("k.kk\nx 0 2/1/1 R between\nkk.k"));
}

// Cyclic shift by a of a+b places has order (a+b)/gcd(a,b) [CB-02, CB-04, CB-07, CB-08; derived].
TEST_CASE("the same crossing repeated brings each wale home after (a+b)/gcd(a,b) times", "[simulate]") {
  const auto [left, right, times] =
      GENERATE(table<int, int, int>({{1, 1, 2}, {2, 2, 2}, {3, 3, 2}, {3, 2, 5}, {4, 2, 3}}));
  const int width = left + right;
  const Bed bed{.leftmost = 1, .columns = width};  // column 0 on needle R{width}
  HandMoves moves = HandMoves().cast_on(1, width).pass();
  for (int i = 0; i < times; ++i) {
    moves.lift(0, right + 1, width).lift(1, 1, right).back(0, 1, left).back(1, left + 1, width).pass();
  }
  const Fabric fabric = simulate(bed, moves);
  REQUIRE(fabric.grid);
  CHECK(fabric.grid->crossings().size() == static_cast<std::size_t>(times));
  for (const Crossing& crossing : fabric.grid->crossings()) CHECK(crossing.lean == Lean::right);
  const Wales wales(*fabric.grid);
  for (const Wale& wale : wales.all()) {
    CHECK(wale.columns.back() == wale.columns.front());
    bool away = false;
    for (const int column : wale.columns) away = away || column != wale.columns.front();
    CHECK(away);
  }
}

TEST_CASE("a crossing made in pieces at one stop is the crossing made at once, if each piece leans alike",
          "[simulate]") {
  const auto swap = [](HandMoves& moves, int left, int right, bool right_cross) {
    moves.lift(0, right, right).lift(1, left, left);
    if (right_cross) {
      moves.back(0, left, left).back(1, right, right);
    } else {
      moves.back(1, right, right).back(0, left, left);
    }
  };
  HandMoves pieces;  // 2/2 as four exchanges of neighbours
  swap(pieces, -1, 1, true);
  swap(pieces, -2, -1, true);
  swap(pieces, 1, 2, true);
  swap(pieces, -1, 1, true);
  CHECK(crossing_by(pieces) == "2/2 RC");

  HandMoves torn;
  swap(torn, -1, 1, true);
  swap(torn, -2, -1, true);
  swap(torn, 1, 2, false);
  swap(torn, -1, 1, true);
  CHECK(crossing_by(torn) ==
        "after row 1, columns 0 to 3: a group is torn between front and back; no crossing describes that");
}

TEST_CASE("stitches lifted one by one are counted from where all stood before", "[simulate]") {
  // The left pair goes back stitch by stitch, a third tool is lifted in between: still one 2/2 right cross.
  CHECK(crossing_by(HandMoves()
                        .lift(0, 1, 1)
                        .lift(1, 2, 2)
                        .lift(2, -1, -1)
                        .back(0, -1, -1)  // stands where the last of the other pair will be lifted beside it
                        .lift(3, -2, -2)
                        .lift(4, -1, -1)
                        .back(4, -2, -2)
                        .back(1, -1, -1)
                        .back(2, 2, 2)
                        .back(3, 1, 1)) == "2/2 RC");
}

TEST_CASE("two stitches that have passed do not pass again when one is lifted once more", "[simulate]") {
  // The stitch of L2 waits in the air all the while. R2's goes over R1's to the bare L1, R1's to R2, and R2's to R1.
  HandMoves moves = HandMoves().cast_on(-2, -2).cast_on(1, 2).pass().lift(3, -2, -2);
  moves.lift(0, 2, 2).back(0, -1, -1).lift(1, 1, 1).back(1, 2, 2).lift(0, -1, -1).back(0, 1, 1).back(3, -2, -2).pass();
  CHECK(knitted(moves) == chart("kk.k\nx 0 1/1 L\nkk.k"));
}

TEST_CASE("neighbouring crossings after one row are read as two", "[simulate]") {
  CHECK(knitted(on_four()
                    .pass()
                    .lift(0, 2, 2)
                    .lift(1, 1, 1)
                    .back(0, 1, 1)
                    .back(1, 2, 2)
                    .lift(0, -1, -1)
                    .lift(1, -2, -2)
                    .back(1, -1, -1)
                    .back(0, -2, -2)
                    .pass()) == chart("kkkk\nx 0 1/1 R\nx 2 1/1 L\nkkkk"));
}

TEST_CASE("a crossing after the last row is read from the needles", "[simulate]") {
  CHECK(knitted(on_four().pass().lift(0, 1, 2).lift(1, -2, -1).back(0, -2, -1).back(1, 1, 2)) ==
        chart("x 0 2/2 R\nkkkk"));
}

TEST_CASE("after a crossing, needles lead to the wales that now hang on them", "[simulate]") {
  // The wale of column 0 hangs on R1 after a 1/1 cross: purled in row 2 it shows in column 1.
  HandMoves moves = on_four().pass().lift(0, 2, 2).lift(1, 1, 1).back(0, 1, 1).back(1, 2, 2).pass();
  moves.dropped(1, 1).toward(1, 2).hang(1).pass();
  CHECK(knitted(moves) == chart("kkkk\nkpkk\nx 0 1/1 R\nkkkk"));
}

TEST_CASE("a wale re-formed past a crossing comes up on the operator's side, in the slots it left", "[simulate]") {
  const auto crossed = [] { return on_four().pass(2).lift(0, 2, 2).lift(1, 1, 1).back(0, 1, 1).back(1, 2, 2).pass(2); };
  // The front wale, now on R1, dropped below the crossing: behind, so the cross leans the other way.
  CHECK(knitted(crossed().dropped(1, 1).toward(1, 2).away(1, 3).away(1, 4).hang(1)) ==
        chart("kkkk\nkkkk\nx 0 1/1 L\npkkk\nkkkk"));
  // The wale behind was on that side before.
  CHECK(knitted(crossed().dropped(2, 1).toward(2, 2).away(2, 3).away(2, 4).hang(2)) ==
        chart("kkkk\nkkkk\nx 0 1/1 R\nkpkk\nkkkk"));
  // Dropped just to the loop that was crossed, the tool keeps it where it is.
  CHECK(knitted(crossed().dropped(1, 2).toward(1, 3).away(1, 4).hang(1)) == chart("kkkk\nkpkk\nx 0 1/1 R\nkkkk\nkkkk"));
}

TEST_CASE("one wale of a wide front group, re-formed past its crossing, tears the group", "[simulate][fault]") {
  HandMoves moves = on_four().pass(2).lift(0, 1, 2).lift(1, -2, -1).back(0, -2, -1).back(1, 1, 2).pass();
  const HandMoves crossed = moves;
  moves.dropped(-1, 1).away(-1, 2).away(-1, 3).hang(-1);
  CHECK(knitted(moves) ==
        "after row 2, columns 0 to 3: a group is torn between front and back; no crossing describes that");
  // Both wales: the group lies behind as a whole.
  CHECK(knitted(moves.dropped(-2, 1).away(-2, 2).away(-2, 3).hang(-2)) == chart("kkkk\nx 0 2/2 L\nkkkk\nkkkk"));
  CHECK(knitted(crossed) == chart("kkkk\nx 0 2/2 R\nkkkk\nkkkk"));
}

TEST_CASE("a wale dropped at the stop of its own crossing comes up on the operator's side too", "[simulate]") {
  HandMoves moves = on_four().pass(2).lift(0, 2, 2).lift(1, 1, 1).back(0, 1, 1).back(1, 2, 2);
  CHECK(knitted(moves.dropped(1, 1).toward(1, 2).hang(1).pass()) == chart("kkkk\nx 0 1/1 L\npkkk\nkkkk"));
}

TEST_CASE("wales begin by cast-on and end by bind-off; between and beside them are no stitches", "[simulate]") {
  CHECK(knitted(
            HandMoves().cast_on(-2, -1).pass().cast_on(1, 1).bind_off(-2).pass().bind_off(1).cast_on(-2, -2).pass()) ==
        chart("..kk\n.kk.\n..kk"));
}

TEST_CASE("a tuck left open at the end is read as a tuck", "[simulate]") {
  CHECK(knitted(on_four().pass().hold(1).pass()) == chart("ktkk\nkkkk"));
}

TEST_CASE("progress is told, never falls and ends at the whole", "[simulate]") {
  std::vector<double> shares;
  WatchOptions options;
  options.progress = [&](const Progress& progress) { shares.push_back(progress.share); };
  (void)simulate(four, on_four().pass(5000), options);
  REQUIRE(shares.size() > 3);
  for (std::size_t i = 1; i < shares.size(); ++i) CHECK(shares[i] >= shares[i - 1]);
  CHECK(shares.back() == 1.0);
  options.progress = [](const Progress&) { throw std::runtime_error("enough"); };
  CHECK_THROWS_AS(simulate(four, on_four().pass(), options), std::runtime_error);
}

TEST_CASE("a simulation that is asked to stop ends with an error", "[simulate][error]") {
  std::stop_source source;
  WatchOptions options;
  options.stop = source.get_token();
  CHECK(simulate(four, on_four().pass(), options).grid.has_value());
  options.progress = [&](const Progress&) { source.request_stop(); };
  CHECK_THROWS_MATCHES(simulate(four, on_four().pass(5000), options), Error, refused(ErrorCode::cancelled));
}

TEST_CASE("a bed that does not exist, or more rows than a grid has, is refused", "[simulate][error]") {
  const HandMoves none;
  CHECK_THROWS_MATCHES(simulate({.leftmost = 0, .columns = 1}, none), Error,
                       refused_field(ErrorCode::bad_argument, "leftmost"));
  CHECK_THROWS_MATCHES(simulate({.leftmost = 1, .columns = 0}, none), Error,
                       refused_field(ErrorCode::bad_argument, "columns"));
  CHECK_THROWS_MATCHES(simulate({.leftmost = 1, .columns = Grid::max_side + 1}, none), Error,
                       refused_field(ErrorCode::too_large, "columns"));
  CHECK_THROWS_MATCHES(simulate({.leftmost = 1, .columns = 1}, HandMoves().pass(Grid::max_side + 1)), Error,
                       refused_field(ErrorCode::too_large, "moves"));
  CHECK_THROWS_MATCHES(simulate({.leftmost = 1, .columns = Grid::max_side}, HandMoves().pass(4096)), Error,
                       refused_field(ErrorCode::too_large, "moves"));
}

}  // namespace simulate_test
