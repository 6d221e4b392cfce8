// Periods of tall plans, against the plainest way of finding them.
#include <algorithm>
#include <cstdint>
#include <limits>
#include <vector>

#include "catch.hpp"
#include "latchwork/reason.hpp"
#include "random.hpp"

namespace plan_period_test {

using namespace latchwork;
using latchwork_test::Random;

namespace {

/// A plan with a stop of the kind after each row, 0 being none.
Plan plan_of(const std::vector<int>& kind_at) {
  Plan plan;
  plan.status = PlanStatus::optimal;
  plan.rows = static_cast<int>(kind_at.size()) - 1;
  for (std::size_t row = 0; row < kind_at.size(); ++row) {
    if (kind_at[row] == 0) continue;
    Stop stop;
    stop.row = static_cast<int>(row);
    stop.holds = {kind_at[row]};
    plan.stops.push_back(stop);
  }
  return plan;
}

/// Every period in turn, each of its runs of rows that are alike a period on: the longest, then the shortest period,
/// then the lowest.
Period plainest(const std::vector<int>& kind_at) {
  const int count = static_cast<int>(kind_at.size());
  const auto kind = [&](int row) { return kind_at[static_cast<std::size_t>(row)]; };
  Period best;
  for (int rows = 1; 2 * rows <= count; ++rows) {
    for (int first = 0; first + rows < count;) {
      int end = first;
      int stops = 0;
      while (end + rows < count && kind(end) == kind(end + rows)) stops += kind(end++) != 0 ? 1 : 0;
      const int covered = end - first + rows;
      const int most = best.rows > 0 ? best.last_row - best.from_row + 1 : 0;
      if (stops > 0 && covered >= 2 * rows && covered > most) {
        best = {first, first + covered - 1, rows, covered / rows, 0};
      }
      first = end + 1;
    }
  }
  for (int row = best.from_row; row < best.from_row + best.rows; ++row) best.stops += kind(row) != 0 ? 1 : 0;
  return best;
}

}  // namespace

TEST_CASE("the period of a plan is the one that trying all of them finds", "[reason][period][property]") {
  Random random(23);
  int found = 0;
  for (int i = 0; i < 4000; ++i) {
    const int count = i % 40 == 0 ? random.between(100, 600) : random.between(1, 24);
    const int period = random.between(1, std::max(1, count / 2));
    const int glitch = random.between(2, 4 + count);
    const int kinds = random.between(1, 2);
    std::vector<int> kind_at;
    for (int row = 0; row < count; ++row) {
      const auto below = static_cast<std::size_t>(row - period);
      kind_at.push_back(row >= period && !random.one_in(glitch) ? kind_at[below] : random.between(0, kinds));
    }
    CAPTURE(i, kind_at);
    const Period expected = plainest(kind_at);
    REQUIRE(plan_period(plan_of(kind_at)) == expected);
    found += expected.rows > 0 ? 1 : 0;
  }
  CHECK(found > 2000);
}

TEST_CASE("words full of repetitions, and the halves of one, are told as well", "[reason][period][property]") {
  std::vector<std::vector<int>> words;
  std::vector<int> shorter = {1};
  std::vector<int> fibonacci = {1, 0};
  while (fibonacci.size() < 400) {
    std::vector<int> longer = fibonacci;
    longer.insert(longer.end(), shorter.begin(), shorter.end());
    shorter = fibonacci;
    fibonacci = longer;
    words.push_back(fibonacci);
  }
  for (int length = 2; length <= 40; ++length) {  // runs that lie across every middle
    for (int from = 0; from < length; from += 3) {
      std::vector<int> word(80, 0);
      for (int row = 0; row < length; ++row) {
        word[static_cast<std::size_t>(from + row)] = row % (1 + length / 5) == 0 ? 1 : 2;
      }
      words.push_back(word);
    }
  }
  words.emplace_back(100, 1);
  words.emplace_back(100, 0);
  for (const std::vector<int>& word : words) {
    CAPTURE(word);
    CHECK(plan_period(plan_of(word)) == plainest(word));
  }
}

TEST_CASE("a plan of the most rows has its period told, and one of more is refused", "[reason][period][property]") {
  // A stop every 7 rows, of two kinds in turn: 14 rows a period. All pairs of rows would take minutes here.
  std::vector<int> kind_at(static_cast<std::size_t>(Grid::max_side) + 1, 0);
  for (std::size_t row = 0; row < kind_at.size(); row += 7) kind_at[row] = row % 14 == 0 ? 1 : 2;
  Plan plan = plan_of(kind_at);
  CHECK(plan_period(plan) == Period{0, Grid::max_side, 14, (Grid::max_side + 1) / 14, 2});
  kind_at[kind_at.size() / 2] += 1;  // a stop of its own halfway up: the halves are as long
  const Period halved = plan_period(plan_of(kind_at));
  CHECK(halved.rows == 14);
  CHECK(halved.from_row == 0);
  CHECK(halved.last_row - halved.from_row + 1 == Grid::max_side / 2);
  for (const int rows : {Grid::max_side + 1, std::numeric_limits<int>::max()}) {
    plan.rows = rows;
    CHECK_THROWS_MATCHES(plan_period(plan), Error, latchwork_test::refused_field(ErrorCode::too_large, "rows"));
  }
  plan.rows = std::numeric_limits<int>::min();
  CHECK_THROWS_MATCHES(plan_period(plan), Error, latchwork_test::refused_field(ErrorCode::bad_argument, "rows"));
}

}  // namespace plan_period_test
