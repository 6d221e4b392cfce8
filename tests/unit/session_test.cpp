#include "latchwork/session.hpp"

#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/grid.hpp"

namespace session_test {

using namespace latchwork;
using latchwork_test::refused_field;

namespace {

/// Rows of a second and stops of twenty, so that figures are made in the head.
Effort seconds() {
  Effort effort;
  effort.stop = 20'000;
  effort.batch = 0;
  effort.drop = 0;
  effort.rung_purl = 10'000;
  effort.hold = 1'000;
  effort.row = 1'000;
  return effort;
}

Plan plan_with_stops(int rows, const std::vector<int>& after) {
  Plan plan;
  plan.rows = rows;
  plan.columns = 4;
  plan.leftmost = -2;
  plan.status = PlanStatus::feasible;
  for (const int row : after) {
    Stop stop;
    stop.row = row;
    plan.stops.push_back(stop);
  }
  return plan;
}

std::vector<int> ends(const std::vector<Session>& sessions) {
  std::vector<int> rows;
  for (const Session& session : sessions) rows.push_back(session.to_row);
  return rows;
}

}  // namespace

TEST_CASE("a plan that is none has no times, and says why", "[session][error]") {
  const Plan none = plan(Grid(4, 300), Machine{});  // wider than any bed
  REQUIRE(none.status == PlanStatus::infeasible);
  REQUIRE_FALSE(none.findings.empty());
  CHECK_THROWS_MATCHES(work_times(none), Error, refused_field(ErrorCode::bad_argument, "plan"));
  try {
    static_cast<void>(work_times(none));
  } catch (const Error& error) {
    CHECK(std::string(error.what()).find(none.findings[0].message) != std::string::npos);
  }
}

TEST_CASE("times by kind of work add up to the plan's, and go with the pieces", "[session]") {
  Grid grid(12, 9);
  for (const int row : {2, 3, 7}) grid.set(row, 1, Cell::purl);
  grid.set(5, 7, Cell::tuck);
  grid.cross({.row = 8, .column = 3, .left = 1, .right = 2, .lean = Lean::left});
  const Effort effort;
  const Plan made = plan(grid, Machine{}, effort);
  REQUIRE(made.status == PlanStatus::optimal);
  const WorkTimes times = work_times(made, effort);
  CHECK(times.total_ms == made.total_ms);
  CHECK(times.stops_ms + times.reforms_ms + times.crossings_ms + times.holds_ms + times.shapings_ms +
            times.carriage_ms ==
        times.total_ms);
  CHECK(times.carriage_ms == 12 * effort.row);
  CHECK(times.crossings_ms == effort.crossing + 3 * effort.crossing_stitch);
  CHECK(times.shapings_ms == 0);
  const WorkTimes four = work_times(made, effort, 4);
  CHECK(four.reforms_ms == 4 * times.reforms_ms);
  CHECK(four.total_ms == 4 * times.total_ms);
  CHECK_THROWS_MATCHES(work_times(made, effort, 0), Error, refused_field(ErrorCode::bad_argument, "pieces"));
  CHECK_THROWS_MATCHES(work_times(made, effort, 1001), Error, refused_field(ErrorCode::bad_argument, "pieces"));
}

TEST_CASE("sessions end after stops, as few and as even as these allow", "[session]") {
  // Ten rows and a stop take 30 s: two of them fit a minute, the third row past them does not. Filled from the front
  // the sessions were 60, 60 and 5 s.
  const Plan plan = plan_with_stops(45, {10, 20, 30, 40});
  const std::vector<Session> found = sessions(plan, seconds(), {.session_ms = 60'000, .rest_ms = 0});
  REQUIRE(ends(found) == std::vector<int>{20, 30, 45});
  CHECK(found[0] == Session{0, 20, true, true, 60'000, 40'000});
  CHECK(found[1] == Session{20, 30, true, true, 30'000, 20'000});
  CHECK(found[2] == Session{30, 45, false, true, 35'000, 20'000});
  // Begun in the middle: what was knitted before is not counted.
  const std::vector<Session> later = sessions(plan, seconds(), {.session_ms = 60'000, .rest_ms = 0, .from_row = 20});
  CHECK(ends(later) == std::vector<int>{30, 45});
  // Nine stops in six minutes: 90 s each, not two minutes twice and a stub.
  const Plan nine = plan_with_stops(90, {10, 20, 30, 40, 50, 60, 70, 80, 90});
  CHECK(ends(sessions(nine, seconds(), {.session_ms = 130'000, .rest_ms = 0})) == std::vector<int>{30, 60, 90});
  CHECK(sessions(plan, seconds(), {.from_row = 45}).empty());
}

TEST_CASE("without a stop in reach sessions end at rows that leave nothing in hold", "[session]") {
  CHECK(ends(sessions(plan_with_stops(130, {}), seconds(), {.session_ms = 60'000})) == std::vector<int>{44, 87, 130});
  CHECK(ends(sessions(plan_with_stops(120, {}), seconds(), {.session_ms = 60'000})) == std::vector<int>{60, 120});
}

TEST_CASE("no session ends with a needle in hold, or brought out to be knit back, while another row is in reach",
          "[session]") {
  Plan plan = plan_with_stops(60, {10, 20, 30});
  plan.stops[0].holds = {1};
  plan.stops[1].releases = {1};
  plan.stops[2].crossings.push_back({.crossing = {}, .returns = {}, .ease = true});
  Effort effort = seconds();
  effort.crossing = 0;
  // 10 + 20 + 1 = 31 s to the first stop, which leaves a needle in hold: past a minute the release comes first.
  const std::vector<Session> found = sessions(plan, effort, {.session_ms = 60'000, .rest_ms = 0});
  CHECK(ends(found) == std::vector<int>{9, 20, 60});
  CHECK(found[1].work_ms == 11'000 + 41'000);
  // The eased stitches are knit back by the next row: a session may end there and not before.
  CHECK(ends(sessions(plan, effort, {.session_ms = 60'000, .rest_ms = 0, .from_row = 21})) == std::vector<int>{60});
  // From row 21 on the minute ends with the eased stop after row 61: the row above it can be left.
  plan.rows = 80;
  plan.stops[2].row = 61;
  const SessionOptions late{.session_ms = 60'000, .rest_ms = 0, .from_row = 21};
  CHECK(ends(sessions(plan, effort, late)) == std::vector<int>{60, 80});
  plan.stops[2].crossings[0].ease = false;
  CHECK(ends(sessions(plan, effort, late)) == std::vector<int>{61, 80});
}

TEST_CASE("a stop early in a session does not end it", "[session]") {
  CHECK(ends(sessions(plan_with_stops(100, {2}), seconds(), {.session_ms = 60'000})) == std::vector<int>{40, 100});
}

TEST_CASE("work past all bounds is refused, and never wraps", "[session][error]") {
  Plan plan = plan_with_stops(3000, {});
  for (int row = 1; row <= 3000; ++row) {
    Stop stop;
    stop.row = row;
    GroupReturn group;
    group.stitches = std::numeric_limits<int>::max();
    group.prongs = {1};
    stop.crossings.push_back({.crossing = {}, .returns = {group}, .ease = false});
    plan.stops.push_back(stop);
  }
  Effort effort;
  effort.crossing_stitch = 3'600'000;
  CHECK_THROWS_MATCHES(sessions(plan, effort), Error, refused_field(ErrorCode::too_large, "plan"));
  CHECK_THROWS_MATCHES(rests(plan, effort), Error, refused_field(ErrorCode::too_large, "plan"));
  plan.rows = std::numeric_limits<int>::max();
  effort.row = 3'600'000;
  CHECK(work_times(plan, effort, 100).total_ms > 0);
  CHECK_THROWS_MATCHES(work_times(plan, effort, 1000), Error, refused_field(ErrorCode::too_large, "pieces"));
}

TEST_CASE("what cannot be left lasts longer than asked, to the first row that can", "[session]") {
  Plan plan = plan_with_stops(200, {0, 150});
  plan.stops[0].holds = {1, 2};
  plan.stops[1].releases = {1, 2};
  const std::vector<Session> found = sessions(plan, seconds(), {.session_ms = 60'000, .rest_ms = 0});
  REQUIRE(ends(found) == std::vector<int>{150, 200});
  CHECK(found[0].clear);
  CHECK(found[0].work_ms == 22'000 + 150'000 + 20'000);
  plan.stops.pop_back();  // never released
  const std::vector<Session> held = sessions(plan, seconds(), {.session_ms = 60'000, .rest_ms = 0});
  REQUIRE(ends(held) == std::vector<int>{200});
  CHECK_FALSE(held[0].clear);
}

TEST_CASE("hands rest when the hand work since the last rest comes to so much", "[session]") {
  const Plan plan = plan_with_stops(90, {10, 20, 30, 40, 50, 60, 70, 80});
  const SessionOptions options{.session_ms = 600'000, .rest_ms = 60'000};
  CHECK(rests(plan, seconds(), options) == std::vector<Rest>{{0, 30, 60'000}, {0, 60, 60'000}});
  // What is due on the cast-on row is told there.
  CHECK(rests(plan_with_stops(40, {0, 20}), seconds(), {.session_ms = 600'000, .rest_ms = 60'000}).empty());
  Effort slow = seconds();
  slow.stop = 60'000;
  CHECK(rests(plan_with_stops(40, {0, 20}), slow, options) == std::vector<Rest>{{0, 0, 60'000}, {0, 20, 60'000}});
  // Not where the session ends anyhow.
  CHECK(rests(plan_with_stops(30, {10, 20, 30}), seconds(), options).empty());
  CHECK(rests(plan, seconds(), {.session_ms = 600'000, .rest_ms = 0}).empty());
  const Plan longer = plan_with_stops(120, {10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 110});
  const SessionOptions thirds{.session_ms = 120'000, .rest_ms = 60'000};
  CHECK(ends(sessions(longer, seconds(), thirds)) == std::vector<int>{40, 80, 120});
  CHECK(rests(longer, seconds(), thirds) == std::vector<Rest>{{0, 30, 60'000}, {1, 70, 60'000}, {2, 110, 60'000}});
}

TEST_CASE("session options and plans out of their ranges are refused by field", "[session][error]") {
  const Plan plan = plan_with_stops(20, {5, 10});
  const auto code = ErrorCode::bad_argument;
  CHECK_THROWS_MATCHES(sessions(plan, {}, {.session_ms = 59'999}), Error, refused_field(code, "session_ms"));
  CHECK_THROWS_MATCHES(sessions(plan, {}, {.session_ms = 86'400'001}), Error, refused_field(code, "session_ms"));
  CHECK_THROWS_MATCHES(rests(plan, {}, {.rest_ms = 1}), Error, refused_field(code, "rest_ms"));
  CHECK_THROWS_MATCHES(rests(plan, {}, {.rest_ms = -1}), Error, refused_field(code, "rest_ms"));
  CHECK_THROWS_WITH(rests(plan, {}, {.rest_ms = 1}), "rest_ms is 1; it must be 0 or 60000..86400000");
  CHECK_THROWS_MATCHES(sessions(plan, {}, {.from_row = 21}), Error, refused_field(code, "from_row"));
  CHECK_THROWS_MATCHES(sessions(plan, {}, {.from_row = -1}), Error, refused_field(code, "from_row"));
  for (const std::vector<int>& rows : {std::vector{5, 5}, std::vector{10, 5}, std::vector{5, 21}}) {
    CHECK_THROWS_MATCHES(sessions(plan_with_stops(20, rows)), Error,
                         latchwork_test::refused(code, latchwork_test::stop_place(1, rows[1])));
  }
  CHECK_THROWS_MATCHES(sessions(plan_with_stops(-1, {})), Error, refused_field(code, "rows"));
  CHECK_THROWS_MATCHES(sessions(plan_with_stops(std::numeric_limits<int>::max(), {})), Error,
                       refused_field(ErrorCode::too_large, "rows"));
  Effort effort;
  effort.row = -1;
  CHECK_THROWS_MATCHES(sessions(plan, effort), Error, refused_field(code, "effort.row"));
  Plan none = plan;
  none.status = PlanStatus::infeasible;
  CHECK(sessions(none).empty());
}

}  // namespace session_test
