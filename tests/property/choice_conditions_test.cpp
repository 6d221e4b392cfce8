#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/simulate.hpp"
#include "plan_oracle.hpp"
#include "random.hpp"

namespace choice_conditions_test {

// What a knitter chooses from under several conditions at once, against the brute force of
// tests/support/plan_oracle.hpp.

using namespace latchwork;
using namespace latchwork_test;

namespace {

const std::vector<std::int64_t Effort::*> effort_fields = {
    &Effort::stop,      &Effort::batch,     &Effort::drop,     &Effort::rung_knit,       &Effort::rung_purl,
    &Effort::rung_tuck, &Effort::rung_slip, &Effort::crossing, &Effort::crossing_stitch, &Effort::hold,
    &Effort::shaping,   &Effort::row};

/// Several at once, closed rows and a second rhythm too; no kinds of stop.
Conditions several(Random& random, const Instance& in) {
  Conditions asked = random_conditions(random, in);
  if (random.one_in(2)) asked.closed_rows = {random.between(0, in.grid.rows())};
  if (asked.rhythms.empty() || !random.one_in(3)) return asked;
  KeptRhythm second;
  second.row = random.between(1, in.grid.rows());
  second.first_column = second.last_column = random.between(0, in.grid.columns() - 1);
  second.rhythm = Rhythm{random.between(1, 4), random.between(1, 3)};
  asked.rhythms.push_back(second);
  return asked;
}

/// Nothing where the conditions themselves are refused: a wale in two rhythms.
std::optional<Plan> planned(const Instance& in, const PlanOptions& options) {
  try {
    return plan(in.grid, in.machine, in.effort, options);
  } catch (const Error& error) {
    if (error.code() != ErrorCode::bad_argument) throw;
    REQUIRE(error.place().field.starts_with("options.conditions.rhythms"));
    return {};
  }
}

std::int64_t total_of(const Plan& plan, const Effort& effort) {
  const HandWork work = hand_work(plan, effort);
  return work.hand_ms + work.carriage_ms;
}

Conditions only(const Conditions& asked, Condition condition) {
  Conditions one;
  one.forced_exempt = asked.forced_exempt;
  if (condition == Condition::all) return asked;
  if (condition == Condition::carriage_right_only) one.carriage_right_only = asked.carriage_right_only;
  if (condition == Condition::rows_apart) one.rows_apart = asked.rows_apart;
  if (condition == Condition::max_depth) one.max_depth = asked.max_depth;
  if (condition == Condition::max_kinds) one.max_kinds = asked.max_kinds;
  if (condition == Condition::rhythms) one.rhythms = asked.rhythms;
  if (condition == Condition::closed_rows) one.closed_rows = asked.closed_rows;
  return one;
}

}  // namespace

TEST_CASE("under conditions a plan is a least one between its tolerances, and right outside it is none",
          "[reason][conditions][property]") {
  int ends = 0;
  const int count = how_many(150);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 7'200'000;
    const Instance in = tiny_instance(seed);
    Random random(seed);
    PlanOptions options;
    options.conditions = several(random, in);
    CAPTURE(seed, in.grid.to_text());
    const auto mine = planned(in, options);
    if (!mine || mine->status == PlanStatus::infeasible) continue;
    REQUIRE(mine->status == PlanStatus::optimal);
    const auto tolerances = plan_tolerances(in.grid, in.machine, in.effort, *mine, options);
    for (std::size_t k = 0; k < effort_fields.size(); ++k) {
      const Tolerance& told = tolerances.at(k);
      const auto gap = [&](std::int64_t value) {
        Instance moved = in;
        moved.effort.*effort_fields[k] = value;
        return total_of(*mine, moved.effort) - Brute{moved, options.conditions}.least().value();
      };
      CAPTURE(effort_term_name(told.term), told.least_ms, told.value_ms, told.most_ms);
      REQUIRE(told.proven);
      REQUIRE(gap(told.least_ms) == 0);
      REQUIRE(gap(told.most_ms) == 0);
      if (told.least_ms > 0) REQUIRE((told.least_exact && gap(told.least_ms - 1) > 0));
      if (told.most_ms < 3'600'000) REQUIRE((told.most_exact && gap(told.most_ms + 1) > 0));
      ends += (told.least_ms > 0 ? 1 : 0) + (told.most_ms < 3'600'000 ? 1 : 0);
    }
  }
  CHECK(ends > count / 8);
}

TEST_CASE("under conditions a stop saves what a brute force without it takes more", "[reason][conditions][property]") {
  int saving = 0;
  int needed = 0;
  const int count = how_many(250);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 6'200'000;
    const Instance in = tiny_instance(seed);
    Random random(seed);
    PlanOptions options;
    options.conditions = several(random, in);
    CAPTURE(seed, in.grid.to_text());
    const auto mine = planned(in, options);
    if (!mine || mine->status == PlanStatus::infeasible) continue;
    for (const StopReason& reason : stop_reasons(in.grid, in.machine, in.effort, *mine, options)) {
      if (reason.cause == StopCause::crossing || reason.cause == StopCause::shaping) continue;
      CAPTURE(reason.row, reason.message);
      Conditions closed = options.conditions;
      closed.closed_rows.push_back(reason.row);
      const auto without = Brute{in, closed}.least();
      REQUIRE(reason.cause == (without ? StopCause::saving : StopCause::hand_cells));
      (without ? saving : needed) += 1;
      if (!without) continue;
      REQUIRE(reason.saves_ms == *without - mine->total_ms);
      REQUIRE(reason.least_saves_ms == reason.saves_ms);
      REQUIRE((reason.beside_ms == -1 || options.conditions == Conditions{}));
    }
    // Of a plan that minds nothing, under the same: there is a plan, so that each of its stops has a reason.
    const Plan free = plan(in.grid, in.machine, in.effort);
    REQUIRE(stop_reasons(in.grid, in.machine, in.effort, free, options).size() == free.stops.size());
  }
  CHECK(saving >= count / 20);
  CHECK(needed >= count / 20);
}

TEST_CASE("few kinds beside all other conditions take what a brute force finds",
          "[plan][conditions][kinds][property]") {
  int some = 0;
  int none = 0;
  const int count = how_many(700);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 8'200'000;
    const Instance in = tiny_instance(seed);
    Random random(seed);
    PlanOptions options;
    options.conditions = several(random, in);
    options.conditions.max_kinds = random.between(1, 3);
    CAPTURE(seed, in.grid.to_text(), options.conditions.max_kinds);
    const auto mine = planned(in, options);
    if (!mine) continue;
    const Brute brute{in, options.conditions};
    const Brute::Least least = brute.least_of_all();
    if (!least.known) continue;
    REQUIRE((mine->status == PlanStatus::infeasible) == !least.total);
    (least.total ? some : none) += 1;
    if (!least.total) continue;
    REQUIRE(mine->status == PlanStatus::optimal);
    REQUIRE(mine->total_ms == *least.total);
    REQUIRE(brute.keeps(*mine));
    REQUIRE(verify(in.grid, *mine).verified);
  }
  CHECK(some >= count / 10);
  CHECK(none >= count / 10);
}

TEST_CASE("the price of every condition is what a brute force under it takes more", "[choice][conditions][property]") {
  std::vector<int> exact(static_cast<std::size_t>(Condition::all) + 1, 0);
  const int count = how_many(300);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 5'400'000;
    const Instance in = tiny_instance(seed);
    const auto plain = Brute{in}.best();
    if (!plain) continue;
    Random random(seed);
    PlanOptions options;
    options.conditions = several(random, in);
    if (random.one_in(3)) options.conditions.max_kinds = random.between(1, 4);
    if (!planned(in, options)) continue;
    for (const ConditionPrice& price : condition_prices(in.grid, in.machine, in.effort, options)) {
      CAPTURE(seed, in.grid.to_text(), static_cast<int>(price.condition), price.total_ms, *plain);
      const Brute::Least least = Brute{in, only(options.conditions, price.condition)}.least_of_all();
      if (!least.known) continue;
      REQUIRE((price.status == PlanStatus::infeasible) == !least.total);
      if (!least.total) continue;
      REQUIRE(price.total_ms == *least.total);
      REQUIRE(price.price_ms == *least.total - *plain);
      REQUIRE(price.least_price_ms == price.price_ms);
      REQUIRE(price.most_price_ms == price.price_ms);
      ++exact[static_cast<std::size_t>(price.condition)];
    }
  }
  for (const int each : exact) CHECK(each >= count / 40);
}

}  // namespace choice_conditions_test
