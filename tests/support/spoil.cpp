#include "spoil.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "latchwork/machine.hpp"
#include "latchwork/wale.hpp"

using namespace latchwork;

namespace latchwork_test {
namespace {

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

}  // namespace

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
      plan.status = PlanStatus::feasible;
      if (step) step->ease = false;  // to be told by hold where the next row holds others is no hint, but a fault
      return true;
    case Spoil::count:
      break;
  }
  return false;
}

bool spoil_somewhere(Random& random, Plan& plan, Spoil kind) {
  for (int i = 0; i < 12; ++i) {
    if (spoil(random, plan, kind)) return true;
  }
  return false;
}

void relabel(const Grid& grid, Plan& plan) {
  const Wales wales(grid);
  const auto count = [](int needle) { return needle > 0 ? needle - 1 : needle; };
  const auto column_of = [&](int needle) { return plan.columns - 1 - (count(needle) - count(plan.leftmost)); };
  const auto is_column = [&](int column) { return column >= 0 && column < plan.columns; };
  for (Stop& stop : plan.stops) {
    stop.carriage_right = plan.carriage_starts_right == (stop.row % 2 == 0);
    for (Reform& reform : stop.reforms) {
      reform.column = column_of(reform.needle);
      if (stop.row >= 1 && stop.row <= plan.rows && is_column(reform.column)) {
        reform.wale = wales.at(stop.row, reform.column);
      }
    }
    for (Shaping& shaping : stop.shapings) shaping.column = column_of(shaping.needle);
    for (CrossingStep& step : stop.crossings) {
      for (GroupReturn& group : step.returns) {
        // What is not lifted moves nothing, wherever the plan says that it hangs.
        if (group.group != GroupName::centre || !group.prongs.empty()) continue;
        const Crossing& crossing = step.crossing;
        group.from_needle =
            needle_beside(plan.leftmost, plan.columns - crossing.column - crossing.left - crossing.centre);
        group.to_needle =
            needle_beside(plan.leftmost, plan.columns - crossing.column - crossing.right - crossing.centre);
      }
      // Nor does it, wherever it is listed among those put back.
      std::stable_partition(step.returns.begin(), step.returns.end(), [](const GroupReturn& group) {
        return group.group == GroupName::centre && group.prongs.empty();
      });
    }
  }
}

}  // namespace latchwork_test
