// Plans that are had without a search: what is left of a call that a limit ends at once.
#include <algorithm>
#include <cstdint>
#include <functional>
#include <optional>
#include <stop_token>
#include <string>

#include "catch.hpp"
#include "latchwork/error.hpp"
#include "latchwork/simulate.hpp"
#include "plan_oracle.hpp"
#include "random.hpp"

namespace plan_begun_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

PlanOptions stopped(const Conditions& asked) {
  std::stop_source source;
  source.request_stop();
  PlanOptions options;
  options.conditions = asked;
  options.stop = source.get_token();
  return options;
}

PlanOptions counted(const Conditions& asked, std::int64_t work) {
  PlanOptions options;
  options.conditions = asked;
  options.work_limit = work;
  return options;
}

struct Tally {
  int plans = 0;
  int infeasible = 0;
  int missed = 0;  // ended without a plan, though there is one
};

/// Plans so and looks at what it gives, where `least` is the least total that keeps what is asked, if any does.
void look(Tally& tally, const Brute& brute, const std::optional<std::int64_t>& least,
          const std::function<Plan(const PlanOptions&)>& planned, const PlanOptions& options) {
  try {
    const Plan made = planned(options);
    if (made.status == PlanStatus::infeasible) {
      REQUIRE(!least);
      REQUIRE(!made.findings.empty());
      ++tally.infeasible;
      return;
    }
    REQUIRE(least);
    REQUIRE(made.total_ms >= *least);
    REQUIRE(made.bound_ms <= *least);
    REQUIRE((made.status == PlanStatus::optimal) == (made.bound_ms == made.total_ms));
    REQUIRE(brute.keeps(made));
    REQUIRE(verify(brute.in.grid, made).verified);
    const HandWork work = hand_work(made, brute.in.effort);
    REQUIRE(work.hand_ms + work.carriage_ms == made.total_ms);
    ++tally.plans;
  } catch (const Error& error) {
    REQUIRE(error.code() == ErrorCode::cancelled);
    tally.missed += least ? 1 : 0;
  }
}

}  // namespace

TEST_CASE("a call that is ended at once has a plan that keeps the conditions", "[plan][conditions][limits][property]") {
  Tally at_once;
  Tally soon;
  const int count = how_many(1000);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 2'500'000;
    const Instance in = tiny_instance(seed);
    Random random(seed);
    Conditions asked = random_conditions(random, in);
    if (random.one_in(4)) asked.closed_rows = {random.between(0, in.grid.rows())};
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops, asked.carriage_right_only,
            asked.rows_apart, asked.max_depth, asked.closed_rows, asked.forced_exempt, asked.rhythms.size());
    const Brute brute{in, asked};
    const auto least = brute.least();
    const auto planned = [&](const PlanOptions& options) { return plan(in.grid, in.machine, in.effort, options); };
    look(at_once, brute, least, planned, stopped(asked));
    for (const std::int64_t work : {1, 100, 1'000}) look(soon, brute, least, planned, counted(asked, work));
  }
  CAPTURE(at_once.plans, at_once.infeasible, at_once.missed, soon.plans, soon.infeasible, soon.missed);
  CHECK(at_once.plans > count / 5);
  CHECK(at_once.infeasible > count / 20);
  CHECK((at_once.missed == 0 || at_once.missed < at_once.plans / 100));
  CHECK(soon.plans > count / 2);
  CHECK((soon.missed == 0 || soon.missed < soon.plans / 100));
}

TEST_CASE("a call for rhythms that is ended at once has one that keeps the conditions",
          "[plan][conditions][rhythm][limits][property]") {
  Tally alone;
  Tally asked_for;
  const int count = how_many(600);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 9'500'000;
    const Instance in = tiny_instance(seed);
    Random random(seed);
    const Conditions asked = random_conditions(random, in);
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops);
    for (const Conditions& conditions : {Conditions{}, asked}) {
      const Brute brute{in, conditions};
      for (const bool apart : {false, true}) {
        const auto best =
            best_rhythm(in.grid.rows(), [&](const Rhythm& tried) { return brute.total_in(tried, apart); });
        const auto planned = [&](const PlanOptions& options) {
          return apart ? plan_two_rhythms(in.grid, in.machine, in.effort, options).plan
                       : plan_regular(in.grid, in.machine, in.effort, options);
        };
        Tally& tally = conditions == Conditions{} ? alone : asked_for;
        look(tally, brute, best.total, planned, stopped(conditions));
        look(tally, brute, best.total, planned, counted(conditions, 1));
      }
    }
  }
  CAPTURE(alone.plans, alone.missed, asked_for.plans, asked_for.missed);
  CHECK(alone.plans > count);
  CHECK(alone.missed < alone.plans / 50);
  CHECK(asked_for.plans > count / 2);
  CHECK(asked_for.missed < asked_for.plans / 20);
}

TEST_CASE("on panels of a person's size, too, a call that is ended at once has a plan under conditions",
          "[plan][conditions][limits][property]") {
  int plans = 0;
  int ended = 0;
  for (const std::string& kind : instance_kinds()) {
    const Instance in = instance_of(kind, 2, 60);
    for (const int apart : {0, 2, 4, 6}) {
      for (const bool rhythm : {false, true}) {
        CAPTURE(kind, apart, rhythm);
        Conditions asked;
        asked.forced_exempt = true;
        asked.rows_apart = apart;
        if (rhythm) asked.rhythms.push_back({1, 0, in.grid.columns() / 3, {}});
        try {
          const Plan made = plan(in.grid, in.machine, in.effort, stopped(asked));
          if (made.status == PlanStatus::infeasible) continue;
          REQUIRE(verify(in.grid, made).verified);
          REQUIRE(made.bound_ms <= made.total_ms);
          int last = -1;
          for (const Stop& stop : made.stops) {
            const bool forced = !stop.crossings.empty() || !stop.shapings.empty();
            if (!forced && last >= 0) REQUIRE(stop.row - last >= apart);
            last = stop.row;
          }
          ++plans;
        } catch (const Error& error) {
          REQUIRE(error.code() == ErrorCode::cancelled);
          // Then a search finds none either.
          try {
            REQUIRE(plan(in.grid, in.machine, in.effort, counted(asked, 300'000)).status == PlanStatus::infeasible);
          } catch (const Error& again) {
            REQUIRE(again.code() == ErrorCode::cancelled);
          }
          ++ended;
        }
      }
    }
  }
  CAPTURE(plans, ended);
  CHECK(plans > 40);
}

}  // namespace plan_begun_test
