#include <chrono>
#include <cstdint>
#include <set>
#include <stop_token>
#include <string>
#include <tuple>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "kinds_of.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "random.hpp"

namespace plan_conditions_test {

// Side conditions, worked out by hand. Efforts are the defaults where no others are said: a stop 15 s, a batch 12 s, a
// purl rung 3 s with its drop, a knit rung 4.5 s.

using namespace latchwork;
using latchwork_test::kinds_of;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

Plan under(const Grid& grid, const Conditions& asked, const Effort& effort = {}, const Machine& machine = {}) {
  PlanOptions options;
  options.conditions = asked;
  return plan(grid, machine, effort, options);
}

std::vector<int> rows_of(const Plan& plan) {
  std::vector<int> rows;
  for (const Stop& stop : plan.stops) rows.push_back(stop.row);
  return rows;
}

Conditions with_rhythm(const KeptRhythm& kept) {
  Conditions asked;
  asked.rhythms = {kept};
  return asked;
}

}  // namespace

TEST_CASE("with the carriage on the right alone, a purl of row 1 waits for row 2 and costs a knit rung more",
          "[plan][conditions]") {
  const Grid grid = Grid::from_text("kkk\nkkk\nkkk\nkpk");
  const Plan plain = plan(grid, Machine{});
  REQUIRE(rows_of(plain) == std::vector{1});
  const Plan right = under(grid, {.carriage_right_only = true});
  CHECK(rows_of(right) == std::vector{2});
  CHECK(right.stops[0].carriage_right);
  CHECK(right.total_ms == plain.total_ms + 4'500);
  CHECK(right.status == PlanStatus::optimal);
  Machine left;
  left.carriage_starts_right = false;  // then it is on the right after odd rows
  CHECK(rows_of(under(grid, {.carriage_right_only = true}, {}, left)) == std::vector{1});
}

TEST_CASE("a crossing where the carriage is on the left bars a plan that wants it on the right, unless it is exempt",
          "[plan][conditions]") {
  Grid grid(6, 6);
  grid.cross({.row = 3, .column = 1, .left = 1, .right = 1});
  const Plan none = under(grid, {.carriage_right_only = true});
  REQUIRE(none.status == PlanStatus::infeasible);
  REQUIRE(none.findings.size() == 1);
  CHECK(none.findings[0].code == FindingCode::carriage_side);
  CHECK(none.findings[0].place.row == 3);
  CHECK(none.findings[0].place.column == 1);
  CHECK(none.findings[0].message.rfind("carriage_right_only: ", 0) == 0);
  CHECK(rows_of(under(grid, {.carriage_right_only = true, .forced_exempt = true})) == std::vector{3});
}

TEST_CASE("crossings nearer than the stops may be are told with both places; exempt, other stops keep off them",
          "[plan][conditions]") {
  Grid grid = Grid::from_text("kkkkkk\nkkkkkp\nkkkkkk\nkkkkkk\nkkkkkk\nkkkkkk");
  grid.cross({.row = 2, .column = 1, .left = 1, .right = 1});
  grid.cross({.row = 4, .column = 2, .left = 1, .right = 1});
  const Plan none = under(grid, {.rows_apart = 3});
  REQUIRE(none.status == PlanStatus::infeasible);
  CHECK(none.findings[0].code == FindingCode::stops_too_near);
  CHECK(none.findings[0].place.row == 4);
  CHECK(none.findings[0].value == 2);
  CHECK(none.findings[0].limit == 3);
  CHECK(rows_of(plan(grid, Machine{})) == std::vector{2, 4, 5});
  CHECK(rows_of(under(grid, {.rows_apart = 2})) == std::vector{2, 4, 6});  // the purl of row 5 waits a row
  const Plan shallow = under(grid, {.rows_apart = 2, .max_depth = 1});
  REQUIRE(shallow.status == PlanStatus::infeasible);
  CHECK(shallow.findings[0].code == FindingCode::stops_too_near);
  CHECK(shallow.findings[0].place.row == 5);
  CHECK(shallow.findings[0].place.column == 5);
  CHECK(rows_of(under(grid, {.rows_apart = 3, .forced_exempt = true})).empty());  // the panel ends before row 7
  CHECK(rows_of(under(grid, {.rows_apart = 2, .forced_exempt = true})) == std::vector{2, 4, 6});
  CHECK(rows_of(under(grid, {.rows_apart = 1})) == std::vector{2, 4, 5});
}

TEST_CASE("stops that may not be near each other let purls wait, or miss them", "[plan][conditions]") {
  const Grid grid = Grid::from_text("kkkk\nkkkk\nkkpk\nkkkk\nkpkk\nkkkk");
  Effort cheap;
  cheap.stop = 1'000;
  const Plan plain = plan(grid, Machine{}, cheap);
  REQUIRE(rows_of(plain) == std::vector{2, 4});
  const Plan apart = under(grid, {.rows_apart = 3}, cheap);
  CHECK(rows_of(apart) == std::vector{2, 5});  // the upper purl takes one knit rung along
  CHECK(apart.total_ms == plain.total_ms + 4'500);
  const Plan far = under(grid, {.rows_apart = 5}, cheap);
  CHECK(rows_of(far) == std::vector{4});  // both at once, the lower with two knit rungs, one stop saved
  CHECK(far.total_ms == plain.total_ms + 9'000 - 1'000);
  const Plan none = under(grid, {.rows_apart = 3, .max_depth = 1}, cheap);
  REQUIRE(none.status == PlanStatus::infeasible);
  CHECK(none.findings[0].code == FindingCode::stops_too_near);
  CHECK(none.findings[0].place.row == 4);
  CHECK(none.findings[0].place.column == 2);
}

TEST_CASE("a stack higher than re-forms may be deep is told, and a purl is done at once", "[plan][conditions]") {
  const Grid stack = Grid::from_text("kkk\nkpk\nktk\nktk\nkkk");
  const Plan none = under(stack, {.max_depth = 2});
  REQUIRE(none.status == PlanStatus::infeasible);
  CHECK(none.findings[0].code == FindingCode::too_deep);
  CHECK(none.findings[0].place.row == 2);
  CHECK(none.findings[0].limit == 2);
  CHECK(under(stack, {.max_depth = 3}).status == PlanStatus::optimal);
  const Grid purls = Grid::from_text("kkk\nkpk\nkkk\nkpk\nkkk");
  CHECK(rows_of(plan(purls, Machine{})) == std::vector{4});
  CHECK(rows_of(under(purls, {.max_depth = 2})) == std::vector{2, 4});
}

TEST_CASE("wales kept to a rhythm are worked at its stops and no others", "[plan][conditions]") {
  const Grid grid = Grid::from_text("kkkk\nkpkk\nkkkk\nkpkk\nkkpk\nkpkk\nkkkk");
  const Plan kept = under(grid, with_rhythm({.row = 1, .first_column = 1, .last_column = 1, .rhythm = Rhythm{2, 2}}));
  REQUIRE(kept.status == PlanStatus::optimal);
  std::vector<int> mine;
  for (const Stop& stop : kept.stops) {
    for (const Reform& reform : stop.reforms) {
      if (reform.column == 1) mine.push_back(stop.row);
    }
  }
  CHECK(mine == std::vector{2, 4, 6});
  CHECK(verify(grid, kept).verified);

  // Of all rhythms the best: one stop after row 6, that a plan without the condition makes as well.
  const Plan best = under(grid, with_rhythm({.row = 1, .first_column = 1, .last_column = 2, .rhythm = {}}));
  CHECK(best.total_ms == plan(grid, Machine{}).total_ms);

  const Plan late = under(grid, with_rhythm({.row = 1, .first_column = 1, .last_column = 2, .rhythm = Rhythm{9, 7}}),
                          {}, {.max_ladder = 3});
  REQUIRE(late.status == PlanStatus::infeasible);
  CHECK(late.findings[0].code == FindingCode::off_rhythm);
  CHECK(late.findings[0].place.row == 2);
  CHECK(late.findings[0].place.column == 1);
}

TEST_CASE("tucks that can only be held keep to no rhythm", "[plan][conditions]") {
  const Grid grid = Grid::from_text("kkk\nkkk\nktk\nktk\nktk\nkkk");
  const Plan none =
      under(grid, with_rhythm({.row = 1, .first_column = 1, .last_column = 1, .rhythm = {}}), {}, {.max_ladder = 3});
  REQUIRE(none.status == PlanStatus::infeasible);
  CHECK(none.findings[0].code == FindingCode::off_rhythm);
}

TEST_CASE("with one kind of stop allowed, two kinds become one at what it costs", "[plan][conditions][kinds]") {
  const Grid grid = Grid::from_text("kkkk\nkkkk\nkkpk\nkkkk\nkpkk\nkkkk");
  Effort cheap;
  cheap.stop = 1'000;
  const Plan plain = plan(grid, Machine{}, cheap);
  REQUIRE(stop_kinds(plain) == std::vector{0, 1});  // the same depth, another needle
  const Plan one = under(grid, {.max_kinds = 1}, cheap);
  CHECK(one.status == PlanStatus::optimal);
  CHECK(rows_of(one) == std::vector{4});
  CHECK(one.total_ms == plain.total_ms + 9'000 - 1'000);
  CHECK(under(grid, {.max_kinds = 2}, cheap).total_ms == plain.total_ms);
  const Plan none = under(grid, {.max_depth = 1, .max_kinds = 1}, cheap);
  REQUIRE(none.status == PlanStatus::infeasible);
  CHECK(none.findings[0].code == FindingCode::too_many_kinds);
  CHECK(none.findings[0].place.row > 0);
}

TEST_CASE("what bars a panel alone is told alone, and what does only together is told of each",
          "[plan][conditions][blame]") {
  using Codes = std::vector<FindingCode>;
  const auto why = [](const Grid& grid, const Conditions& asked, int ladder) {
    const Plan none = under(grid, asked, {}, {.max_ladder = ladder});
    REQUIRE(none.status == PlanStatus::infeasible);
    Codes codes;
    for (const Finding& finding : none.findings) {
      CAPTURE(finding.message);
      codes.push_back(finding.code);
      const Cell cell = grid.at(finding.place.row, finding.place.column);
      CHECK((cell == Cell::purl || cell == Cell::tuck || cell == Cell::slip));
    }
    return codes;
  };
  const Grid wales = Grid::from_text("kkkk\nkkkk\nkkpk\nkkkk\nkpkk\nkkkk");  // two kinds where ladders are of one rung
  const Grid wale = Grid::from_text("kkk\nkkk\nkpk\nkkk\nkpk\nkkk");
  // A rhythm that is to be found is not what bars it.
  Conditions asked = with_rhythm({.row = 3, .first_column = 1, .last_column = 1, .rhythm = {}});
  asked.max_kinds = 1;
  CHECK(why(wales, asked, 1) == Codes{FindingCode::too_many_kinds});
  CHECK(why(wales, {.rows_apart = 2, .max_kinds = 1}, 1) == Codes{FindingCode::too_many_kinds});
  // Rows 2 and 4 are one kind.
  CHECK(why(wale, {.rows_apart = 3, .max_kinds = 1}, 1) == Codes{FindingCode::stops_too_near});
  CHECK(why(wales, {.rows_apart = 3, .max_kinds = 1}, 1) ==
        Codes{FindingCode::stops_too_near, FindingCode::too_many_kinds});
  // Three rows apart are rows 2 and 5, of two rungs the second; of one kind rows 2 and 4, or 3 and 5.
  CHECK(why(wale, {.rows_apart = 3, .max_kinds = 1}, 2) ==
        Codes{FindingCode::too_many_kinds, FindingCode::stops_too_near});
  const Plan both = under(wale, {.rows_apart = 3, .max_kinds = 1}, {}, {.max_ladder = 2});
  CHECK(both.findings[0].message.ends_with("; so it is only together with rows_apart"));
  CHECK(both.findings[1].message == "rows_apart: it bars the panel only together with max_kinds");
  // No stitch stands above the lower purl.
  CHECK(why(Grid::from_text("p..k\nk..k\nkpkk\nkkkk"), {.max_kinds = 1}, 12) == Codes{FindingCode::too_many_kinds});
}

TEST_CASE("stopped, a plan that conditions bar has its reasons still, and on a large panel says what is left open",
          "[plan][conditions][blame]") {
  std::stop_source stopped;
  stopped.request_stop();
  PlanOptions options;
  options.stop = stopped.get_token();
  options.conditions.carriage_right_only = true;
  options.conditions.max_depth = 2;
  options.conditions.closed_rows = {4};
  // The purl of row 3 is made after row 4 on the right, and no sooner or later.
  const auto panel = [](int rows, int columns) {
    Grid grid(rows, columns);
    grid.set(3, 1, Cell::purl);
    return grid;
  };
  const Plan small = plan(panel(8, 3), Machine{}, {}, options);
  REQUIRE(small.findings.size() == 3);
  for (const Finding& finding : small.findings) {
    CHECK(finding.message.find(" only together with ") != std::string::npos);
    CHECK(finding.place.row == 3);
    CHECK(finding.place.column == 1);
  }
  const Plan larger = plan(panel(1000, 100), Machine{}, {}, options);  // it is not read many times more
  REQUIRE(larger.findings.size() == 3);
  for (const Finding& finding : larger.findings) {
    CHECK(finding.message.find(", which the search left open") != std::string::npos);
  }
}

TEST_CASE("stops are of one kind when the same is done, whatever the row and the side", "[plan][kinds]") {
  Plan made;
  Stop stop;
  stop.row = 3;
  stop.reforms = {{.needle = 2, .column = 1, .wale = 1, .from_row = 2, .rungs = {Cell::purl}}};
  made.stops.push_back(stop);
  stop.row = 8;
  stop.carriage_right = false;
  stop.effort_ms = 5;
  stop.reforms[0].from_row = 7;
  made.stops.push_back(stop);  // the same
  stop.reforms[0].rungs = {Cell::purl, Cell::knit};
  made.stops.push_back(stop);  // deeper
  stop.reforms[0].needle = 3;
  made.stops.push_back(stop);  // another needle
  stop.holds = {1};
  made.stops.push_back(stop);
  stop.holds = {};
  stop.releases = {1};
  made.stops.push_back(stop);
  stop = {};
  stop.crossings.push_back({{.row = 2, .column = 3}, {}, false});
  made.stops.push_back(stop);
  stop.crossings[0].crossing.row = 9;
  stop.crossings[0].ease = true;
  made.stops.push_back(stop);  // the same
  stop.crossings[0].crossing.lean = Lean::left;
  made.stops.push_back(stop);
  made.stops.push_back(made.stops[0]);
  CHECK(stop_kinds(made) == std::vector{0, 0, 1, 2, 3, 4, 5, 5, 6, 0});
  CHECK(stop_kinds(Plan{}).empty());
}

TEST_CASE("a panel with two ropes is planned with fewer and fewer kinds of stop, each verified",
          "[plan][conditions][kinds]") {
  const Strip strips[] = {stockinette(), rope(2, 2, 4, Lean::right), reverse(1), rope(2, 2, 8, Lean::left), tuck_rib(1),
                          stockinette()};
  const Grid grid = join_strips("two ropes", 32, strips).grid();
  const Plan plain = plan(grid, Machine{});
  const std::vector<int> all = stop_kinds(plain);
  const auto most = static_cast<int>(std::set(all.begin(), all.end()).size());
  std::int64_t last = plain.total_ms;
  for (int kinds = most; kinds >= 2; --kinds) {
    CAPTURE(kinds);
    const Plan made = under(grid, {.max_kinds = kinds});
    if (made.status == PlanStatus::infeasible) break;
    const std::vector<int> mine = stop_kinds(made);
    CHECK(std::set(mine.begin(), mine.end()).size() <= static_cast<std::size_t>(kinds));
    CHECK(made.total_ms >= last);
    CHECK(made.bound_ms >= plain.bound_ms);
    CHECK(made.bound_ms <= made.total_ms);
    CHECK(verify(grid, made).verified);
    last = made.total_ms;
  }
}

TEST_CASE("conditions out of their ranges are refused with the field", "[plan][conditions][error]") {
  const auto [field, spoil] = GENERATE(table<std::string, void (*)(Conditions&)>({
      {"options.conditions.rows_apart", [](Conditions& c) { c.rows_apart = -1; }},
      {"options.conditions.max_depth", [](Conditions& c) { c.max_depth = -1; }},
      {"options.conditions.max_kinds", [](Conditions& c) { c.max_kinds = 65'537; }},
      {"options.conditions.rhythms[0].row", [](Conditions& c) { c.rhythms = {{.row = 0}}; }},
      {"options.conditions.rhythms[0].row", [](Conditions& c) { c.rhythms = {{.row = 5}}; }},
      {"options.conditions.rhythms[0].first_column", [](Conditions& c) { c.rhythms = {{.first_column = -1}}; }},
      {"options.conditions.rhythms[0].last_column",
       [](Conditions& c) { c.rhythms = {{.first_column = 2, .last_column = 1}}; }},
      {"options.conditions.rhythms[0].last_column", [](Conditions& c) { c.rhythms = {{.last_column = 3}}; }},
      {"options.conditions.rhythms[0].rhythm.every", [](Conditions& c) { c.rhythms = {{.rhythm = Rhythm{0, 1}}}; }},
      {"options.conditions.rhythms[0].rhythm.first", [](Conditions& c) { c.rhythms = {{.rhythm = Rhythm{1, 0}}}; }},
      {"options.conditions.rhythms[1].rhythm",
       [](Conditions& c) { c.rhythms = {{}, {.first_column = 1, .last_column = 1}}; }},
  }));
  Conditions asked;
  spoil(asked);
  CAPTURE(field);
  CHECK_THROWS_MATCHES(under(Grid(4, 3), asked), Error, refused_field(ErrorCode::bad_argument, field));
}

TEST_CASE("a wale in two rhythms is refused with its place", "[plan][conditions][error]") {
  Conditions asked;
  asked.rhythms = {{.last_column = 1, .rhythm = Rhythm{}},
                   {.row = 3, .first_column = 1, .last_column = 2, .rhythm = {}}};
  CHECK_THROWS_MATCHES(under(Grid(4, 3), asked), Error,
                       refused(ErrorCode::bad_argument, Place{3, 1, 0, "options.conditions.rhythms[1]"}));
}

TEST_CASE("a rhythm that keeps no condition says which, and where", "[plan][conditions]") {
  // A purl in every row of one column, four wales of them: whatever the rhythm, its stops are two rows apart at most.
  Grid grid(8, 6);
  for (int row = 1; row <= 8; ++row) {
    for (int column = 1; column < 5; ++column) grid.set(row, column, Cell::purl);
  }
  const Machine machine{.max_ladder = 2};
  PlanOptions options;
  options.conditions.rows_apart = 2;
  const Plan kept = plan_regular(grid, machine, {}, options);
  CHECK(kept.rhythm == Rhythm{2, 2});
  CHECK(plan_two_rhythms(grid, machine, {}, options).reforms == Rhythm{2, 2});
  options.conditions.rows_apart = 3;
  options.conditions.forced_exempt = true;
  for (const Plan& none :
       {plan_regular(grid, machine, {}, options), plan_two_rhythms(grid, machine, {}, options).plan}) {
    REQUIRE(none.status == PlanStatus::infeasible);
    REQUIRE(none.findings.size() == 1);
    const Finding& why = none.findings[0];
    CHECK(why.code == FindingCode::stops_too_near);
    CHECK(why.place.row == 4);
    CHECK(why.place.column == 1);
    CHECK(why.value == 2);
    CHECK(why.limit == 3);
    CHECK(why.message ==
          "rows_apart: the stop after row 4 comes 2 rows after the one below; 3 are asked for; so it is in the best "
          "rhythm, every 2 rows from row 2, and no other keeps to what is asked");
  }
  // A tuck stack that only a hold makes: no rhythm, and at the depth that is asked that is what bars it.
  const Grid tucked = Grid::from_text("kkk\nktk\nktk\nkkk");
  options.conditions = {};
  options.conditions.max_depth = 2;
  const Plan held = plan_regular(tucked, Machine{}, {}, options);
  REQUIRE(held.findings.size() == 1);
  CHECK(held.findings[0].code == FindingCode::too_deep);
  CHECK(held.findings[0].message.starts_with("max_depth: "));
  CHECK(plan(tucked, Machine{}, {}, options).status == PlanStatus::optimal);
  CHECK(plan_regular(tucked, Machine{}).status == PlanStatus::optimal);
}

TEST_CASE("conditions of a rhythm are checked as those of a plan", "[plan][conditions][error]") {
  PlanOptions options;
  options.conditions.rows_apart = -1;
  CHECK_THROWS_MATCHES(plan_regular(Grid(4, 3), Machine{}, {}, options), Error,
                       refused_field(ErrorCode::bad_argument, "options.conditions.rows_apart"));
  options.conditions = {};
  options.conditions.rhythms = {{.last_column = 1, .rhythm = Rhythm{}},
                                {.row = 3, .first_column = 1, .last_column = 2, .rhythm = {}}};
  CHECK_THROWS_MATCHES(plan_two_rhythms(Grid(4, 3), Machine{}, {}, options), Error,
                       refused(ErrorCode::bad_argument, Place{3, 1, 0, "options.conditions.rhythms[1]"}));
}

TEST_CASE("a search for few kinds that nobody limits and that comes to no end says so",
          "[plan][conditions][kinds][long]") {
  // A few of its wales can be made in four kinds of stop; whether all can, nobody finds in so much work.
  const latchwork_test::Instance in = latchwork_test::instance_of("tuck stacks", 1, 24);
  PlanOptions options;
  options.conditions.max_kinds = 4;
  CHECK_THROWS_MATCHES(plan(in.grid, in.machine, in.effort, options), Error,
                       refused_field(ErrorCode::too_large, "options.conditions.max_kinds"));
  const auto prices = condition_prices(in.grid, in.machine, in.effort, options);
  REQUIRE(prices.size() == 2);
  CHECK(prices[0] == ConditionPrice{Condition::max_kinds, PlanStatus::feasible, -1, -1, 0, -1});
  options.memory_limit = 1'000'000'000;  // it is not what ends it
  CHECK_THROWS_MATCHES(plan(in.grid, in.machine, in.effort, options), Error,
                       refused_field(ErrorCode::too_large, "options.conditions.max_kinds"));
  options.memory_limit = 100'000;  // it is
  CHECK_THROWS_MATCHES(plan(in.grid, in.machine, in.effort, options), Error,
                       refused_field(ErrorCode::cancelled, "options.conditions"));
  options.memory_limit = 0;
  options.work_limit = 1'000;  // the caller's
  CHECK_THROWS_MATCHES(plan(in.grid, in.machine, in.effort, options), Error,
                       refused_field(ErrorCode::cancelled, "options.conditions"));
}

TEST_CASE("a memory limit that a search for few kinds comes nowhere near does not keep it from its proof",
          "[plan][conditions][kinds][limits]") {
  const latchwork_test::Instance in = latchwork_test::instance_of("dear stops x20", 9, 400);
  PlanOptions options;
  options.conditions.max_kinds = 60;
  options.memory_limit = 50'000'000;
  options.work_limit = 100'000'000;
  CHECK(plan(in.grid, in.machine, in.effort, options).status == PlanStatus::optimal);
}

TEST_CASE("a panel of which a few wales need more kinds of stop than are allowed has no plan",
          "[plan][conditions][kinds][long]") {
  // Each has far more schedules than are looked at; two or three of its wales have few.
  for (const auto& [kind, seed, kinds] :
       {std::tuple("tuck stacks", 1, 1), std::tuple("tuck stacks", 1, 2), std::tuple("tuck stacks", 3, 3),
        std::tuple("random", 1, 2), std::tuple("many classes", 1, 1), std::tuple("panels", 1, 5)}) {
    const latchwork_test::Instance in = latchwork_test::instance_of(kind, static_cast<std::uint64_t>(seed), 24);
    PlanOptions options;
    options.conditions.max_kinds = kinds;
    CAPTURE(kind, seed, kinds);
    const Plan none = plan(in.grid, in.machine, in.effort, options);
    CHECK(none.status == PlanStatus::infeasible);
    REQUIRE(!none.findings.empty());
    CHECK(none.findings.front().code == FindingCode::too_many_kinds);
    CHECK(none.findings.front().place.row >= 1);
    CHECK(none.findings.front().place.row <= in.grid.rows());
  }
}

namespace {

/// A third of its cells purls, anywhere.
Grid scattered(int rows, int columns) {
  latchwork_test::Random random(5);
  Grid grid(rows, columns);
  for (int row = 1; row <= rows; ++row) {
    for (int column = 1; column + 1 < columns; ++column) {
      if (random.one_in(3)) grid.set(row, column, Cell::purl);
    }
  }
  return grid;
}

}  // namespace

TEST_CASE("few kinds of stop on a panel of many wales end at their limit, and what is told is true",
          "[plan][conditions][kinds][limits]") {
  // Every wale may let every stop pass, which is two ways each to take one, and nearly all of them are of a new kind.
  const Grid grid = scattered(48, 60);
  PlanOptions options;
  options.conditions.max_kinds = 12;
  for (const std::int64_t limit : {1, 100'000, 2'000'000, 6'000'000}) {
    CAPTURE(limit);
    options.work_limit = limit;
    std::vector<Progress> told;
    options.progress = [&](const Progress& now) { told.push_back(now); };
    const Plan made = plan(grid, Machine{}, {}, options);
    REQUIRE(made.status == PlanStatus::feasible);
    CHECK(kinds_of(made) <= 12);
    CHECK(verify(grid, made).verified);
    std::int64_t best = -1;
    std::int64_t bound = 0;
    for (const Progress& now : told) {
      CHECK((now.best_ms >= 0 || best < 0));  // a plan that is there stays
      CHECK((best < 0 || now.best_ms <= best));
      CHECK((now.best_ms < 0 || now.best_ms >= made.total_ms));
      CHECK(now.bound_ms >= bound);
      CHECK(now.bound_ms <= made.bound_ms);
      best = now.best_ms;
      bound = now.bound_ms;
    }
    REQUIRE(!told.empty());
    CHECK(best == made.total_ms);
    CHECK(bound == made.bound_ms);
  }
}

TEST_CASE("nothing is told as the best under conditions before there is a plan", "[plan][conditions]") {
  const Grid grid = scattered(24, 12);
  for (const bool kinds : {false, true}) {
    PlanOptions options;
    // No schedule keeps to one kind, and none that is cheap to have.
    if (kinds) options.conditions.max_kinds = 1;
    if (!kinds) options.conditions.rows_apart = 2;
    std::vector<Progress> told;
    options.progress = [&](const Progress& now) { told.push_back(now); };
    const Plan made = plan(grid, Machine{}, {}, options);
    REQUIRE(!told.empty());
    if (kinds) CHECK(told.front().best_ms == -1);
    if (!kinds) CHECK(told.front().best_ms >= made.total_ms);  // had before any search
    CHECK((made.status == PlanStatus::infeasible) == kinds);
    for (const Progress& now : told) CHECK((now.best_ms == -1 || !kinds));
    if (!kinds) CHECK(told.back().best_ms == made.total_ms);
  }
}

TEST_CASE("asked to stop before they began, few kinds of stop give what is cheap to have",
          "[plan][conditions][kinds]") {
  const Grid grid = scattered(48, 60);
  std::stop_source asked;
  asked.request_stop();
  PlanOptions options;
  options.stop = asked.get_token();
  options.conditions.max_kinds = 12;
  const Plan made = plan(grid, Machine{}, {}, options);
  CHECK(made.status == PlanStatus::feasible);
  CHECK(kinds_of(made) <= 12);
  CHECK(verify(grid, made).verified);
}

TEST_CASE("the search for a rhythm is heard and keeps to its time on the tallest panel", "[plan][conditions][limits]") {
  Grid grid(Grid::max_side, 3);
  grid.set(Grid::max_side, 1, Cell::purl);
  grid.set(Grid::max_side - 40, 1, Cell::purl);
  PlanOptions options;
  options.conditions.rhythms = {{.row = Grid::max_side, .first_column = 1, .last_column = 1, .rhythm = {}}};
  options.time_limit_ms = 100;
  const auto before = std::chrono::steady_clock::now();
  try {
    const Plan made = plan(grid, {.max_ladder = Grid::max_side}, {}, options);
    CHECK(made.bound_ms <= made.total_ms);
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::cancelled);
  }
  CHECK(std::chrono::steady_clock::now() - before < std::chrono::seconds(3));
}

TEST_CASE("a search that is stopped before it found a plan under the conditions says so", "[plan][conditions][error]") {
  Grid grid(40, 12);
  for (int row = 2; row < 40; ++row) {
    for (int column = 1; column < 11; ++column) {
      if ((row * column) % 5 == 1) grid.set(row, column, Cell::purl);
    }
  }
  PlanOptions options;
  options.conditions.rows_apart = 5;
  options.work_limit = 1;
  const Plan begun = plan(grid, Machine{}, {}, options);
  CHECK(begun.status == PlanStatus::feasible);
  CHECK(verify(grid, begun).verified);
  options.conditions.rows_apart = 20;  // past the ladders: no schedule keeps it, which only a search tells
  CHECK_THROWS_MATCHES(plan(grid, Machine{}, {}, options), Error,
                       refused_field(ErrorCode::cancelled, "options.conditions"));
}

}  // namespace plan_conditions_test
