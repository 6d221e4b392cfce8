// Kinds of stop that look alike to a search, and plans that a search for few kinds must not pass over.
#include <algorithm>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "kinds_of.hpp"
#include "latchwork/choice.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/reason.hpp"
#include "latchwork/simulate.hpp"

namespace plan_kinds_told_apart_test {

using namespace latchwork;
using latchwork_test::kinds_of;
using latchwork_test::refused_field;

namespace {

/// Columns of letters, row 1 first.
Grid of_columns(const std::vector<std::string>& columns) {
  std::string text;
  for (std::size_t row = columns.front().size(); row-- > 0;) {
    for (const std::string& column : columns) text += column[row];
    text += '\n';
  }
  return Grid::from_text(text);
}

/// A column of knit stitches but for these rows.
std::string column_with(int rows, const std::vector<std::pair<int, char>>& cells) {
  std::string out(static_cast<std::size_t>(rows), 'k');
  for (const auto& [row, cell] : cells) out[static_cast<std::size_t>(row - 1)] = cell;
  return out;
}

}  // namespace

TEST_CASE("of wales that cost the same a tuck and a slip make two kinds of stop", "[plan][conditions][kinds]") {
  std::vector<std::string> columns(11, std::string(11, 'k'));
  columns.insert(columns.end(), 30, "ttpkttpkttp");
  columns.insert(columns.end(), 11, std::string(11, 'k'));
  columns.emplace_back("ttpktspkstp");
  columns.insert(columns.end(), 11, std::string(11, 'k'));
  const Grid grid = of_columns(columns);
  const Machine machine;
  PlanOptions options;
  options.conditions.max_kinds = 2;
  Effort effort;
  effort.batch = 3000;
  REQUIRE(effort.rung_tuck == effort.rung_slip);
  const Plan alike = plan(grid, machine, effort, options);
  effort.rung_slip += 1;  // a millisecond dearer, so that the wales are not alike
  const Plan apart = plan(grid, machine, effort, options);
  REQUIRE(alike.status == PlanStatus::optimal);
  REQUIRE(apart.status == PlanStatus::optimal);
  CHECK(kinds_of(alike) <= 2);
  CHECK(verify(grid, alike).verified);
  CHECK(apart.total_ms - alike.total_ms == 2);  // of its two slips
}

TEST_CASE("what is re-formed beside a hold may be re-formed without one in a kind of its own",
          "[plan][conditions][kinds]") {
  constexpr int rows = 24;
  const std::string plain(rows, 'k');
  const std::string held =
      column_with(rows, {{2, 't'}, {8, 'p'}, {9, 't'}, {14, 'p'}, {15, 't'}, {20, 'p'}, {21, 't'}});
  const std::string purls = column_with(rows, {{7, 'p'}, {13, 'p'}, {19, 'p'}});
  const Grid grid = of_columns({plain, held, plain, plain, purls, plain});
  Machine machine;
  machine.max_ladder = 2;
  Effort effort;
  effort.stop = 0;
  effort.batch = 100'000;
  effort.hold = 100;
  PlanOptions closed;
  closed.conditions.closed_rows = {3, 7, 10, 13, 16, 19, 22};
  const Plan known = plan(grid, machine, effort, closed);
  REQUIRE(kinds_of(known) == 3);
  PlanOptions few;
  few.conditions.max_kinds = 3;
  const Plan found = plan(grid, machine, effort, few);
  CHECK(found.status == PlanStatus::optimal);
  CHECK(found.total_ms <= known.total_ms);
  CHECK(kinds_of(found) <= 3);
  CHECK(verify(grid, found).verified);
}

TEST_CASE("a wale in a rhythm may do what another does at its needle later", "[plan][conditions][kinds]") {
  const Grid grid = Grid::from_text(
      "kpkkkkkk\nkkkkkkkk\nkkkkkkkk\nkkkkpkpk\nx 1 1/1 R\nkkkkkkkk\nkpkkkkkk\nkkkkkkpk\nkkkkkkkk\nkkkkpkkk\n"
      "x 1 1/1 R\nkkkkkkkk\nkpkkkkkk\nkkkkkkkk\nkkkkkkpk\nkkkkpkkk\nx 1 1/1 R\nkkkkkkkk\nkpkkkkkk\nkkkkkkkk\n"
      "kkkkkkpk\nkkkkpkkk\nx 1 1/1 R\nkkkkkkkk\n");
  Machine machine;
  machine.max_ladder = 4;
  Effort effort;
  effort.stop = 0;
  effort.batch = 100'000;
  PlanOptions few;
  few.conditions.max_kinds = 3;
  const Plan free = plan(grid, machine, effort, few);
  REQUIRE(free.status == PlanStatus::optimal);
  // It works that wale as the rhythm does.
  PlanOptions kept = few;
  kept.conditions.rhythms = {{1, 1, 1, Rhythm{10, 10}}};
  const Plan found = plan(grid, machine, effort, kept);
  CHECK(found.status == PlanStatus::optimal);
  CHECK(found.total_ms == free.total_ms);
}

TEST_CASE("a plan that breaks the conditions has no tolerances under them", "[reason][conditions]") {
  const Grid grid = Grid::from_text("kkk\nkkk\nkpk\n");
  Effort effort;
  effort.drop = 0;
  effort.rung_knit = 0;
  const Plan early = plan(grid, Machine{}, effort);  // rungs cost nothing, so that later would do as well
  REQUIRE(early.stops.size() == 1);
  PlanOptions options;
  options.conditions.closed_rows = {early.stops[0].row};
  CHECK_THROWS_MATCHES(plan_tolerances(grid, Machine{}, effort, early, options), Error,
                       refused_field(ErrorCode::bad_argument, "plan"));
}

TEST_CASE("no stop stands too near one that is exempt", "[reason][conditions]") {
  Grid grid = Grid::from_text("kkkkkk\nkkkkkk\nkkkkkk\nkpkkkk\nkkkkkk\nkkkkkk\n");
  grid.cross({.row = 4, .column = 2, .left = 1, .right = 1});
  Effort free;
  free.stop = 0;
  const Plan near = plan(grid, Machine{}, free);
  free.drop = free.rung_knit = 0;  // so that later takes as long
  REQUIRE(near.stops.size() == 2);
  REQUIRE(near.stops[1].row - near.stops[0].row == 1);
  PlanOptions options;
  options.conditions.rows_apart = 3;
  options.conditions.forced_exempt = true;
  const Plan least = plan(grid, Machine{}, free, options);
  REQUIRE(least.stops.size() == 1);
  CHECK_THROWS_MATCHES(plan_tolerances(grid, Machine{}, free, near, options), Error,
                       refused_field(ErrorCode::bad_argument, "plan"));
  CHECK(plan_tolerances(grid, Machine{}, free, least, options).front().proven);
  // Two that are both exempt may be neighbours.
  grid.cross({.row = 3, .column = 4, .left = 1, .right = 1});
  const Plan forced = plan(grid, Machine{}, free, options);
  REQUIRE(forced.stops.size() == 2);
  Plan handed = forced;
  handed.bound_ms = 0;  // not the planner's own any more, and held against the conditions
  CHECK(plan_tolerances(grid, Machine{}, free, handed, options).front().proven);
}

TEST_CASE("a plan that works wales out of their rhythm has no tolerances under it", "[reason][conditions]") {
  const Grid grid = Grid::from_text("kkkk\nkkkk\nkkpk\nkkkk\nkpkk\nkkkk\n");
  Effort free;
  free.stop = free.batch = 0;
  const Plan soon = plan(grid, Machine{}, free);
  REQUIRE(soon.stops.size() == 2);
  free.drop = free.rung_knit = 0;
  PlanOptions options;
  options.conditions.rhythms = {{1, 1, 2, Rhythm{3, 3}}};
  const Plan kept = plan(grid, Machine{}, free, options);
  REQUIRE(kept.stops.front().row == 3);
  CHECK_THROWS_MATCHES(plan_tolerances(grid, Machine{}, free, soon, options), Error,
                       refused_field(ErrorCode::bad_argument, "plan"));
  Plan handed = kept;
  handed.bound_ms = 0;
  CHECK(plan_tolerances(grid, Machine{}, free, handed, options).front().proven);
  options.conditions.rhythms[0].rhythm.reset();  // any will do, and that of the first is one, too
  for (const Plan& mine : {handed, soon}) CHECK(plan_tolerances(grid, Machine{}, free, mine, options).front().proven);
}

TEST_CASE("what every task costs at its last stop may be more than can be counted", "[plan][conditions]") {
  const Grid grid = Grid(4000, 1).repeated_across(300);
  std::vector<std::uint8_t> cells(grid.cells().size(), static_cast<std::uint8_t>(Cell::purl));
  const Grid purl = Grid::from_cells(grid.rows(), grid.columns(), cells);
  Machine machine;
  machine.needles = 400;
  machine.max_ladder = 4000;
  Effort effort;
  effort.drop = effort.rung_purl = 3'000'000;
  PlanOptions options;
  options.conditions.rows_apart = 2;
  options.work_limit = 1000;
  const Plan made = plan(purl, machine, effort, options);
  CHECK(made.status != PlanStatus::infeasible);  // a stop after every second row will do
  CHECK(made.bound_ms <= made.total_ms);
}

}  // namespace plan_kinds_told_apart_test
