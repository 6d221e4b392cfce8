#include <cstdint>
#include <string>

#include "catch.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "random.hpp"
#include "random_grid.hpp"
#include "soonest_plan.hpp"

namespace simulate_panels_test {

using namespace latchwork;
using latchwork_test::Random;
using latchwork_test::RandomGridOptions;
using latchwork_test::soonest_plan;

namespace {

Grid random_panel(Random& random) {
  RandomGridOptions options;
  options.rows = random.between(1, 12);
  options.columns = random.between(1, 12);
  options.plain_edges = random.one_in(2);
  options.max_stack = random.between(1, 4);
  options.one_in_hole = random.one_in(3) ? 12 : 0;
  return latchwork_test::random_grid(random, options);
}

/// A bare centre lies nowhere that could be told: it is read as `between`.
Grid told(const Grid& grid) {
  Grid result = grid;
  for (Crossing crossing : grid.crossings()) {
    if (crossing.centre == 0 || grid.at(crossing.row, crossing.column + crossing.left) != Cell::none) continue;
    result.uncross(crossing.row, crossing.column);
    crossing.place = Centre::between;
    result.cross(crossing);
  }
  return result;
}

}  // namespace

TEST_CASE("any panel, worked at the soonest stops, is read back as it is drawn", "[simulate][property]") {
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Grid grid = random_panel(random);
    int leftmost = random.between(-15, 5);
    if (leftmost == 0) leftmost = 1;
    const Plan plan = soonest_plan(grid, leftmost, random.one_in(2));
    const Verification verification = verify(grid, plan);
    INFO(grid.to_text());
    INFO(verification.message);
    REQUIRE(verification.verified);
    CHECK(verification.message == "verified");
    CHECK(verification.difference == Place{});
    const Fabric fabric = simulate({.leftmost = plan.leftmost, .columns = plan.columns}, moves(plan));
    REQUIRE(fabric.grid);
    CHECK(*fabric.grid == told(grid));
    CHECK(fabric.loops == verification.loops);
  }
}

TEST_CASE("a plan for one panel verifies no other", "[simulate][property]") {
  int others = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    RandomGridOptions options{.rows = 4, .columns = 5};
    const Grid one = told(latchwork_test::random_grid(random, options));
    const Grid other = told(latchwork_test::random_grid(random, options));
    CHECK(verify(other, soonest_plan(one, 1)).verified == (one == other));
    others += one == other ? 0 : 1;
  }
  CHECK(others > 1000);
}

TEST_CASE("whatever the planner plans is read back as it is drawn", "[simulate][plan][property]") {
  int planned = 0;
  int regular = 0;
  for (std::uint64_t seed = 1; seed <= 250; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Grid grid = random_panel(random);
    Machine machine;
    machine.max_ladder = random.between(2, 12);
    machine.prongs = random.one_in(2) ? std::vector{1, 2, 3} : std::vector{1};
    Effort effort;
    effort.stop = random.between(0, 60) * 1000;
    effort.batch = random.between(0, 20) * 1000;
    effort.hold = random.between(0, 6) * 1000;
    INFO(grid.to_text());
    for (const Plan& made : {plan(grid, machine, effort), plan_regular(grid, machine, effort)}) {
      if (made.status == PlanStatus::infeasible) continue;
      ++(made.rhythm ? regular : planned);
      const Verification verification = verify(grid, made);
      INFO(verification.message);
      CHECK(verification.verified);
    }
  }
  CHECK(planned > 50);
  CHECK(regular > 20);
}

}  // namespace simulate_panels_test
