#include <algorithm>
#include <cstdlib>
#include <optional>
#include <string>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/plan.hpp"
#include "plan_oracle.hpp"

namespace plan_brute_force_test {

// Plans against the brute force of tests/support/plan_oracle.hpp.

using namespace latchwork;
using namespace latchwork_test;

namespace {

std::int64_t sum_of(const Plan& plan, const Effort& effort) {
  std::int64_t sum = plan.rows * effort.row;
  for (const Stop& stop : plan.stops) sum += stop.effort_ms;
  return sum;
}

/// The fewest stops, and how many sets of them there are, with which a panel takes just so long.
struct Tie {
  std::size_t fewest = 0;
  int sets = 0;
};

Tie tie_at(const Brute& brute, std::int64_t total) {
  Tie tie;
  for (const std::vector<bool>& stops : brute.stop_sets()) {
    const auto count = static_cast<std::size_t>(std::count(stops.begin(), stops.end(), true));
    std::optional<std::int64_t> mine = brute.fixed() + static_cast<std::int64_t>(count) * brute.in.effort.stop;
    for (const Wale& wale : brute.wales.all()) {
      const auto cost = mine ? brute.rest(wale, wale.row - 1, stops) : std::nullopt;
      mine = cost ? std::optional(*mine + *cost) : std::nullopt;
    }
    if (mine != total) continue;
    tie.fewest = tie.sets == 0 ? count : std::min(tie.fewest, count);
    ++tie.sets;
  }
  return tie;
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
      for (const Finding& finding : least.findings) {
        REQUIRE(finding.severity == Severity::error);
        // In the panel, and where hand work, a crossing or the edge of the cloth bars it.
        REQUIRE(finding.place.row >= 1);
        REQUIRE(finding.place.row <= in.grid.rows());
        REQUIRE(finding.place.column >= 0);
        REQUIRE(finding.place.column < in.grid.columns());
      }
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

TEST_CASE("one stop is made rather than two that take as long, at the lowest row that serves",
          "[plan][ties][property]") {
  for (int apart = 1; apart <= 10; ++apart) {
    // Two purls so many rows apart: done at one stop, one of them takes so many knit rungs; at two, a stop.
    Grid grid(14, 6);
    grid.set(2, 1, Cell::purl);
    grid.set(2 + apart, 3, Cell::purl);
    Effort effort;
    effort.stop = apart * (effort.drop + effort.rung_knit);
    CAPTURE(apart);
    const std::int64_t least = plan(grid, {}, effort).total_ms;
    CHECK(least == 14 * effort.row + 2 * (effort.batch + effort.drop + effort.rung_purl + effort.stop));
    CHECK(plan(grid, {}, effort).stops.size() == 1);
    ++effort.stop;
    CHECK(plan(grid, {}, effort).stops.size() == 1);
    effort.stop -= 2;
    CHECK(plan(grid, {}, effort).stops.size() == 2);
    // Where rungs take no time, every stop from the upper purl's on takes as long.
    effort = {};
    effort.drop = effort.rung_knit = 0;
    const Plan free = plan(grid, {}, effort);
    REQUIRE(free.stops.size() == 1);
    CHECK(free.stops[0].row == 2 + apart);
  }
}

TEST_CASE("of plans that take as long, one with the fewest stops is told, as a rule", "[plan][ties][property]") {
  // Not always: once it is proven that none takes less, the search ends. By chance it would be every other one.
  int tied = 0;
  int fewest = 0;
  const int count = how_many(20'000);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i);
    const Instance in = tiny_instance(seed);
    if (in.effort.stop == 0) continue;  // any stops do then
    const Plan least = plan(in.grid, in.machine, in.effort);
    if (least.status == PlanStatus::infeasible) continue;
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder);
    const Tie tie = tie_at(Brute{in}, least.total_ms);
    REQUIRE(tie.sets > 0);
    REQUIRE(least.stops.size() >= tie.fewest);
    if (tie.sets == 1) continue;
    ++tied;
    fewest += least.stops.size() == tie.fewest ? 1 : 0;
  }
  CAPTURE(tied, fewest);
  CHECK(tied > count / 200);
  CHECK(4 * fewest >= 3 * tied);
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

}  // namespace plan_brute_force_test
