// A plan is plain data: whoever made it may have put any number anywhere. What is made of it is an answer or an Error
// with the place, never a sum that passes its number.
#include <functional>
#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/certificate.hpp"
#include "latchwork/chart.hpp"
#include "latchwork/instructions.hpp"

namespace odd_plan_test {

using namespace latchwork;

namespace {

constexpr int least = std::numeric_limits<int>::min();
constexpr int most = std::numeric_limits<int>::max();

/// Eight rows, ten stitches on L5..R5: purls in rows 1 to 4 of column 1, on R4, and a 2/1/2 left cross, its centre in
/// front, on columns 4 to 8, needles L4 to R1, after row 4; column 0, on R5, ends after row 6.
Panel sample() {
  Grid grid(8, 10);
  for (int row = 1; row <= 4; ++row) grid.set(row, 1, Cell::purl);
  grid.cross({.row = 4, .column = 4, .left = 2, .centre = 1, .right = 2, .lean = Lean::left, .place = Centre::front});
  for (const int row : {7, 8}) grid.set(row, 0, Cell::none);
  return {"Sample", Strip{"sample", "sample", grid}};
}

Plan sound_plan() {
  return plan(sample().grid(), Machine{});
}

Plan regular_plan() {
  return latchwork::plan_regular(sample().grid(), Machine{});
}

void lose(Plan& plan, GroupName group) {
  std::erase_if(plan.stops[0].crossings[0].returns, [group](const GroupReturn& back) { return back.group == group; });
}

struct Spoiling {
  int row = 0;
  int column = -1;
  std::string field;
  std::string told;  ///< in the message
  std::function<void(Plan&)> spoil;
};

/// Numbers that no words can tell, each at its place. Stop 0 is after row 4, stop 1 after row 6.
std::vector<Spoiling> spoilings() {
  return {
      {0, -1, "leftmost", "0", [](Plan& p) { p.leftmost = 0; }},
      {0, -1, "leftmost", "R2147483640", [](Plan& p) { p.leftmost = most - 7; }},
      {0, -1, "columns_on[2]", "10", [](Plan& p) { p.columns_on[2] = 10; }},
      {0, -1, "columns_on[2]", "-1", [](Plan& p) { p.columns_on[2] = -1; }},
      {0, -1, "rhythm.every", "0",
       [](Plan& p) {
         p.rhythm = Rhythm{0, 1};
       }},
      {0, -1, "rhythm.first", "-2147483648",
       [](Plan& p) {
         p.rhythm = Rhythm{1, least};
       }},
      {least, -1, "stops[0].row", "0 to 8", [](Plan& p) { p.stops[0].row = least; }},
      {9, -1, "stops[1].row", "0 to 8", [](Plan& p) { p.stops[1].row = 9; }},
      {4, -1, "stops[1].row", "rising", [](Plan& p) { p.stops[1].row = 4; }},
      {4, -1, "stops[0].effort_ms", "-1 ms", [](Plan& p) { p.stops[0].effort_ms = -1; }},
      {4, -1, "stops[0].releases[1]", "R6",
       [](Plan& p) {
         p.stops[0].releases = {1, 6};
       }},
      {4, -1, "stops[0].holds[0]", "0, which is none", [](Plan& p) { p.stops[0].holds = {0}; }},
      {4, -1, "stops[0].reforms[0].needle", "L2147483648 is not among the panel's, L5-R5",
       [](Plan& p) { p.stops[0].reforms[0].needle = least; }},
      {4, 1, "stops[0].reforms[0].from_row", "0 to 3", [](Plan& p) { p.stops[0].reforms[0].from_row = least; }},
      {4, 1, "stops[0].reforms[0].from_row", "0 to 3", [](Plan& p) { p.stops[0].reforms[0].from_row = 4; }},
      {4, 1, "stops[0].reforms[0].from_row", "0 to 3", [](Plan& p) { p.stops[0].reforms[0].from_row = most; }},
      {0, 1, "stops[0].reforms[0].from_row", "nothing is knitted yet", [](Plan& p) { p.stops[0].row = 0; }},
      {4, 1, "stops[0].reforms[0].rungs", "has 4 rungs to re-form, not 5",
       [](Plan& p) { p.stops[0].reforms[0].rungs.push_back(Cell::purl); }},
      {4, 1, "stops[0].reforms[0].rungs", "has 4 rungs to re-form, not 0",
       [](Plan& p) { p.stops[0].reforms[0].rungs.clear(); }},
      {4, 1, "stops[0].reforms[0].rungs[2]", "needle R4: rung 3 is 77",
       [](Plan& p) { p.stops[0].reforms[0].rungs[2] = static_cast<Cell>(77); }},
      {4, 1, "stops[0].reforms[0].rungs[0]", "rung 1 is 4",
       [](Plan& p) { p.stops[0].reforms[0].rungs[0] = Cell::none; }},
      {4, -1, "stops[0].crossings[0].crossing.left", "0 stitches",
       [](Plan& p) { p.stops[0].crossings[0].crossing.left = 0; }},
      {4, -1, "stops[0].crossings[0].crossing.centre", "-1 stitches",
       [](Plan& p) { p.stops[0].crossings[0].crossing.centre = -1; }},
      {4, -1, "stops[0].crossings[0].crossing.right", "2147483647 stitches",
       [](Plan& p) { p.stops[0].crossings[0].crossing.right = most; }},
      {4, -1, "stops[0].crossings[0].crossing.column", "column 6",
       [](Plan& p) { p.stops[0].crossings[0].crossing.column = 6; }},
      {4, -1, "stops[0].crossings[0].crossing.column", "column -2147483648",
       [](Plan& p) { p.stops[0].crossings[0].crossing.column = least; }},
      {4, 4, "stops[0].crossings[0].crossing.lean", "not 9",
       [](Plan& p) { p.stops[0].crossings[0].crossing.lean = static_cast<Lean>(9); }},
      {4, 4, "stops[0].crossings[0].crossing.place", "not 9",
       [](Plan& p) { p.stops[0].crossings[0].crossing.place = static_cast<Centre>(9); }},
      {4, 4, "stops[0].crossings[0].returns[1].stitches", "not 0 stitches",
       [](Plan& p) { p.stops[0].crossings[0].returns[1].stitches = 0; }},
      {4, 4, "stops[0].crossings[0].returns[1].stitches", "not 2147483647 stitches",
       [](Plan& p) { p.stops[0].crossings[0].returns[1].stitches = most; }},
      {4, 4, "stops[0].crossings[0].returns[1].from_needle", ", not L2147483648",
       [](Plan& p) { p.stops[0].crossings[0].returns[1].from_needle = least; }},
      {4, 4, "stops[0].crossings[0].returns[1].to_needle", ", not R1",
       [](Plan& p) { p.stops[0].crossings[0].returns[1].to_needle = 1; }},
      {4, 4, "stops[0].crossings[0].returns[1].prongs[0]", "-3 prongs",
       [](Plan& p) { p.stops[0].crossings[0].returns[1].prongs = {-3}; }},
      {4, 4, "stops[0].crossings[0].returns[1].prongs", "prong",
       [](Plan& p) { p.stops[0].crossings[0].returns[1].prongs = {1}; }},
      {4, 4, "stops[0].crossings[0].returns[1].prongs", "needs a tool",
       [](Plan& p) { p.stops[0].crossings[0].returns[1].prongs.clear(); }},
      {4, 4, "stops[0].crossings[0].returns", "puts its left group back, and the plan does not",
       [](Plan& p) { lose(p, GroupName::left); }},
      {4, 4, "stops[0].crossings[0].returns", "puts its centre group back, and the plan does not",
       [](Plan& p) { lose(p, GroupName::centre); }},
      {4, 4, "stops[0].crossings[0].returns", "puts its centre group back once, not 2 times",
       [](Plan& p) {
         std::vector<GroupReturn>& returns = p.stops[0].crossings[0].returns;
         for (const GroupReturn& group : std::vector<GroupReturn>(returns)) {
           if (group.group == GroupName::centre) returns.push_back(group);
         }
       }},
      {4, 4, "stops[0].crossings[1].crossing.column", "the stitch of column 4 is crossed twice",
       [](Plan& p) { p.stops[0].crossings.push_back(CrossingStep(p.stops[0].crossings[0])); }},
      {4, 1, "stops[0].reforms[1].needle", "needle R4 is re-formed twice",
       [](Plan& p) { p.stops[0].reforms.push_back(Reform(p.stops[0].reforms[0])); }},
      {0, 1, "columns_on", "does not cast on column 1", [](Plan& p) { std::erase(p.columns_on, 1); }},
      {0, 1, "columns_on[10]", "column 1; it does so twice", [](Plan& p) { p.columns_on.push_back(1); }},
      {4, 4, "stops[0].crossings[0].crossing.row", "told to be after row 5",
       [](Plan& p) { p.stops[0].crossings[0].crossing.row = 5; }},
      {4, -1, "stops[0].carriage_right", "told to be on the left", [](Plan& p) { p.stops[0].carriage_right = false; }},
      {0, -1, "stops[0].carriage_right", "told to be on the left",
       [](Plan& p) {
         Stop first;
         first.carriage_right = false;
         p.stops.insert(p.stops.begin(), first);
       }},
      {4, 1, "stops[0].reforms[0].column", "not 0", [](Plan& p) { p.stops[0].reforms[0].column = 0; }},
      {4, 1, "stops[0].reforms[0].wale", "not 0", [](Plan& p) { p.stops[0].reforms[0].wale = 0; }},
      {6, 0, "stops[1].shapings[0].column", "not 1", [](Plan& p) { p.stops[1].shapings[0].column = 1; }},
      {6, -1, "stops[1].shapings[0].needle", "R2147483647", [](Plan& p) { p.stops[1].shapings[0].needle = most; }},
  };
}

}  // namespace

TEST_CASE("instructions refuse numbers that no words can tell, and name the place", "[instructions][error]") {
  const Plan sound = sound_plan();
  REQUIRE(sound.stops.size() == 2);
  REQUIRE(sound.stops[0].reforms.size() == 1);
  REQUIRE(sound.stops[0].crossings.size() == 1);
  REQUIRE(sound.stops[0].crossings[0].returns.size() == 3);
  REQUIRE(sound.stops[1].shapings.size() == 1);
  CHECK_NOTHROW(instructions(sample(), sound, Machine{}));
  CHECK_NOTHROW(instructions(sample(), regular_plan(), Machine{}));
  for (const Spoiling& spoiling : spoilings()) {
    INFO(spoiling.field << ": " << spoiling.told);
    Plan plan = sound;
    spoiling.spoil(plan);
    try {
      instructions(sample(), plan, Machine{});
      FAIL_CHECK("it was taken");
    } catch (const Error& error) {
      INFO(error.what());
      CHECK(error.code() == ErrorCode::bad_argument);
      CHECK(error.place().row == spoiling.row);
      CHECK(error.place().column == spoiling.column);
      CHECK(error.place().field == spoiling.field);
      CHECK(std::string(error.what()).find(spoiling.told) != std::string::npos);
      CHECK(std::string(error.what()).size() < 192);  // all of it reaches C
    }
  }
}

// What verify() tells as the plan's fault, by the same hands.
TEST_CASE("instructions refuse what hands cannot do, and name the step", "[instructions][error]") {
  const Grid grid = Grid::from_text("kkkkk\nkkkkk\nkkpkk\nkktkk\nkkkkk");  // on L3..R2; column 2 on L1
  Plan plan = latchwork::plan(grid, Machine{});
  plan.stops.assign(3, {});
  for (int row = 1; row <= 3; ++row) {
    Stop& stop = plan.stops[static_cast<std::size_t>(row) - 1];
    stop.row = row;
    stop.carriage_right = row % 2 == 0;
  }
  plan.stops[0].holds = {-1};
  plan.stops[1].releases = {-1};
  plan.stops[2].reforms = {{.needle = -1, .column = 2, .wale = 2, .from_row = 2, .rungs = {Cell::purl}}};
  std::string field = "stops[2].reforms[0]";
  int row = 3;
  int column = 2;
  std::string told = "no loop of row 2: that row's strand is held";
  SECTION("a batch starts on a row that was held as a tuck") {}
  SECTION("a needle without a stitch is held") {
    plan.stops[0].shapings = {{.needle = 1, .column = 1, .on = false}};
    plan.stops[1].holds = {1};
    field = "stops[1].holds[0]";
    row = 2;
    column = 1;
    told = "needle R1 has no stitch";
  }
  const Verification verification = verify(grid, plan);
  REQUIRE(verification.fault);
  try {
    instructions(Panel("Stack", Strip{"stack", "stack", grid}), plan, Machine{});
    FAIL("it was taken");
  } catch (const Error& error) {
    INFO(error.what());
    CHECK(error.code() == ErrorCode::bad_argument);
    CHECK(error.place().field == field);
    CHECK(error.place().row == row);
    CHECK(error.place().column == column);
    CHECK(std::string(error.what()).find("hands cannot do this: " + verification.fault->message) != std::string::npos);
    CHECK(std::string(error.what()).find(told) != std::string::npos);
  }
}

TEST_CASE("of an infeasible plan the stops are not told, and so not looked at", "[instructions]") {
  Plan plan = sound_plan();
  plan.status = PlanStatus::infeasible;
  plan.stops[0].row = least;
  CHECK_NOTHROW(instructions(sample(), plan, Machine{}));
  plan.leftmost = 0;
  CHECK_NOTHROW(instructions(sample(), plan, Machine{}));
}

TEST_CASE("times past every number stay there, and ask for rest", "[instructions]") {
  Plan plan = sound_plan();
  for (Stop& stop : plan.stops) stop.effort_ms = std::numeric_limits<std::int64_t>::max();
  const std::string text = instructions(sample(), plan, Machine{});
  // 9 223 372 036 854 775.807 s
  CHECK(text.find("About 2562047788015 h 13 min of hand work: rest your hands") != std::string::npos);
}

TEST_CASE("a summary refuses a bound that is none, down to the least number", "[brief][error]") {
  const Brief brief = read_brief(std::string(LATCHWORK_EXAMPLES_DIR) + "/briefs/sampler");
  Job job = run(brief);
  job.plan.bound_ms = std::numeric_limits<std::int64_t>::min();
  CHECK_THROWS_MATCHES(summary(brief, job), Error,
                       latchwork_test::refused_field(ErrorCode::bad_argument, "job.plan.bound_ms"));
}

TEST_CASE("hand work of groups of any size is counted without passing a number", "[plan]") {
  Plan plan;
  plan.rows = least;
  plan.stops.resize(1);
  plan.stops[0].crossings.resize(1);
  auto& returns = plan.stops[0].crossings[0].returns;
  for (const int stitches : {most, most, -7}) returns.push_back({GroupName::left, stitches, 1, 1, {2}});
  const Effort effort{.stop = 1, .crossing = 2, .crossing_stitch = 3'600'000};
  const HandWork work = hand_work(plan, effort);
  CHECK(work.stitches_crossed == most);
  CHECK(work.hand_ms == 3 + std::int64_t{most} * 3'600'000);
  CHECK(work.carriage_ms == 0);
  returns.resize(1);
  returns[0].stitches = 5;
  CHECK(hand_work(plan, effort).stitches_crossed == 5);
}

TEST_CASE("a chart tells needles however far out they stand, and refuses those that have no number", "[chart]") {
  Plan plan = sound_plan();
  plan.leftmost = least;
  const ChartOptions options{.side = Side::operator_view, .plan = &plan};
  CHECK(chart_svg(sample(), options).find(">L2147483640</text>") != std::string::npos);
  plan.leftmost = most;
  CHECK_THROWS_AS(chart_svg(sample(), options), Error);
  CHECK_THROWS_AS(chart_text(sample(), options), Error);
}

TEST_CASE("a price as high as a number can be is told whole where it is refused", "[certificate][error]") {
  Grid grid(4, 4);
  grid.set(1, 1, Cell::purl);
  grid.set(2, 2, Cell::purl);  // two wales with different work: two classes that pay for the same stop
  const Plan made = plan(grid, Machine{});
  Certificate certificate = certify(grid, Machine{}, Effort{}, made.total_ms);
  REQUIRE(certificate.classes.size() == 2);
  REQUIRE(certificate.classes[0].wales == std::vector<int>{1});
  // The purl of row 1 at a stop that is free to it, after row 1: a batch of 12 s, a rung dropped and re-formed in 3 s.
  certificate.classes[0].prices = {{2, 5}};
  certificate.classes[0].least = 15'000 * certificate.unit;
  certificate.classes[1].prices = {{2, std::numeric_limits<std::int64_t>::max()}};
  const CertificateCheck check = check_certificate(grid, Machine{}, Effort{}, certificate);
  CHECK_FALSE(check.holds);
  CHECK(check.place.field == "classes[1].prices[0]");
  INFO(check.message);
  CHECK(check.message.find("the classes pay 9223372036854775812 in all") != std::string::npos);
}

}  // namespace odd_plan_test
