// Bounds under conditions: what binds all plans binds those that keep them, wherever a call is cut short.
#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/certificate.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"

namespace plan_bound_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

PlanOptions counted(std::int64_t work, const Conditions& asked = {}) {
  PlanOptions options;
  options.work_limit = work;
  options.conditions = asked;
  return options;
}

/// None where the call ended before it had a plan.
std::optional<Plan> planned(const Instance& in, const PlanOptions& options) {
  try {
    return plan(in.grid, in.machine, in.effort, options);
  } catch (const Error& error) {
    REQUIRE(error.code() == ErrorCode::cancelled);
    return {};
  }
}

Conditions open_rhythm(const Instance& in) {
  Conditions asked;
  asked.forced_exempt = true;
  asked.rhythms = {{1, 0, in.grid.columns() / 3, {}}};
  return asked;
}

std::vector<Conditions> all_asked(const Instance& in) {
  std::vector<Conditions> all(4, open_rhythm(in));
  all[1].rows_apart = 2;
  all[2].max_kinds = 30;
  all[3].rhythms.clear();
  all[3].max_kinds = 30;
  Conditions apart;
  apart.forced_exempt = true;
  apart.rows_apart = 3;
  all.push_back(apart);
  return all;
}

}  // namespace

TEST_CASE("wherever a plan under conditions is cut short, it is bound by what prices prove of all plans",
          "[plan][conditions][limits][property][long]") {
  int cut = 0;
  for (const std::string& kind : instance_kinds()) {
    const Instance in = instance_of(kind, 2, 40);
    // One step of work: prices, and no search.
    const std::int64_t of_all = plan(in.grid, in.machine, in.effort, counted(1)).bound_ms;
    const Plan least = plan(in.grid, in.machine, in.effort, counted(30'000'000));
    REQUIRE(of_all <= least.total_ms);
    REQUIRE(of_all > in.grid.rows() * in.effort.row);
    for (const Conditions& asked : all_asked(in)) {
      std::int64_t best = -1;
      std::vector<Plan> made;
      for (const std::int64_t work : {1, 1'000, 20'000, 100'000, 1'000'000}) {
        CAPTURE(kind, work, asked.rhythms.size(), asked.max_kinds, asked.rows_apart);
        const auto found = planned(in, counted(work, asked));
        CHECK(found == planned(in, counted(work, asked)));
        if (!found || found->status == PlanStatus::infeasible) continue;
        CHECK(found->bound_ms >= of_all);
        CHECK((found->status == PlanStatus::optimal) == (found->bound_ms == found->total_ms));
        if (best < 0 || found->total_ms < best) best = found->total_ms;
        cut += found->status == PlanStatus::feasible ? 1 : 0;
        made.push_back(*found);
      }
      for (const Plan& each : made) CHECK(each.bound_ms <= best);
    }
  }
  CHECK(cut > 60);
}

TEST_CASE("an open rhythm that is cut short is bound as the plain plan is, and certified as that is",
          "[plan][conditions][certificate][limits][property]") {
  const Instance in = instance_of("random", 1, 120);
  const Conditions asked = open_rhythm(in);
  const Plan plain = plan(in.grid, in.machine, in.effort, counted(100'000));
  const auto kept = planned(in, counted(100'000, asked));
  REQUIRE(kept);
  REQUIRE(kept->status == PlanStatus::feasible);
  CHECK(kept->bound_ms >= plain.bound_ms * 99 / 100);
  CHECK(kept->bound_ms <= kept->total_ms);
  // A certificate looks at no conditions: what it proves of all plans is what binds these.
  const Certificate proof = certify(in.grid, in.machine, in.effort, kept->bound_ms);
  CHECK(proof.bound_ms >= kept->bound_ms);
  CHECK(check_certificate(in.grid, in.machine, in.effort, proof).holds);
  // So are the points of a front, and a price.
  const Front front = plan_front(in.grid, in.machine, in.effort, counted(100'000, asked));
  REQUIRE(!front.points.empty());
  for (const FrontPoint& point : front.points) CHECK(point.plan.bound_ms >= plain.bound_ms * 99 / 100);
  const auto prices = condition_prices(in.grid, in.machine, in.effort, counted(100'000, asked));
  REQUIRE(prices.size() == 2);
  CHECK(prices.back().least_price_ms <= prices.back().price_ms);
}

TEST_CASE("told of an open rhythm, progress has the bound of all plans from the first trial on",
          "[plan][conditions][limits][property]") {
  const Instance in{"brief", "", brief_panel(60), {}, {}};
  const std::int64_t of_all = plan(in.grid, in.machine, in.effort, counted(1)).bound_ms;
  PlanOptions options = counted(8'000'000, open_rhythm(in));
  std::int64_t told = 0;
  int times = 0;
  options.progress = [&](const Progress& now) {
    ++times;
    CHECK(now.bound_ms >= told);
    told = now.bound_ms;
  };
  const Plan made = plan(in.grid, in.machine, in.effort, options);
  CHECK(times > 1);
  CHECK(told == made.bound_ms);
  CHECK(told >= of_all);
}

}  // namespace plan_bound_test
