#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/simulate.hpp"
#include "plan_oracle.hpp"
#include "random.hpp"

namespace plan_conditions_test {

// Plans under conditions against a brute force, and laws that hold between them.

using namespace latchwork;
using namespace latchwork_test;

namespace {

Plan under(const Instance& in, const Conditions& asked) {
  PlanOptions options;
  options.conditions = asked;
  return plan(in.grid, in.machine, in.effort, options);
}

/// Whether the finding is of a condition that was asked, by its name and its code.
bool names_a_condition(const Finding& finding, const Conditions& asked) {
  const auto is = [&](const char* name, FindingCode code) {
    return finding.message.starts_with(std::string(name) + ": ") && finding.code == code;
  };
  return (asked.carriage_right_only && is("carriage_right_only", FindingCode::carriage_side)) ||
         (asked.rows_apart > 1 && is("rows_apart", FindingCode::stops_too_near)) ||
         (asked.max_depth > 0 && is("max_depth", FindingCode::too_deep)) ||
         (asked.max_kinds > 0 && is("max_kinds", FindingCode::too_many_kinds)) ||
         (!asked.rhythms.empty() && is("rhythms", FindingCode::off_rhythm)) ||
         (!asked.closed_rows.empty() && is("closed_rows", FindingCode::row_closed));
}

void told_why(const Plan& none) {
  REQUIRE(none.status == PlanStatus::infeasible);
  REQUIRE(!none.findings.empty());
  for (const Finding& finding : none.findings) {
    CAPTURE(finding.message);
    REQUIRE(finding.severity == Severity::error);
    REQUIRE(finding.place.row >= 0);
    REQUIRE(!finding.message.empty());
    REQUIRE(!finding.suggestion.empty());
  }
}

}  // namespace

TEST_CASE("a plan under conditions takes what a brute force finds", "[plan][conditions][property]") {
  int planned = 0;
  int barred = 0;
  int dearer = 0;
  const int count = how_many(3000);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 2'000'000;
    const Instance in = tiny_instance(seed);
    Random random(seed);
    const Conditions asked = random_conditions(random, in);
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops, asked.carriage_right_only,
            asked.rows_apart, asked.max_depth, asked.forced_exempt, asked.rhythms.size());
    const Plan plain = plan(in.grid, in.machine, in.effort);
    const auto best = Brute{in, asked}.least();
    const Plan made = under(in, asked);
    if (!best) {
      ++barred;
      told_why(made);
      continue;
    }
    ++planned;
    REQUIRE(made.status == PlanStatus::optimal);
    REQUIRE(made.total_ms == *best);
    REQUIRE(made.bound_ms == made.total_ms);
    REQUIRE(made.total_ms >= plain.total_ms);
    dearer += made.total_ms > plain.total_ms ? 1 : 0;
    const HandWork work = hand_work(made, in.effort);
    REQUIRE(work.hand_ms + work.carriage_ms == made.total_ms);
    REQUIRE(verify(in.grid, made).verified);
  }
  CHECK(planned > count / 5);
  CHECK(barred > count / 10);
  CHECK(dearer > count / 40);
}

TEST_CASE("a plan with few kinds of stop takes what a brute force finds", "[plan][conditions][kinds][property]") {
  int tried = 0;
  int dearer = 0;
  int none = 0;
  const int count = how_many(1500);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 3'000'000;
    const Instance in = tiny_instance(seed);
    Random random(seed);
    Conditions asked;
    asked.carriage_right_only = random.one_in(6);
    if (random.one_in(4)) asked.rows_apart = random.between(2, 3);
    asked.forced_exempt = random.one_in(2);
    const auto by_kinds = Brute{in, asked}.by_kinds();
    if (!by_kinds) continue;
    ++tried;
    const Plan plain = plan(in.grid, in.machine, in.effort);
    std::optional<std::int64_t> least;
    for (int most = 1; most <= 4; ++most) {
      for (const auto& [kinds, total] : *by_kinds) {
        if (kinds <= static_cast<std::size_t>(most) && (!least || total < *least)) least = total;
      }
      asked.max_kinds = most;
      CAPTURE(seed, in.grid.to_text(), most, asked.carriage_right_only, asked.rows_apart, asked.forced_exempt);
      const Plan made = under(in, asked);
      if (!least) {
        ++none;
        told_why(made);
        continue;
      }
      REQUIRE(made.status == PlanStatus::optimal);
      REQUIRE(made.total_ms == *least);
      dearer += made.total_ms > plain.total_ms ? 1 : 0;
      const std::vector<int> kinds = stop_kinds(made);
      REQUIRE(std::set(kinds.begin(), kinds.end()).size() <= static_cast<std::size_t>(most));
      REQUIRE(verify(in.grid, made).verified);
    }
  }
  CHECK(tried > count / 4);
  CHECK(dearer > count / 40);
  CHECK(none > count / 20);
}

TEST_CASE("a plan in one rhythm or two under conditions is the best of all rhythms that keep them",
          "[plan][conditions][rhythm][property]") {
  int kept = 0;
  int dearer = 0;
  int none = 0;  // though some rhythm makes the panel
  const int count = how_many(3000);
  for (int i = 1; i <= count; ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 9'000'000;
    const Instance in = tiny_instance(seed);
    Random random(seed);
    Conditions asked = random_conditions(random, in);
    if (random.one_in(3)) asked.max_kinds = random.between(1, 3);
    if (random.one_in(3)) asked.closed_rows = {random.between(0, in.grid.rows())};
    PlanOptions options;
    options.conditions = asked;
    CAPTURE(seed, in.grid.to_text(), in.machine.max_ladder, in.machine.cast_on_loops, asked.carriage_right_only,
            asked.rows_apart, asked.max_depth, asked.max_kinds, asked.closed_rows, asked.forced_exempt,
            asked.rhythms.size());
    for (const bool apart : {false, true}) {
      CAPTURE(apart);
      const Brute brute{in, asked};
      const auto best = best_rhythm(in.grid.rows(), [&](const Rhythm& tried) { return brute.total_in(tried, apart); });
      const TwoRhythms two = apart ? plan_two_rhythms(in.grid, in.machine, in.effort, options) : TwoRhythms{};
      const Plan made = apart ? two.plan : plan_regular(in.grid, in.machine, in.effort, options);
      const Plan plain =
          apart ? plan_two_rhythms(in.grid, in.machine, in.effort).plan : plan_regular(in.grid, in.machine, in.effort);
      if (!best.total) {
        told_why(made);
        if (plain.status == PlanStatus::infeasible || asked == Conditions{}) continue;
        ++none;
        for (const Finding& finding : made.findings) {
          CAPTURE(finding.message);
          REQUIRE(names_a_condition(finding, asked));
        }
        continue;
      }
      ++kept;
      REQUIRE(made.status == PlanStatus::optimal);
      REQUIRE(made.total_ms == *best.total);
      REQUIRE(made.bound_ms == made.total_ms);
      REQUIRE(verify(in.grid, made).verified);
      REQUIRE(plain.status == PlanStatus::optimal);
      REQUIRE(made.total_ms >= plain.total_ms);
      dearer += made.total_ms > plain.total_ms ? 1 : 0;
      if (!apart) REQUIRE(made.rhythm == best.rhythm);
      if (apart && two.reforms.every > 0) REQUIRE(two.reforms == best.rhythm);
      REQUIRE(made.total_ms >= under(in, asked).bound_ms);
    }
  }
  CHECK(kept > count / 3);
  CHECK(dearer > count / 50);
  CHECK(none > count / 20);
}

TEST_CASE("no condition makes a plan cheaper, and loosening one makes none dearer", "[plan][conditions][property]") {
  for (const char* kind : {"panels", "random", "tuck stacks"}) {
    const Instance in = instance_of(kind, 3, 40);
    const Plan plain = plan(in.grid, in.machine, in.effort);
    REQUIRE(plain.status == PlanStatus::optimal);
    const auto costs = [&](const Conditions& asked) {
      const Plan made = under(in, asked);
      CAPTURE(kind, asked.rows_apart, asked.max_depth);
      if (made.status == PlanStatus::infeasible) {
        told_why(made);
        return std::int64_t{1} << 62;
      }
      CHECK(verify(in.grid, made).verified);
      CHECK(made.status == PlanStatus::optimal);
      CHECK(made.total_ms >= plain.total_ms);
      return made.total_ms;
    };
    std::int64_t last = plain.total_ms;
    for (int apart = 0; apart <= 8; apart += 2) {
      Conditions asked;
      asked.rows_apart = apart;
      asked.forced_exempt = true;
      const std::int64_t mine = costs(asked);
      CHECK(mine >= last);
      last = mine;
    }
    last = plain.total_ms;
    for (int depth = 12; depth >= 2; depth -= 2) {
      Conditions asked;
      asked.max_depth = depth;
      const std::int64_t mine = costs(asked);
      CHECK(mine >= last);
      last = mine;
    }
  }
}

}  // namespace plan_conditions_test
