#include <algorithm>
#include <limits>
#include <map>
#include <optional>
#include <set>
#include <vector>

#include "catch.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/simulate.hpp"
#include "plan_oracle.hpp"
#include "random.hpp"

namespace choice_test {

// What a knitter chooses from, against the brute force of tests/support/plan_oracle.hpp.

using namespace latchwork;
using namespace latchwork_test;

namespace {

// Crossings and shapings where they are, re-forms at the stops of a rhythm.
std::optional<std::int64_t> two_rhythms(const Brute& brute, const Rhythm& reforms) {
  std::vector<bool> stops = brute.forced();
  std::int64_t total = brute.fixed();
  for (const Wale& wale : brute.wales.all()) {
    const auto way = brute.way_in(wale, reforms);
    if (!way) return {};
    total += way->cost;
    for (const auto& [row, what] : way->deeds) stops[static_cast<std::size_t>(row)] = true;
  }
  return total + std::count(stops.begin(), stops.end(), true) * brute.in.effort.stop;
}

const std::vector<std::pair<EffortTerm, std::int64_t Effort::*>> terms = {
    {EffortTerm::stop, &Effort::stop},           {EffortTerm::batch, &Effort::batch},
    {EffortTerm::drop, &Effort::drop},           {EffortTerm::rung_knit, &Effort::rung_knit},
    {EffortTerm::rung_purl, &Effort::rung_purl}, {EffortTerm::rung_tuck, &Effort::rung_tuck},
    {EffortTerm::rung_slip, &Effort::rung_slip}, {EffortTerm::hold, &Effort::hold}};

}  // namespace

TEST_CASE("the plan in two rhythms is the best of all, and no dearer than the regular one", "[choice][property]") {
  int found = 0;
  int better = 0;
  const int count = how_many(1500);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 4'000'000;
    const Instance in = tiny_instance(seed);
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops);
    const Brute brute{in};
    const auto [best, rhythm] =
        best_rhythm(in.grid.rows(), [&](const Rhythm& tried) { return two_rhythms(brute, tried); });
    const TwoRhythms two = plan_two_rhythms(in.grid, in.machine, in.effort);
    REQUIRE((two.plan.status != PlanStatus::infeasible) == best.has_value());
    if (!best) {
      REQUIRE(!two.plan.findings.empty());
      continue;
    }
    ++found;
    REQUIRE(two.plan.status == PlanStatus::optimal);
    REQUIRE(two.plan.total_ms == *best);
    REQUIRE(!two.plan.rhythm);
    const bool reforms = std::any_of(two.plan.stops.begin(), two.plan.stops.end(),
                                     [](const Stop& stop) { return !stop.reforms.empty(); });
    REQUIRE(two.reforms == (reforms ? rhythm : Rhythm{0, 0}));
    for (const Crossing& crossing : in.grid.crossings()) {
      REQUIRE(two.crossings.every > 0);
      REQUIRE((crossing.row - two.crossings.first) % two.crossings.every == 0);
    }
    REQUIRE((two.crossings.every == 0) == in.grid.crossings().empty());
    REQUIRE(verify(in.grid, two.plan).verified);
    const Plan regular = plan_regular(in.grid, in.machine, in.effort);
    REQUIRE(two.plan.total_ms <= regular.total_ms);
    better += two.plan.total_ms < regular.total_ms ? 1 : 0;
  }
  CHECK(found > count / 3);
  CHECK(better > count / 100);
}

TEST_CASE("the front is what a brute force finds, from the fewest kinds to the least plan",
          "[choice][kinds][property][long]") {
  int tried = 0;
  int several = 0;
  const int count = how_many(1200);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 5'000'000;
    const Instance in = tiny_instance(seed);
    const auto by_kinds = Brute{in}.by_kinds();
    if (!by_kinds) continue;
    ++tried;
    CAPTURE(seed, in.grid.to_text());
    std::vector<std::pair<int, std::int64_t>> expected;
    for (const auto& [kinds, total] : *by_kinds) {
      if (expected.empty() || total < expected.back().second) expected.emplace_back(static_cast<int>(kinds), total);
    }
    const Front front = plan_front(in.grid, in.machine, in.effort);
    std::vector<std::pair<int, std::int64_t>> mine;
    for (const FrontPoint& point : front.points) {
      mine.emplace_back(point.kinds, point.plan.total_ms);
      REQUIRE(point.plan.status == PlanStatus::optimal);
      REQUIRE(verify(in.grid, point.plan).verified);
    }
    REQUIRE(mine == expected);
    REQUIRE(front.findings.empty() == !mine.empty());
    if (mine.empty()) continue;
    REQUIRE(front.fewest_proven);
    REQUIRE(front.points.back().plan.total_ms == plan(in.grid, in.machine, in.effort).total_ms);
    several += mine.size() > 1 ? 1 : 0;
  }
  CHECK(tried > count / 4);
  CHECK(several > count / 40);
}

// Wales alike are best worked alike, but kinds of stop go by needles: where a crossing takes one of two away, the next
// on its needle may be worked as it was, and the two apart need fewer kinds. Found by somebody else's brute force.
TEST_CASE("wales that are alike but leave their needles need not be worked together", "[choice][kinds][property]") {
  struct Case {
    const char* grid;
    int max_ladder;
    int kinds;
    std::int64_t total_ms;
  };
  const Case cases[] = {
      {"kkpk\nx 2 1/1 L\nkkkk\nkppk\n", 2, 2, 87'500},
      {"kpkpk\nx 3 1/1 R\nkkkpk\nx 1 1/1 L\nkpkpk\nkkkkk\nx 1 1/1 L\nkkktk\nkpppk\nkkpkk\n", 3, 4, 236'000},
      {"kkpkk\nkkpkk\nx 2 1/1 L\nkkkkk\nkkkkk\nkpkkk\nx 0 1/1 R\nkkkpk\nkpppk\n", 2, 4, 164'500},
  };
  for (const Case& each : cases) {
    CAPTURE(each.grid);
    Instance in{"", "", Grid::from_text(each.grid), Machine::generic(MachineClass::standard), {}};
    in.machine.max_ladder = each.max_ladder;
    in.effort.stop = 1000;
    const auto by_kinds = Brute{in}.by_kinds();
    REQUIRE(by_kinds);
    std::int64_t least = std::numeric_limits<std::int64_t>::max();
    for (const auto& [kinds, total] : *by_kinds) {
      if (static_cast<int>(kinds) <= each.kinds) least = std::min(least, total);
    }
    CHECK(least == each.total_ms);
    PlanOptions options;
    options.conditions.max_kinds = each.kinds;
    const Plan made = plan(in.grid, in.machine, in.effort, options);
    CHECK(made.status == PlanStatus::optimal);
    CHECK(made.total_ms == each.total_ms);
    CHECK(verify(in.grid, made).verified);
    bool told = false;
    for (const FrontPoint& point : plan_front(in.grid, in.machine, in.effort).points) {
      told = told || (point.kinds == each.kinds && point.plan.total_ms == each.total_ms);
    }
    CHECK(told);
  }
}

TEST_CASE("with ever more work a front stays true, and without a limit it is whole",
          "[choice][kinds][limits][property]") {
  int cut = 0;
  int fewer = 0;
  const int count = how_many(120);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 5'100'000;
    const Instance in = tiny_instance(seed);
    const auto by_kinds = Brute{in}.by_kinds();
    if (!by_kinds || by_kinds->empty()) continue;
    const auto least_with = [&](int kinds) {
      std::int64_t least = std::numeric_limits<std::int64_t>::max();
      for (const auto& [needed, total] : *by_kinds) {
        if (static_cast<int>(needed) <= kinds) least = std::min(least, total);
      }
      return least;
    };
    for (const std::int64_t limit : {1, 30, 100, 300, 1'000, 3'000, 10'000, 30'000, 100'000, 0}) {
      CAPTURE(seed, in.grid.to_text(), limit);
      PlanOptions options;
      options.work_limit = limit;
      const Front front = plan_front(in.grid, in.machine, in.effort, options);
      REQUIRE(front == plan_front(in.grid, in.machine, in.effort, options));
      REQUIRE(!front.points.empty());
      REQUIRE(front.findings.empty());
      if (front.fewest_proven) REQUIRE(front.points.front().kinds == static_cast<int>(by_kinds->begin()->first));
      if (!front.fewest_proven) ++fewer;
      for (const FrontPoint& point : front.points) {
        const Plan& mine = point.plan;
        const std::vector<int> kinds = stop_kinds(mine);
        REQUIRE(static_cast<int>(std::set(kinds.begin(), kinds.end()).size()) == point.kinds);
        REQUIRE(verify(in.grid, mine).verified);
        REQUIRE(mine.bound_ms <= least_with(point.kinds));
        REQUIRE(least_with(point.kinds) <= mine.total_ms);
        REQUIRE((mine.status == PlanStatus::optimal) == (mine.bound_ms == mine.total_ms));
        cut += mine.status == PlanStatus::feasible ? 1 : 0;
      }
      if (limit > 0) continue;
      const auto whole = [](const FrontPoint& point) { return point.plan.status == PlanStatus::optimal; };
      REQUIRE(std::all_of(front.points.begin(), front.points.end(), whole));
      REQUIRE(front.points.back().plan.total_ms == least_with(std::numeric_limits<int>::max()));
    }
  }
  CHECK(cut > count / 10);
  CHECK(fewer > count / 20);
}

TEST_CASE("with any work the price of a condition lies where it is told to lie",
          "[choice][conditions][limits][property]") {
  int exact = 0;
  int open = 0;
  const int count = how_many(120);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 5'200'000;
    const Instance in = tiny_instance(seed);
    const auto plain = Brute{in}.best();
    if (!plain) continue;
    Random random(seed);
    PlanOptions options;
    options.conditions.max_kinds = random.between(1, 3);
    options.conditions.rows_apart = random.between(2, 3);
    options.conditions.forced_exempt = true;
    const auto least_under = [&](Condition condition) {
      Conditions asked = options.conditions;
      if (condition == Condition::max_kinds) asked.rows_apart = 0;
      if (condition == Condition::rows_apart) asked.max_kinds = 0;
      const auto by_kinds = Brute{in, asked}.by_kinds();
      if (!by_kinds) return std::optional<std::int64_t>{-1};  // more than it looks through
      std::optional<std::int64_t> least;
      for (const auto& [kinds, total] : *by_kinds) {
        if (asked.max_kinds > 0 && kinds > static_cast<std::size_t>(asked.max_kinds)) continue;
        if (!least || total < *least) least = total;
      }
      return least;
    };
    std::map<Condition, std::optional<std::int64_t>> least;
    for (const Condition condition : {Condition::rows_apart, Condition::max_kinds, Condition::all}) {
      least[condition] = least_under(condition);
    }
    for (const std::int64_t limit : {1, 100, 1'000, 10'000, 100'000, 0}) {
      options.work_limit = limit;
      const auto prices = condition_prices(in.grid, in.machine, in.effort, options);
      REQUIRE(prices == condition_prices(in.grid, in.machine, in.effort, options));
      REQUIRE(prices.size() == 3);
      for (const ConditionPrice& price : prices) {
        CAPTURE(seed, in.grid.to_text(), limit, static_cast<int>(price.condition), price.total_ms, price.price_ms,
                price.least_price_ms, price.most_price_ms, *plain);
        const std::optional<std::int64_t>& mine = least.at(price.condition);
        if (mine == -1) continue;
        if (price.status == PlanStatus::infeasible) REQUIRE(!mine);
        if (limit == 0) REQUIRE((price.status == PlanStatus::infeasible) == !mine);
        if (!mine) continue;
        REQUIRE(price.least_price_ms <= *mine - *plain);
        if (price.most_price_ms < 0) {
          REQUIRE(price.total_ms == -1);
          ++open;
          continue;
        }
        REQUIRE(*mine - *plain <= price.most_price_ms);
        REQUIRE(*mine <= price.total_ms);
        if (price.status == PlanStatus::optimal) REQUIRE(price.total_ms == *mine);
        exact += price.least_price_ms == price.most_price_ms ? 1 : 0;
        open += price.least_price_ms < price.most_price_ms ? 1 : 0;
      }
    }
  }
  CHECK(exact > count);
  CHECK(open > count / 4);
}

TEST_CASE("what a stop saves is what a brute force without it takes more", "[reason][property]") {
  int saving = 0;
  int needed = 0;
  int forced = 0;
  const int count = how_many(800);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 6'000'000;
    const Instance in = tiny_instance(seed);
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder);
    const Plan mine = plan(in.grid, in.machine, in.effort);
    if (mine.status == PlanStatus::infeasible) continue;
    const std::vector<StopReason> reasons = stop_reasons(in.grid, in.machine, in.effort, mine);
    REQUIRE(reasons.size() == mine.stops.size());
    for (std::size_t k = 0; k < reasons.size(); ++k) {
      const StopReason& reason = reasons[k];
      REQUIRE(reason.row == mine.stops[k].row);
      REQUIRE(!reason.message.empty());
      const bool must = Brute{in}.forced()[static_cast<std::size_t>(reason.row)];
      REQUIRE(must == (reason.cause == StopCause::crossing || reason.cause == StopCause::shaping));
      REQUIRE((reason.cause == StopCause::crossing) == !mine.stops[k].crossings.empty());
      if (must) {
        ++forced;
        REQUIRE(reason.place.row == reason.row);
        REQUIRE(reason.place.column >= 0);
        continue;
      }
      Conditions asked;
      asked.closed_rows = {reason.row};
      const auto without = Brute{in, asked}.least();
      REQUIRE(without.has_value() == (reason.cause == StopCause::saving));
      if (!without) {
        ++needed;
        REQUIRE(reason.cause == StopCause::hand_cells);
        REQUIRE(in.grid.at(reason.place.row, reason.place.column) != Cell::none);
        continue;
      }
      ++saving;
      REQUIRE(reason.saves_ms == *without - mine.total_ms);
      REQUIRE(reason.least_saves_ms == reason.saves_ms);
      // The other stops as they are.
      std::vector<bool> others(Brute{in}.forced().size());
      for (const Stop& stop : mine.stops) others[static_cast<std::size_t>(stop.row)] = stop.row != reason.row;
      const Brute brute{in};
      std::optional<std::int64_t> beside =
          brute.fixed() + std::count(others.begin(), others.end(), true) * in.effort.stop;
      for (const Wale& wale : brute.wales.all()) {
        const auto cost = brute.rest(wale, wale.row - 1, others);
        beside = cost && beside ? std::optional(*beside + *cost) : std::nullopt;
      }
      REQUIRE(reason.beside_ms == (beside ? *beside - mine.total_ms : -1));
      REQUIRE((!beside || reason.beside_ms >= reason.saves_ms));
    }
  }
  CHECK(saving > count / 10);
  CHECK(needed > count / 40);
  CHECK(forced > count / 10);
}

TEST_CASE("between its tolerances a plan is a least one, and right outside it is none", "[reason][property]") {
  int ends = 0;
  const int count = how_many(60);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 7'000'000;
    Instance in = tiny_instance(seed);
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder);
    const Plan mine = plan(in.grid, in.machine, in.effort);
    if (mine.status == PlanStatus::infeasible) continue;
    const std::vector<Tolerance> tolerances = plan_tolerances(in.grid, in.machine, in.effort, mine);
    REQUIRE(tolerances.size() == 12);
    for (const Tolerance& tolerance : tolerances) {
      REQUIRE(tolerance.least_ms >= 0);
      REQUIRE(tolerance.least_ms <= tolerance.value_ms);
      REQUIRE(tolerance.value_ms <= tolerance.most_ms);
      REQUIRE(tolerance.most_ms <= 3'600'000);
      REQUIRE(tolerance.least_exact);
      REQUIRE(tolerance.most_exact);
    }
    const Effort before = in.effort;
    for (const auto& [term, cost] : terms) {
      const Tolerance* mine_of = &tolerances[static_cast<std::size_t>(term)];
      REQUIRE(mine_of->term == term);
      const auto gap = [&, moved = cost](std::int64_t value) {
        in.effort = before;
        in.effort.*moved = value;
        const HandWork work = hand_work(mine, in.effort);
        const std::int64_t least = *Brute{in}.best();
        in.effort = before;
        return work.hand_ms + work.carriage_ms - least;
      };
      CAPTURE(effort_term_name(term), mine_of->least_ms, mine_of->value_ms, mine_of->most_ms);
      REQUIRE(mine_of->value_ms == before.*cost);
      REQUIRE(gap(mine_of->least_ms) == 0);
      REQUIRE(gap(mine_of->most_ms) == 0);
      if (mine_of->least_ms > 0) REQUIRE(gap(mine_of->least_ms - 1) > 0);
      if (mine_of->most_ms < 3'600'000) REQUIRE(gap(mine_of->most_ms + 1) > 0);
      ends += (mine_of->least_ms > 0 ? 1 : 0) + (mine_of->most_ms < 3'600'000 ? 1 : 0);
    }
  }
  CHECK(ends > count / 4);
}

TEST_CASE("no longer or shorter period covers more rows of a plan than the one told", "[reason][property]") {
  Random random(11);
  int found = 0;
  for (int i = 0; i < 300; ++i) {
    Plan plan;
    plan.status = PlanStatus::optimal;
    plan.rows = random.between(1, 30);
    const int period = random.between(1, 9);
    std::vector<int> kind_at(static_cast<std::size_t>(plan.rows) + 1, 0);
    for (int row = 0; row <= plan.rows; ++row) {
      const auto r = static_cast<std::size_t>(row);
      kind_at[r] = row >= period && !random.one_in(12) ? kind_at[r - static_cast<std::size_t>(period)]
                                                       : std::max(0, random.between(-3, 2));
      if (kind_at[r] == 0) continue;
      Stop stop;
      stop.row = row;
      stop.holds = {kind_at[r]};
      plan.stops.push_back(stop);
    }
    const auto holds = [&](int from, int last, int rows) {
      bool any = false;
      for (int row = from; row + rows <= last; ++row) {
        const auto r = static_cast<std::size_t>(row);
        if (kind_at[r] != kind_at[r + static_cast<std::size_t>(rows)]) return false;
        any = any || kind_at[r] != 0;
      }
      return any && last - from + 1 >= 2 * rows;
    };
    int most = 0;
    Period expected;
    for (int rows = 1; rows <= plan.rows; ++rows) {
      for (int from = 0; from <= plan.rows; ++from) {
        for (int last = from; last <= plan.rows; ++last) {
          if (last - from + 1 > most && holds(from, last, rows)) {
            most = last - from + 1;
            expected = {from, last, rows, most / rows, 0};
          }
        }
      }
    }
    for (int row = expected.from_row; row < expected.from_row + expected.rows; ++row) {
      expected.stops += kind_at[static_cast<std::size_t>(row)] != 0 ? 1 : 0;
    }
    CAPTURE(i, plan.rows, kind_at);
    CHECK(plan_period(plan) == expected);
    found += most > 0 ? 1 : 0;
  }
  CHECK(found > 100);
}

}  // namespace choice_test
