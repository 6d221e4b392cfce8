// Of plans at the same price the one that is told must not depend on who asks, or when.
#include <algorithm>
#include <optional>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/file.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "latchwork/wale.hpp"

namespace plan_ties_test {

using namespace latchwork;

namespace {

/// With nothing for rungs and drops it does not matter how deep a batch goes.
Effort free_rungs() {
  Effort effort;
  effort.drop = effort.rung_knit = effort.rung_purl = effort.rung_tuck = effort.rung_slip = 0;
  return effort;
}

/// Purls that can wait for each other, alike about the middle, and a rope on either side.
Grid tied_panel() {
  Grid grid(24, 21);
  for (int row = 1; row <= 20; ++row) {
    for (const int column : {2, 5, 15, 18}) grid.set(row, column, (row + column) % 5 < 2 ? Cell::purl : Cell::knit);
  }
  for (const int row : {3, 9, 17}) grid.set(row, 10, Cell::purl);
  for (const int row : {8, 16}) {
    grid.cross({.row = row, .column = 7, .left = 1, .right = 1, .lean = Lean::right});
    grid.cross({.row = row, .column = 12, .left = 1, .right = 1, .lean = Lean::left});
  }
  return grid;
}

/// The same grid, put together the other way round.
Grid built_backwards(const Grid& grid) {
  Grid other(grid.rows(), grid.columns());
  const std::vector<Crossing> crossings(grid.crossings().begin(), grid.crossings().end());
  for (auto crossing = crossings.rbegin(); crossing != crossings.rend(); ++crossing) other.cross(*crossing);
  for (int row = grid.rows(); row >= 1; --row) {
    for (int column = grid.columns() - 1; column >= 0; --column) other.set(row, column, grid.at(row, column));
  }
  return other;
}

/// All plans of a grid, as they are written.
std::vector<std::string> plans_of(const Grid& grid) {
  const Machine machine;
  std::vector<std::string> written;
  for (const Effort& effort : {Effort{}, free_rungs()}) {
    written.push_back(write(plan(grid, machine, effort)));
    written.push_back(write(plan_regular(grid, machine, effort)));
    PlanOptions options;
    options.conditions.max_kinds = 4;
    options.conditions.rows_apart = 2;
    options.conditions.forced_exempt = true;
    written.push_back(write(plan(grid, machine, effort, options)));
  }
  return written;
}

/// The plan with its first batch that can wait done one stop later, from the same row: where rungs and drops are free
/// it costs the same. Nothing when no batch can wait.
std::optional<Plan> other_plan(const Grid& grid, const Plan& told) {
  const Wales wales(grid);
  for (std::size_t at = 0; at + 1 < told.stops.size(); ++at) {
    for (std::size_t i = 0; i < told.stops[at].reforms.size(); ++i) {
      Plan other = told;
      Reform late = other.stops[at].reforms[i];
      other.stops[at].reforms.erase(other.stops[at].reforms.begin() + static_cast<std::ptrdiff_t>(i));
      Stop& later = other.stops[at + 1];
      const Wale& wale = wales.all()[static_cast<std::size_t>(late.wale)];
      if (later.row > wale.last_row()) continue;
      for (int row = told.stops[at].row + 1; row <= later.row; ++row) {
        late.rungs.push_back(grid.at(row, wale.column_at(row)));
      }
      later.reforms.insert(std::ranges::find_if(later.reforms, [&](const Reform& r) { return r.column < late.column; }),
                           late);
      if (verify(grid, other).verified) return other;
    }
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("the panel has other plans at the least price", "[plan][ties]") {
  const Grid grid = tied_panel();
  const Plan told = plan(grid, Machine{}, free_rungs());
  REQUIRE(told.status == PlanStatus::optimal);
  const auto other = other_plan(grid, told);
  REQUIRE(other);
  CHECK(*other != told);
  CHECK(hand_work(*other, free_rungs()).hand_ms == hand_work(told, free_rungs()).hand_ms);
}

TEST_CASE("the same plan is told, byte by byte: again, from a grid built otherwise, from threads", "[plan][ties]") {
  const Grid grid = tied_panel();
  const std::vector<std::string> told = plans_of(grid);
  CHECK(plans_of(grid) == told);
  CHECK(plans_of(built_backwards(grid)) == told);
  CHECK(plans_of(read_grid(write(grid))) == told);
  // Three at once, begun in two orders, on panels of their own.
  std::vector<std::vector<std::string>> seen(6);
  for (const bool backwards : {false, true}) {
    std::vector<std::thread> threads;
    threads.reserve(3);
    for (std::size_t i = 0; i < 3; ++i) {
      auto& into = seen[backwards ? 5 - i : i];
      threads.emplace_back([&grid, &into, backwards] { into = plans_of(backwards ? built_backwards(grid) : grid); });
    }
    for (std::thread& thread : threads) thread.join();
  }
  for (const auto& each : seen) CHECK(each == told);
}

}  // namespace plan_ties_test
