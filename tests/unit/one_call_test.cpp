// Looks inside: how calls of several plans share what limits them (src/plan/one_call.hpp).
#include "plan/one_call.hpp"

#include <algorithm>
#include <cstdint>
#include <stop_token>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/simulate.hpp"
#include "plan/few_kinds.hpp"
#include "plan/kinds.hpp"
#include "plan/limits.hpp"
#include "plan/problem.hpp"
#include "plan/solve.hpp"
#include "purl_panels.hpp"

namespace one_call_test {

using namespace latchwork;
using planning::OneCall;

TEST_CASE("parts of a call have as much of its time as they are of what is left", "[choice][limits]") {
  // So long that what passes in this test is none of it.
  constexpr std::int64_t hour = 3'600'000;
  PlanOptions options;
  options.time_limit_ms = 1'000 * hour;
  OneCall call(options);
  const auto is = [](std::int64_t ms, std::int64_t hours) { return ms <= hours * hour && ms > (hours - 1) * hour; };
  CHECK(is(call.part(0, 0.25).time_limit_ms, 250));
  CHECK(is(call.part(0.5, 0.75).time_limit_ms, 500));  // nothing is used yet: half of what is left
  CHECK(is(call.part(0.75, 1).time_limit_ms, 1'000));
  CHECK(is(call.keystone(0, 0.25).time_limit_ms, 1'000));
  CHECK(!call.ended());
}

TEST_CASE("parts of a call share its work, and what one leaves the next have", "[choice][limits]") {
  const Grid grid = latchwork_test::scattered(24, 12);
  PlanOptions options;
  options.work_limit = 40'000'000;
  OneCall call(options);
  const PlanOptions first = call.part(0, 0.25);
  CHECK(first.work_limit == 10'000'000);
  CHECK(first.time_limit_ms == 0);
  REQUIRE(call.plan(grid, Machine{}, {}, first).status == PlanStatus::optimal);
  const std::int64_t left = call.keystone(0.25, 1).work_limit;
  CHECK(left < 40'000'000);
  CHECK(left > 30'000'000);  // the panel is small
  CHECK(call.part(0.5, 0.75).work_limit == left / 2);
  CHECK(call.part(0.75, 1).work_limit == left);
  CHECK(!call.ended());

  // One step is done soon: then no further part begins.
  options.work_limit = 1;
  OneCall shortest(options);
  CHECK(!shortest.ended());
  CHECK(shortest.part(0, 0.01).work_limit == 1);
  static_cast<void>(shortest.plan(grid, Machine{}, {}, shortest.part(0, 0.01)));
  CHECK(shortest.ended());

  // What comes to nothing has been done as well.
  options.work_limit = 1'000'000;
  options.conditions.max_kinds = 1;
  OneCall in_vain(options);
  CHECK(in_vain.plan(grid, Machine{}, {}, in_vain.part(0, 0.5)).status == PlanStatus::infeasible);
  CHECK(in_vain.keystone(0.5, 1).work_limit < 1'000'000);
}

TEST_CASE("no part begins that the time left is too short to write up", "[choice][limits]") {
  PlanOptions options;
  options.time_limit_ms = 1'000'000'000;
  planning::Spent spent;
  planning::Limits limits(options, &spent);
  CHECK(spent.least_ms == 0);
  limits.keep_back(Grid(1, 1));
  CHECK(spent.least_ms > 0);  // a millisecond has begun
  CHECK(!limits.over());
  // Without a time limit the clock is not read.
  options.time_limit_ms = 0;
  planning::Spent none;
  planning::Limits counted(options, &none);
  counted.keep_back(Grid(1, 1));
  CHECK(none.least_ms == 0);
  counted.go_on(7);
  counted.go_on(5);
  CHECK(none.work == 12);
}

TEST_CASE(
    "the work limit of a call of many plans is the call's: the same again, and no more plans than it has room for",
    "[choice][reason][limits][long]") {
  const latchwork_test::Instance in = latchwork_test::instance_of("co-prime periods", 2, 60);
  const Plan mine = plan(in.grid, in.machine, in.effort);
  REQUIRE(mine.status == PlanStatus::optimal);
  int unknown = 0;
  int known = 0;
  for (const std::int64_t limit : {1, 100'000, 3'000'000}) {
    CAPTURE(limit);
    PlanOptions options;
    options.work_limit = limit;
    const auto reasons = stop_reasons(in.grid, in.machine, in.effort, mine, options);
    CHECK(reasons == stop_reasons(in.grid, in.machine, in.effort, mine, options));
    for (const StopReason& reason : reasons) (reason.cause == StopCause::unknown ? unknown : known) += 1;
    CHECK(plan_tolerances(in.grid, in.machine, in.effort, mine, options) ==
          plan_tolerances(in.grid, in.machine, in.effort, mine, options));
    CHECK(plan_front(in.grid, in.machine, in.effort, options) == plan_front(in.grid, in.machine, in.effort, options));
    options.conditions.rows_apart = 2;
    options.conditions.max_depth = 9;
    CHECK(condition_prices(in.grid, in.machine, in.effort, options) ==
          condition_prices(in.grid, in.machine, in.effort, options));
  }
  CHECK(unknown > 0);
  CHECK(known > 0);
}

// What a call does once it is stopped, or its time over, is on a large panel the reading of it, and what is had without
// a search. These count what is done, for a clock would tell of the machine.

TEST_CASE("the plans of a call read the panel once for all, and once more where wales keep their needles",
          "[choice][limits]") {
  std::stop_source source;
  source.request_stop();
  PlanOptions options;
  options.stop = source.get_token();
  const Grid grid = latchwork_test::scattered(24, 12);
  OneCall call(options);
  Conditions apart;
  apart.rows_apart = 2;
  Conditions kinds;
  kinds.max_kinds = 40;
  std::int64_t total_ms = 0;
  for (const Conditions& asked : {Conditions{}, apart, kinds, apart, kinds, Conditions{}}) {
    PlanOptions own = call.part(0, 0.5);
    own.conditions = asked;
    const Plan made = call.plan(grid, Machine{}, {}, own);
    CHECK(made.status != PlanStatus::infeasible);
    CHECK(verify(grid, made).verified);
    total_ms = made.total_ms;
  }
  CHECK(call.readings().times() == 2);
  // Shallower ladders and other efforts are other problems of the same panel.
  PlanOptions own = call.part(0, 0.5);
  own.conditions.max_depth = 3;
  static_cast<void>(call.plan(grid, Machine{}, {}, own));
  CHECK(call.readings().times() == 3);
  Effort dearer;
  dearer.stop += 1'000;
  const Plan other = call.plan(grid, Machine{}, dearer, call.part(0, 0.5));
  CHECK(call.readings().times() == 4);
  CHECK(other == plan(grid, Machine{}, dearer, call.part(0, 0.5)));
  // Asked for a total alone it writes nothing up, and says the same.
  call.ask_stops(false);
  const Plan bare = call.plan(grid, Machine{}, {}, call.part(0, 0.5));
  CHECK(bare.stops.empty());
  CHECK(bare.total_ms == total_ms);
}

TEST_CASE("of a schedule with too many kinds of stop no deed is numbered", "[kinds][limits]") {
  const Grid grid = latchwork_test::distinct_panel(60, 200, 1);
  const Wales wales(grid);
  PlanOptions options;
  planning::Limits limits(options);
  const planning::Problem problem =
      planning::problem_of(grid, wales, Machine{}, {}, &limits, planning::Lanes::in_place);
  const auto numbered = [&](std::size_t most) {
    planning::Deeds deeds(grid, wales);
    const auto forced = deeds.forced();
    planning::FewKinds few(problem, deeds, forced, most, limits);
    CHECK(!few.latest().empty());
    few.find_any(1'000'000);
    CHECK(few.best().found() == (most > 100));
    return deeds.numbered();
  };
  CHECK(numbered(4) == 0);
  CHECK(numbered(200) > 1'000);
}

TEST_CASE("a search that is stopped goes on for a schedule only where one is needed", "[plan][limits]") {
  const Grid grid = latchwork_test::scattered(24, 12);
  const Wales wales(grid);
  std::stop_source source;
  source.request_stop();
  PlanOptions options;
  options.stop = source.get_token();
  planning::Limits limits(options);
  const planning::Problem problem = planning::problem_of(grid, wales, Machine{}, {}, &limits);
  CHECK(planning::solve(problem, options, limits).found());
  CHECK(!planning::solve(problem, options, limits, planning::Late::has_none).found());
  // A count of work ends nothing early: the same on every machine.
  PlanOptions counted;
  counted.work_limit = 1;
  planning::Limits work(counted);
  const planning::Solved with = planning::solve(problem, counted, work);
  planning::Limits again(counted);
  const planning::Solved without = planning::solve(problem, counted, again, planning::Late::has_none);
  CHECK(with.found());
  CHECK(with.cost == without.cost);
  CHECK(with.bound == without.bound);
}

TEST_CASE("tolerances of a call that is over tell nothing of the plan, which is not looked at", "[reason][limits]") {
  const Grid grid = latchwork_test::scattered(24, 12);
  const Plan mine = plan(grid, Machine{});
  std::stop_source source;
  source.request_stop();
  PlanOptions options;
  options.stop = source.get_token();
  Plan spoiled = mine;
  spoiled.stops.back().reforms.back().rungs.back() = Cell::slip;
  REQUIRE(!verify(grid, spoiled).verified);
  for (const Tolerance& tolerance : plan_tolerances(grid, Machine{}, {}, mine, options)) {
    CHECK(!tolerance.proven);
    CHECK(!tolerance.least_exact);
    CHECK(!tolerance.most_exact);
    CHECK(tolerance.least_ms == tolerance.value_ms);
    CHECK(tolerance.most_ms == tolerance.value_ms);
  }
  CHECK_THROWS_AS(plan_tolerances(grid, Machine{}, {}, spoiled), Error);
}

TEST_CASE("what some ends of tolerances leave of a limit, others that need more have", "[reason][limits]") {
  const latchwork_test::Instance in = latchwork_test::instance_of("panels", 4, 60);
  const Plan mine = plan(in.grid, in.machine, in.effort);
  REQUIRE(mine.status == PlanStatus::optimal);
  const auto tolerances = [&](std::int64_t work_limit) {
    PlanOptions options;
    options.work_limit = work_limit;
    return plan_tolerances(in.grid, in.machine, in.effort, mine, options);
  };
  const auto open = [](const std::vector<Tolerance>& all) {
    return std::ranges::count_if(all, [](const Tolerance& one) { return !one.least_exact || !one.most_exact; });
  };
  const std::vector<Tolerance> known = tolerances(0);
  CHECK(open(known) == 0);
  CHECK(tolerances(256'000) == known);  // in equal shares seven of its ends would be left
  CHECK(open(tolerances(64'000)) > 0);
  // Each purl and slip is re-formed once, whatever the plan.
  for (const Tolerance& one : known) {
    if (one.term != EffortTerm::rung_purl && one.term != EffortTerm::rung_slip) continue;
    CHECK(one.least_ms == 0);
    CHECK(one.most_ms == 3'600'000);
  }
}

}  // namespace one_call_test
