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
#include "purl_panels.hpp"

namespace choice_test {

// By hand; a stop takes 15 s, a batch 12 s, a purl rung with its drop 3 s, a knit rung 4.5 s where nothing else is
// said.

using namespace latchwork;
using latchwork_test::cheap_stops;
using latchwork_test::purls;
using latchwork_test::refused_field;
using latchwork_test::scattered;

namespace {

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

TEST_CASE("rows that need not be apart have no price", "[choice][conditions]") {
  PlanOptions options;
  options.conditions.rows_apart = 1;
  CHECK(condition_prices(purls(), Machine{}, cheap_stops(), options).empty());
  options.conditions.max_depth = 2;
  const auto prices = condition_prices(purls(), Machine{}, cheap_stops(), options);
  REQUIRE(prices.size() == 2);
  CHECK(prices[0].condition == Condition::max_depth);
  options.conditions.rows_apart = 0;
  CHECK(condition_prices(purls(), Machine{}, cheap_stops(), options) == prices);
}

TEST_CASE("a price is told between what is proven of both plans, and is never below nothing", "[choice][conditions]") {
  // Cut so short that the plan without conditions is not proven, or takes more than one found under a condition.
  int open = 0;
  for (const std::uint64_t seed : {1U, 2U, 3U}) {
    const latchwork_test::Instance in = latchwork_test::instance_of("co-prime periods", seed);
    PlanOptions options;
    options.work_limit = 2'000'000;
    const Plan least = plan(in.grid, in.machine, in.effort, options);
    for (const int work : {1, 400'000}) {  // the limit of the whole call
      options.work_limit = work;
      options.conditions.max_depth = 9;
      options.conditions.closed_rows = {0};
      const auto prices = condition_prices(in.grid, in.machine, in.effort, options);
      REQUIRE(prices.size() == 3);
      std::int64_t plain = prices[0].total_ms - prices[0].price_ms;
      for (const ConditionPrice& price : prices) {
        CAPTURE(seed, work, static_cast<int>(price.condition), price.price_ms);
        if (price.status == PlanStatus::infeasible) continue;
        if (price.total_ms < 0) {  // the work was done before it was looked at
          CHECK(work == 1);
          CHECK(price.price_ms == -1);
          CHECK(price.most_price_ms == -1);
          continue;
        }
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

TEST_CASE("the parts of a call share its work: the first leaves some to the others", "[choice][limits]") {
  // Without a limit the first plan takes minutes. Time is shared in the same way, and by the clock: see one_call_test.
  const latchwork_test::Instance in = latchwork_test::instance_of("co-prime periods", 4);
  PlanOptions options;
  options.work_limit = 10'000'000;
  options.conditions.closed_rows = {0};
  options.conditions.max_depth = 9;
  for (const ConditionPrice& price : condition_prices(in.grid, in.machine, in.effort, options)) {
    CAPTURE(static_cast<int>(price.condition));
    CHECK((price.status == PlanStatus::infeasible || price.total_ms > 0));
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
    CHECK(shares.back() == 1.0);
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
  // What is had without a search it has, of so small a panel.
  options.conditions.rows_apart = 2;
  const auto prices = condition_prices(grid, Machine{}, {}, options);
  REQUIRE(prices.size() == 2);
  CHECK(prices[0].condition == Condition::rows_apart);
  CHECK(prices[1].condition == Condition::all);
  PlanOptions whole;
  whole.conditions = options.conditions;
  const std::int64_t least = plan(grid, Machine{}, {}, whole).total_ms;
  for (const ConditionPrice& price : prices) {
    CHECK(price.status == PlanStatus::feasible);
    CHECK(price.total_ms >= least);
    CHECK(price.price_ms >= 0);
    CHECK(price.least_price_ms <= least - mine.total_ms);
    CHECK(price.most_price_ms >= least - mine.total_ms);
    CHECK(price.total_ms == prices[0].total_ms);
  }
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
  CHECK(half[2].total_ms >= std::max(half[0].total_ms, half[1].total_ms));
  CHECK(half[2].least_price_ms >= std::max(half[0].least_price_ms, half[1].least_price_ms));
  options.conditions.rows_apart = -1;
  CHECK_THROWS_MATCHES(condition_prices(grid, Machine{}, {}, options), Error,
                       refused_field(ErrorCode::bad_argument, "options.conditions.rows_apart"));
}

TEST_CASE("prices that nobody had time for are those of all conditions at once, and none on a large panel",
          "[choice][limits]") {
  std::stop_source source;
  source.request_stop();
  PlanOptions options;
  options.stop = source.get_token();
  options.conditions.rows_apart = 3;
  options.conditions.max_depth = 4;
  const auto purled = [](int rows, int columns) {
    Grid grid(rows, columns);
    for (int row = 1; row <= rows; row += 3) grid.set(row, 1 + row % 5, Cell::purl);
    return grid;
  };
  // Of 120,000 cells there is time for one plan more: that under all conditions, which keeps each.
  const auto one = condition_prices(purled(300, 180), Machine{}, {}, options);
  const auto shared = condition_prices(purled(600, 200), Machine{}, {}, options);
  const auto none = condition_prices(purled(1'100, 200), Machine{}, {}, options);
  REQUIRE(one.size() == 3);
  REQUIRE(shared.size() == 3);
  for (const ConditionPrice& price : one) CHECK(price.total_ms > 0);
  for (const ConditionPrice& price : shared) CHECK(price.total_ms == shared.back().total_ms);
  CHECK(shared.back().total_ms > 0);
  CHECK(none == std::vector{ConditionPrice{Condition::rows_apart, PlanStatus::feasible, -1, -1, 0, -1},
                            ConditionPrice{Condition::max_depth, PlanStatus::feasible, -1, -1, 0, -1},
                            ConditionPrice{Condition::all, PlanStatus::feasible, -1, -1, 0, -1}});
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

}  // namespace choice_test
