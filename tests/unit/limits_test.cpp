// Looks inside: when a call with a time limit is to be over (src/plan/limits.hpp, pace.hpp, read_on.hpp).
#include "plan/limits.hpp"

#include <chrono>
#include <stop_token>
#include <thread>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/error.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "plan/pace.hpp"
#include "plan/read_on.hpp"

namespace limits_test {

using namespace latchwork;

namespace {

PlanOptions limited(std::int64_t time_limit_ms) {
  PlanOptions options;
  options.time_limit_ms = time_limit_ms;
  return options;
}

}  // namespace

TEST_CASE("a call is foreseen to end late by what is left to be read and what then comes", "[limits]") {
  using std::chrono::milliseconds;
  const PlanOptions soon = limited(1);
  const PlanOptions late = limited(3'600'000);
  const PlanOptions never;
  const planning::Limits over(soon);
  CHECK(over.would_be_late(milliseconds(21), milliseconds(0)));
  CHECK(over.would_be_late(milliseconds(0), milliseconds(21)));
  CHECK(!planning::Limits(late).would_be_late(milliseconds(21), milliseconds(21)));
  CHECK(planning::Limits(late).would_be_late(std::chrono::hours(2), milliseconds(0)));
  CHECK(!planning::Limits(never).would_be_late(std::chrono::hours(2), std::chrono::hours(2)));
}

TEST_CASE("of a long limit a twentieth may be passed, of a short one 20 ms", "[limits]") {
  using std::chrono::milliseconds;
  CHECK(planning::Deadline(limited(1)).most_late() == milliseconds(20));
  CHECK(planning::Deadline(limited(400)).most_late() == milliseconds(20));
  CHECK(planning::Deadline(limited(1'000)).most_late() == milliseconds(50));
  const PlanOptions hour = limited(3'600'000);
  CHECK(!planning::Limits(hour).would_be_late(std::chrono::minutes(62), {}));
  CHECK(planning::Limits(hour).would_be_late(std::chrono::seconds(62 * 60 + 30), {}));  // a quarter sooner, for it is
                                                                                        // only foreseen
  CHECK(planning::Limits(hour).would_be_late(std::chrono::minutes(64), {}));
}

TEST_CASE("a pace is that of the middle one of the parts: a pause in one of them does not count", "[limits]") {
  using std::chrono::milliseconds;
  planning::Pace pace(160);
  CHECK(!pace.known());
  for (const int ms : {1, 1, 200, 1, 1, 1}) {
    std::this_thread::sleep_for(milliseconds(ms));
    pace.step(10);
  }
  REQUIRE(pace.known());
  CHECK(pace.whole() >= milliseconds(16));
  CHECK(pace.whole() < milliseconds(16 * 200));
  CHECK(pace.left() >= pace.whole() * 0.624);  // 100 of 160 steps
  CHECK(pace.left() <= pace.whole() * 0.626);
}

TEST_CASE("what is over since a few milliseconds is long over, and what has no end never", "[limits]") {
  const PlanOptions soon = limited(1);
  const planning::Limits limits(soon);
  std::this_thread::sleep_for(std::chrono::milliseconds(10));
  CHECK(limits.long_over());
  const PlanOptions late = limited(3'600'000);
  CHECK(!planning::Limits(late).long_over());
  CHECK(!planning::Limits(PlanOptions()).long_over());
}

TEST_CASE("a pace is known from the third part on, so that a pause in the first does not count", "[limits]") {
  using std::chrono::milliseconds;
  planning::Pace pace(160);
  for (const int ms : {100, 1, 1}) {
    CHECK(!pace.known());
    std::this_thread::sleep_for(milliseconds(ms));
    pace.step(10);
  }
  REQUIRE(pace.known());
  CHECK(pace.whole() < milliseconds(16 * 100));
}

namespace {

// Whether a panel that takes a millisecond for each sixteenth is read to its end.
bool is_read(const Grid& grid, const PlanOptions& options, int quarters_after = 0) {
  planning::Spent spent;
  spent.after = quarters_after;
  planning::Limits limits(options, &spent);
  planning::ReadOn read_on(&limits, grid, 1);
  const std::int64_t cells = std::int64_t{grid.rows()} * grid.columns();
  try {
    for (int part = 0; part < 16; ++part) {
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
      read_on.step(cells / 16);
    }
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::cancelled);
    CHECK(error.place().field == "options");
    return false;
  }
  return true;
}

}  // namespace

TEST_CASE("what a call does with a plan is foreseen while its panel is read", "[limits]") {
  const Grid large(1'600, 160);
  CHECK(is_read(large, limited(2'000)));
  CHECK(!is_read(large, limited(2'000), 2'000));  // 500 times as long as reading
  CHECK(is_read(large, {}, 2'000));
  CHECK(!is_read(large, limited(1)));  // as long again to read, and longer for the plan
  const Grid usual(1'000, 200);
  CHECK(is_read(usual, limited(1)));
}

TEST_CASE("a crossing counts as twenty cells when it is asked whether a panel is always read", "[limits]") {
  Grid grid(200, 200);
  CHECK(is_read(grid, limited(1)));
  for (int row = 1; row <= 40; ++row) {
    for (int column = 0; column < grid.columns(); column += 2) {
      grid.cross({.row = row, .column = column, .left = 1, .right = 1});
    }
  }
  CHECK(is_read(grid, limited(1)));  // 4,000: 80,000 cells more
  for (int row = 41; row <= 120; ++row) {
    for (int column = 0; column < grid.columns(); column += 2) {
      grid.cross({.row = row, .column = column, .left = 1, .right = 1});
    }
  }
  CHECK(!is_read(grid, limited(1)));  // 12,000: 240,000
}

TEST_CASE("time is kept back for crossings, which are written up in the time in which twenty cells are read",
          "[limits]") {
  const PlanOptions options = limited(3'600'000);
  Grid grid(10, 40);
  const auto least_ms = [&] {
    planning::Spent spent;
    planning::Limits limits(options, &spent);
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
    limits.keep_back(grid);
    return static_cast<double>(spent.least_ms) /
           std::chrono::duration<double, std::milli>(spent.set_up).count();  // of the time to read the panel
  };
  CHECK(least_ms() == latchwork_test::Approx(1 + 1.5).margin(0.06));  // rounded up to a millisecond
  for (int row = 1; row <= 10; ++row) {
    for (int column = 0; column < 40; column += 10) grid.cross({.row = row, .column = column, .left = 1, .right = 1});
  }
  CHECK(least_ms() == latchwork_test::Approx(1 + 1.5 + 2).margin(0.06));  // 40 of them for 400 cells
}

TEST_CASE("lanes that are gone through without work are counted until the clock is looked at", "[limits]") {
  const PlanOptions soon = limited(1);
  planning::Limits limits(soon);
  std::this_thread::sleep_for(std::chrono::milliseconds(5));
  CHECK(limits.go_past(49'999));
  CHECK(!limits.go_past(1));
  CHECK(!limits.go_past(1));
}

TEST_CASE("nobody limits a call who gives neither time nor work", "[limits]") {
  CHECK(planning::is_unlimited({}));
  CHECK(!planning::is_unlimited(limited(1)));
  PlanOptions counted;
  counted.work_limit = 1;
  CHECK(!planning::is_unlimited(counted));
  PlanOptions small;
  small.memory_limit = 1;
  CHECK(planning::is_unlimited(small));
}

TEST_CASE("a panel of 200,000 cells has a plan however short the time", "[limits]") {
  for (const Grid& grid : {latchwork_test::distinct_panel(198, 1000, 1), latchwork_test::stacked_panel(198, 1000, 1)}) {
    const Plan found = plan(grid, Machine{}, {}, limited(1));
    CHECK(found.status == PlanStatus::feasible);
    CHECK(verify(grid, found).verified);
  }
}

TEST_CASE("more kinds of wale than are planned at once are refused, with the place of the first too many",
          "[limits][long]") {
  // Every other cell of every wale is not knitted, so that each cell is a wale, and each row's are a kind.
  Grid grid(1 << 13, 8);
  for (int row = 1; row <= grid.rows(); ++row) {
    for (int column = 0; column < grid.columns(); ++column) {
      grid.set(row, column, (row + column) % 2 == 0 ? Cell::none : Cell::purl);
    }
  }
  Machine machine;
  machine.cast_on_loops = true;
  try {
    static_cast<void>(plan(grid, machine));
    FAIL("it was planned");
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::too_large);
    CHECK(error.place().field == "grid");
    CHECK(error.place().row == (1 << 25) / ((1 << 13) + 1) + 1);  // a kind a row, of 2^25 / (rows + 1)
  }
}

TEST_CASE("a stopped call reads a panel of 200 x 2000 and plans it, one of twice as many rows it leaves", "[limits]") {
  std::stop_source source;
  source.request_stop();
  PlanOptions options;
  options.stop = source.get_token();
  const Grid usual = latchwork_test::distinct_panel(198, 2000, 1);
  const Plan plan_of_it = plan(usual, Machine{}, {}, options);
  CHECK(plan_of_it.status == PlanStatus::feasible);
  CHECK(verify(usual, plan_of_it).verified);
  const Grid large = latchwork_test::distinct_panel(198, 4000, 1);
  try {
    static_cast<void>(plan(large, Machine{}, {}, options));
    FAIL("it was read");
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::cancelled);
    CHECK(error.place().field == "options");
  }
}

}  // namespace limits_test
