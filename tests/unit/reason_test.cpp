#include "latchwork/reason.hpp"

#include <stdexcept>
#include <stop_token>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "purl_panels.hpp"

namespace reason_test {

// By hand; a stop takes 15 s, a batch 12 s, a purl rung with its drop 3 s, a knit rung 4.5 s where nothing else is
// said.

using namespace latchwork;
using latchwork_test::cheap_stops;
using latchwork_test::purls;
using latchwork_test::refused;
using latchwork_test::refused_field;
using latchwork_test::scattered;

namespace {

const Tolerance& tolerance_of(const std::vector<Tolerance>& all, EffortTerm term) {
  return all.at(static_cast<std::size_t>(term));
}

}  // namespace

TEST_CASE("each stop says what forces it or what it saves", "[reason]") {
  Grid grid = Grid::from_text("kkkkkk\nkkkkkp\nkkkkkk\nkkkkkk\nkkkkkk\nkkkkkp");
  grid.cross({.row = 3, .column = 1, .left = 2, .right = 1});
  grid.cross({.row = 3, .column = 4, .left = 1, .right = 1});
  // Column 5 of row 1 lies below the second crossing: its purl is done there. The purl of row 5 has a stop of its own.
  const Plan mine = plan(grid, Machine{});
  REQUIRE(mine.stops.size() == 2);
  const auto reasons = stop_reasons(grid, Machine{}, {}, mine);
  CHECK(reasons[0].cause == StopCause::crossing);
  CHECK(reasons[0].place.column == 1);
  CHECK(reasons[0].message == "the 2/1 RC at column 1 is made here, and 1 more");
  CHECK(reasons[0].beside_ms == -1);
  CHECK(reasons[1].row == 5);
  CHECK(reasons[1].cause == StopCause::saving);
  CHECK(reasons[1].saves_ms == 4'500);  // a stop after row 6 instead, one knit rung more
  CHECK(reasons[1].least_saves_ms == 4'500);
  CHECK(reasons[1].beside_ms == -1);  // the crossing's stop is below it
  CHECK(reasons[1].message == "it saves 5 s against the best plan without it; the other stops cannot do its works");

  const auto shallow = stop_reasons(grid, {.max_ladder = 1}, {}, plan(grid, {.max_ladder = 1}));
  REQUIRE(shallow.size() == 3);
  CHECK(shallow[0].row == 1);
  CHECK(shallow[0].cause == StopCause::hand_cells);
  CHECK(shallow[0].place.row == 1);
  CHECK(shallow[0].place.column == 5);

  Grid shaped = Grid::from_text("kkkk\nkkkk\n.kkk\n.kkk");
  const auto shaping = stop_reasons(shaped, Machine{}, {}, plan(shaped, Machine{}));
  REQUIRE(shaping.size() == 1);
  CHECK(shaping[0].cause == StopCause::shaping);
  CHECK(shaping[0].place.column == 0);
  CHECK(shaping[0].message == "the wale at column 0 begins here");
  CHECK_THROWS_MATCHES(stop_reasons(grid, Machine{}, {}, plan(shaped, Machine{})), Error,
                       refused_field(ErrorCode::size_mismatch, "plan"));
}

TEST_CASE("a stop that two purls share saves a knit rung of each against the same a row later", "[reason]") {
  const Plan mine = plan(purls(), Machine{});
  REQUIRE(mine.stops.size() == 1);
  const auto reasons = stop_reasons(purls(), Machine{}, {}, mine);
  CHECK(reasons[0].cause == StopCause::saving);
  CHECK(reasons[0].saves_ms == 2 * 4'500);  // one stop a row later, a knit rung more for each
  CHECK(stop_cause_name(StopCause::hand_cells) == "hand_cells");
  CHECK(stop_cause_name(static_cast<StopCause>(9)).empty());
}

TEST_CASE("what an unproven search or conditions leave open is not told as a fact", "[reason]") {
  const latchwork_test::Instance in = latchwork_test::instance_of("co-prime periods", 1);
  const Plan mine = plan(in.grid, in.machine, in.effort);
  PlanOptions short_work;
  short_work.work_limit = 1;
  int open = 0;
  for (const StopReason& reason : stop_reasons(in.grid, in.machine, in.effort, mine, short_work)) {
    CAPTURE(reason.row, reason.message);
    if (reason.cause != StopCause::saving) continue;
    CHECK(reason.saves_ms >= reason.least_saves_ms);
    if (reason.beside_ms >= 0) CHECK(reason.saves_ms <= reason.beside_ms);
    const bool proven = reason.saves_ms == reason.least_saves_ms;
    open += proven ? 0 : 1;
    CHECK(proven == (reason.message.find(" found without it (") == std::string::npos));
  }
  CHECK(open > 0);

  // Deep batches from the stop above could do without the one after row 2; batches of one row could not.
  PlanOptions shallow;
  shallow.conditions.max_depth = 1;
  const Plan two = plan(purls(), Machine{}, cheap_stops(), shallow);
  REQUIRE(two.stops.size() == 2);
  const auto reasons = stop_reasons(purls(), Machine{}, cheap_stops(), two, shallow);
  CHECK(reasons[0].cause == StopCause::hand_cells);
  CHECK(reasons[0].beside_ms == -1);
  CHECK(reasons[0].message == "the hand cells of row 2, column 1, can be made at no other stop under the conditions");
  CHECK(stop_reasons(purls(), Machine{}, cheap_stops(), two)[0].beside_ms == 8'000);
}

TEST_CASE("a stop of a panel that has no plan at all has no reason", "[reason][error]") {
  const auto plan_refused = refused_field(ErrorCode::bad_argument, "plan");
  Grid wide(6, 20);
  wide.set(2, 3, Cell::purl);
  const Plan mine = plan(wide, Machine{});
  REQUIRE(mine.stops.size() == 1);
  CHECK_THROWS_MATCHES(stop_reasons(wide, {.needles = 10}, {}, mine), Error, plan_refused);  // off the bed
  // Each alone leaves a plan, and both none.
  const Plan two = plan(purls(), Machine{}, cheap_stops());
  PlanOptions both;
  both.conditions.rows_apart = 3;
  both.conditions.max_depth = 1;
  CHECK_THROWS_MATCHES(stop_reasons(purls(), Machine{}, cheap_stops(), two, both), Error, plan_refused);
  both.conditions.rows_apart = 2;
  CHECK(stop_reasons(purls(), Machine{}, cheap_stops(), two, both)[0].cause == StopCause::hand_cells);
  PlanOptions closed;
  closed.conditions.closed_rows = {0, 1, 2, 3, 4, 5, 6};
  CHECK_THROWS_MATCHES(stop_reasons(purls(), Machine{}, cheap_stops(), two, closed), Error, plan_refused);
  closed.conditions.closed_rows = {0, 1, 3, 5};
  CHECK(stop_reasons(purls(), Machine{}, cheap_stops(), two, closed).size() == 2);
}

TEST_CASE("a stop that saves nothing says that a plan without it takes as long", "[reason]") {
  // With knit rungs that cost nothing, one stop does after row 4 or a row later.
  Effort free;
  free.rung_knit = free.drop = 0;
  const auto reasons = stop_reasons(purls(), Machine{}, free, plan(purls(), Machine{}, free));
  REQUIRE(reasons.size() == 1);
  CHECK(reasons[0].saves_ms == 0);
  CHECK(reasons[0].message == "the least plan without it takes as long; the other stops cannot do its works");
}

TEST_CASE("stops that do not rise within the panel have no reasons and no tolerances", "[reason][error]") {
  Plan spoiled = plan(purls(), Machine{});
  REQUIRE(spoiled.stops.size() == 1);
  for (const int row : {-5, 99}) {
    spoiled.stops[0].row = row;
    CHECK_THROWS_MATCHES(stop_reasons(purls(), Machine{}, {}, spoiled), Error,
                         refused(ErrorCode::bad_argument, latchwork_test::stop_place(0, row)));
    CHECK_THROWS_MATCHES(plan_tolerances(purls(), Machine{}, {}, spoiled), Error,
                         refused(ErrorCode::bad_argument, latchwork_test::stop_place(0, row)));
  }
  spoiled.stops[0].row = 3;
  spoiled.stops.push_back(spoiled.stops[0]);
  CHECK_THROWS_MATCHES(stop_reasons(purls(), Machine{}, {}, spoiled), Error,
                       refused(ErrorCode::bad_argument, latchwork_test::stop_place(1, 3)));
  CHECK_THROWS_MATCHES(plan_tolerances(purls(), Machine{}, {}, spoiled), Error,
                       refused(ErrorCode::bad_argument, latchwork_test::stop_place(1, 3)));
}

TEST_CASE("tolerances are walked to from the greatest value that can be counted", "[reason]") {
  // 65536 rows of 20 stitches at an hour for whatever the panel has not: near the most milliseconds that are counted.
  Grid tall(65536, 20);
  tall.set(5, 10, Cell::purl);
  Effort dear;
  dear.crossing = dear.crossing_stitch = dear.shaping = 3'600'000;
  const Plan mine = plan(tall, Machine{}, dear);
  std::stop_source source;
  PlanOptions options;
  options.stop = source.get_token();
  options.progress = [&](const Progress& now) {
    if (now.share > 0.37) source.request_stop();  // 1 / 13, and 4 / 13 of the rest: stop and batch are enough
  };
  const Tolerance batch = tolerance_of(plan_tolerances(tall, Machine{}, dear, mine, options), EffortTerm::batch);
  CHECK(batch.least_ms == 0);
  CHECK(batch.most_ms > batch.value_ms);
  CHECK(batch.most_ms < 3'600'000);
  CHECK(!batch.most_exact);
  dear.batch = batch.most_ms + 1;
  CHECK_THROWS_MATCHES(plan(tall, Machine{}, dear), Error, refused_field(ErrorCode::too_large, "effort"));
}

TEST_CASE("less than nothing is saved by a stop that a plan has to spare", "[reason]") {
  // Two stops where one takes 6 s less.
  const Plan two = plan(purls(), Machine{}, cheap_stops());
  const auto reasons = stop_reasons(purls(), Machine{}, {}, two);
  REQUIRE(reasons.size() == 2);
  CHECK(reasons[0].saves_ms == -6'000);
  CHECK(reasons[0].beside_ms == -1);
  CHECK(reasons[0].message == "the least plan without it takes 6 s less");
}

TEST_CASE("a tile repeated upward is planned in its own period", "[reason]") {
  Grid tile(8, 6);
  tile.cross({.row = 4, .column = 1, .left = 2, .right = 2});
  tile.set(2, 2, Cell::purl);
  const Period period = plan_period(plan(tile.repeated_up(6), Machine{}));
  CHECK(period.rows == 8);
  CHECK(period.stops == 1);
  CHECK(period.times >= 5);
  CHECK(plan_period(plan(tile, Machine{})) == Period{});
  CHECK(plan_period(Plan{}) == Period{});
}

TEST_CASE("a plan whose stops do not rise within its rows has no period to tell", "[reason][error]") {
  Plan made;
  made.rows = 8;
  made.columns = 1;
  made.status = PlanStatus::feasible;
  made.stops.resize(2);
  for (const auto& [first, second] : {std::pair{4, 4}, std::pair{5, 4}, std::pair{4, 9}, std::pair{-2, -1}}) {
    made.stops[0].row = first;
    made.stops[1].row = second;
    CHECK_THROWS_MATCHES(plan_period(made), Error,
                         refused(ErrorCode::bad_argument, first < 0 ? latchwork_test::stop_place(0, first)
                                                                    : latchwork_test::stop_place(1, second)));
  }
  // An infeasible plan is none, whatever stops it has.
  made.status = PlanStatus::infeasible;
  CHECK(plan_period(made) == Period{});
  made.stops = {Stop{}, Stop{}, Stop{}};
  for (const int i : {0, 1, 2}) made.stops[static_cast<std::size_t>(i)].row = 2 * i + 2;
  CHECK(plan_period(made) == Period{});
  made.status = PlanStatus::feasible;
  CHECK(plan_period(made).rows == 2);
}

TEST_CASE("how far each cost may move is told to the millisecond", "[reason]") {
  // Two purls, one stop after row 4: 15 s + 2 x 12 s + 2 x 3 s + two knit rungs of 4.5 s. Stops after rows 2 and 4 take
  // 15 s more for the stop and 9 s less for the rungs.
  const Plan mine = plan(purls(), Machine{});
  const auto tolerances = plan_tolerances(purls(), Machine{}, {}, mine);
  REQUIRE(tolerances.size() == 12);
  CHECK(tolerance_of(tolerances, EffortTerm::stop) ==
        Tolerance{EffortTerm::stop, 15'000, 9'000, 3'600'000, true, true, true});
  CHECK(tolerance_of(tolerances, EffortTerm::rung_knit) ==
        Tolerance{EffortTerm::rung_knit, 4'000, 0, 7'000, true, true, true});
  CHECK(tolerance_of(tolerances, EffortTerm::drop) == Tolerance{EffortTerm::drop, 500, 0, 3'500, true, true, true});
  for (const EffortTerm term :
       {EffortTerm::batch, EffortTerm::rung_purl, EffortTerm::rung_tuck, EffortTerm::rung_slip, EffortTerm::hold,
        EffortTerm::crossing, EffortTerm::crossing_stitch, EffortTerm::shaping, EffortTerm::row}) {
    CHECK(tolerance_of(tolerances, term).least_ms == 0);
    CHECK(tolerance_of(tolerances, term).most_ms == 3'600'000);
  }
  const Plan other = plan(purls(), Machine{}, cheap_stops());
  CHECK_THROWS_MATCHES(plan_tolerances(purls(), Machine{}, {}, other), Error,
                       refused_field(ErrorCode::bad_argument, "plan"));
  // A plan for a purl elsewhere does not make this panel, though it may take as long.
  Grid moved(purls().rows(), purls().columns());
  for (int row = 1; row <= moved.rows(); ++row) {
    for (int column = 0; column < moved.columns(); ++column) {
      moved.set(row, column, purls().at(row, moved.columns() - 1 - column));
    }
  }
  REQUIRE(moved != purls());
  REQUIRE(plan(moved, Machine{}).total_ms == mine.total_ms);
  CHECK_THROWS_MATCHES(plan_tolerances(moved, Machine{}, {}, mine), Error,
                       refused_field(ErrorCode::bad_argument, "plan"));
  // Of the same size, but with a rope: its crossing is none of this panel's.
  Grid roped = purls();
  roped.cross({.row = 1, .column = 0, .left = 1, .right = 1});
  CHECK_THROWS_MATCHES(plan_tolerances(roped, Machine{}, {}, mine), Error,
                       refused_field(ErrorCode::bad_argument, "plan"));
}

TEST_CASE("where nobody has proven a plan the least, its tolerances say so", "[reason]") {
  const Grid grid = scattered(24, 12);
  PlanOptions cut;
  cut.work_limit = 1;
  const Plan rough = plan(grid, Machine{}, {}, cut);
  REQUIRE(rough.status == PlanStatus::feasible);
  for (const Tolerance& each : plan_tolerances(grid, Machine{}, {}, rough, cut)) {
    CHECK_FALSE(each.proven);
    CHECK(each.least_ms == each.value_ms);
    CHECK(each.most_ms == each.value_ms);
    CHECK_FALSE(each.least_exact);
    CHECK_FALSE(each.most_exact);
  }
}

TEST_CASE("a plan of another size is told before anything else is looked at", "[reason][error]") {
  const Plan mine = plan(purls(), Machine{});
  PlanOptions stopped;  // were anything planned, it would have to say that it was stopped
  std::stop_source source;
  source.request_stop();
  stopped.stop = source.get_token();
  stopped.conditions.max_kinds = 1;
  int told = 0;
  stopped.progress = [&](const Progress&) { ++told; };
  Effort negative;
  negative.stop = -1;
  const Grid wider(purls().rows(), purls().columns() + 1);
  const Grid taller(purls().rows() + 1, purls().columns());
  for (const Grid& grid : {wider, taller}) {
    for (const Effort& effort : {Effort{}, negative}) {
      CHECK_THROWS_MATCHES(plan_tolerances(grid, Machine{}, effort, mine, stopped), Error,
                           refused_field(ErrorCode::size_mismatch, "plan"));
      CHECK_THROWS_MATCHES(stop_reasons(grid, Machine{}, effort, mine, stopped), Error,
                           refused_field(ErrorCode::size_mismatch, "plan"));
    }
  }
  CHECK(told == 0);
}

TEST_CASE("on the way to the end of a tolerance a better plan is enough, however long its proof would take",
          "[reason][tolerances]") {
  // Planned in milliseconds as it is; with rungs of knit for nothing the proof takes minutes.
  Grid grid(200, 60);
  for (int column = 1; column + 1 < grid.columns(); ++column) {
    for (int row = 1; row <= grid.rows(); ++row) {
      if ((row + 2 * column) % (column % 5 + 3) == 0) grid.set(row, column, Cell::purl);
    }
  }
  const Effort effort;
  const Plan best = plan(grid, Machine{}, effort);
  REQUIRE(best.status == PlanStatus::optimal);
  PlanOptions watched;  // told after every two million steps
  int told = 0;
  watched.progress = [&](const Progress&) {
    if (++told > 20'000) throw std::runtime_error("it goes on for what is of no use");
  };
  const auto tolerances = plan_tolerances(grid, Machine{}, effort, best, watched);
  for (const Tolerance& tolerance : tolerances) {
    CAPTURE(effort_term_name(tolerance.term));
    CHECK(tolerance.proven);
    CHECK(tolerance.least_exact);
    CHECK(tolerance.most_exact);
    if (tolerance.term != EffortTerm::rung_knit) continue;
    REQUIRE(tolerance.least_ms > 0);
    for (const bool beyond : {false, true}) {
      Effort moved = effort;
      moved.rung_knit = tolerance.least_ms - (beyond ? 1 : 0);
      const HandWork mine = hand_work(best, moved);
      CHECK((plan(grid, Machine{}, moved).total_ms < mine.hand_ms + mine.carriage_ms) == beyond);
    }
  }
}

}  // namespace reason_test
