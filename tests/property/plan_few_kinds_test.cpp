// Plans of few kinds of stop, held against schedules that have few kinds by their make: of panels that repeat upward,
// with the stops of some rows of each repeat closed.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "how_many.hpp"
#include "kinds_of.hpp"
#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"
#include "random.hpp"

namespace plan_few_kinds_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

struct Case {
  int every = 4;  ///< rows of a repeat
  Grid grid{1, 1};
  Machine machine;
  Effort effort;
  std::vector<KeptRhythm> kept;
};

/// Purls, and stacks of tucks and slips that cost the same, one to a repeat in every second column; crossings now and
/// then, and a wale of them that is kept to a rhythm.
Case any_case(Random& random) {
  Case out;
  out.every = random.between(4, 6);
  const int repeats = random.between(3, 4);
  const int rows = out.every * repeats + random.between(0, 2);
  const int columns = 2 * random.between(2, 4) + 1;
  out.grid = Grid(rows, columns);
  for (int column = 1; column < columns; column += 2) {
    const bool purls = random.one_in(2);
    const int first = random.between(1, out.every);
    for (int row = first; row < rows; row += out.every) {
      const Cell stacked = random.one_in(3) ? Cell::slip : Cell::tuck;
      out.grid.set(row, column, purls ? Cell::purl : stacked);
      if (!purls && row > 1 && !random.one_in(3)) out.grid.set(row - 1, column, Cell::purl);
    }
  }
  if (random.one_in(2)) {
    const int first = random.between(1, out.every - 1);
    for (int row = first; row < rows; row += out.every) {
      try {
        out.grid.cross({.row = row, .column = 1, .left = 1, .right = 1});
      } catch (const Error&) {
        continue;  // a stack goes on over the row
      }
    }
    if (!random.one_in(3)) {
      out.kept = {{1, 1, 1, Rhythm{random.between(1, 2) * out.every, random.between(1, 2 * out.every)}}};
    }
  }
  constexpr std::int64_t stops[] = {0, 1000, 15'000};
  constexpr std::int64_t batches[] = {2000, 12'000, 100'000};
  out.machine.max_ladder = random.between(1, 4);
  out.effort.stop = stops[random.between(0, 2)];
  out.effort.batch = batches[random.between(0, 2)];
  out.effort.hold = random.one_in(2) ? 100 : 4000;
  return out;
}

}  // namespace

TEST_CASE("no schedule of as few kinds takes less than a plan that is called the least", "[plan][conditions][kinds]") {
  constexpr int most_kinds = 5;
  int compared = 0;
  for (int seed = 1; seed <= how_many(900); ++seed) {
    Random random(static_cast<std::uint64_t>(seed));
    const Case in = any_case(random);
    std::vector<std::optional<Plan>> least;  // none where the search ended before it had any
    for (int kinds = 1; kinds <= most_kinds; ++kinds) {
      PlanOptions options;
      options.conditions.max_kinds = kinds;
      options.conditions.rhythms = in.kept;
      options.work_limit = 2'000'000;
      try {
        least.push_back(plan(in.grid, in.machine, in.effort, options));
      } catch (const Error& error) {
        REQUIRE(error.code() == ErrorCode::cancelled);
        least.emplace_back();
      }
    }
    for (int i = 0; i < 30; ++i) {
      PlanOptions options;
      options.conditions.rhythms = in.kept;
      options.conditions.forced_exempt = true;
      const int of_ten = random.between(3, 7);
      std::vector<bool> closed;
      for (int row = 0; row < in.every; ++row) closed.push_back(random.between(1, 10) <= of_ten);
      for (int row = 1; row < in.grid.rows(); ++row) {
        if (closed[static_cast<std::size_t>(row % in.every)]) options.conditions.closed_rows.push_back(row);
      }
      const Plan known = plan(in.grid, in.machine, in.effort, options);
      if (known.status == PlanStatus::infeasible) continue;
      for (int kinds = kinds_of(known); kinds <= most_kinds; ++kinds) {
        if (kinds == 0 || !least[static_cast<std::size_t>(kinds - 1)]) continue;
        const Plan& told = *least[static_cast<std::size_t>(kinds - 1)];
        ++compared;
        INFO("seed " << seed << ", " << kinds << " kinds\n" << in.grid.to_text());
        REQUIRE(told.status != PlanStatus::infeasible);
        REQUIRE(told.bound_ms <= known.total_ms);
        if (told.status == PlanStatus::optimal) REQUIRE(told.total_ms <= known.total_ms);
      }
    }
  }
  CHECK(compared >= how_many(900) * 5);
}

}  // namespace plan_few_kinds_test
