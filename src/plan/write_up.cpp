#include "plan/write_up.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include "grid/lifting.hpp"
#include "machine/tools.hpp"
#include "plan/index.hpp"

namespace latchwork::inline v0::planning {
namespace {

struct Writer {
  const Grid& grid;
  const Wales& wales;
  const Machine& machine;
  std::vector<int> place;                              // per row 0..R: of its stop; -1: none
  int leftmost;                                        // needle of the panel
  std::vector<Stop> stops{};                           // as they come; by row once they are put in order
  std::vector<int> lifted{};                           // scratch: of a crossing's groups
  std::map<std::vector<int>, ToolSharing> sharings{};  // of groups met before: a panel has few kinds of crossing

  Stop& stop(int row) {
    if (place[at(row)] < 0) {
      place[at(row)] = static_cast<int>(stops.size());
      Stop fresh;
      fresh.row = row;
      fresh.carriage_right = machine.carriage_starts_right == (row % 2 == 0);
      stops.push_back(std::move(fresh));
    }
    return stops[at(place[at(row)])];
  }
  // needle_of(), which checks its machine each time.
  int needle(int column) const { return needle_beside(leftmost, grid.columns() - 1 - column); }

  // For as many re-forms and crossings as each stop will have.
  void make_room(const Problem& problem, const std::vector<std::vector<Work>>& works) {
    std::vector<std::size_t> crossings(place.size(), 0);
    for (const Crossing& crossing : grid.crossings()) ++crossings[at(crossing.row)];
    std::vector<std::size_t> reforms(place.size(), 0);
    for (std::size_t lane = 0; lane < works.size(); ++lane) {
      for (const Work& work : works[lane]) {
        if (!work.hold) reforms[at(work.stop)] += problem.lanes[lane].wales.size();
      }
    }
    for (int row = 0; row <= grid.rows(); ++row) {
      if (reforms[at(row)] > 0) stop(row).reforms.reserve(reforms[at(row)]);
      if (crossings[at(row)] > 0) stop(row).crossings.reserve(crossings[at(row)]);
    }
  }

  void add_work(const Lane& lane, const Work& work) {
    const Task& first = lane.task(work.first);
    const auto cells = grid.cells();
    for (auto index = lane.wales.rbegin(); index != lane.wales.rend(); ++index) {
      const Wale& wale = wales.all()[at(*index)];
      if (work.hold) {
        // No crossing is inside a stack, so the needle is the same all through.
        const int held = needle(wale.column_at(first.low));
        stop(work.stop).holds.push_back(held);
        stop(first.high - 1).releases.push_back(held);
        continue;
      }
      Reform reform;
      reform.column = wale.column_at(work.stop);
      reform.needle = needle(reform.column);
      reform.wale = *index;
      reform.from_row = first.low - 1;
      reform.rungs.resize(at(work.stop - first.low + 1));
      // A wale lies inside its grid, so that nothing is to be checked.
      const Cell* row_cells = cells.data() + at(first.low - 1) * at(grid.columns());
      const int* column = wale.columns.data() + (first.low - wale.row);
      for (Cell& rung : reform.rungs) {
        rung = row_cells[*column++];
        row_cells += grid.columns();
      }
      stop(work.stop).reforms.push_back(std::move(reform));
    }
  }

  void add_shaping(const Wale& wale) {
    if (wale.row > 1) stop(wale.row - 1).shapings.push_back({needle(wale.column), wale.column, true});
    if (wale.last_row() < grid.rows()) {
      const int column = wale.columns.back();
      stop(wale.last_row()).shapings.push_back({needle(column), column, false});
    }
  }

  // Which group goes back when, and with what. Seen from the RS the first to go back lies in front, for the tools that
  // wait are on the operator's side.
  void add_crossing(const Crossing& crossing) {
    const int column = crossing.column;
    const auto group = [&](GroupName name, int stitches, int from, int to) {
      // A group's leftmost needle is that of its rightmost column on the RS.
      return GroupReturn{name, stitches, needle(from + stitches - 1), needle(to + stitches - 1), {}};
    };
    const GroupReturn left = group(GroupName::left, crossing.left, column, column + crossing.right + crossing.centre);
    const GroupReturn right = group(GroupName::right, crossing.right, column + crossing.left + crossing.centre, column);

    CrossingStep& step = stop(crossing.row).crossings.emplace_back();
    step.crossing = crossing;
    const bool with_centre = crossing.centre > 0 && !lifting::bare_centre(grid, crossing);
    step.returns.reserve(with_centre ? 3 : 2);
    step.returns.push_back(crossing.lean == Lean::right ? left : right);
    step.returns.push_back(crossing.lean == Lean::right ? right : left);
    if (with_centre) {
      const auto before = static_cast<std::ptrdiff_t>(crossing.place);  // front first, between second, behind last
      step.returns.insert(step.returns.begin() + before,
                          group(GroupName::centre, crossing.centre, column + crossing.left, column + crossing.right));
    }
    lifted.clear();
    for (const GroupReturn& back : step.returns) {
      lifted.push_back(back.group == GroupName::centre ? lifting::centre_lifted(grid, crossing) : back.stitches);
    }
    auto known = sharings.find(lifted);
    if (known == sharings.end()) known = sharings.emplace(lifted, share_tools(lifted, machine.prongs)).first;
    for (std::size_t i = 0; i < step.returns.size(); ++i) step.returns[i].prongs = known->second.prongs[i];
  }

  // One sweep of the bed from the operator's left, and the hints, once all is in. Crossings came so.
  void put_in_order() {
    const auto by_needle = [](const auto& a, const auto& b) { return a.needle < b.needle; };
    std::sort(stops.begin(), stops.end(), [](const Stop& a, const Stop& b) { return a.row < b.row; });
    int held = 0;
    for (Stop& stop : stops) {
      std::sort(stop.releases.begin(), stop.releases.end());
      std::sort(stop.holds.begin(), stop.holds.end());
      if (!std::is_sorted(stop.reforms.begin(), stop.reforms.end(), by_needle)) {
        std::sort(stop.reforms.begin(), stop.reforms.end(), by_needle);
      }
      std::sort(stop.shapings.begin(), stop.shapings.end(), [](const Shaping& a, const Shaping& b) {
        return a.on != b.on ? a.on : a.needle < b.needle;  // bind-offs last
      });
      held += static_cast<int>(stop.holds.size()) - static_cast<int>(stop.releases.size());
      for (CrossingStep& step : stop.crossings) {
        step.ease = step.crossing.travel() >= 2 && held == 0 && stop.row < grid.rows();
      }
    }
  }
};

}  // namespace

Plan bare_plan(const Grid& grid, const Machine& machine) {
  Plan plan;
  plan.rows = grid.rows();
  plan.columns = grid.columns();
  plan.leftmost = leftmost_needle(machine, grid.columns());
  plan.carriage_starts_right = machine.carriage_starts_right;
  for (int column = 0; column < grid.columns(); ++column) {
    if (grid.at(1, column) != Cell::none) plan.columns_on.push_back(column);
  }
  return plan;
}

Plan write_up(const Grid& grid, const Wales& wales, const Machine& machine, const Effort& effort,
              const Problem& problem, const std::vector<std::vector<Work>>& works) {
  Writer writer{grid, wales, machine, std::vector<int>(at(grid.rows()) + 1, -1),
                leftmost_needle(machine, grid.columns())};
  writer.make_room(problem, works);
  // Needles fall from wale to wale as columns rise, so that most stops are in order as they come.
  for (std::size_t lane = problem.lanes.size(); lane-- > 0;) {
    for (const Work& work : works[lane]) writer.add_work(problem.lanes[lane], work);
  }
  // From the operator's left to the right: the chart backwards.
  const auto crossings = grid.crossings();
  for (auto crossing = crossings.rbegin(); crossing != crossings.rend(); ++crossing) writer.add_crossing(*crossing);
  for (const Wale& wale : wales.all()) writer.add_shaping(wale);
  writer.put_in_order();

  Plan plan = bare_plan(grid, machine);
  plan.stops = std::move(writer.stops);
  for (Stop& stop : plan.stops) {
    Plan alone;
    alone.stops.push_back(std::move(stop));
    const std::int64_t ms = hand_work(alone, effort).hand_ms;
    stop = std::move(alone.stops.front());
    stop.effort_ms = ms;
    plan.total_ms += ms;
  }
  plan.total_ms += grid.rows() * effort.row;
  return plan;
}

}  // namespace latchwork::inline v0::planning
