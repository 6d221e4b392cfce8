#include "latchwork/plan.hpp"

#include <stdexcept>
#include <string>
#include <vector>

#include "catch.hpp"
#include "instances.hpp"
#include "latchwork/simulate.hpp"

namespace plan_test {

using namespace latchwork;
using latchwork_test::refused_field;

namespace {

std::vector<int> rows_of(const Plan& plan) {
  std::vector<int> rows;
  for (const Stop& stop : plan.stops) rows.push_back(stop.row);
  return rows;
}

const Stop& stop_at(const Plan& plan, int row) {
  for (const Stop& stop : plan.stops) {
    if (stop.row == row) return stop;
  }
  throw std::runtime_error("no stop after row " + std::to_string(row));
}

Plan crossed(int columns, const Crossing& crossing, const Machine& machine = {}) {
  Grid grid(crossing.row + 2, columns);
  grid.cross(crossing);
  return plan(grid, machine);
}

std::vector<GroupName> order(const CrossingStep& step) {
  std::vector<GroupName> names;
  for (const GroupReturn& back : step.returns) names.push_back(back.group);
  return names;
}

// Columns of purl ridges, two rows in four: something for every stop to do.
Grid ridges(int rows, int columns) {
  Grid grid(rows, columns);
  for (int row = 3; row <= rows; ++row) {
    for (int column = 1; column + 1 < columns; ++column) {
      if ((row + column) % (4 + column % 5) < 2) grid.set(row, column, Cell::purl);
    }
  }
  return grid;
}

}  // namespace

TEST_CASE("plain knitting needs no stop, only the carriage", "[plan]") {
  const Plan made = plan(Grid(10, 5), Machine{});
  CHECK(made.stops.empty());
  CHECK(made.status == PlanStatus::optimal);
  CHECK(made.total_ms == 10 * Effort{}.row);
  CHECK(made.bound_ms == made.total_ms);
  CHECK(made.columns_on == std::vector{0, 1, 2, 3, 4});
  CHECK(made.leftmost == -3);
}

TEST_CASE("one purl is one batch at the soonest stop, its time told piece by piece", "[plan]") {
  const Effort effort;
  const Plan made = plan(Grid::from_text("kkk\nkkk\nkpk\nkkk"), Machine{});
  REQUIRE(rows_of(made) == std::vector{2});
  const Stop& stop = made.stops[0];
  CHECK(stop.carriage_right);  // after an even row, having started on the right
  REQUIRE(stop.reforms.size() == 1);
  CHECK(stop.reforms[0] == Reform{needle_of(Machine{}, 3, 1), 1, 1, 1, {Cell::purl}});
  CHECK(stop.effort_ms == effort.stop + effort.batch + effort.drop + effort.rung_purl);
  CHECK(made.total_ms == stop.effort_ms + 4 * effort.row);
}

TEST_CASE("a purl reached from a later stop takes the knit rungs above it along", "[plan]") {
  // The crossing stops us after row 4 anyway; with dear stops the purl of row 2 waits for it.
  Grid grid = Grid::from_text("kkkkk\nkkkkk\nkkkkk\nkkkkp\nkkkkk");
  grid.cross({.row = 4, .column = 0, .left = 1, .right = 1});
  Effort effort;
  effort.stop = 60'000;
  const Plan made = plan(grid, Machine{}, effort);
  REQUIRE(rows_of(made) == std::vector{4});
  CHECK(made.stops[0].reforms[0].from_row == 1);
  CHECK(made.stops[0].reforms[0].rungs == std::vector{Cell::purl, Cell::knit, Cell::knit});
  effort.stop = 1'000;
  CHECK(rows_of(plan(grid, Machine{}, effort)) == std::vector{2, 4});
}

TEST_CASE("hand cells below a crossing of their wale are re-formed at or before its stop", "[plan]") {
  // The purl is in the crossing's centre: the batch may not pass, however dear a stop is.
  Grid grid = Grid::from_text("kkkkk\nkkpkk\nkkkkk\nkkkkk\nkkpkk\nkkkkk");
  grid.cross({.row = 3, .column = 1, .left = 1, .centre = 1, .right = 1, .place = Centre::behind});
  Effort effort;
  effort.stop = 600'000;
  const Plan made = plan(grid, Machine{}, effort);
  REQUIRE(rows_of(made) == std::vector{3, 5});
  CHECK(made.stops[0].reforms.size() == 1);
}

TEST_CASE("a stack is re-formed with the cell that closes it, and no batch ends on a tuck", "[plan]") {
  const Plan made = plan(Grid::from_text("kkk\nkpk\nktk\nktk\nkkk"), Machine{});
  REQUIRE(rows_of(made) == std::vector{4});
  CHECK(made.stops[0].reforms[0].rungs == std::vector{Cell::tuck, Cell::tuck, Cell::purl});
  CHECK(made.stops[0].reforms[0].from_row == 1);
}

TEST_CASE("tucks under a knit are held when that is cheaper: set at a stop below, released at one above", "[plan]") {
  Effort effort;
  effort.stop = 1'000;
  const Plan made = plan(Grid::from_text("kkk\nkkk\nktk\nktk\nkkk"), Machine{}, effort);
  REQUIRE(rows_of(made) == std::vector{1, 3});
  CHECK(stop_at(made, 1).holds == std::vector{-1});
  CHECK(stop_at(made, 3).releases == std::vector{-1});
  CHECK(hand_work(made, effort).holds == 1);
  // In the first row the needle is held from the cast-on: a stop after row 0.
  CHECK(rows_of(plan(Grid::from_text("kkk\nktk"), Machine{}, effort)) == std::vector{0, 1});
  // Two side by side would carry one straight strand.
  CHECK(hand_work(plan(Grid::from_text("kkkk\nkttk\nkkkk"), Machine{}, effort)).holds == 0);
}

// S. Guagliumi: the group put back first shows on the knit side; for a knit-side right cross return first the group
// that moves to the operator's left.
TEST_CASE("a right cross puts the operator's right-hand group back first, on the left-hand needles",
          "[plan][reference]") {
  // 2/1 RC in RS columns 0..2 of five: needles R2, R1, L1. The RS-left pair stands on the operator's right.
  const Plan made = crossed(5, {.row = 2, .column = 0, .left = 2, .right = 1, .lean = Lean::right});
  const CrossingStep& step = stop_at(made, 2).crossings.at(0);
  REQUIRE(order(step) == std::vector{GroupName::left, GroupName::right});
  CHECK(step.returns[0].from_needle == 1);  // R1 R2
  CHECK(step.returns[0].to_needle == -1);   // to L1 R1: the operator's left
  CHECK(step.returns[1].from_needle == -1);
  CHECK(step.returns[1].to_needle == 2);
  const Plan other = crossed(5, {.row = 2, .column = 0, .left = 2, .right = 1, .lean = Lean::left});
  CHECK(order(stop_at(other, 2).crossings.at(0)) == std::vector{GroupName::right, GroupName::left});
}

TEST_CASE("the centre goes back first, second or last, and in front it stays where it is if it can", "[plan]") {
  const auto [place, left, right, where, lifted] = GENERATE(table<Centre, int, int, std::size_t, int>({
      {Centre::front, 1, 1, 0, 2},    // never lifted
      {Centre::front, 2, 1, 0, 4},    // unequal groups: it moves over, so it is lifted
      {Centre::between, 1, 1, 1, 3},  //
      {Centre::behind, 1, 1, 2, 3},   //
  }));
  const Plan made = crossed(6, {.row = 2, .column = 1, .left = left, .centre = 1, .right = right, .place = place});
  const CrossingStep& step = made.stops.at(0).crossings.at(0);
  REQUIRE(step.returns.size() == 3);
  CHECK(step.returns[where].group == GroupName::centre);
  CHECK(step.returns[where].prongs.empty() == (lifted == left + right));
  CHECK(hand_work(made).stitches_crossed == lifted);
}

TEST_CASE("a bare centre is not put back", "[plan]") {
  Grid grid(4, 5);
  for (int row = 1; row <= 4; ++row) grid.set(row, 2, Cell::none);
  grid.cross({.row = 2, .column = 1, .left = 1, .centre = 1, .right = 1});
  const Plan made = plan(grid, Machine{});
  CHECK(order(made.stops.at(0).crossings.at(0)) == std::vector{GroupName::left, GroupName::right});
  CHECK(hand_work(made).stitches_crossed == 2);
  CHECK(made.columns_on == std::vector{0, 1, 3, 4});
}

TEST_CASE("a group is lifted on the fewest tools that carry it exactly, two of each at hand", "[plan]") {
  const auto [prongs, left, right, first, second] =
      GENERATE(table<std::vector<int>, int, int, std::vector<int>, std::vector<int>>({
          {{1, 2, 3}, 3, 3, {3}, {3}},
          {{2, 3}, 5, 5, {3, 2}, {3, 2}},
          {{1, 2, 3}, 4, 4, {3, 1}, {3, 1}},
          {{3}, 2, 2, {3}, {3}},     // wider than what it carries
          {{1, 5}, 1, 3, {1}, {5}},  // exact where it can be
          {{2, 3, 7}, 6, 2, {3, 3}, {2}},
          {{}, 2, 1, {2}, {1}},  // none at hand: told by findings()
      }));
  Machine machine;
  machine.prongs = prongs;
  const Plan made = crossed(12, {.row = 2, .column = 1, .left = left, .right = right, .lean = Lean::right}, machine);
  const CrossingStep& step = made.stops.at(0).crossings.at(0);
  CHECK(step.returns[0].prongs == first);
  CHECK(step.returns[1].prongs == second);
}

TEST_CASE("crossed needles are eased on the next row, unless a needle is in hold there or the panel ends", "[plan]") {
  const auto ease = [](const Grid& grid, const Effort& effort = {}) {
    const Plan made = plan(grid, Machine{}, effort);
    for (const Stop& stop : made.stops) {
      if (!stop.crossings.empty()) return stop.crossings[0].ease;
    }
    throw std::runtime_error("no crossing");
  };
  Grid wide(4, 8);
  wide.cross({.row = 2, .column = 1, .left = 2, .right = 2});
  CHECK(ease(wide));
  Grid narrow(4, 8);
  narrow.cross({.row = 2, .column = 1, .left = 1, .right = 1});
  CHECK_FALSE(ease(narrow));
  Grid top(2, 8);
  top.cross({.row = 2, .column = 1, .left = 2, .right = 2});
  CHECK_FALSE(ease(top));
  wide.set(3, 6, Cell::tuck);
  Effort holding;
  holding.stop = 0;
  holding.hold = 0;
  CHECK_FALSE(ease(wide, holding));
}

TEST_CASE("re-forms are one sweep from the operator's left, crossings go left to right", "[plan]") {
  Grid grid = Grid::from_text("kkkkkkkkk\nkkkkkkkkk\nkpkkpkkpk\nkkkkkkkkk");
  grid.cross({.row = 2, .column = 2, .left = 1, .right = 1});
  grid.cross({.row = 2, .column = 5, .left = 1, .right = 1});
  const Plan made = plan(grid, Machine{});
  const Stop& stop = stop_at(made, 2);
  REQUIRE(stop.reforms.size() == 3);
  CHECK(stop.reforms[0].column == 7);
  CHECK(stop.reforms[2].column == 1);
  CHECK(stop.reforms[0].needle < stop.reforms[1].needle);
  REQUIRE(stop.crossings.size() == 2);
  CHECK(stop.crossings[0].crossing.column == 5);
}

TEST_CASE("wales that begin or end inside the panel are shaped at a stop", "[plan]") {
  const Plan made = plan(Grid::from_text("kkkk\nk.kk\nk.kk\nkkkk"), Machine{});
  REQUIRE(rows_of(made) == std::vector{1, 3});
  CHECK(made.stops[0].shapings == std::vector<Shaping>{{needle_of(Machine{}, 4, 1), 1, false}});
  CHECK(made.stops[1].shapings == std::vector<Shaping>{{needle_of(Machine{}, 4, 1), 1, true}});
}

// plan.hpp: bind-offs come last but for the holds.
TEST_CASE("at one stop needles are cast on before others are bound off, each from the operator's left", "[plan]") {
  // After row 2 columns 1 and 2 (needles R2, R1) begin and columns 3 and 4 (L1, L2) end.
  const Grid grid = Grid::from_text("kkk..k\nkkk..k\nk..kkk\nk..kkk");
  const Plan made = plan(grid, Machine{});
  REQUIRE(rows_of(made) == std::vector{2});
  CHECK(made.stops[0].shapings == std::vector<Shaping>{{1, 2, true}, {2, 1, true}, {-2, 4, false}, {-1, 3, false}});
  CHECK(verify(grid, made).verified);
}

TEST_CASE("the carriage is on the side it started from after even rows", "[plan]") {
  const Grid grid = Grid::from_text("kkk\nkpk\nkpk\nkkk");
  Effort effort;
  effort.stop = 0;
  for (const bool right : {true, false}) {
    Machine machine;
    machine.carriage_starts_right = right;
    for (const Stop& stop : plan(grid, machine, effort).stops)
      CHECK(stop.carriage_right == (right == (stop.row % 2 == 0)));
  }
}

TEST_CASE("a panel that cannot be scheduled says why and where", "[plan]") {
  const auto [text, code, row, column, spoil] = GENERATE(table<std::string, FindingCode, int, int, void (*)(Machine&)>({
      {"ktk\nkkk", FindingCode::open_stack, 2, 1, [](Machine&) {}},
      {"kkk\nktk", FindingCode::no_held_loop, 1, 1, [](Machine& m) { m.cast_on_loops = false; }},
      {"kkk\nkpk", FindingCode::out_of_reach, 1, 1, [](Machine& m) { m.cast_on_loops = false; }},
      {"kpk\nktk\nktk\nkkk", FindingCode::out_of_reach, 2, 1, [](Machine& m) { m.max_ladder = 2; }},
      {"kkk\nkkk", FindingCode::off_bed, 1, 2, [](Machine& m) { m.needles = 2; }},
  }));
  Machine machine;
  spoil(machine);
  CAPTURE(text);
  for (const Plan& made : {plan(Grid::from_text(text), machine), plan_regular(Grid::from_text(text), machine)}) {
    CHECK(made.status == PlanStatus::infeasible);
    CHECK(made.stops.empty());
    REQUIRE(made.findings.size() == 1);
    CHECK(made.findings[0].code == code);
    CHECK(made.findings[0].severity == Severity::error);
    CHECK(made.findings[0].place.row == row);
    CHECK(made.findings[0].place.column == column);
  }
}

TEST_CASE("findings that are no matter of schedule do not stop the plan", "[plan]") {
  CHECK(plan(Grid::from_text("kkk\ntkk\nkkk"), Machine{}).status == PlanStatus::optimal);
}

TEST_CASE("what only a hold can make has no regular schedule, and that is said", "[plan]") {
  Machine machine;
  machine.max_ladder = 3;
  const Grid grid = Grid::from_text("kkk\nktk\nktk\nktk\nkkk");
  CHECK(plan(grid, machine).status == PlanStatus::optimal);
  const Plan regular = plan_regular(grid, machine);
  CHECK(regular.status == PlanStatus::infeasible);
  REQUIRE(regular.findings.size() == 1);
  CHECK(regular.findings[0].place.row == 2);
}

TEST_CASE("garter of two and two is best worked every fourth row", "[plan]") {
  Grid grid(16, 6);
  for (int row = 1; row <= 16; ++row) {
    for (int column = 1; column < 5; ++column) {
      if ((row - 1) % 4 >= 2) grid.set(row, column, Cell::purl);
    }
  }
  Effort effort;  // knit rungs dearer than finding the wale again: else fewer, deeper batches pay
  effort.batch = 1'000;
  const Plan regular = plan_regular(grid, Machine{}, effort);
  REQUIRE(regular.rhythm.has_value());
  CHECK(regular.rhythm->every == 4);
  CHECK(regular.rhythm->first == 4);
  CHECK(rows_of(regular) == std::vector{4, 8, 12, 16});
  CHECK(regular.total_ms == plan(grid, Machine{}, effort).total_ms);
}

TEST_CASE("efforts and options out of range are refused with the field", "[plan][error]") {
  Effort effort;
  effort.rung_tuck = -1;
  CHECK_THROWS_MATCHES(plan(Grid(2, 2), Machine{}, effort), Error,
                       refused_field(ErrorCode::bad_argument, "effort.rung_tuck"));
  effort = {};
  effort.stop = 3'600'001;
  CHECK_THROWS_MATCHES(plan_regular(Grid(2, 2), Machine{}, effort), Error,
                       refused_field(ErrorCode::bad_argument, "effort.stop"));
  CHECK_THROWS_MATCHES(hand_work(Plan{}, effort), Error, refused_field(ErrorCode::bad_argument, "effort.stop"));
  Machine machine;
  machine.max_ladder = 0;
  CHECK_THROWS_MATCHES(plan(Grid(2, 2), machine), Error, refused_field(ErrorCode::bad_argument, "machine.max_ladder"));
  PlanOptions options;
  options.work_limit = -1;
  CHECK_THROWS_MATCHES(plan(Grid(2, 2), Machine{}, {}, options), Error,
                       refused_field(ErrorCode::bad_argument, "options.work_limit"));
  options = {};
  options.time_limit_ms = -1;
  CHECK_THROWS_MATCHES(plan_regular(Grid(2, 2), Machine{}, {}, options), Error,
                       refused_field(ErrorCode::bad_argument, "options.time_limit_ms"));
  options = {};
  options.memory_limit = -1;
  CHECK_THROWS_MATCHES(certify(Grid(2, 2), Machine{}, {}, 8'000, options), Error,
                       refused_field(ErrorCode::bad_argument, "options.memory_limit"));
}

TEST_CASE("with little memory or time a plan is a plan, and its bound is true", "[plan]") {
  const latchwork_test::Instance in = latchwork_test::instance_of("tuck stacks", 2, 120);
  const Plan best = plan(in.grid, in.machine, in.effort);
  REQUIRE(best.status == PlanStatus::optimal);
  for (const std::int64_t bytes : {1, 20'000, 1'000'000}) {
    PlanOptions options;
    options.memory_limit = bytes;
    const Plan made = plan(in.grid, in.machine, in.effort, options);
    CAPTURE(bytes);
    CHECK(made.total_ms >= best.total_ms);
    CHECK(made.bound_ms <= best.total_ms);
    CHECK((made.status == PlanStatus::feasible || made.total_ms == best.total_ms));
    CHECK(made == plan(in.grid, in.machine, in.effort, options));  // a count of bytes, not what the machine has left
  }
  PlanOptions options;
  options.time_limit_ms = 1;
  const Plan hurried = plan(in.grid, in.machine, in.effort, options);
  CHECK(hurried.total_ms >= best.total_ms);
  CHECK(hurried.bound_ms <= best.total_ms);
}

TEST_CASE("a plan cut short is a plan, with a bound below it, and the same each time", "[plan]") {
  const Grid grid = ridges(60, 24);
  const Plan best = plan(grid, Machine{});
  REQUIRE(best.status == PlanStatus::optimal);
  for (const std::int64_t limit : {1, 1'000, 20'000, 100'000}) {
    PlanOptions options;
    options.work_limit = limit;
    const Plan cut = plan(grid, Machine{}, {}, options);
    CAPTURE(limit);
    CHECK(cut.total_ms >= best.total_ms);
    CHECK(cut.bound_ms <= best.total_ms);
    CHECK(cut.bound_ms > 0);
    CHECK((cut.status == PlanStatus::optimal || cut.status == PlanStatus::feasible));
    CHECK(cut == plan(grid, Machine{}, {}, options));
  }
  std::stop_source source;
  source.request_stop();
  PlanOptions options;
  options.stop = source.get_token();
  const Plan stopped = plan(grid, Machine{}, {}, options);
  CHECK(stopped.status == PlanStatus::feasible);
  CHECK(!stopped.stops.empty());
  const Plan regular = plan_regular(grid, Machine{}, {}, options);
  CHECK(regular.status == PlanStatus::feasible);
  CHECK(regular.rhythm.has_value());
  CHECK(regular.total_ms >= plan_regular(grid, Machine{}).total_ms);
}

TEST_CASE("progress never falls, bounds the plan, and what it throws ends the call", "[plan]") {
  const Grid grid = ridges(80, 40);
  std::vector<Progress> told;
  PlanOptions options;
  options.progress = [&](const Progress& progress) { told.push_back(progress); };
  const Plan made = plan(grid, Machine{}, {}, options);
  REQUIRE(!told.empty());
  for (std::size_t i = 0; i < told.size(); ++i) {
    if (i > 0) CHECK(told[i].share >= told[i - 1].share);
    CHECK(told[i].bound_ms <= made.total_ms);
    CHECK(told[i].best_ms >= made.total_ms);
  }
  CHECK(told.back().share == 1.0);
  CHECK(told.back().bound_ms == made.bound_ms);
  CHECK(told.back().best_ms == made.total_ms);
  // In a rhythm, too, what is told last is what comes of it.
  const Plan regular = plan_regular(grid, Machine{}, {}, options);
  REQUIRE(regular.status == PlanStatus::optimal);
  CHECK(told.back().share == 1.0);
  CHECK(told.back().bound_ms == regular.total_ms);
  CHECK(told.back().best_ms == regular.total_ms);
  options.progress = [](const Progress&) { throw std::runtime_error("enough"); };
  CHECK_THROWS_AS(plan(grid, Machine{}, {}, options), std::runtime_error);
}

TEST_CASE("of what is limited, progress tells at least how much is gone", "[plan][limits]") {
  const latchwork_test::Instance in = latchwork_test::instance_of("co-prime periods", 4);  // takes minutes
  std::vector<double> shares;
  PlanOptions options;
  options.progress = [&](const Progress& progress) { shares.push_back(progress.share); };
  options.work_limit = 20'000'000;
  const Plan made = plan(in.grid, in.machine, in.effort, options);
  REQUIRE(made.status == PlanStatus::feasible);
  REQUIRE(shares.size() > 5);
  for (std::size_t i = 1; i < shares.size(); ++i) CHECK(shares[i] >= shares[i - 1]);
  // Told about every 2,000,000 steps, and oftener where steps take long.
  REQUIRE(shares.size() > 10);
  CHECK(shares[shares.size() - 2] >= 0.9);
}

TEST_CASE("each status has its name", "[plan]") {
  CHECK(plan_status_name(PlanStatus::optimal) == "optimal");
  CHECK(plan_status_name(PlanStatus::feasible) == "feasible");
  CHECK(plan_status_name(PlanStatus::infeasible) == "infeasible");
  CHECK(plan_status_name(static_cast<PlanStatus>(3)).empty());
}

}  // namespace plan_test
