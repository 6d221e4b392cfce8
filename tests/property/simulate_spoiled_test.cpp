#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catch.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "random.hpp"
#include "random_grid.hpp"
#include "soonest_plan.hpp"
#include "spoil_oracle.hpp"

using namespace latchwork;
using latchwork_test::Random;
using latchwork_test::RandomGridOptions;
using latchwork_test::soonest_plan;
using latchwork_test::SpoilOracle;

namespace {

enum class Spoil {
  stop_left_out,
  reform_left_out,
  rung_left_out,   ///< those above come one row lower
  rung_not_taken,  ///< it is passed over
  crossing_left_out,
  hold_left_out,
  release_left_out,
  shaping_left_out,
  reform_elsewhere,  ///< on the needle beside
  hold_elsewhere,
  crossing_elsewhere,
  shaping_elsewhere,
  rung_other,      ///< of another type
  depth_other,     ///< from one row above or below, with the same rungs
  deeper_as_knit,  ///< from one row below, with one more knit
  shallower,       ///< without the lowest rung
  returns_swapped,
  stop_moved,   ///< one row early or late
  reform_late,  ///< at the next stop
  reforms_swapped,
  reform_twice,
  crossing_twice,
  words_only,  ///< hints, counts and costs
  count,
};

constexpr std::array<std::string_view, static_cast<std::size_t>(Spoil::count)> spoil_words = {
    "stop left out",      "re-form left out",  "rung left out",    "rung not taken",    "crossing left out",
    "hold left out",      "release left out",  "shaping left out", "re-form elsewhere", "hold elsewhere",
    "crossing elsewhere", "shaping elsewhere", "rung other",       "depth other",       "deeper as knit",
    "shallower",          "returns swapped",   "stop moved",       "re-form late",      "re-forms swapped",
    "re-form twice",      "crossing twice",    "words only"};

int beside(Random& random, int needle) {
  int other = needle + (random.one_in(2) ? 1 : -1);
  return other == 0 ? (needle > 0 ? -1 : 1) : other;
}

/// One of the list at random; nullptr where it is empty.
template <class T>
T* any_of(Random& random, std::vector<T>& list) {
  return list.empty() ? nullptr : &list[static_cast<std::size_t>(random.between(0, static_cast<int>(list.size()) - 1))];
}

template <class T>
bool leave_out(Random& random, std::vector<T>& list) {
  if (list.empty()) return false;
  list.erase(list.begin() + random.between(0, static_cast<int>(list.size()) - 1));
  return true;
}

Cell other_cell(Random& random, Cell cell) {
  Cell other = cell;
  while (other == cell) other = static_cast<Cell>(random.between(0, 3));
  return other;
}

/// Spoils one step of the plan; false where it has no such step.
bool spoil(Random& random, Plan& plan, Spoil kind) {
  Stop* const stop = any_of(random, plan.stops);
  if (!stop) return false;
  Reform* const reform = any_of(random, stop->reforms);
  CrossingStep* const step = any_of(random, stop->crossings);
  Cell* const rung = reform ? any_of(random, reform->rungs) : nullptr;
  switch (kind) {
    case Spoil::stop_left_out:
      return leave_out(random, plan.stops);
    case Spoil::reform_left_out:
      return leave_out(random, stop->reforms);
    case Spoil::rung_left_out:
      return reform && leave_out(random, reform->rungs);
    case Spoil::rung_not_taken:
      if (rung) *rung = Cell::none;
      return rung;
    case Spoil::crossing_left_out:
      return leave_out(random, stop->crossings);
    case Spoil::hold_left_out:
      return leave_out(random, stop->holds);
    case Spoil::release_left_out:
      return leave_out(random, stop->releases);
    case Spoil::shaping_left_out:
      return leave_out(random, stop->shapings);
    case Spoil::reform_elsewhere:
      if (reform) reform->needle = beside(random, reform->needle);
      return reform;
    case Spoil::hold_elsewhere:
      if (int* const needle = any_of(random, random.one_in(2) ? stop->holds : stop->releases)) {
        *needle = beside(random, *needle);
        return true;
      }
      return false;
    case Spoil::crossing_elsewhere:
      if (!step) return false;
      if (GroupReturn* const group = any_of(random, step->returns)) {
        int& needle = random.one_in(2) ? group->from_needle : group->to_needle;
        needle = beside(random, needle);
      }
      return true;
    case Spoil::shaping_elsewhere:
      if (Shaping* const shaping = any_of(random, stop->shapings)) {
        if (random.one_in(3)) {
          shaping->on = !shaping->on;
        } else {
          shaping->needle = beside(random, shaping->needle);
        }
        return true;
      }
      return false;
    case Spoil::rung_other:
      if (rung) *rung = other_cell(random, *rung);
      return rung;
    case Spoil::depth_other:
      if (reform) reform->from_row += random.one_in(2) ? 1 : -1;
      return reform;
    case Spoil::deeper_as_knit:
      if (!reform) return false;
      --reform->from_row;
      reform->rungs.insert(reform->rungs.begin(), Cell::knit);
      return true;
    case Spoil::shallower:
      if (!rung) return false;
      ++reform->from_row;
      reform->rungs.erase(reform->rungs.begin());
      return true;
    case Spoil::returns_swapped: {
      if (!step || step->returns.size() < 2) return false;
      const int first = random.between(0, static_cast<int>(step->returns.size()) - 2);
      std::swap(step->returns[static_cast<std::size_t>(first)], step->returns[static_cast<std::size_t>(first) + 1]);
      return true;
    }
    case Spoil::stop_moved:
      stop->row += random.one_in(2) ? 1 : -1;
      return true;
    case Spoil::reform_late: {
      if (!reform || stop == &plan.stops.back()) return false;
      const Reform late = *reform;
      stop->reforms.erase(stop->reforms.begin() + (reform - stop->reforms.data()));
      (stop + 1)->reforms.push_back(late);
      return true;
    }
    case Spoil::reforms_swapped:
      if (stop->reforms.size() < 2) return false;
      std::swap(stop->reforms.front(), stop->reforms.back());
      return true;
    case Spoil::reform_twice:
      if (reform) stop->reforms.push_back(Reform(*reform));
      return reform;
    case Spoil::crossing_twice:
      if (step) stop->crossings.push_back(CrossingStep(*step));
      return step;
    case Spoil::words_only:
      stop->effort_ms += 17;
      plan.total_ms = -1;
      plan.bound_ms = 99;
      plan.status = PlanStatus::infeasible;
      if (reform) reform->column = reform->wale = 1234;
      if (step) step->ease = !step->ease;
      return true;
    case Spoil::count:
      break;
  }
  return false;
}

struct Tally {
  int same = 0, differs = 0, impossible = 0, placed = 0;
};

class Spoiling {
 public:
  void operator()(Random& random, const Grid& grid, const Plan& plan) {
    const auto kind = static_cast<Spoil>(random.between(0, static_cast<int>(Spoil::count) - 1));
    Plan spoiled = plan;
    bool done = false;
    for (int i = 0; i < 12 && !done; ++i) done = spoil(random, spoiled, kind);  // each time at a stop by chance
    if (!done) return;
    SpoilOracle oracle(grid, spoiled);
    const SpoilOracle::Verdict verdict = oracle.verdict();
    // A moved stop keeps no side of the carriage that belies it: this is about the cloth.
    for (Stop& stop : spoiled.stops) stop.carriage_right = spoiled.carriage_starts_right == (stop.row % 2 == 0);
    const Verification verification = verify(grid, spoiled);
    INFO(grid.to_text());
    INFO("spoiled: " << spoil_words[static_cast<std::size_t>(kind)]);
    INFO("oracle: " << (verdict.impossible ? "impossible"
                        : verdict.same     ? "same"
                                       : "differs at " + (verdict.place ? std::to_string(verdict.place->first) + ", " +
                                                                              std::to_string(verdict.place->second)
                                                                        : std::string("?"))));
    INFO("verify: " << verification.message << " at " << verification.difference.row << ", "
                    << verification.difference.column);
    CHECK(verification.verified == verdict.same);
    CHECK((verification.message.rfind("RC ", 0) == 0) == verdict.impossible);
    if (verdict.row) CHECK(verification.difference.row == *verdict.row);
    if (verdict.place) {
      CHECK(verification.difference.column == verdict.place->second);
    }
    Tally& tally = tallies_[static_cast<std::size_t>(kind)];
    tally.same += verdict.same ? 1 : 0;
    tally.differs += verdict.same ? 0 : 1;
    tally.impossible += verdict.impossible ? 1 : 0;
    tally.placed += verdict.place ? 1 : 0;
  }

  const Tally& of(Spoil kind) const { return tallies_[static_cast<std::size_t>(kind)]; }

 private:
  std::array<Tally, static_cast<std::size_t>(Spoil::count)> tallies_{};
};

Grid random_panel(Random& random) {
  RandomGridOptions options;
  options.rows = random.between(2, 8);
  options.columns = random.between(2, 7);
  options.plain_edges = random.one_in(3);
  options.one_in_purl = random.between(2, 6);
  options.one_in_crossing = random.between(3, 8);
  options.one_in_hole = random.one_in(3) ? 12 : 0;
  return latchwork_test::random_grid(random, options);
}

}  // namespace

TEST_CASE("a spoiled plan is found out whenever it makes another fabric, at the first differing place",
          "[simulate][spoil][property]") {
  Spoiling spoiling;
  for (std::uint64_t seed = 1; seed <= 15000; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Grid grid = random_panel(random);
    int leftmost = random.between(-9, 3);
    if (leftmost == 0) leftmost = 1;
    spoiling(random, grid, soonest_plan(grid, leftmost, random.one_in(2)));
  }
  // Every way of spoiling was met, found out where it changes the cloth, and let pass where it does not.
  for (int i = 0; i < static_cast<int>(Spoil::count); ++i) {
    const auto kind = static_cast<Spoil>(i);
    const Tally& tally = spoiling.of(kind);
    INFO(spoil_words[static_cast<std::size_t>(i)] << ": same " << tally.same << ", differs " << tally.differs
                                                  << ", impossible " << tally.impossible << ", placed "
                                                  << tally.placed);
    CHECK(tally.same + tally.differs > 40);
    const bool harmless = kind == Spoil::words_only || kind == Spoil::reforms_swapped || kind == Spoil::reform_twice;
    if (harmless) {
      CHECK(tally.differs == 0);
    } else {
      CHECK(tally.differs > 30);
    }
  }
}

TEST_CASE("a spoiled plan of the planner's is found out as well", "[simulate][spoil][plan][property]") {
  Spoiling spoiling;
  int spoilt = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Grid grid = random_panel(random);
    const Plan made = random.one_in(3) ? plan_regular(grid, Machine{}) : plan(grid, Machine{});
    if (made.status == PlanStatus::infeasible) continue;
    for (int i = 0; i < 12; ++i) spoiling(random, grid, made);
    ++spoilt;
  }
  CHECK(spoilt > 100);
}
