// Instructions read back: what is folded for people must unfold to the plan, stop by stop, needle by needle.
#include <algorithm>
#include <charconv>
#include <map>
#include <optional>
#include <regex>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "instructions_read.hpp"
#include "latchwork/instructions.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/simulate.hpp"
#include "random.hpp"

namespace instructions_fold_test {

using namespace latchwork;
using latchwork_test::check_read;
using latchwork_test::needle_at;
using latchwork_test::number_in;
using latchwork_test::place_of;
using latchwork_test::Random;
using latchwork_test::sheet_read;
using latchwork_test::SheetRead;

namespace {

/// Leaves out what hands cannot do: no words tell that.
void leave_out_the_impossible(Plan& plan) {
  const Grid grid(plan.rows, plan.columns);
  while (const std::optional<Fault> fault = verify(grid, plan).fault) {
    const int counter = number_in(fault->message.substr(3));  // "RC 17: needle R4 ..."
    const auto past =
        std::find_if(plan.stops.begin(), plan.stops.end(), [&](const Stop& s) { return s.row > counter; });
    REQUIRE(past != plan.stops.begin());
    Stop& stop = *(past - 1);
    const int column = fault->place.column;
    const int needle = needle_at(place_of(plan.leftmost) + plan.columns - 1 - column);
    std::size_t left = std::erase_if(stop.reforms, [&](const Reform& reform) { return reform.column == column; });
    left += std::erase(stop.holds, needle) + std::erase(stop.releases, needle);
    left += std::erase_if(stop.shapings, [&](const Shaping& shaping) { return shaping.column == column; });
    if (left == 0) left = std::exchange(stop.crossings, {}).size();
    if (left == 0) plan.stops.erase(past - 1);
  }
  std::erase_if(plan.stops, [](const Stop& stop) {
    return stop.reforms.empty() && stop.crossings.empty() && stop.holds.empty() && stop.releases.empty() &&
           stop.shapings.empty();
  });
}

/// The plan without what hands would do for nothing, one step after another as verify() finds them; how many.
int leave_out_the_needless(Plan& plan) {
  const Grid grid(plan.rows, plan.columns);
  int left = 0;
  while (const std::optional<Fault> first = verify(grid, plan).first_needless) {
    const int counter = number_in(first->message.substr(3));
    const auto stop =
        std::find_if(plan.stops.begin(), plan.stops.end(), [&](const Stop& s) { return s.row == counter; });
    REQUIRE(stop != plan.stops.end());
    const Move move = moves(plan).at(static_cast<std::size_t>(first->move));
    std::size_t erased = 0;
    if (move.kind == MoveKind::hold) erased = std::erase(stop->holds, move.needle);
    if (move.kind == MoveKind::release) erased = std::erase(stop->releases, move.needle);
    if (move.kind == MoveKind::tool_into) {
      erased = std::erase_if(stop->reforms, [&](const Reform& reform) { return reform.needle == move.needle; });
    }
    REQUIRE(erased == 1);
    ++left;
  }
  return left;
}

/// A plan whose stops hold anything that hands can do, some of it again and again; no fabric is meant by it.
Plan random_plan(Random& random, std::vector<Crossing>& crossings) {
  Plan plan;
  plan.columns = random.between(6, 14);
  plan.leftmost = needle_at(random.between(-9, 3));
  plan.status = PlanStatus::optimal;
  for (int column = 0; column < plan.columns; ++column) plan.columns_on.push_back(column);
  struct Work {
    Stop stop;
    int from = 0;
  };
  const auto random_work = [&] {
    Stop stop;
    std::vector<std::vector<Cell>> kinds(2);
    for (auto& kind : kinds) {
      const int rungs = random.between(1, 3);
      const int unit = random.between(1, 3);
      for (int i = 1; i < rungs; ++i) kind.push_back(static_cast<Cell>(random.between(0, 3)));
      kind.push_back(static_cast<Cell>(random.between(0, 1)));  // a batch ends on a loop
      for (int i = 0; i < unit; ++i) kind.insert(kind.end(), kind.begin(), kind.begin() + rungs);
    }
    for (int step = 0; step < plan.columns; ++step) {
      if (!random.one_in(3)) continue;
      Reform reform;
      reform.needle = needle_at(place_of(plan.leftmost) + step);
      reform.column = plan.columns - 1 - step;
      reform.wale = reform.column;  // the panel of the test has no crossing
      reform.rungs = kinds[static_cast<std::size_t>(random.between(0, 1))];
      stop.reforms.push_back(reform);
    }
    // As many as find columns of their own.
    for (int crossing = random.between(0, 2); crossing > 0; --crossing) {
      CrossingStep step;
      Crossing& c = step.crossing;
      c.left = random.between(1, 2);
      c.right = random.between(1, 2);
      c.centre = random.between(0, 2);
      c.lean = random.one_in(2) ? Lean::right : Lean::left;
      c.place = c.centre == 0 ? Centre::between : static_cast<Centre>(random.between(0, 2));
      c.column = random.between(0, plan.columns - c.width());
      const int left_end = place_of(plan.leftmost) + plan.columns - c.column - c.width();
      // The operator's groups from the left: the RS's right, centre, left.
      step.returns.push_back(
          {GroupName::right, c.right, needle_at(left_end), needle_at(left_end + c.left + c.centre), {c.right}});
      step.returns.push_back(
          {GroupName::left, c.left, needle_at(left_end + c.right + c.centre), needle_at(left_end), {c.left}});
      if (c.centre > 0) {
        const bool stays = c.left == c.right && c.place == Centre::front;
        step.returns.push_back({GroupName::centre, c.centre, needle_at(left_end + c.right),
                                needle_at(left_end + c.left), stays ? std::vector<int>{} : std::vector<int>{c.centre}});
      }
      // What shows in front goes back first (DOMAIN 4): the left group in a right cross, the centre where its place
      // says.
      const auto rank = [&](const GroupReturn& group) {
        if (group.group == GroupName::centre) return 2 * static_cast<int>(c.place) - 1;
        return (group.group == GroupName::left) == (c.lean == Lean::right) ? 0 : 2;
      };
      std::sort(step.returns.begin(), step.returns.end(),
                [&](const GroupReturn& one, const GroupReturn& other) { return rank(one) < rank(other); });
      step.ease = random.one_in(2);
      const bool taken = std::any_of(stop.crossings.begin(), stop.crossings.end(), [&](const CrossingStep& other) {
        const Crossing& o = other.crossing;
        return c.column < o.column + o.width() && o.column < c.column + c.width();
      });
      if (!taken) stop.crossings.push_back(step);
    }
    if (random.one_in(4)) stop.holds = {needle_at(place_of(plan.leftmost) + random.between(0, plan.columns - 1))};
    if (random.one_in(4)) stop.releases = {needle_at(place_of(plan.leftmost) + random.between(0, plan.columns - 1))};
    if (random.one_in(6)) stop.shapings.push_back({plan.leftmost, plan.columns - 1, random.one_in(2)});
    return stop;
  };
  std::vector<Stop> works;
  for (int i = random.between(1, random.one_in(4) ? 9 : 3); i > 0; --i) works.push_back(random_work());
  std::vector<int> gaps;
  for (std::size_t i = 0; i < works.size(); ++i) gaps.push_back(random.between(1, 5));
  int row = 12;
  const int uneven = random.one_in(3) ? 2 : 15;
  for (int i = random.between(1, 12); i > 0; --i) {
    for (std::size_t k = 0; k < works.size(); ++k) {
      if (random.one_in(12)) continue;
      row += gaps[k] + (random.one_in(uneven) ? 1 : 0);
      Stop stop = works[k];
      stop.row = row;
      stop.carriage_right = row % 2 == 0;
      for (Reform& reform : stop.reforms) reform.from_row = row - static_cast<int>(reform.rungs.size());
      for (CrossingStep& step : stop.crossings) step.crossing.row = row;
      if (!stop.reforms.empty() || !stop.crossings.empty() || !stop.holds.empty()) plan.stops.push_back(stop);
    }
  }
  plan.rows = row + 5;
  leave_out_the_impossible(plan);
  // No needle is knit back from hold in a row for which the carriage is set to hold.
  std::set<int> held;
  for (Stop& stop : plan.stops) {
    for (const int needle : stop.releases) held.erase(needle);
    held.insert(stop.holds.begin(), stop.holds.end());
    for (CrossingStep& step : stop.crossings) step.ease = step.ease && held.empty();
  }
  for (const Stop& stop : plan.stops) {
    for (const CrossingStep& step : stop.crossings) crossings.push_back(step.crossing);
  }
  return plan;
}

}  // namespace

TEST_CASE("folded instructions unfold to the plan they were written from", "[instructions][property][long]") {
  std::set<std::string> repeats;
  int needless = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    INFO("seed " << seed);
    Random random(seed);
    std::vector<Crossing> crossings;
    Plan plan = random_plan(random, crossings);
    const Panel panel("Random", Strip{"any", "any", Grid(plan.rows, plan.columns)});
    const std::string text = instructions(panel, plan, Machine{});
    const SheetRead sheet = sheet_read(text);
    CHECK(sheet.left_out == leave_out_the_needless(plan));
    needless += sheet.left_out > 0 ? 1 : 0;
    repeats.insert(sheet.repeats.begin(), sheet.repeats.end());
    check_read(sheet, plan);
  }
  // Every way of telling a repeat was met, and steps for nothing too.
  for (const char* way : {"every", "unevenly", "once more", "then"}) {
    INFO(way);
    CHECK(repeats.contains(way));
  }
  CHECK(needless > 10);
}

TEST_CASE("what comes again along the bed is told once, and unfolds to the plan", "[instructions][property][long]") {
  int told = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    std::vector<Strip> motif;
    for (int i = random.between(1, 4); i > 0; --i) {
      switch (random.between(0, 4)) {
        case 0:
          motif.push_back(reverse(random.between(1, 3)));
          break;
        case 1:
          motif.push_back(rope(2, random.between(1, 2), 4, random.one_in(2) ? Lean::right : Lean::left));
          break;
        case 2:
          motif.push_back(tuck_rib(random.between(1, 2)));
          break;
        case 3:
          motif.push_back(moss(random.between(1, 2)));
          break;
        default:
          motif.push_back(stockinette(random.between(1, 2)));
      }
    }
    std::vector<Strip> strips{stockinette(2)};
    for (int times = random.between(3, 9); times > 0; --times) strips.insert(strips.end(), motif.begin(), motif.end());
    if (random.one_in(2)) strips.push_back(rope(1, 1, 4, Lean::right));
    strips.push_back(stockinette(2));
    const Panel panel = join_strips("Along", random.between(6, 16), strips);
    const Machine machine;
    const Plan made = plan(panel.grid(), machine);
    if (made.status != PlanStatus::optimal || panel.grid().columns() > machine.needles) continue;
    const std::string text = instructions(panel, made, machine);
    INFO(text);
    check_read(sheet_read(text), made);
    const bool folded = text.find(" x [") != std::string::npos;
    CHECK(folded == (text.find("what is in the brackets [ ]") != std::string::npos));  // the key has it then
    told += folded ? 1 : 0;
  }
  CHECK(told > 15);
}

}  // namespace instructions_fold_test
