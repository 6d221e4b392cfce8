#include "plan/kept.hpp"

#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/wale.hpp"
#include "plan/problem.hpp"
#include "plan_oracle.hpp"
#include "random.hpp"

namespace kept_conditions_test {

// Whoever hands in a plan hears whether it keeps the conditions; against the brute force of
// tests/support/plan_oracle.hpp, by plans made under others.

using namespace latchwork;
using namespace latchwork_test;

namespace {

Conditions all_conditions(Random& random, const Instance& in) {
  Conditions asked = random_conditions(random, in);
  if (random.one_in(3)) asked.max_kinds = random.between(1, 4);
  for (int i = random.one_in(2) ? random.between(1, 3) : 0; i > 0; --i) {
    asked.closed_rows.push_back(random.between(0, in.grid.rows()));
  }
  return asked;
}

/// Plans of one panel, each under other conditions.
std::vector<Plan> plans_of(Random& random, const Instance& in, const Conditions& asked) {
  std::vector<Conditions> under = {{}, asked, {.rows_apart = asked.rows_apart, .rhythms = asked.rhythms}};
  for (int i = 0; i < 2; ++i) under.push_back(all_conditions(random, in));
  std::vector<Plan> plans;
  for (const Conditions& conditions : under) {
    PlanOptions options;
    options.conditions = conditions;
    plans.push_back(plan(in.grid, in.machine, in.effort, options));
  }
  plans.push_back(plan_regular(in.grid, in.machine, in.effort));
  plans.push_back(plan_two_rhythms(in.grid, in.machine, in.effort).plan);
  return plans;
}

}  // namespace

TEST_CASE("whether a plan keeps conditions is told as a brute force tells it", "[plan][conditions][property]") {
  int kept = 0;
  int broken = 0;
  int by_rhythm = 0;
  int exempt = 0;
  const int count = how_many(500);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 9'500'000;
    Instance in = tiny_instance(seed);
    Random random(seed);
    if (random.one_in(2)) in.effort.stop = 0;  // then there are more of them
    const Conditions asked = all_conditions(random, in);
    const Brute brute{in, asked};
    const planning::Problem problem = planning::problem_of(in.grid, brute.wales, in.machine, in.effort);
    for (const Plan& mine : plans_of(random, in, asked)) {
      if (mine.status == PlanStatus::infeasible) continue;
      const auto by_stops = planning::broken_condition(mine, asked);
      const auto by_works = planning::broken_rhythm(mine, problem, brute.wales, asked);
      CAPTURE(seed, in.grid.to_text(), by_stops.value_or("-"), by_works.value_or("-"), asked.rows_apart,
              asked.forced_exempt, asked.max_depth, asked.max_kinds);
      REQUIRE(brute.keeps(mine) == (!by_stops && !by_works));
      (by_stops || by_works ? broken : kept) += 1;
      by_rhythm += by_works && !by_stops ? 1 : 0;
      exempt += !by_stops && asked.forced_exempt && asked.rows_apart > 1 ? 1 : 0;
    }
  }
  CHECK(kept > count / 4);
  CHECK(broken > count / 4);
  CHECK(by_rhythm > count / 20);
  CHECK(exempt > count / 20);
}

}  // namespace kept_conditions_test
