#include <algorithm>
#include <limits>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/instructions.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/simulate.hpp"
#include "soonest_plan.hpp"

namespace simulate_verify_test {

using namespace latchwork;
using latchwork_test::refused;
using latchwork_test::refused_field;
using latchwork_test::soonest_plan;

namespace {

/// Five columns on L3..R2: a rope, a purl and a tuck rib.
const char* const panel =
    "kkkpk\n"
    "kkktk\n"
    "kkkkk\n"
    "x 0 2/1 R\n"
    "kkkpk\n"
    "kkkkk";

/// A stop without work, the carriage beginning on the right.
Stop stop_after(int row) {
  Stop stop;
  stop.row = row;
  stop.carriage_right = row % 2 == 0;
  return stop;
}

/// What verify() says of the fabric of one chart held against another.
Verification held_against(const char* made, const char* wanted) {
  return verify(Grid::from_text(wanted), soonest_plan(Grid::from_text(made), -3));
}

}  // namespace

TEST_CASE("a plan that makes the chart is verified, and its loops are counted", "[verify]") {
  const Verification verification = held_against(panel, panel);
  CHECK(verification.verified);
  CHECK(verification.message == "verified");
  CHECK(verification.difference == Place{});
  CHECK(verification.loops == 25 + 1 + 1);  // every pass knits; one purl and one tuck's closing are drawn again
}

TEST_CASE("a stop at a row that the counter never reads is told, though its work is never done", "[verify]") {
  const Grid grid = Grid::from_text(panel);
  for (const auto& [row, near] : {std::pair{6, 5}, std::pair{-1, 1}, std::pair{99, 5}}) {
    Plan plan = soonest_plan(grid, -3);
    plan.stops.emplace_back().row = row;
    plan.stops.back().carriage_right = plan.carriage_starts_right == (row % 2 == 0);
    const Verification verification = verify(grid, plan);
    CHECK_FALSE(verification.verified);
    CHECK(verification.difference.row == near);
    CHECK(verification.message ==
          "stop after row " + std::to_string(row) + ": the row counter reads 0 to 5, so this stop is never made");
  }
}

// The simulator executes any moves and compares cloth (DOMAIN 6): what hands can do, and changes nothing, is done.
TEST_CASE("needless work makes the same cloth and is verified: a release without a hold, a wale re-formed twice",
          "[verify]") {
  const Grid grid = Grid::from_text(panel);
  Plan plan = soonest_plan(grid, -3);
  for (Stop& stop : plan.stops) {
    stop.releases.push_back(-3);
    const std::vector<Reform> once = stop.reforms;
    stop.reforms.insert(stop.reforms.end(), once.begin(), once.end());
  }
  REQUIRE_FALSE(plan.stops.empty());
  const Verification verification = verify(grid, plan);
  CHECK(verification.verified);
  CHECK(verification.needless == 4);  // two stops, a release and a re-form at each
  REQUIRE(verification.first_needless);
  CHECK(verification.message == "verified; 4 steps are needless, the first: " + verification.first_needless->message);
  CHECK(verification.loops > verify(grid, soonest_plan(grid, -3)).loops);  // drawn once more
}

TEST_CASE("each step that changes nothing is counted, and the first told by its move and place", "[verify]") {
  const Grid grid = Grid::from_text("kkkkk\nkkkkk\nkkpkk\nkktkk\nkkkkk\nkkkkk");  // on L3..R2; column 2 on L1
  const auto [what, count, row, column, message, spoil] =
      GENERATE(
          table<const char*, int, int, int, const char*, void (*)(std::vector<Stop>&)>({
              {"nothing", 0, 0, -1, "", [](std::vector<Stop>&) {}},
              {"a release of a needle at work", 1, 2, 4,
               "RC 2: needle L3 is not in hold, so that bringing it back changes nothing",
               [](std::vector<Stop>& stops) { stops[0].releases = {-3}; }},
              {"a hold for no row", 2, 2, 4,
               "RC 2: needle L3 is in hold for no row, so that putting it there changes nothing",
               [](std::vector<Stop>& stops) {
                 stops[0].holds = {-3};
                 stops.insert(stops.begin() + 1, stop_after(2));
                 stops[1].releases = {-3};
               }},
              {"a hold after the last row", 1, 6, 1,
               "RC 6: needle R1 is in hold for no row, so that putting it there changes nothing",
               [](std::vector<Stop>& stops) {
                 stops.push_back(stop_after(6));
                 stops.back().holds = {1};
               }},
              {"a wale re-formed once more as it is", 1, 4, 2,
               "RC 4: the wale on needle L1 is re-formed as it was, which changes nothing",
               [](std::vector<Stop>& stops) { stops[1].reforms.push_back(Reform(stops[1].reforms[0])); }},
              {"a plain wale re-formed as knit", 1, 4, 0,
               "RC 4: the wale on needle R2 is re-formed as it was, which changes nothing",
               [](std::vector<Stop>& stops) {
                 stops[1].reforms.push_back(
                     {.needle = 2, .column = 0, .wale = 0, .from_row = 3, .rungs = {Cell::knit}});
               }},
              {"the same at two stops, and a release before", 2, 2, 3,
               "RC 2: needle L2 is not in hold, so that bringing it back changes nothing",
               [](std::vector<Stop>& stops) {
                 stops.push_back(stop_after(5));
                 stops[2].reforms = stops[1].reforms;
                 stops[2].reforms[0].rungs.push_back(Cell::knit);
                 stops[0].releases = {-2};
               }},
          }));
  INFO(what);
  Plan plan = latchwork::plan(grid, Machine{});
  plan.leftmost = -3;
  plan.stops.assign(2, {});
  plan.stops[0].row = 2;
  plan.stops[1].row = 4;
  plan.stops[1].reforms = {{.needle = -1, .column = 2, .wale = 2, .from_row = 2, .rungs = {Cell::tuck, Cell::purl}}};
  spoil(plan.stops);
  const Verification verification = verify(grid, plan);
  CHECK(verification.verified);
  CHECK(verification.needless == count);
  CHECK(verification.first_needless.has_value() == (count > 0));
  if (count == 0) {
    CHECK(verification.message == "verified");
    return;
  }
  CHECK(verification.first_needless->message == message);
  CHECK(verification.first_needless->place.row == row);
  CHECK(verification.first_needless->place.column == column);
  const auto move = static_cast<std::size_t>(verification.first_needless->move);
  CHECK(describe(moves(plan).at(move)).find(std::string(message).substr(std::string(message).find("needle "), 9)) == 0);
  CHECK(verification.message.find(message) != std::string::npos);
}

TEST_CASE("a needle held twice over is in hold already; of a needle that is held the hold is needed", "[verify]") {
  const Grid grid = Grid::from_text("kkkkk\nkkkkk\nkktkk\nkktkk\nkkkkk");
  Plan plan = latchwork::plan(grid, Machine{});
  plan.leftmost = -3;
  plan.stops.assign(3, {});
  for (int i = 0; i < 3; ++i) {
    plan.stops[static_cast<std::size_t>(i)].row = i + 1;
    plan.stops[static_cast<std::size_t>(i)].carriage_right = i % 2 == 1;
  }
  plan.stops[0].holds = {-1};
  plan.stops[2].releases = {-1};
  CHECK(verify(grid, plan).message == "verified");
  plan.stops[1].holds = {-1};
  const Verification verification = verify(grid, plan);
  CHECK(verification.verified);
  CHECK(verification.needless == 1);
  REQUIRE(verification.first_needless);
  CHECK(verification.message ==
        "verified; one step is needless: RC 2: needle L1 is in hold already, so that putting it there changes nothing");
  const Strip strip{"own", "own", grid};
  const std::string told = instructions(join_strips("strap", 5, std::vector<Strip>{strip}), plan, Machine{});
  CHECK(told.find("Left out below, for the cloth is the same without: 1 step of the plan. RC 2: needle L1 is in hold "
                  "already, so that putting it there changes nothing.\n") != std::string::npos);
  CHECK(told.find("   2  RC 002 COR  nothing to do.\n") != std::string::npos);
  CHECK(told.find("   3  RC 003 COL  release L1; set the carriage back to knit.\n") != std::string::npos);
}

TEST_CASE("a crossing that puts all back where it was is needless", "[simulate][verify]") {
  const Grid grid = Grid::from_text("kkkk\nkkkk");
  Plan plan = latchwork::plan(grid, Machine{});
  plan.leftmost = 1;
  Stop& stop = plan.stops.emplace_back();
  stop.row = 1;
  stop.carriage_right = false;
  CrossingStep& step = stop.crossings.emplace_back();
  step.crossing = {.row = 1, .column = 1, .left = 1, .right = 1};
  step.returns = {{GroupName::left, 1, 3, 3, {1}}, {GroupName::right, 1, 2, 2, {1}}};
  const Verification verification = verify(grid, plan);
  CHECK_FALSE(verification.verified);  // it is told as a crossing that the chart does not have
  CHECK(verification.needless == 1);
  REQUIRE(verification.first_needless);
  CHECK(verification.first_needless->message ==
        "RC 1: what is lifted from needle R3 on goes back as it was, which changes nothing");
}

TEST_CASE("the first difference is told by row, then column, with what the chart says and the fabric has", "[verify]") {
  const auto [made, wanted, row, column, message] = GENERATE(table<const char*, const char*, int, int, const char*>({
      {"kkk\nkkk", "kkk\nkpk", 1, 1, "row 1, column 1: the chart says purl, the fabric has knit"},
      {"kkp\nkkk", "pkk\nkkk", 2, 0, "row 2, column 0: the chart says purl, the fabric has knit"},
      {"kpk\nkkk", "kkk\nkpk", 1, 1, "row 1, column 1: the chart says purl, the fabric has knit"},
      {"kkk\nktk\nkkk", "kkk\nksk\nkkk", 2, 1, "row 2, column 1: the chart says slip, the fabric has tuck"},
      {"kkk\nkkk", ".kk\nkkk", 2, 0, "row 2, column 0: the chart says no stitch, the fabric has knit"},
      {".kk\nkkk", "kkk\nkkk", 2, 0, "row 2, column 0: the chart says knit, the fabric has no stitch"},
      {"kkk\nx 0 1/1 R\nkkk", "kkk\nx 0 1/1 L\nkkk", 1, 0,
       "after row 1, column 0: the chart says 1/1 LC, the fabric has 1/1 RC"},
      {"kkk\nkkk", "kkk\nx 1 1/1 L\nkkk", 1, 1,
       "after row 1, column 1: the chart says 1/1 LC, the fabric has no crossing"},
      {"kkk\nx 1 1/1 L\nkkk", "kkk\nkkk", 1, 1,
       "after row 1, column 1: the chart says no crossing, the fabric has 1/1 LC"},
      {"kkk\nx 1 1/1 L\nkkk", "kkk\nx 0 1/1 L\nkkk", 1, 0,
       "after row 1, column 0: the chart says 1/1 LC, the fabric has no crossing"},
      {"kkk\nx 0 1/1/1 L front\nkkk", "kkk\nx 0 1/1/1 L behind\nkkk", 1, 0,
       "after row 1, column 0: the chart says 1/1/1 LC, centre behind, the fabric has 1/1/1 LC, centre front"},
      // A crossing after a row comes after the row's cells to its left, and before what lies higher or to its right.
      {"kkk\nkkk", "kkp\nx 1 1/1 L\nkkk", 1, 1,
       "after row 1, column 1: the chart says 1/1 LC, the fabric has no crossing"},
      {"kkk\nkkk", "kkk\nx 1 1/1 L\npkk", 1, 0, "row 1, column 0: the chart says purl, the fabric has knit"},
      {"kkk\nkkk", "kkk\nx 0 1/1 L\nkkp", 1, 0,
       "after row 1, column 0: the chart says 1/1 LC, the fabric has no crossing"},
  }));
  CAPTURE(made, wanted);
  const Verification verification = held_against(made, wanted);
  CHECK_FALSE(verification.verified);
  CHECK(verification.difference.row == row);
  CHECK(verification.difference.column == column);
  CHECK(verification.message == message);
}

TEST_CASE("what no cell describes is the difference, where it comes first", "[verify]") {
  const Grid grid = Grid::from_text("kkk\nkpk\nkkk");
  Plan plan = soonest_plan(grid, 1);
  plan.stops[0].reforms[0].rungs.clear();
  const Verification verification = verify(grid, plan);
  CHECK_FALSE(verification.verified);
  CHECK(verification.difference.row == 2);
  CHECK(verification.difference.column == 1);
  CHECK(verification.message ==
        "row 2, column 1: its strand was left out of the wale that goes on above it; no cell describes that");
}

TEST_CASE("a step that hands could not do is the difference, with its place", "[verify]") {
  const Grid grid = Grid::from_text("kkk\nkpk\nkkk");
  Plan plan = soonest_plan(grid, 1);
  plan.stops[0].reforms[0].needle = 4;
  const Verification verification = verify(grid, plan);
  CHECK_FALSE(verification.verified);
  REQUIRE(verification.fault);
  CHECK(verification.fault->place.row == 2);
  CHECK(verification.fault->message == "RC 2: needle R4 is not among the panel's needles R1 to R3");
  CHECK(moves(plan).at(static_cast<std::size_t>(verification.fault->move)).kind == MoveKind::tool_into);
  CHECK(verification.difference.row == 2);
  CHECK(verification.difference.column == 1);
  CHECK(verification.wale == 1);
  CHECK(verification.expected == "purl");
  CHECK(verification.found == "knit");
  CHECK(
      verification.message ==
      "row 2, column 1: the chart says purl, the fabric has knit; left undone, for hands cannot do it: RC 2: needle R4 "
      "is not among the panel's needles R1 to R3");
}

// simulate.hpp, verify(): what can be done of a plan is done, the rest is left undone.
TEST_CASE("a move that cannot be made hides no difference: the first place of the cloth is told beside it",
          "[verify]") {
  // Purls in rows 2 and 5, a rope after row 6, on R1 to R5.
  const Grid grid = Grid::from_text("kkkkk\nkkkkk\nx 0 1/1 R\nkkkkk\nkkkpk\nkkkkk\nkkkkk\nkkkpk\nkkkkk");
  const Plan sound = soonest_plan(grid, 1);
  REQUIRE(verify(grid, sound).verified);
  REQUIRE(sound.stops.size() == 3);
  Plan spoiled = sound;
  const auto found_at = [&](int row, int column, const char* expected, const char* found, int faulty_row) {
    const Verification verification = verify(grid, spoiled);
    INFO(verification.message);
    CHECK_FALSE(verification.verified);
    CHECK(verification.difference.row == row);
    CHECK(verification.difference.column == column);
    CHECK(verification.expected == expected);
    CHECK(verification.found == found);
    REQUIRE(verification.fault);
    CHECK(verification.fault->place.row == faulty_row);
  };
  SECTION("an earlier stop is left out, and a later one cannot be done") {
    spoiled.stops[2].crossings[0].returns[0].to_needle = 9;
    spoiled.stops.erase(spoiled.stops.begin());
    found_at(2, 3, "purl", "knit", 6);
  }
  SECTION("from one row up: the rungs come a row higher, and the topmost does not hang there") {
    ++spoiled.stops[0].reforms[0].from_row;
    found_at(2, 3, "purl", "knit", 2);
  }
  SECTION("a stop a row early") {
    --spoiled.stops[0].row;
    spoiled.stops[0].carriage_right = !spoiled.stops[0].carriage_right;
    found_at(2, 3, "purl", "knit", 1);
  }
  SECTION("a batch from a loop that is none is not begun, and no rung of it worked") {
    spoiled.stops[1].reforms[0].from_row = -1;
    found_at(5, 3, "purl", "knit", 1);
  }
  SECTION("of a crossing of which one group has nowhere to go nothing is done") {
    spoiled.stops[2].crossings[0].returns[1].to_needle = 9;
    found_at(6, 0, "1/1 RC", "no crossing", 6);
  }
  SECTION("and the same where a stitch cannot be lifted") {
    spoiled.stops[2].crossings[0].returns[1].from_needle = 6;
    found_at(6, 0, "1/1 RC", "no crossing", 6);
  }
}

TEST_CASE("what cannot be done and is not needed leaves the chart's cloth, and yet the plan is not verified",
          "[verify]") {
  const Grid grid = Grid::from_text("kkk\nkkk\nkpk\nkkk");
  Plan plan = soonest_plan(grid, 1);
  REQUIRE(verify(grid, plan).verified);
  SECTION("a rung above the counter's row") {
    plan.stops[0].reforms[0].rungs.push_back(Cell::knit);
  }
  SECTION("a needle beside the panel is held") {
    plan.stops[0].holds.push_back(4);
  }
  SECTION("a needle is cast on that has a stitch") {
    plan.columns_on.push_back(1);
  }
  const Verification verification = verify(grid, plan);
  CHECK_FALSE(verification.verified);
  REQUIRE(verification.fault);
  CHECK(verification.difference == verification.fault->place);
  CHECK(verification.expected.empty());
  CHECK(verification.found.empty());
  CHECK(verification.wale == -1);
  CHECK(verification.message ==
        "hands cannot do this, though without it the fabric is the chart's: " + verification.fault->message);
}

TEST_CASE("a needle in hold without a stitch goes back before the carriage comes", "[verify]") {
  const Grid grid = Grid::from_text("k.k\nk.k\nk.k");
  Plan plan = soonest_plan(grid, 1);
  Stop& stop = plan.stops.emplace_back();
  stop.row = 1;
  stop.carriage_right = !plan.carriage_starts_right;
  stop.holds = {3};
  CrossingStep& step = plan.stops.emplace_back(stop).crossings.emplace_back();
  plan.stops.back().holds.clear();
  step.crossing = {.row = 1, .column = 0, .left = 1, .right = 1, .lean = Lean::right};
  step.returns = {{GroupName::left, 1, 3, 2, {1}}};
  const Verification verification = verify(grid, plan);
  REQUIRE(verification.fault);
  CHECK(verification.fault->message == "RC 2: needle R3 is in hold with no stitch; the strand would lie in its hook");
  CHECK(verification.difference.row == 1);  // the stitch moved over a bare needle
  CHECK(verification.difference.column == 0);
  CHECK(verification.expected == "no crossing");
  CHECK(verification.found == "a passing that no crossing describes");
}

TEST_CASE("where a bare centre lies cannot be told, so it is not compared", "[verify]") {
  const auto chart = [](const char* place) {
    return Grid::from_text(std::string("k.k\nx 0 1/1/1 R ") + place + "\nk.k");
  };
  for (const char* made : {"front", "between", "behind"}) {
    for (const char* wanted : {"front", "between", "behind"}) {
      CHECK(verify(chart(wanted), soonest_plan(chart(made), 1)).verified);
    }
  }
}

TEST_CASE("what cannot be told is not compared: tucks by hold, knits by hand, stops in another order", "[verify]") {
  const Grid grid = Grid::from_text("kkkkk\nktkkk\nktkkk\nkkkpk\nkkkkk");
  CHECK(verify(grid, soonest_plan(grid, -3, false)).verified);
  CHECK(verify(grid, soonest_plan(grid, -3, true)).verified);
  CHECK(soonest_plan(grid, -3, false).stops != soonest_plan(grid, -3, true).stops);

  Plan by_hand = soonest_plan(grid, -3);  // row 1 of column 0 and the purl of column 3, all at the end
  by_hand.stops.erase(by_hand.stops.begin());
  by_hand.stops.push_back(by_hand.stops.back());
  by_hand.stops.back().reforms = {
      {.needle = 2,
       .column = 0,
       .wale = 0,
       .from_row = 0,
       .rungs = {Cell::knit, Cell::knit, Cell::knit, Cell::knit, Cell::knit}},
      {.needle = -2, .column = 3, .wale = 3, .from_row = 1, .rungs = {Cell::purl, Cell::knit, Cell::knit, Cell::knit}}};
  const Verification verification = verify(grid, by_hand);
  INFO(verification.message);
  CHECK(verification.verified);
}

TEST_CASE("a plan of another size, or on a needle 0, is refused", "[verify][error]") {
  const Grid grid = Grid::from_text("kkk\nkkk");
  Plan plan = soonest_plan(grid, 1);
  plan.rows = 3;
  CHECK_THROWS_MATCHES(verify(grid, plan), Error, refused_field(ErrorCode::size_mismatch, "plan"));
  plan = soonest_plan(grid, 1);
  plan.columns = 2;
  CHECK_THROWS_MATCHES(verify(grid, plan), Error, refused_field(ErrorCode::size_mismatch, "plan"));
  plan = soonest_plan(grid, 1);
  plan.leftmost = 0;
  CHECK_THROWS_MATCHES(verify(grid, plan), Error, refused_field(ErrorCode::bad_argument, "leftmost"));
}

TEST_CASE("verification can be stopped and tells its progress", "[verify][error]") {
  const Grid grid(40, 40);
  const Plan plan = soonest_plan(grid, 1);
  std::stop_source source;
  WatchOptions options;
  options.stop = source.get_token();
  double share = 0;
  options.progress = [&](const Progress& progress) { share = progress.share; };
  CHECK(verify(grid, plan, options).verified);
  CHECK(share == 1.0);
  source.request_stop();
  CHECK_THROWS_MATCHES(verify(grid, plan, options), Error, refused(ErrorCode::cancelled));
}

TEST_CASE("a plan that makes the right cloth and tells something else is not verified", "[verify]") {
  const Grid grid = Grid::from_text(panel);
  const Plan sound = soonest_plan(grid, -3);
  REQUIRE(verify(grid, sound).verified);
  const auto crossed =
      std::find_if(sound.stops.begin(), sound.stops.end(), [](const Stop& stop) { return !stop.crossings.empty(); });
  REQUIRE(crossed != sound.stops.end());
  const auto at = static_cast<std::size_t>(crossed - sound.stops.begin());

  Plan spoiled = sound;
  SECTION("the carriage on the other side") {
    spoiled.stops[at].carriage_right = !spoiled.stops[at].carriage_right;
  }
  SECTION("a crossing called by the other lean") {
    spoiled.stops[at].crossings[0].crossing.lean = Lean::left;
  }
  SECTION("a crossing said to be after another row") {
    spoiled.stops[at].crossings[0].crossing.row += 1;
  }
  SECTION("more stitches lifted than the group has") {
    spoiled.stops[at].crossings[0].returns[0].stitches += 1;
  }
  SECTION("far more stitches lifted than the bed has") {
    spoiled.stops[at].crossings[0].returns[0].stitches = 1'000'000'000;
  }
  SECTION("tools that do not carry their stitches") {
    spoiled.stops[at].crossings[0].returns[0].prongs = {spoiled.stops[at].crossings[0].returns[0].stitches - 1};
  }
  SECTION("tools that are none") {
    spoiled.stops[at].crossings[0].returns[0].prongs = {99, -3};
    CHECK(verify(grid, spoiled).message.find("on a tool of 99 prongs; a tool has 1 to 20") != std::string::npos);
  }
  SECTION("a tool without a prong among those that carry their stitches") {
    auto& prongs = spoiled.stops[at].crossings[0].returns[0].prongs;
    prongs.insert(prongs.begin(), 0);
    CHECK(verify(grid, spoiled).message.find("on a tool of 0 prongs; a tool has 1 to 20") != std::string::npos);
  }
  const Verification verification = verify(grid, spoiled);
  CHECK_FALSE(verification.verified);
  CHECK(verification.difference.row == sound.stops[at].row);
  CHECK(verification.message != "verified");
}

TEST_CASE("a plan that is none is not verified, though the cloth wants no hand work", "[verify]") {
  Machine machine;
  machine.needles = 20;
  const Grid grid(1, 300);
  const Plan none = plan(grid, machine);
  REQUIRE(none.status == PlanStatus::infeasible);
  const Verification verification = verify(grid, none);
  CHECK_FALSE(verification.verified);
  CHECK(verification.message == "there is no plan");
  CHECK(verification.loops == 0);
}

TEST_CASE("a column or wale that is not its needle's is told", "[verify]") {
  const Grid grid = Grid::from_text(panel);
  const Plan sound = soonest_plan(grid, -3);
  const auto reformed =
      std::find_if(sound.stops.begin(), sound.stops.end(), [](const Stop& stop) { return !stop.reforms.empty(); });
  REQUIRE(reformed != sound.stops.end());
  const auto at = static_cast<std::size_t>(reformed - sound.stops.begin());
  const Reform told = reformed->reforms[0];
  Plan spoiled = sound;
  Reform& reform = spoiled.stops[at].reforms[0];
  SECTION("another column") {
    reform.column += told.column > 0 ? -1 : 1;
  }
  SECTION("a column off the panel") {
    reform.column = std::numeric_limits<int>::max();
  }
  SECTION("another wale") {
    reform.wale += 1;
  }
  SECTION("no wale at all") {
    reform.wale = -1;
  }
  const Verification verification = verify(grid, spoiled);
  CHECK_FALSE(verification.verified);
  CHECK(verification.difference.row == sound.stops[at].row);
  CHECK(verification.message.find(reform.wale == told.wale ? "names column" : "names wale") != std::string::npos);
}

TEST_CASE("a re-form that tells more rungs than its ladder has is told, though nothing is done with them", "[verify]") {
  const Grid grid = Grid::from_text(panel);
  Plan spoiled = soonest_plan(grid, -3);
  REQUIRE(verify(grid, spoiled).verified);
  const auto stop =
      std::find_if(spoiled.stops.begin(), spoiled.stops.end(), [](const Stop& one) { return !one.reforms.empty(); });
  REQUIRE(stop != spoiled.stops.end());
  const std::size_t depth = stop->reforms[0].rungs.size();
  stop->reforms[0].rungs.push_back(Cell::none);
  const Verification verification = verify(grid, spoiled);
  CHECK_FALSE(verification.verified);
  CHECK(verification.difference.row == stop->row);
  CHECK(verification.difference.column == stop->reforms[0].column);
  CHECK(verification.message.find(std::to_string(depth) + " rung") != std::string::npos);
  CHECK(verification.message.find("not " + std::to_string(depth + 1)) != std::string::npos);
}

TEST_CASE("a shaping whose column is not its needle's is told", "[verify]") {
  const Grid grid = Grid::from_text(".kkkk\nkkkkk\nkkkkk");
  const Plan sound = plan(grid, Machine{});
  REQUIRE(verify(grid, sound).verified);
  REQUIRE(sound.stops.size() == 1);
  REQUIRE(sound.stops[0].shapings.size() == 1);
  Plan spoiled = sound;
  spoiled.stops[0].shapings[0].column = 2;
  CHECK_FALSE(verify(grid, spoiled).verified);
  CHECK(verify(grid, spoiled).message.find("the shaping of needle") != std::string::npos);
}

TEST_CASE("a centre that stays on its needles is held to them, though it moves nothing", "[verify]") {
  Grid grid(4, 7);
  grid.cross({.row = 2, .column = 1, .left = 2, .centre = 1, .right = 2, .lean = Lean::left, .place = Centre::front});
  const Plan sound = plan(grid, Machine{});
  REQUIRE(verify(grid, sound).verified);
  Plan spoiled = sound;
  auto& returns = spoiled.stops.at(0).crossings.at(0).returns;
  const auto centre = std::find_if(returns.begin(), returns.end(),
                                   [](const GroupReturn& group) { return group.group == GroupName::centre; });
  REQUIRE(centre != returns.end());
  REQUIRE(centre->prongs.empty());
  SECTION("other needles") {
    centre->from_needle = 9;
  }
  SECTION("put elsewhere") {
    centre->to_needle = std::numeric_limits<int>::max();
  }
  SECTION("more stitches") {
    centre->stitches = 77;
  }
  SECTION("called another group") {
    centre->group = GroupName::left;
  }
  SECTION("missing") {
    returns.erase(centre);
    INFO(verify(grid, spoiled).message);
    CHECK(verify(grid, spoiled).message.find("puts its centre group back, and the plan does not") != std::string::npos);
  }
  SECTION("given twice") {
    returns.push_back(GroupReturn(*centre));
    CHECK(verify(grid, spoiled).message.find("puts its centre group back once, not 2 times") != std::string::npos);
  }
  SECTION("given after the groups that it lies before") {
    std::rotate(centre, centre + 1, returns.end());
    CHECK(verify(grid, spoiled).message.find("what is put back first shows in front") != std::string::npos);
  }
  const Verification verification = verify(grid, spoiled);
  CHECK_FALSE(verification.verified);
  CHECK(verification.difference.row == 2);
}

TEST_CASE("a crossing about a bare centre is verified with two returns", "[verify]") {
  const Grid grid = Grid::from_text("k.k\nx 0 1/1/1 R between\nk.k");
  const Plan sound = plan(grid, Machine{});
  REQUIRE(verify(grid, sound).verified);
  CHECK(sound.stops.at(0).crossings.at(0).returns.size() == 2);
}

TEST_CASE("needles cast on at a stop after row 0 instead of at the start make the cloth, and are told", "[verify]") {
  const Grid grid = Grid::from_text("kkk\nkkk");
  Plan plan = soonest_plan(grid, 1);
  plan.columns_on.pop_back();
  Stop& stop = plan.stops.emplace_back();
  stop.carriage_right = plan.carriage_starts_right;
  stop.shapings = {{.needle = 1, .column = 2, .on = true}};
  const Verification verification = verify(grid, plan);
  CHECK_FALSE(verification.verified);
  CHECK(verification.expected.empty());
  CHECK(verification.message == "the plan does not cast on column 2, where the chart has a stitch in row 1");
  CHECK(verification.difference.row == 1);
  CHECK(verification.difference.column == 2);
}

TEST_CASE("needles that the next row cannot knit back from hold are told", "[verify]") {
  // A crossing after row 2, and a tuck by hold in row 3, when one setting of the carriage serves the whole bed.
  const Grid grid = Grid::from_text("kkkkkkkkkkkkk\nkkkkkkkkkktkk\nx 2 2/2 L\nkkkkkkkkkkkkk\nkkkkkkkkkkkkk");
  Plan plan = latchwork::plan(grid, Machine{});
  REQUIRE(verify(grid, plan).verified);
  REQUIRE(plan.stops.size() == 2);
  REQUIRE(plan.stops[0].holds.size() == 1);
  REQUIRE(plan.stops[0].crossings.size() == 1);
  CHECK_FALSE(plan.stops[0].crossings[0].ease);
  plan.stops[0].crossings[0].ease = true;
  const Verification told = verify(grid, plan);
  CHECK_FALSE(told.verified);
  CHECK(told.difference.row == 2);
  CHECK(told.difference.column == 2);
  CHECK(told.message.find("knit the needles of the 2/2 LC at column 2 back from hold") != std::string::npos);
  const Strip strip{"own", "own", grid};
  CHECK_THROWS_MATCHES(instructions(join_strips("strap", 4, std::vector<Strip>{strip}), plan, Machine{}), Error,
                       latchwork_test::refused(ErrorCode::bad_argument, Place{2, 2, 0, "stops[0].crossings[0].ease"}));
  // Words count needles: one named twice would never be released.
  plan.stops[0].crossings[0].ease = false;
  plan.stops[0].holds.push_back(plan.stops[0].holds[0]);
  CHECK_THROWS_MATCHES(instructions(join_strips("strap", 4, std::vector<Strip>{strip}), plan, Machine{}), Error,
                       latchwork_test::refused(ErrorCode::bad_argument, Place{2, 10, 0, "stops[0].holds[1]"}));
}

}  // namespace simulate_verify_test
