#include "latchwork/choice.hpp"

#include <algorithm>
#include <chrono>
#include <functional>
#include <stdexcept>
#include <stop_token>
#include <string>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/quantity.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/simulate.hpp"

// By hand; a stop takes 15 s, a batch 12 s, a purl rung with its drop 3 s, a knit rung 4.5 s where nothing else is
// said.

using namespace latchwork;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

/// A purl in row 2 and one in row 4, in neighbouring columns.
Grid purls() {
  return Grid::from_text("kkkk\nkkkk\nkkpk\nkkkk\nkpkk\nkkkk");
}

Effort cheap_stops() {
  Effort effort;
  effort.stop = 1'000;
  return effort;
}

/// Purls here and there: as many stops as rows, hardly any of them forced.
Grid scattered(int rows, int columns) {
  Grid grid(rows, columns);
  for (int row = 1; row <= rows; ++row) {
    for (int column = 1; column + 1 < columns; ++column) {
      if ((row * 7 + column * 11) % 13 == 0) grid.set(row, column, Cell::purl);
    }
  }
  return grid;
}

struct ManyPlans {
  std::string name;
  std::function<void(const PlanOptions&)> make;
};

/// Every call that makes several plans.
std::vector<ManyPlans> calls_of_many_plans(const Grid& grid, const Machine& machine, const Effort& effort,
                                           const Plan& mine) {
  return {
      {"prices", [=](const PlanOptions& options) { condition_prices(grid, machine, effort, options); }},
      {"front", [=](const PlanOptions& options) { plan_front(grid, machine, effort, options); }},
      {"reasons", [=](const PlanOptions& options) { stop_reasons(grid, machine, effort, mine, options); }},
      {"tolerances", [=](const PlanOptions& options) { plan_tolerances(grid, machine, effort, mine, options); }},
  };
}

const Tolerance& tolerance_of(const std::vector<Tolerance>& all, EffortTerm term) {
  return all.at(static_cast<std::size_t>(term));
}

}  // namespace

TEST_CASE("crossings every four rows and re-forms every eight are two rhythms", "[choice]") {
  // One rhythm must fall on every crossing, every 4 rows, and re-forms the far purls each time.
  Grid grid(16, 8);
  for (const int row : {4, 8, 12, 16}) grid.cross({.row = row, .column = 1, .left = 1, .right = 1});
  for (int row = 1; row <= 16; ++row) grid.set(row, 6, Cell::purl);
  const Machine machine{.max_ladder = 8};
  const TwoRhythms two = plan_two_rhythms(grid, machine);
  CHECK(two.crossings == Rhythm{4, 4});
  CHECK(two.reforms == Rhythm{8, 8});
  const Plan regular = plan_regular(grid, machine);
  CHECK(regular.rhythm == Rhythm{4, 4});
  CHECK(regular.total_ms - two.plan.total_ms == 2 * 12'000);  // two batches fewer, the same stops and rungs
  CHECK(verify(grid, two.plan).verified);
  CHECK(duration_text({regular.total_ms - two.plan.total_ms}) == "24 s");  // the price of one rhythm, in words
}

TEST_CASE("a panel with no crossing has one rhythm, and plain knitting none", "[choice]") {
  const TwoRhythms purled = plan_two_rhythms(purls(), Machine{});
  CHECK(purled.crossings == Rhythm{0, 0});
  CHECK(purled.reforms == *plan_regular(purls(), Machine{}).rhythm);
  const TwoRhythms plain = plan_two_rhythms(Grid(8, 4), Machine{});
  CHECK(plain.reforms == Rhythm{0, 0});
  CHECK(plain.plan.stops.empty());
  PlanOptions options;
  options.conditions.closed_rows = {4};  // one stop a row later takes two knit rungs more, one more stop 15 s and one
  const TwoRhythms later = plan_two_rhythms(purls(), Machine{}, {}, options);
  REQUIRE(later.plan.stops.size() == 1);
  CHECK(later.plan.stops[0].row == 5);
  CHECK(later.plan.total_ms - purled.plan.total_ms == 2 * 4'500);
}

TEST_CASE("each condition has its price, and all together theirs", "[choice][conditions]") {
  PlanOptions options;
  CHECK(condition_prices(purls(), Machine{}, cheap_stops(), options).empty());
  options.conditions.rows_apart = 3;
  options.conditions.max_kinds = 1;
  options.conditions.closed_rows = {2};
  const auto prices = condition_prices(purls(), Machine{}, cheap_stops(), options);
  const std::int64_t plain = plan(purls(), Machine{}, cheap_stops()).total_ms;
  const auto is = [&](Condition condition, std::int64_t price) {
    return ConditionPrice{condition, PlanStatus::optimal, plain + price, price, price, price};
  };
  // Three rows apart: one knit rung. One kind: both at once, two knit rungs, one stop saved. Row 2 closed: as the
  // first.
  CHECK(prices == std::vector{is(Condition::rows_apart, 4'500), is(Condition::max_kinds, 8'000),
                              is(Condition::closed_rows, 4'500), is(Condition::all, 8'000)});
  options.conditions = {};
  options.conditions.max_depth = 1;
  options.conditions.rows_apart = 3;
  const auto none = condition_prices(purls(), Machine{}, cheap_stops(), options);
  REQUIRE(none.size() == 3);
  CHECK(none[1] == ConditionPrice{Condition::max_depth, PlanStatus::optimal, plain, 0, 0, 0});
  CHECK(none[2] == ConditionPrice{Condition::all, PlanStatus::infeasible, 0, 0, 0, 0});
}

TEST_CASE("a price is told between what is proven of both plans, and is never below nothing", "[choice][conditions]") {
  // Cut so short that the plan without conditions is not proven, or takes more than one found under a condition.
  int open = 0;
  for (const std::uint64_t seed : {1U, 2U, 3U}) {
    const latchwork_test::Instance in = latchwork_test::instance_of("co-prime periods", seed);
    PlanOptions options;
    options.work_limit = 2'000'000;
    const Plan least = plan(in.grid, in.machine, in.effort, options);
    for (const int work : {1, 20'000}) {
      options.work_limit = work;
      options.conditions.max_depth = 9;
      options.conditions.closed_rows = {0};
      const auto prices = condition_prices(in.grid, in.machine, in.effort, options);
      REQUIRE(prices.size() == 3);
      std::int64_t plain = prices[0].total_ms - prices[0].price_ms;
      for (const ConditionPrice& price : prices) {
        CAPTURE(seed, work, static_cast<int>(price.condition), price.price_ms);
        if (price.status == PlanStatus::infeasible) continue;
        CHECK(price.total_ms - price.price_ms == plain);  // one plan without conditions for all
        CHECK(price.least_price_ms >= 0);
        CHECK(price.least_price_ms <= price.price_ms);
        CHECK(price.price_ms <= price.most_price_ms);
        CHECK(price.total_ms - price.most_price_ms <= least.total_ms);  // no more than any plan without it takes
        open += price.least_price_ms < price.most_price_ms ? 1 : 0;
      }
    }
  }
  CHECK(open > 0);
}

TEST_CASE("a front runs from the fewest kinds to the least plan", "[choice][kinds]") {
  const Front front = plan_front(purls(), Machine{}, cheap_stops());
  REQUIRE(front.points.size() == 2);
  CHECK(front.fewest_proven);
  CHECK(front.points[0].kinds == 1);
  CHECK(front.points[1].kinds == 2);
  CHECK(front.points[0].plan.total_ms == front.points[1].plan.total_ms + 8'000);
  CHECK(front.points[1].plan == plan(purls(), Machine{}, cheap_stops()));
  PlanOptions options;
  options.conditions.max_kinds = 1;
  CHECK(plan_front(purls(), Machine{}, cheap_stops(), options).points.size() == 1);

  const Front plain = plan_front(Grid(4, 4), Machine{});
  REQUIRE(plain.points.size() == 1);
  CHECK(plain.points[0].kinds == 0);

  const Front none = plan_front(Grid(4, 300), Machine{});
  CHECK(none.points.empty());
  CHECK(none.findings.at(0).code == FindingCode::off_bed);
}

TEST_CASE("a front that is stopped before it looked for fewer kinds proves none", "[choice][kinds]") {
  const Grid grid = Grid::from_text("kpkp\nkk.p\npk.k");
  const Front whole = plan_front(grid, Machine{});
  REQUIRE(whole.points.at(0).kinds == 2);
  CHECK(whole.fewest_proven);
  std::stop_source source;
  source.request_stop();
  PlanOptions options;
  options.stop = source.get_token();
  const Front stopped = plan_front(grid, Machine{}, {}, options);
  REQUIRE(stopped.points.size() == 1);
  CHECK(stopped.points[0].kinds == 2);  // as few stops as serve all
  CHECK(!stopped.fewest_proven);
}

TEST_CASE("a front that is cut short has looked at few kinds, at the most and between", "[choice][kinds][limits]") {
  const Grid grid = scattered(48, 60);
  PlanOptions options;
  options.work_limit = 300'000;
  // A third of the way past the least plan, which is one of 13 kinds.
  std::stop_source source;
  options.stop = source.get_token();
  options.progress = [&](const Progress& now) {
    if (now.share > 0.48) source.request_stop();
  };
  const Front front = plan_front(grid, Machine{}, {}, options);
  const auto has = [&](int from, int to) {
    return std::any_of(front.points.begin(), front.points.end(),
                       [&](const FrontPoint& point) { return point.kinds >= from && point.kinds <= to; });
  };
  CHECK(has(1, 5));
  CHECK(has(6, 8));
  CHECK(front.points.back().kinds == 13);
  CHECK(front.points.back().plan.status == PlanStatus::optimal);
}

TEST_CASE("the worked front of DEVELOPERS.md", "[choice][kinds]") {
  // One wale, purls in rows 2, 4 and 7; a ladder of three rungs at most. The figures are by hand.
  const Grid grid = Grid::from_text("kpk\nkkk\nkkk\nkpk\nkkk\nkpk\nkkk");
  REQUIRE(grid.at(2, 1) == Cell::purl);
  REQUIRE(grid.at(7, 1) == Cell::purl);
  Machine machine;
  machine.max_ladder = 3;
  Effort effort;
  effort.row = 0;
  effort.stop = 10'000;
  effort.batch = 1'000;
  effort.drop = 0;
  effort.rung_knit = 2'000;
  effort.rung_purl = 3'000;
  const Front front = plan_front(grid, machine, effort);
  REQUIRE(front.points.size() == 2);
  CHECK(front.fewest_proven);
  CHECK(front.points[0].kinds == 1);
  CHECK(front.points[0].plan.total_ms == 42'000);
  CHECK(front.points[1].kinds == 2);
  CHECK(front.points[1].plan.total_ms == 33'000);
  for (const FrontPoint& point : front.points) CHECK(point.plan.status == PlanStatus::optimal);
}

TEST_CASE("a front on a panel of ropes and ribs is proven or bounded at every point, and each is verified",
          "[choice][kinds]") {
  const Strip strips[] = {stockinette(), rope(2, 2, 4, Lean::right), reverse(1), rope(2, 2, 8, Lean::left), tuck_rib(1),
                          stockinette()};
  const Grid grid = join_strips("two ropes", 32, strips).grid();
  const Front front = plan_front(grid, Machine{});
  REQUIRE(front.points.size() >= 2);
  for (std::size_t i = 0; i < front.points.size(); ++i) {
    const Plan& mine = front.points[i].plan;
    CAPTURE(front.points[i].kinds, mine.total_ms, mine.bound_ms);
    CHECK(verify(grid, mine).verified);
    CHECK(mine.bound_ms <= mine.total_ms);
    if (i == 0) continue;
    CHECK(front.points[i].kinds > front.points[i - 1].kinds);
    CHECK(mine.total_ms < front.points[i - 1].plan.total_ms);
    CHECK(mine.bound_ms <= front.points[i - 1].plan.bound_ms);
  }
  CHECK(front.points.back().plan.total_ms == plan(grid, Machine{}).total_ms);
}

TEST_CASE("each stop says what forces it or what it saves", "[reason]") {
  Grid grid = Grid::from_text("kkkkkk\nkkkkkp\nkkkkkk\nkkkkkk\nkkkkkk\nkkkkkp");
  grid.cross({.row = 3, .column = 1, .left = 2, .right = 1});
  grid.cross({.row = 3, .column = 4, .left = 1, .right = 1});
  // Column 5 of row 1 lies below the second crossing: its purl is done there. The purl of row 5 has a stop of its own.
  const Plan mine = plan(grid, Machine{});
  REQUIRE(mine.stops.size() == 2);
  const auto reasons = stop_reasons(grid, Machine{}, {}, mine);
  CHECK(reasons[0].cause == StopCause::crossing);
  CHECK(reasons[0].place.column == 1);
  CHECK(reasons[0].message == "the 2/1 RC at column 1 is made here, and 1 more");
  CHECK(reasons[0].beside_ms == -1);
  CHECK(reasons[1].row == 5);
  CHECK(reasons[1].cause == StopCause::saving);
  CHECK(reasons[1].saves_ms == 4'500);  // a stop after row 6 instead, one knit rung more
  CHECK(reasons[1].least_saves_ms == 4'500);
  CHECK(reasons[1].beside_ms == -1);  // the crossing's stop is below it
  CHECK(reasons[1].message == "it saves 5 s against the best plan without it; the other stops cannot do its works");

  const auto shallow = stop_reasons(grid, {.max_ladder = 1}, {}, plan(grid, {.max_ladder = 1}));
  REQUIRE(shallow.size() == 3);
  CHECK(shallow[0].row == 1);
  CHECK(shallow[0].cause == StopCause::hand_cells);
  CHECK(shallow[0].place.row == 1);
  CHECK(shallow[0].place.column == 5);

  Grid shaped = Grid::from_text("kkkk\nkkkk\n.kkk\n.kkk");
  const auto shaping = stop_reasons(shaped, Machine{}, {}, plan(shaped, Machine{}));
  REQUIRE(shaping.size() == 1);
  CHECK(shaping[0].cause == StopCause::shaping);
  CHECK(shaping[0].place.column == 0);
  CHECK(shaping[0].message == "the wale at column 0 begins here");
  CHECK_THROWS_MATCHES(stop_reasons(grid, Machine{}, {}, plan(shaped, Machine{})), Error,
                       refused_field(ErrorCode::size_mismatch, "plan"));
}

TEST_CASE("a stop that two purls share saves a knit rung of each against the same a row later", "[reason]") {
  const Plan mine = plan(purls(), Machine{});
  REQUIRE(mine.stops.size() == 1);
  const auto reasons = stop_reasons(purls(), Machine{}, {}, mine);
  CHECK(reasons[0].cause == StopCause::saving);
  CHECK(reasons[0].saves_ms == 2 * 4'500);  // one stop a row later, a knit rung more for each
  CHECK(stop_cause_name(StopCause::hand_cells) == "hand_cells");
  CHECK(stop_cause_name(static_cast<StopCause>(9)).empty());
}

TEST_CASE("what an unproven search or conditions leave open is not told as a fact", "[reason]") {
  const latchwork_test::Instance in = latchwork_test::instance_of("co-prime periods", 1);
  const Plan mine = plan(in.grid, in.machine, in.effort);
  PlanOptions short_work;
  short_work.work_limit = 1;
  int open = 0;
  for (const StopReason& reason : stop_reasons(in.grid, in.machine, in.effort, mine, short_work)) {
    CAPTURE(reason.row, reason.message);
    if (reason.cause != StopCause::saving) continue;
    CHECK(reason.saves_ms >= reason.least_saves_ms);
    if (reason.beside_ms >= 0) CHECK(reason.saves_ms <= reason.beside_ms);
    const bool proven = reason.saves_ms == reason.least_saves_ms;
    open += proven ? 0 : 1;
    CHECK(proven == (reason.message.find(" found without it (") == std::string::npos));
  }
  CHECK(open > 0);

  // Deep batches from the stop above could do without the one after row 2; batches of one row could not.
  PlanOptions shallow;
  shallow.conditions.max_depth = 1;
  const Plan two = plan(purls(), Machine{}, cheap_stops(), shallow);
  REQUIRE(two.stops.size() == 2);
  const auto reasons = stop_reasons(purls(), Machine{}, cheap_stops(), two, shallow);
  CHECK(reasons[0].cause == StopCause::hand_cells);
  CHECK(reasons[0].beside_ms == -1);
  CHECK(reasons[0].message == "the hand cells of row 2, column 1, can be made at no other stop under the conditions");
  CHECK(stop_reasons(purls(), Machine{}, cheap_stops(), two)[0].beside_ms == 8'000);
}

TEST_CASE("a stop that saves nothing says that a plan without it takes as long", "[reason]") {
  // With knit rungs that cost nothing, one stop does after row 4 or a row later.
  Effort free;
  free.rung_knit = free.drop = 0;
  const auto reasons = stop_reasons(purls(), Machine{}, free, plan(purls(), Machine{}, free));
  REQUIRE(reasons.size() == 1);
  CHECK(reasons[0].saves_ms == 0);
  CHECK(reasons[0].message == "the least plan without it takes as long; the other stops cannot do its works");
}

TEST_CASE("stops that do not rise within the panel have no reasons", "[reason][error]") {
  Plan spoiled = plan(purls(), Machine{});
  REQUIRE(spoiled.stops.size() == 1);
  for (const int row : {-5, 99}) {
    spoiled.stops[0].row = row;
    CHECK_THROWS_MATCHES(stop_reasons(purls(), Machine{}, {}, spoiled), Error,
                         refused(ErrorCode::bad_argument, latchwork_test::stop_place(0, row)));
  }
  spoiled.stops[0].row = 3;
  spoiled.stops.push_back(spoiled.stops[0]);
  CHECK_THROWS_MATCHES(stop_reasons(purls(), Machine{}, {}, spoiled), Error,
                       refused(ErrorCode::bad_argument, latchwork_test::stop_place(1, 3)));
}

TEST_CASE("the parts of a call share its time: the first leaves some to the others", "[choice][limits]") {
  // Without a limit the first plan takes minutes.
  const latchwork_test::Instance in = latchwork_test::instance_of("co-prime periods", 4);
  PlanOptions options;
  options.time_limit_ms = 300;
  options.conditions.closed_rows = {0};
  options.conditions.max_depth = 9;
  for (const ConditionPrice& price : condition_prices(in.grid, in.machine, in.effort, options)) {
    CAPTURE(static_cast<int>(price.condition));
    CHECK((price.status == PlanStatus::infeasible || price.total_ms > 0));
  }
}

TEST_CASE("tolerances are walked to from the greatest value that can be counted", "[reason]") {
  // 65536 rows of 20 stitches at an hour for whatever the panel has not: near the most milliseconds that are counted.
  Grid tall(65536, 20);
  tall.set(5, 10, Cell::purl);
  Effort dear;
  dear.crossing = dear.crossing_stitch = dear.shaping = 3'600'000;
  const Plan mine = plan(tall, Machine{}, dear);
  std::stop_source source;
  PlanOptions options;
  options.stop = source.get_token();
  options.progress = [&](const Progress& now) {
    if (now.share > 3.0 / 13) source.request_stop();  // stop and batch are enough
  };
  const Tolerance batch = tolerance_of(plan_tolerances(tall, Machine{}, dear, mine, options), EffortTerm::batch);
  CHECK(batch.least_ms == 0);
  CHECK(batch.most_ms > batch.value_ms);
  CHECK(batch.most_ms < 3'600'000);
  CHECK(!batch.most_exact);
  dear.batch = batch.most_ms + 1;
  CHECK_THROWS_MATCHES(plan(tall, Machine{}, dear), Error, refused_field(ErrorCode::too_large, "effort"));
}

TEST_CASE("less than nothing is saved by a stop that a plan has to spare", "[reason]") {
  // Two stops where one takes 6 s less.
  const Plan two = plan(purls(), Machine{}, cheap_stops());
  const auto reasons = stop_reasons(purls(), Machine{}, {}, two);
  REQUIRE(reasons.size() == 2);
  CHECK(reasons[0].saves_ms == -6'000);
  CHECK(reasons[0].beside_ms == -1);
  CHECK(reasons[0].message == "the least plan without it takes 6 s less");
}

TEST_CASE("a tile repeated upward is planned in its own period", "[reason]") {
  Grid tile(8, 6);
  tile.cross({.row = 4, .column = 1, .left = 2, .right = 2});
  tile.set(2, 2, Cell::purl);
  const Period period = plan_period(plan(tile.repeated_up(6), Machine{}));
  CHECK(period.rows == 8);
  CHECK(period.stops == 1);
  CHECK(period.times >= 5);
  CHECK(plan_period(plan(tile, Machine{})) == Period{});
  CHECK(plan_period(Plan{}) == Period{});
}

TEST_CASE("a plan whose stops do not rise within its rows has no period to tell", "[reason][error]") {
  Plan made;
  made.rows = 8;
  made.columns = 1;
  made.status = PlanStatus::feasible;
  made.stops.resize(2);
  for (const auto& [first, second] : {std::pair{4, 4}, std::pair{5, 4}, std::pair{4, 9}, std::pair{-2, -1}}) {
    made.stops[0].row = first;
    made.stops[1].row = second;
    CHECK_THROWS_MATCHES(plan_period(made), Error,
                         refused(ErrorCode::bad_argument, first < 0 ? latchwork_test::stop_place(0, first)
                                                                    : latchwork_test::stop_place(1, second)));
  }
  // An infeasible plan is none, whatever stops it has.
  made.status = PlanStatus::infeasible;
  CHECK(plan_period(made) == Period{});
  made.stops = {Stop{}, Stop{}, Stop{}};
  for (const int i : {0, 1, 2}) made.stops[static_cast<std::size_t>(i)].row = 2 * i + 2;
  CHECK(plan_period(made) == Period{});
  made.status = PlanStatus::feasible;
  CHECK(plan_period(made).rows == 2);
}

TEST_CASE("how far each cost may move is told to the millisecond", "[reason]") {
  // Two purls, one stop after row 4: 15 s + 2 x 12 s + 2 x 3 s + two knit rungs of 4.5 s. Stops after rows 2 and 4 take
  // 15 s more for the stop and 9 s less for the rungs.
  const Plan mine = plan(purls(), Machine{});
  const auto tolerances = plan_tolerances(purls(), Machine{}, {}, mine);
  REQUIRE(tolerances.size() == 12);
  CHECK(tolerance_of(tolerances, EffortTerm::stop) ==
        Tolerance{EffortTerm::stop, 15'000, 9'000, 3'600'000, true, true, true});
  CHECK(tolerance_of(tolerances, EffortTerm::rung_knit) ==
        Tolerance{EffortTerm::rung_knit, 4'000, 0, 7'000, true, true, true});
  CHECK(tolerance_of(tolerances, EffortTerm::drop) == Tolerance{EffortTerm::drop, 500, 0, 3'500, true, true, true});
  for (const EffortTerm term :
       {EffortTerm::batch, EffortTerm::rung_purl, EffortTerm::rung_tuck, EffortTerm::rung_slip, EffortTerm::hold,
        EffortTerm::crossing, EffortTerm::crossing_stitch, EffortTerm::shaping, EffortTerm::row}) {
    CHECK(tolerance_of(tolerances, term).least_ms == 0);
    CHECK(tolerance_of(tolerances, term).most_ms == 3'600'000);
  }
  const Plan other = plan(purls(), Machine{}, cheap_stops());
  CHECK_THROWS_MATCHES(plan_tolerances(purls(), Machine{}, {}, other), Error,
                       refused_field(ErrorCode::bad_argument, "plan"));
  // A plan for a purl elsewhere does not make this panel, though it may take as long.
  Grid moved(purls().rows(), purls().columns());
  for (int row = 1; row <= moved.rows(); ++row) {
    for (int column = 0; column < moved.columns(); ++column) {
      moved.set(row, column, purls().at(row, moved.columns() - 1 - column));
    }
  }
  REQUIRE(moved != purls());
  REQUIRE(plan(moved, Machine{}).total_ms == mine.total_ms);
  CHECK_THROWS_MATCHES(plan_tolerances(moved, Machine{}, {}, mine), Error,
                       refused_field(ErrorCode::bad_argument, "plan"));
  // Of the same size, but with a rope: its crossing is none of this panel's.
  Grid roped = purls();
  roped.cross({.row = 1, .column = 0, .left = 1, .right = 1});
  CHECK_THROWS_MATCHES(plan_tolerances(roped, Machine{}, {}, mine), Error,
                       refused_field(ErrorCode::bad_argument, "plan"));
}

TEST_CASE("where nobody has proven a plan the least, its tolerances say so", "[reason]") {
  const Grid grid = scattered(24, 12);
  PlanOptions cut;
  cut.work_limit = 1;
  const Plan rough = plan(grid, Machine{}, {}, cut);
  REQUIRE(rough.status == PlanStatus::feasible);
  for (const Tolerance& each : plan_tolerances(grid, Machine{}, {}, rough, cut)) {
    CHECK_FALSE(each.proven);
    CHECK(each.least_ms == each.value_ms);
    CHECK(each.most_ms == each.value_ms);
    CHECK_FALSE(each.least_exact);
    CHECK_FALSE(each.most_exact);
  }
}

TEST_CASE("calls of many plans tell a share that never falls, and can be stopped in the midst of a plan",
          "[choice][reason]") {
  const Grid grid = scattered(24, 12);
  const Plan mine = plan(grid, Machine{});
  REQUIRE(mine.status == PlanStatus::optimal);
  for (const ManyPlans& call : calls_of_many_plans(grid, Machine{}, {}, mine)) {
    CAPTURE(call.name);
    std::vector<double> shares;
    PlanOptions options;
    options.work_limit = 200'000;
    options.conditions.rows_apart = call.name == "prices" ? 2 : 0;
    options.conditions.closed_rows = std::vector<int>(call.name == "prices" ? 1 : 0, 3);
    options.progress = [&](const Progress& now) { shares.push_back(now.share); };
    call.make(options);
    CHECK(std::is_sorted(shares.begin(), shares.end()));
    CHECK(shares.front() >= 0);
    CHECK(shares.back() <= 1);
    // More than once a plan, so that a callback, which in C is the one way to stop, is heard within it.
    CHECK(shares.size() > 2 * mine.stops.size() / (call.name == "reasons" ? 1 : 3));
    for (const std::size_t heard : {std::size_t{1}, shares.size() / 2}) {
      std::stop_source source;
      options.stop = source.get_token();
      std::size_t told = 0;
      options.progress = [&](const Progress&) {
        if (++told == heard) source.request_stop();
      };
      call.make(options);
      CHECK(told >= heard);
      CHECK(told <= heard + mine.stops.size() + 24);  // each of the rest once, at most: nothing is planned any more
    }
    options.stop = {};
    options.progress = [](const Progress& now) {
      if (now.share > 0.5) throw std::runtime_error("enough");
    };
    if (shares.back() > 0.5) CHECK_THROWS_AS(call.make(options), std::runtime_error);
  }
}

TEST_CASE("a stopped call of many plans says what it does not know", "[choice][reason]") {
  const Grid grid = scattered(24, 12);
  const Plan mine = plan(grid, Machine{});
  std::stop_source source;
  source.request_stop();
  PlanOptions options;
  options.stop = source.get_token();
  for (const StopReason& reason : stop_reasons(grid, Machine{}, {}, mine, options)) {
    CHECK(reason.cause == StopCause::unknown);
    CHECK(!reason.message.empty());
  }
  options.conditions.rows_apart = 2;
  const auto prices = condition_prices(grid, Machine{}, {}, options);
  CHECK(prices == std::vector{ConditionPrice{Condition::rows_apart, PlanStatus::feasible, -1, -1, 0, -1},
                              ConditionPrice{Condition::all, PlanStatus::feasible, -1, -1, 0, -1}});
  // Stopped between two conditions, what was found before stays.
  std::stop_source later;
  options.stop = later.get_token();
  options.conditions.closed_rows = {1};
  options.progress = [&](const Progress& now) {
    if (now.share > 5.0 / 8) later.request_stop();  // in the midst of the second
  };
  const auto half = condition_prices(grid, Machine{}, {}, options);
  REQUIRE(half.size() == 3);
  CHECK(half[0].total_ms >= mine.total_ms);
  CHECK(half[0].status == PlanStatus::optimal);
  CHECK(half[2] == ConditionPrice{Condition::all, PlanStatus::feasible, -1, -1, half[2].least_price_ms, -1});
  CHECK(half[2].least_price_ms == std::max(half[0].least_price_ms, half[1].least_price_ms));
  options.conditions.rows_apart = -1;
  CHECK_THROWS_MATCHES(condition_prices(grid, Machine{}, {}, options), Error,
                       refused_field(ErrorCode::bad_argument, "options.conditions.rows_apart"));
}

TEST_CASE("calls of many plans keep to one time limit", "[choice][reason][limits]") {
  // Each without a limit takes minutes, and hundreds of milliseconds a plan.
  const latchwork_test::Instance in = latchwork_test::instance_of("co-prime periods", 4);
  PlanOptions cut;
  cut.work_limit = 2'000'000;
  const Plan mine = plan(in.grid, in.machine, in.effort, cut);
  for (const ManyPlans& call : calls_of_many_plans(in.grid, in.machine, in.effort, mine)) {
    if (call.name == "tolerances") continue;  // of a least plan only: below
    CAPTURE(call.name);
    PlanOptions options;
    options.time_limit_ms = 100;
    options.conditions.rows_apart = call.name == "prices" ? 2 : 0;
    options.conditions.max_kinds = call.name == "prices" ? 20 : 0;
    options.conditions.max_depth = call.name == "prices" ? 9 : 0;
    const auto before = std::chrono::steady_clock::now();
    call.make(options);
    CHECK(std::chrono::steady_clock::now() - before < std::chrono::seconds(3));
  }
}

TEST_CASE("a plan of another size is told before anything else is looked at", "[reason][error]") {
  const Plan mine = plan(purls(), Machine{});
  PlanOptions stopped;  // were anything planned, it would have to say that it was stopped
  std::stop_source source;
  source.request_stop();
  stopped.stop = source.get_token();
  stopped.conditions.max_kinds = 1;
  int told = 0;
  stopped.progress = [&](const Progress&) { ++told; };
  Effort negative;
  negative.stop = -1;
  const Grid wider(purls().rows(), purls().columns() + 1);
  const Grid taller(purls().rows() + 1, purls().columns());
  for (const Grid& grid : {wider, taller}) {
    for (const Effort& effort : {Effort{}, negative}) {
      CHECK_THROWS_MATCHES(plan_tolerances(grid, Machine{}, effort, mine, stopped), Error,
                           refused_field(ErrorCode::size_mismatch, "plan"));
      CHECK_THROWS_MATCHES(stop_reasons(grid, Machine{}, effort, mine, stopped), Error,
                           refused_field(ErrorCode::size_mismatch, "plan"));
    }
  }
  CHECK(told == 0);
}

TEST_CASE("rows that are closed or out of the panel are told", "[conditions]") {
  Grid grid(6, 6);
  grid.cross({.row = 3, .column = 1, .left = 1, .right = 1});
  PlanOptions options;
  options.conditions.closed_rows = {3};
  const Plan none = plan(grid, Machine{}, {}, options);
  REQUIRE(none.status == PlanStatus::infeasible);
  CHECK(none.findings[0].code == FindingCode::row_closed);
  CHECK(none.findings[0].place.row == 3);
  options.conditions.forced_exempt = true;
  CHECK(plan(grid, Machine{}, {}, options).status == PlanStatus::optimal);
  options.conditions.closed_rows = {7};
  CHECK_THROWS_MATCHES(plan(grid, Machine{}, {}, options), Error,
                       refused_field(ErrorCode::bad_argument, "options.conditions.closed_rows[0]"));
}
