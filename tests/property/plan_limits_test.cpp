// Ladders as deep as a panel, and limits as great as a number can be.
#include <algorithm>
#include <cstdint>
#include <limits>
#include <stop_token>
#include <string>

#include "catch.hpp"
#include "how_many.hpp"
#include "instances.hpp"
#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "plan_oracle.hpp"
#include "random.hpp"

namespace plan_limits_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

/// One wale of purls between two of knits.
Grid purl_rib(int rows) {
  Grid grid(rows, 3);
  for (int row = 1; row <= rows; ++row) grid.set(row, 1, Cell::purl);
  return grid;
}

}  // namespace

TEST_CASE("the deepest ladders of the tallest panel are planned, and keep to their time", "[plan][limits][property]") {
  const int rows = Grid::max_side;
  const Grid grid = purl_rib(rows);
  const Machine machine{.max_ladder = rows};
  PlanOptions options;
  options.time_limit_ms = 1;
  const Plan hurried = plan(grid, machine, {}, options);
  CHECK((hurried.status == PlanStatus::optimal) == (hurried.bound_ms == hurried.total_ms));
  // One stop at the top: each rung once, and nothing re-formed for nothing. No plan takes less.
  const Effort effort;
  const std::int64_t least = rows * (effort.row + effort.drop + effort.rung_purl) + effort.stop + effort.batch;
  CHECK(hurried.total_ms >= least);
  CHECK(hurried.bound_ms <= least);
  CHECK(hand_work(hurried).rungs_purl == rows);
  options.time_limit_ms = 0;
  options.work_limit = 1'000'000;
  const Plan counted = plan(grid, machine, {}, options);
  CHECK(counted.total_ms >= least);
  CHECK(counted == plan(grid, machine, {}, options));
}

TEST_CASE("with ladders as deep as the panel one stop serves all rows", "[plan][limits][property]") {
  for (const int rows : {1, 2, 40, 1500}) {
    const Plan made = plan(purl_rib(rows), {.max_ladder = rows});
    const Effort effort;
    CHECK(made.status == PlanStatus::optimal);
    REQUIRE(made.stops.size() == 1);
    CHECK(made.stops[0].row == rows);
    CHECK(made.total_ms == rows * (effort.row + effort.drop + effort.rung_purl) + effort.stop + effort.batch);
  }
}

TEST_CASE("plans at ladders of every depth take what a brute force finds", "[plan][limits][property]") {
  int planned = 0;
  for (std::uint64_t seed = 8'000'001; seed <= 8'000'300; ++seed) {
    Instance in = tiny_instance(seed);
    for (const int ladder : {1, 3, in.grid.rows(), Grid::max_side}) {
      in.machine.max_ladder = ladder;
      CAPTURE(seed, in.grid.to_text(), ladder, in.machine.cast_on_loops);
      const auto best = Brute{in}.best();
      const Plan made = plan(in.grid, in.machine, in.effort);
      REQUIRE((made.status != PlanStatus::infeasible) == best.has_value());
      if (best) REQUIRE(made.total_ms == *best);
      planned += best ? 1 : 0;
    }
  }
  CHECK(planned > 400);
}

TEST_CASE("a plan is called feasible only while its bound lies below it", "[plan][limits][property]") {
  int closed = 0;  // by a bound that reached the plan, or a pass that left nothing aside, before the limit
  int open = 0;
  const auto look = [&](const Plan& made, const Plan& least) {
    if (made.status == PlanStatus::infeasible) return;
    REQUIRE(made.bound_ms <= least.total_ms);
    REQUIRE(least.total_ms <= made.total_ms);
    REQUIRE((made.status == PlanStatus::optimal) == (made.bound_ms == made.total_ms));
    (made.status == PlanStatus::optimal ? closed : open) += 1;
  };
  for (const std::string& kind : instance_kinds()) {
    for (std::uint64_t seed = 1; seed <= 2; ++seed) {
      const Instance in = instance_of(kind, seed, kind == "200 classes" ? 12 : 40);
      PlanOptions sided;
      sided.conditions.carriage_right_only = true;
      const Plan least = plan(in.grid, in.machine, in.effort);
      const Plan regular = plan_regular(in.grid, in.machine, in.effort);
      const Plan least_sided = plan(in.grid, in.machine, in.effort, sided);
      for (const std::int64_t limit : {1, 1'000, 10'000, 30'000, 100'000, 300'000, 1'000'000}) {
        CAPTURE(kind, seed, limit);
        PlanOptions options;
        options.work_limit = limit;
        look(plan(in.grid, in.machine, in.effort, options), least);
        try {
          look(plan_regular(in.grid, in.machine, in.effort, options), regular);
          options.conditions = sided.conditions;
          look(plan(in.grid, in.machine, in.effort, options), least_sided);
        } catch (const Error& error) {
          REQUIRE(error.code() == ErrorCode::cancelled);
        }
      }
    }
  }
  CHECK(closed > 30);
  CHECK(open > 30);
  // Nothing to do by hand: what no schedule can change is all that there is.
  std::stop_source source;
  PlanOptions stopped;
  stopped.progress = [&](const Progress& now) {
    if (now.best_ms >= 0) source.request_stop();
  };
  stopped.stop = source.get_token();
  const Plan plain = plan_regular(Grid(40, 4), Machine{}, {}, stopped);
  CHECK(plain.status == PlanStatus::optimal);
  CHECK(plain.bound_ms == plain.total_ms);
}

TEST_CASE("with no time for prices a plan is one, and its bound is what no schedule goes below",
          "[plan][limits][property]") {
  for (const std::string& kind : instance_kinds()) {
    const Instance in = instance_of(kind, 3, 120);
    CAPTURE(kind);
    PlanOptions least_options;
    least_options.work_limit = 2'000'000;
    const Plan least = plan(in.grid, in.machine, in.effort, least_options);
    std::stop_source asked;
    asked.request_stop();
    PlanOptions stopped;
    stopped.stop = asked.get_token();
    PlanOptions hurried;
    hurried.time_limit_ms = 1;
    for (const PlanOptions& options : {stopped, hurried}) {
      const Plan made = plan(in.grid, in.machine, in.effort, options);
      REQUIRE(made.status != PlanStatus::infeasible);
      CHECK(verify(in.grid, made).verified);
      CHECK(made.bound_ms >= in.grid.rows() * in.effort.row);
      CHECK(made.bound_ms <= least.total_ms);
      CHECK(made.total_ms >= least.bound_ms);
      CHECK((made.status == PlanStatus::optimal) == (made.bound_ms == made.total_ms));
    }
  }
}

TEST_CASE("with any memory a plan of few kinds is one, and its bound is true", "[plan][kinds][limits][property]") {
  int found = 0;
  int cut = 0;
  const int count = how_many(40);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 8'100'000;
    const Instance in = tiny_instance(seed);
    const auto by_kinds = Brute{in}.by_kinds();
    if (!by_kinds || by_kinds->empty()) continue;
    for (const std::int64_t bytes : {1, 2'000, 20'000}) {
      for (int kinds = 1; kinds <= 3; ++kinds) {
        CAPTURE(seed, in.grid.to_text(), bytes, kinds);
        std::int64_t least = -1;
        for (const auto& [needed, total] : *by_kinds) {
          if (static_cast<int>(needed) <= kinds && (least < 0 || total < least)) least = total;
        }
        PlanOptions options;
        options.memory_limit = bytes;
        options.conditions.max_kinds = kinds;
        try {
          const Plan made = plan(in.grid, in.machine, in.effort, options);
          REQUIRE((made.status == PlanStatus::infeasible) == (least < 0));
          if (least < 0) continue;
          REQUIRE(made.bound_ms <= least);
          REQUIRE(least <= made.total_ms);
          REQUIRE((made.status == PlanStatus::optimal) == (made.bound_ms == made.total_ms));
          ++found;
          cut += made.status == PlanStatus::feasible ? 1 : 0;
        } catch (const Error& error) {
          REQUIRE(error.code() == ErrorCode::cancelled);
          ++cut;
        }
      }
    }
  }
  CHECK(found > count);
  CHECK((cut > 0 || count < 40));
}

TEST_CASE("a limit past the end of the clock or of any count is none", "[plan][limits][property]") {
  // A panel that takes more steps than pass between two looks at the clock.
  const Instance in = instance_of("tuck stacks", 2, 120);
  const Plan least = plan(in.grid, in.machine, in.effort);
  REQUIRE(least.status == PlanStatus::optimal);
  for (const std::int64_t limit :
       {std::int64_t{9'200'000'000'000}, std::int64_t{9'300'000'000'000},
        std::numeric_limits<std::int64_t>::max() / 1'000'000 + 1, std::numeric_limits<std::int64_t>::max()}) {
    CAPTURE(limit);
    PlanOptions timed;
    timed.time_limit_ms = limit;
    CHECK(plan(in.grid, in.machine, in.effort, timed) == least);
    CHECK(plan_regular(in.grid, in.machine, in.effort, timed) == plan_regular(in.grid, in.machine, in.effort));
  }
  PlanOptions counted;
  counted.work_limit = counted.memory_limit = counted.time_limit_ms = std::numeric_limits<std::int64_t>::max();
  CHECK(plan(in.grid, in.machine, in.effort, counted) == least);
  // Few kinds of stop: a search that is made wider as long as the limit has room.
  Random random(3);
  for (int i = 0; i < 20; ++i) {
    const Instance tiny = tiny_instance(static_cast<std::uint64_t>(random.between(1, 1'000'000)));
    counted.conditions.max_kinds = 2;
    PlanOptions plain;
    plain.conditions = counted.conditions;
    CHECK(plan(tiny.grid, tiny.machine, tiny.effort, counted) == plan(tiny.grid, tiny.machine, tiny.effort, plain));
  }
}

}  // namespace plan_limits_test
