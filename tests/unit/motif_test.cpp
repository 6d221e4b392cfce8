#include "latchwork/motif.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <vector>

#include "catch.hpp"
#include "latchwork/error.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "latchwork/wale.hpp"

namespace motif_test {

using namespace latchwork;
using latchwork_test::message_of;
using latchwork_test::refused_field;

namespace {

const std::vector<Strip>& all_motifs() {
  static const std::vector<Strip> motifs = {stockinette(),
                                            stockinette(5),
                                            reverse(),
                                            reverse(3),
                                            garter(),
                                            garter(2, 2),
                                            garter(3, 1, 4),
                                            moss(),
                                            moss(5),
                                            basket(),
                                            basket(1, 1),
                                            basket(4, 2),
                                            tuck_rib(),
                                            tuck_rib(3),
                                            ladder(),
                                            ladder(2),
                                            rope(3, 3, 8, Lean::right),
                                            rope(2, 1, 5, Lean::left),
                                            rope(1, 1, 2, Lean::left),
                                            plait(2, 6),
                                            plait(3, 5, Lean::left),
                                            wave(2, 8),
                                            wave(1, 3, Lean::left)};
  return motifs;
}

}  // namespace

TEST_CASE("each motif is the chart it is known by", "[motif]") {
  struct Case {
    Strip strip;
    const char* name;
    const char* texture;
    const char* chart;
  };
  const Case cases[] = {
      {stockinette(3), "stockinette", "stockinette", "kkk\n"},
      {reverse(2), "reverse", "reverse", "pp\n"},
      {garter(), "garter 1/1", "garter 1/1", "p\nk\n"},
      // Two knit rows then two purl rows give double garter (common practice, no source).
      {garter(2, 2, 3), "garter 2/2", "garter 2/2", "ppp\nppp\nkkk\nkkk\n"},
      {garter(3, 1, 1), "garter 3/1", "garter 3/1", "p\nk\nk\nk\n"},
      {moss(), "moss", "moss", "pk\nkp\n"},
      {moss(3), "moss", "moss", "pkp\nkpk\n"},
      {basket(2, 1), "basket 2x1", "basket 2x1", "ppkk\nkkpp\n"},
      {basket(1, 2), "basket 1x2", "basket 1x2", "pk\npk\nkp\nkp\n"},
      // tuck-then-purl gives a tuck rib column (common practice, no source).
      {tuck_rib(), "tuck rib 1", "tuck rib 1", "p\nt\n"},
      {tuck_rib(3), "tuck rib 3", "tuck rib 3", "p\nt\nt\nt\n"},
      {ladder(2), "ladder", "ladder", "..\n"},
      {rope(3, 3, 4, Lean::right), "rope 3/3 RC every 4", "rope 3/3 every 4",
       "kkkkkk\nkkkkkk\nx 0 3/3 R\nkkkkkk\nkkkkkk\n"},
      // In n/m RC and n/m LC, n is the front group: RC has left = n, LC has right = n (Craft Yarn Council's terms).
      {rope(2, 1, 2, Lean::right), "rope 2/1 RC every 2", "rope 2/1 every 2", "kkk\nx 0 2/1 R\nkkk\n"},
      {rope(2, 1, 2, Lean::left), "rope 2/1 LC every 2", "rope 2/1 every 2", "kkk\nx 0 1/2 L\nkkk\n"},
      {plait(1, 2), "plait 1 every 2", "plait 1 every 2", "kkk\nx 1 1/1 L\nkkk\nkkk\nx 0 1/1 R\nkkk\n"},
      {plait(1, 2, Lean::left), "plait 1 under every 2", "plait 1 every 2",
       "kkk\nx 1 1/1 R\nkkk\nkkk\nx 0 1/1 L\nkkk\n"},
      {wave(2, 3), "wave 2/2 RC every 3", "wave 2/2 every 3",
       "kkkk\nx 0 2/2 L\nkkkk\nkkkk\nkkkk\nx 0 2/2 R\nkkkk\nkkkk\n"},
      {wave(2, 2, Lean::left), "wave 2/2 LC every 2", "wave 2/2 every 2",
       "kkkk\nx 0 2/2 R\nkkkk\nkkkk\nx 0 2/2 L\nkkkk\n"},
  };
  for (const Case& c : cases) {
    CHECK(c.strip.name == c.name);
    CHECK(c.strip.texture == c.texture);
    CHECK(c.strip.grid.to_text() == c.chart);
  }
}

TEST_CASE("a panel of whole repeats starts and ends on plain rows, as many of them for an even interval", "[motif]") {
  for (int interval = 2; interval <= 13; ++interval) {
    for (const Strip& strip : {rope(3, 3, interval, Lean::left), plait(2, interval), wave(2, interval)}) {
      const Grid grid = strip.repeated_up(3).grid;
      const int below = grid.crossings().front().row;
      const int above = grid.rows() - grid.crossings().back().row;
      CHECK(below >= 1);
      CHECK(above >= 1);
      CHECK(below - above == interval % 2);
      for (std::size_t i = 1; i < grid.crossings().size(); ++i) {
        CHECK(grid.crossings()[i].row - grid.crossings()[i - 1].row == interval);
      }
    }
  }
}

TEST_CASE("every motif mirrors, repeats and turns over, and mirroring twice gives it back", "[motif]") {
  for (const Strip& strip : all_motifs()) {
    INFO(strip.name);
    CHECK(strip.mirrored().mirrored() == strip);
    CHECK(strip.grid.upside_down().upside_down() == strip.grid);
    CHECK(strip.grid.half_turn().half_turn() == strip.grid);
    CHECK(strip.grid.turned().turned() == strip.grid);
    CHECK(strip.repeated_up(2).repeated_across(3).grid == strip.repeated_across(3).repeated_up(2).grid);
    CHECK(strip.filled_up(17).grid.rows() == 17);
  }
}

TEST_CASE("every motif can be made: plain, mirrored, repeated across and up, its plans knit to its chart",
          "[motif][plan][simulate]") {
  const Machine machine;
  int regular = 0;
  for (const Strip& motif : all_motifs()) {
    for (const Strip& strip : {motif, motif.mirrored()}) {
      for (const Strip& repeated : {strip, strip.repeated_across(2), strip.repeated_up(3)}) {
        const Strip strips[] = {stockinette(), repeated, stockinette()};  // a knit stitch at each edge
        const Grid grid = join_strips("motif", repeated.grid.rows(), strips).grid();
        INFO(motif.name << "\n" << grid.to_text());
        const Plan best = plan(grid, machine);
        CHECK(best.status == PlanStatus::optimal);
        CHECK(verify(grid, best).message == "verified");
        const Plan kept = plan_regular(grid, machine);
        if (kept.status == PlanStatus::infeasible) continue;
        ++regular;
        CHECK(verify(grid, kept).message == "verified");
      }
    }
  }
  CHECK(regular > 50);
}

TEST_CASE("each name is one motif's, and a texture has no lean word in it", "[motif]") {
  for (const Strip& strip : all_motifs()) {
    CHECK(strip.texture.find("RC") == std::string::npos);
    CHECK(strip.texture.find("LC") == std::string::npos);
    CHECK(strip.mirrored().texture == strip.texture);
  }
  CHECK(rope(3, 3, 8, Lean::right).texture == rope(3, 3, 8, Lean::left).texture);
  CHECK(rope(3, 3, 8, Lean::right).name != rope(3, 3, 8, Lean::left).name);
}

TEST_CASE("a rope of the other lean is the mirror image, name and all", "[motif]") {
  CHECK(rope(3, 3, 8, Lean::right).mirrored() == rope(3, 3, 8, Lean::left));
  CHECK(rope(2, 1, 6, Lean::left).mirrored() == rope(2, 1, 6, Lean::right));
  CHECK(wave(3, 6, Lean::right).mirrored() == wave(3, 6, Lean::left));
}

TEST_CASE("a plait is its own mirror image half a repeat up, over and under alike", "[motif]") {
  for (const Lean lean : {Lean::left, Lean::right}) {
    const Strip strip = plait(2, 5, lean);
    CHECK(strip.mirrored().grid == strip.grid.rolled_up(5));
    CHECK(strip.mirrored().name == strip.name);
  }
}

TEST_CASE("in an over plait the strand that crosses is always the outer one, in an under plait the middle one",
          "[motif]") {
  for (const Lean lean : {Lean::right, Lean::left}) {
    const Grid grid = plait(1, 2, lean).repeated_up(6).grid;
    for (const Crossing& crossing : grid.crossings()) {
      const int front = crossing.lean == Lean::right ? crossing.column : crossing.column + 1;
      CHECK((front != 1) == (lean == Lean::right));
    }
  }
}

TEST_CASE("a three-strand plait brings every strand home after six crossings, not before", "[motif]") {
  // Its permutation is a 3-cycle every two crossings.
  const Wales wales(plait(1, 2).repeated_up(4).grid);
  for (int x = 0; x < 3; ++x) {
    for (int repeats = 1; repeats <= 3; ++repeats) {
      CHECK((wales.all()[static_cast<std::size_t>(x)].column_at(4 * repeats + 1) == x) == (repeats == 3));
    }
  }
}

TEST_CASE("moss and basket alternate both ways: every neighbour block across or up is the other cell", "[motif]") {
  const Grid moss_field = moss(4).repeated_up(3).grid;
  for (int row = 1; row < moss_field.rows(); ++row) {
    for (int x = 0; x + 1 < moss_field.columns(); ++x) {
      CHECK(moss_field.at(row, x) != moss_field.at(row, x + 1));
      CHECK(moss_field.at(row, x) != moss_field.at(row + 1, x));
    }
  }
  const Grid basket_field = basket(3, 4).repeated_up(2).repeated_across(2).grid;
  for (int row = 1; row + 4 <= basket_field.rows(); ++row) {
    for (int x = 0; x + 3 < basket_field.columns(); ++x) {
      CHECK(basket_field.at(row, x) != basket_field.at(row, x + 3));
      CHECK(basket_field.at(row, x) != basket_field.at(row + 4, x));
    }
  }
}

TEST_CASE("a motif's number below its least is refused by its name", "[motif][error]") {
  CHECK_THROWS_MATCHES(stockinette(0), Error, refused_field(ErrorCode::bad_argument, "columns"));
  CHECK_THROWS_MATCHES(reverse(-1), Error, refused_field(ErrorCode::bad_argument, "columns"));
  CHECK_THROWS_MATCHES(garter(0, 1), Error, refused_field(ErrorCode::bad_argument, "knit_rows"));
  CHECK_THROWS_MATCHES(garter(1, 0), Error, refused_field(ErrorCode::bad_argument, "purl_rows"));
  CHECK_THROWS_MATCHES(garter(1, 1, 0), Error, refused_field(ErrorCode::bad_argument, "columns"));
  CHECK_THROWS_MATCHES(moss(0), Error, refused_field(ErrorCode::bad_argument, "columns"));
  CHECK_THROWS_MATCHES(basket(0, 1), Error, refused_field(ErrorCode::bad_argument, "block_columns"));
  CHECK_THROWS_MATCHES(basket(1, 0), Error, refused_field(ErrorCode::bad_argument, "block_rows"));
  CHECK_THROWS_MATCHES(tuck_rib(0), Error, refused_field(ErrorCode::bad_argument, "height"));
  CHECK_THROWS_MATCHES(ladder(0), Error, refused_field(ErrorCode::bad_argument, "columns"));
  CHECK_THROWS_MATCHES(rope(0, 1, 4, Lean::left), Error, refused_field(ErrorCode::bad_argument, "front"));
  CHECK_THROWS_MATCHES(rope(1, 0, 4, Lean::left), Error, refused_field(ErrorCode::bad_argument, "back"));
  CHECK_THROWS_MATCHES(rope(1, 1, 1, Lean::left), Error, refused_field(ErrorCode::bad_argument, "interval"));
  CHECK_THROWS_MATCHES(rope(1, 1, 4, static_cast<Lean>(2)), Error, refused_field(ErrorCode::bad_argument, "lean"));
  CHECK_THROWS_MATCHES(plait(0, 4), Error, refused_field(ErrorCode::bad_argument, "stitches"));
  CHECK_THROWS_MATCHES(plait(2, 1), Error, refused_field(ErrorCode::bad_argument, "interval"));
  CHECK_THROWS_MATCHES(wave(0, 4), Error, refused_field(ErrorCode::bad_argument, "stitches"));
  CHECK_THROWS_MATCHES(wave(2, 1), Error, refused_field(ErrorCode::bad_argument, "interval"));
}

TEST_CASE("a motif's number past the grid's limits is too large, and nothing wraps round", "[motif][error]") {
  const int huge = std::numeric_limits<int>::max();
  CHECK_THROWS_MATCHES(stockinette(huge), Error, refused_field(ErrorCode::too_large, "columns"));
  CHECK_THROWS_MATCHES(garter(huge, huge), Error, refused_field(ErrorCode::too_large, "knit_rows"));
  CHECK_THROWS_MATCHES(basket(huge, 1), Error, refused_field(ErrorCode::too_large, "block_columns"));
  CHECK_THROWS_MATCHES(basket(1, huge), Error, refused_field(ErrorCode::too_large, "block_rows"));
  CHECK_THROWS_MATCHES(tuck_rib(huge), Error, refused_field(ErrorCode::too_large, "height"));
  CHECK_THROWS_MATCHES(rope(huge, huge, 4, Lean::left), Error, refused_field(ErrorCode::too_large, "front"));
  CHECK_THROWS_MATCHES(rope(1, 1, huge, Lean::left), Error, refused_field(ErrorCode::too_large, "interval"));
  CHECK_THROWS_MATCHES(plait(huge, 4), Error, refused_field(ErrorCode::too_large, "stitches"));
  CHECK_THROWS_MATCHES(wave(1, huge), Error, refused_field(ErrorCode::too_large, "interval"));
}

TEST_CASE("a motif's refusal quotes the number that was asked for, and the greatest that fits", "[motif][error]") {
  CHECK(message_of([] { tuck_rib(65536); }) == "height is 65536; at most 65535");
  CHECK(tuck_rib(65535).grid.rows() == 65536);
  CHECK(message_of([] { plait(21846, 4); }) == "stitches is 21846; at most 21845");
  CHECK(message_of([] { wave(2, 32769); }) == "interval is 32769; at most 32768");
  CHECK(message_of([] { basket(32769, 1); }) == "block_columns is 32769; at most 32768");
  CHECK(message_of([] { rope(65535, 2, 4, Lean::left); }) == "front 65535 and back 2 come to 65537; at most 65536");
  CHECK(message_of([] { garter(2, 65536); }) == "knit_rows 2 and purl_rows 65536 come to 65538; at most 65536");
}

}  // namespace motif_test
