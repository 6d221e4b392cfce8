#include <algorithm>
#include <cstdlib>
#include <optional>
#include <string>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/plan.hpp"
#include "plan_oracle.hpp"

// Plans against the brute force of tests/support/plan_oracle.hpp.

using namespace latchwork;
using namespace latchwork_test;

namespace {

std::int64_t sum_of(const Plan& plan, const Effort& effort) {
  std::int64_t sum = plan.rows * effort.row;
  for (const Stop& stop : plan.stops) sum += stop.effort_ms;
  return sum;
}

}  // namespace

TEST_CASE("a plan takes what a brute force over all stop sets and batches takes", "[plan][property]") {
  int planned = 0;
  int barred = 0;
  int held = 0;
  const int count = how_many(20'000);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i);
    const Instance in = tiny_instance(seed);
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops);
    const auto best = Brute{in}.best();
    const Plan least = plan(in.grid, in.machine, in.effort);
    REQUIRE((least.status != PlanStatus::infeasible) == best.has_value());
    if (!best) {
      ++barred;
      REQUIRE(!least.findings.empty());
      REQUIRE(least.findings.front().severity == Severity::error);
      continue;
    }
    ++planned;
    REQUIRE(least.status == PlanStatus::optimal);
    REQUIRE(least.total_ms == *best);
    REQUIRE(least.bound_ms == least.total_ms);
    REQUIRE(sum_of(least, in.effort) == least.total_ms);
    const HandWork work = hand_work(least, in.effort);
    REQUIRE(work.hand_ms + work.carriage_ms == least.total_ms);
    held += work.holds;
  }
  // The panels try each case often enough to mean something.
  CHECK(planned > count / 3);
  CHECK(barred > count / 20);
  CHECK(held > count / 50);
}

TEST_CASE("the regular plan is the best of all rhythms, and no better than the best plan", "[plan][property]") {
  int found = 0;
  const int count = how_many(2000);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 1'000'000;
    const Instance in = tiny_instance(seed);
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops);
    const Brute brute{in};
    const auto [best, rhythm] =
        best_rhythm(in.grid.rows(), [&](const Rhythm& tried) { return brute.rhythm(tried.every, tried.first); });
    const Plan regular = plan_regular(in.grid, in.machine, in.effort);
    REQUIRE((regular.status != PlanStatus::infeasible) == best.has_value());
    if (!best) {
      REQUIRE(!regular.findings.empty());
      continue;
    }
    ++found;
    REQUIRE(regular.rhythm.has_value());
    REQUIRE(regular.total_ms == *best);
    REQUIRE(regular.rhythm->every == rhythm.every);
    REQUIRE(regular.rhythm->first == rhythm.first);
    REQUIRE(sum_of(regular, in.effort) == regular.total_ms);
    REQUIRE(regular.total_ms >= plan(in.grid, in.machine, in.effort).total_ms);
  }
  CHECK(found > count / 3);
}
