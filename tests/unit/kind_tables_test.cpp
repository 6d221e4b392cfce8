// Looks inside (src/plan): what a search for few kinds of stop holds, and forgets where its memory is nearly full.
#include <cstddef>
#include <map>
#include <set>
#include <span>
#include <stop_token>
#include <vector>

#include "catch.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "plan/kind_sets.hpp"
#include "plan/kinds.hpp"
#include "plan/limits.hpp"
#include "plan/numbered_lists.hpp"
#include "random.hpp"

namespace kind_tables_test {

using namespace latchwork;
using namespace latchwork::planning;

namespace {

std::vector<int> listed(std::span<const int> numbers) {
  return {numbers.begin(), numbers.end()};
}

}  // namespace

TEST_CASE("lists are numbered as they come, are told apart to the last number, and stay where they are",
          "[plan][kinds]") {
  NumberedLists lists;
  CHECK(lists.count() == 0);
  CHECK(lists.add({}) == 0);
  const std::vector<int> first = {1, 2, 3};
  CHECK(lists.add(first) == 1);
  const int* const begin = lists.of(1).data();
  std::map<std::vector<int>, int> known = {{{}, 0}, {first, 1}};
  latchwork_test::Random random(3);
  for (int i = 0; i < 20'000; ++i) {
    std::vector<int> list(static_cast<std::size_t>(random.between(0, 30)));
    for (int& number : list) number = random.between(-1, 2);
    const auto [place, fresh] = known.try_emplace(list, lists.count());
    REQUIRE(lists.add(list) == place->second);
    REQUIRE(lists.count() == static_cast<int>(known.size()));
  }
  const std::vector<int> long_one(200'000, 7);  // past a block
  CHECK(lists.add(long_one) == static_cast<int>(known.size()));
  CHECK(listed(lists.of(lists.count() - 1)) == long_one);
  CHECK(lists.of(1).data() == begin);
  for (const auto& [list, number] : known) REQUIRE(listed(lists.of(number)) == list);
  CHECK(lists.bytes() > 200'000 * sizeof(int));
}

TEST_CASE("kinds that are not wanted are forgotten, and the others keep their order", "[plan][kinds]") {
  const Grid grid(2, 2);
  const Wales wales(grid);
  Deeds deeds(grid, wales);
  const std::vector<std::vector<int>> made = {{1, 2}, {3}, {4, 5}, {6}, {7}};
  for (std::size_t kind = 0; kind < made.size(); ++kind) REQUIRE(deeds.kind(made[kind]) == static_cast<int>(kind));
  const std::size_t bytes = deeds.kind_bytes();
  const PlanOptions options;
  Limits limits(options);
  CHECK(deeds.keep(1, {0, 1, 0, 1}, limits) == std::vector<int>{-1, 1, -1, 2});
  CHECK(deeds.kind_count() == 3);
  CHECK(deeds.kind_bytes() < bytes);
  CHECK(listed(deeds.deeds_of(1)) == std::vector<int>{4, 5});
  CHECK(deeds.kind({2, 1}) == 0);
  CHECK(deeds.kind({5, 4}) == 1);
  CHECK(deeds.kind({7}) == 2);
  // What was forgotten and comes again comes last.
  CHECK(deeds.kind({6}) == 3);
  CHECK(deeds.kind({3}) == 4);
  CHECK(deeds.kind_bytes() == bytes);
}

TEST_CASE("once a call is stopped no more kinds are forgotten", "[plan][kinds]") {
  const Grid grid(2, 2);
  const Wales wales(grid);
  Deeds deeds(grid, wales);
  for (int deed = 1; deed <= 3; ++deed) deeds.kind({deed});
  std::stop_source asked;
  asked.request_stop();
  PlanOptions options;
  options.stop = asked.get_token();
  Limits limits(options);
  CHECK(deeds.keep(0, {0, 0, 1}, limits) == std::vector<int>{0, 1, 2});
  CHECK(deeds.kind({3}) == 2);
}

TEST_CASE("sets of kinds are the same once the kinds have other numbers", "[plan][kinds]") {
  KindSets before;
  const int pair = before.with(before.with(0, 5), 2);
  const int over = before.without(pair, [](int kind) { return kind == 2; });
  REQUIRE(listed(before.of(over)) == std::vector<int>{-1, 5});
  KindSets after;
  const std::vector<int> moved = {-1, -1, 3};  // of 3, 4 and 5
  CHECK(listed(after.of(after.like(before, pair, 3, moved))) == std::vector<int>{2, 3});
  CHECK(listed(after.of(after.like(before, over, 3, moved))) == std::vector<int>{-1, 3});
  CHECK(after.like(before, 0, 3, moved) == 0);
  CHECK(after.bytes() < before.bytes());  // the set of 5 alone is in no use
}

TEST_CASE("a search for few kinds that fills its memory ends with the best so far, the same at every call",
          "[plan][kinds][limits]") {
  Grid grid(40, 16);  // a purl in every eighth cell or so
  latchwork_test::Random random(7);
  for (int row = 2; row < 40; ++row) {
    for (int column = 1; column < 15; ++column) {
      if (random.between(1, 100) <= 12) grid.set(row, column, Cell::purl);
    }
  }
  PlanOptions options;
  options.conditions.max_kinds = 4;
  options.work_limit = 4'000'000;
  const Plan whole = plan(grid, {}, {}, options);
  REQUIRE(whole.status == PlanStatus::feasible);
  for (const std::int64_t bytes : {1'000, 100'000, 1'000'000}) {
    CAPTURE(bytes);
    options.memory_limit = bytes;
    const Plan made = plan(grid, {}, {}, options);
    CHECK(made.status == PlanStatus::feasible);
    CHECK(made.bound_ms < made.total_ms);
    const std::vector<int> kinds = stop_kinds(made);
    CHECK(std::set<int>(kinds.begin(), kinds.end()).size() <= 4);
    CHECK(verify(grid, made).verified);
    PlanOptions told = options;
    told.progress = [](const Progress&) {};
    CHECK(plan(grid, {}, {}, told) == made);
  }
  options.memory_limit = 500'000'000;  // more than the work fills
  CHECK(plan(grid, {}, {}, options) == whole);
}

}  // namespace kind_tables_test
