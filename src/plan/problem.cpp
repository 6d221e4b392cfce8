#include "plan/problem.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <compare>
#include <map>
#include <numeric>
#include <span>
#include <tuple>
#include <utility>

#include "error/refuse.hpp"
#include "finding/merge.hpp"
#include "finding/reach.hpp"
#include "grid/lifting.hpp"
#include "latchwork/error.hpp"
#include "plan/index.hpp"
#include "plan/read_on.hpp"

namespace latchwork::inline v0::planning {
namespace {

// Tasks of one wale and what they cost, before equal wales are put together.
struct Worked {
  std::vector<Task> tasks;
  std::vector<std::int64_t> rungs;  // per task, in milliseconds, over its rows
  std::vector<Cell> cells;          // of the tasks' rows, where wales are to be told apart by them
  bool operator<(const Worked& other) const {
    const auto key = [](const Task& t) { return std::tuple(t.low, t.high, t.last_stop, t.by_hold); };
    if (const auto order =
            std::lexicographical_compare_three_way(tasks.begin(), tasks.end(), other.tasks.begin(), other.tasks.end(),
                                                   [&](const Task& a, const Task& b) { return key(a) <=> key(b); });
        std::is_neq(order)) {
      return std::is_lt(order);
    }
    return std::tie(rungs, cells) < std::tie(other.rungs, other.cells);
  }
};

/// What each kind of cell costs as a rung, by its number.
using RungCosts = std::array<std::int64_t, 5>;

RungCosts rung_costs(const Effort& effort) {
  RungCosts costs{};
  const auto set = [&](Cell cell, std::int64_t rung) { costs[at(static_cast<int>(cell))] = effort.drop + rung; };
  set(Cell::knit, effort.rung_knit);
  set(Cell::purl, effort.rung_purl);
  set(Cell::tuck, effort.rung_tuck);
  set(Cell::slip, effort.rung_slip);
  return costs;
}

struct Reader {
  const Grid& grid;
  const Machine& machine;
  const RungCosts costs;
  Lanes lanes;
  std::vector<std::vector<int>> barriers;  // per wale: rows after which it is in a crossing
  std::vector<Finding> barred{};
  std::vector<Cell> cells{};  // of the wale read last: rows 1..R of the panel, knit where it is not
  std::vector<seeking::HandCells> hand{};

  void take_cells(const Wale& wale) {
    cells.assign(at(grid.rows()), Cell::knit);
    // A wale lies inside its grid, so that nothing is to be checked.
    const Cell* row_cells = grid.cells().data() + at(wale.row - 1) * at(grid.columns());
    Cell* cell = cells.data() + (wale.row - 1);
    for (const int column : wale.columns) {
      *cell++ = row_cells[column];
      row_cells += grid.columns();
    }
  }

  Worked read(const Wale& wale, std::size_t index) {
    take_cells(wale);
    seeking::find_hand_cells(grid, wale, std::span(cells).subspan(at(wale.row - 1), wale.columns.size()), hand);
    Worked worked;
    worked.tasks.reserve(hand.size());
    worked.rungs.reserve(hand.size());
    for (const seeking::HandCells& stack : hand) {
      if (!seeking::in_reach(wale, stack, machine)) {
        barred.push_back(*seeking::out_of_reach(wale, stack, machine));
        continue;
      }
      const auto& crossed = barriers[index];
      const auto barrier = std::lower_bound(crossed.begin(), crossed.end(), stack.low);
      Task task{stack.low, stack.high, std::min(wale.last_row(), stack.low - 1 + machine.max_ladder), stack.by_hold};
      if (barrier != crossed.end()) task.last_stop = std::min(task.last_stop, *barrier);
      if (!task.by_batch()) task.last_stop = -1;
      std::int64_t rungs = 0;
      for (int row = task.low; row <= task.high; ++row) {
        const Cell cell = cells[at(row - 1)];
        rungs += costs[at(static_cast<int>(cell))];
        if (lanes == Lanes::in_place) worked.cells.push_back(cell);
      }
      worked.tasks.push_back(task);
      worked.rungs.push_back(rungs);
    }
    // No batch passes a stack that only a hold can make.
    for (std::size_t i = worked.tasks.size(); i-- > 1;) {
      Task& below = worked.tasks[i - 1];
      if (!worked.tasks[i].by_batch()) below.last_stop = std::min(below.last_stop, worked.tasks[i].low - 1);
    }
    return worked;
  }

  // Of the wale read last: which batches may end in each row, and the rungs below.
  void lay_out(Lane& lane, std::int64_t unit) const {
    RungCosts scaled = costs;
    for (std::int64_t& cost : scaled) cost *= unit;
    lane.done.resize(cells.size() + 1);
    lane.upto.resize(cells.size() + 1);
    std::int64_t sum = 0;    // of all rungs
    std::int64_t below = 0;  // of those that are no part of a stack that is still open
    int done = 0;
    int was_open = 0;
    // Without branches, for whether a cell is worked by hand can be as hard to foresee as a coin.
    for (std::size_t row = 1; row <= cells.size(); ++row) {
      const Cell cell = cells[row - 1];
      const int open = static_cast<int>(cell == Cell::tuck) | static_cast<int>(cell == Cell::slip);
      sum += scaled[at(static_cast<int>(cell))];
      below += (sum - below) & (std::int64_t{open} - 1);
      done += (was_open | static_cast<int>(cell == Cell::purl)) & (1 - open);
      lane.done[row] = done | -open;  // -1 in an open one
      lane.upto[row] = below;
      was_open = open;
    }
  }
};

// Of each kind of wale what is known of every row is kept, some 200 bytes.
void require_room(const Wale& wale, std::size_t kinds, int rows) {
  constexpr std::size_t most = std::size_t{1} << 25;
  if (kinds * (at(rows) + 1) <= most) return;
  Place place;
  place.row = wale.row;
  place.column = wale.column;
  place.field = "grid";
  throw Error(
      ErrorCode::too_large, place,
      fmt::format("the wale at row {}, column {} is of one kind more than the {} that a plan of {} rows may have: "
                  "kinds, times rows + 1, may be {}",
                  wale.row, wale.column, kinds - 1, rows, most));
}

// What all the work that a panel may have would take at the most, and the greatest time that is counted.
struct Count {
  std::int64_t most_ms;
  std::int64_t limit_ms;
};

Count count_of_all(const Grid& grid, const Effort& effort) {
  const std::int64_t rung =
      effort.drop + std::max({effort.rung_knit, effort.rung_purl, effort.rung_tuck, effort.rung_slip});
  const std::int64_t cell =
      effort.batch + rung + effort.hold + effort.shaping + effort.crossing + effort.crossing_stitch;
  const std::int64_t cells = std::int64_t{grid.rows()} * grid.columns();
  // Both factors are far below 2^62: see Grid and Effort.
  return {cells * cell + (std::int64_t{grid.rows()} + 1) * (effort.stop + effort.row + 1),
          (far / 2) / (grid.rows() + 2)};
}

// Every schedule's cost is a sum of these, some of them many times.
std::int64_t step_of(const Effort& effort) {
  std::int64_t step = 0;
  for (const std::int64_t cost :
       {effort.stop, effort.batch, effort.hold, effort.drop + effort.rung_knit, effort.drop + effort.rung_purl,
        effort.drop + effort.rung_tuck, effort.drop + effort.rung_slip}) {
    step = std::gcd(step, cost);
  }
  return std::max<std::int64_t>(1, step);
}

}  // namespace

bool can_be_counted(const Grid& grid, const Effort& effort) {
  const Count count = count_of_all(grid, effort);
  return count.most_ms <= count.limit_ms;
}

void require_counted(const Grid& grid, const Effort& effort) {
  if (can_be_counted(grid, effort)) return;
  const Count count = count_of_all(grid, effort);
  refuse(ErrorCode::too_large, "effort",
         fmt::format("{} rows of {} stitches at these efforts could take {} ms; a plan of so many rows is kept to {} "
                     "ms",
                     grid.rows(), grid.columns(), count.most_ms, count.limit_ms));
}

bool is_in_place(const Wale& wale, int rows) {
  return wale.row == 1 && wale.last_row() == rows &&
         std::all_of(wale.columns.begin(), wale.columns.end(),
                     [&](int column) { return column == wale.columns.front(); });
}

bool is_forced(const Problem& problem, int row) {
  return problem.forced[at(row)] != 0;
}

Problem problem_of(const Grid& grid, const Wales& wales, const Machine& machine, const Effort& effort, Limits* limits,
                   Lanes lanes) {
  Problem problem;
  problem.rows = grid.rows();
  problem.unit = std::int64_t{grid.rows()} + 2;
  problem.stop_cost = effort.stop * problem.unit + 1;
  problem.step_ms = step_of(effort);
  problem.fixed_ms = grid.rows() * effort.row;
  problem.forced.assign(at(grid.rows()) + 1, 0);

  Reader reader{grid, machine, rung_costs(effort), lanes, std::vector<std::vector<int>>(wales.all().size())};
  for (const Crossing& crossing : grid.crossings()) {
    problem.forced[at(crossing.row)] = 1;
    problem.fixed_ms += effort.crossing + effort.crossing_stitch * lifting::stitches_lifted(grid, crossing);
    for (int column = crossing.column; column < crossing.column + crossing.width(); ++column) {
      const int wale = wales.at(crossing.row, column);
      if (wale >= 0) reader.barriers[at(wale)].push_back(crossing.row);
    }
  }
  ReadOn reading(limits, grid, 1);
  // By the wale that is not to share its lane, or one that stands for all that may.
  const std::size_t nobody = wales.all().size();
  std::map<std::pair<std::size_t, Worked>, std::size_t> lane_of;
  for (std::size_t w = 0; w < wales.all().size(); ++w) {
    const Wale& wale = wales.all()[w];
    if (wale.row > 1) problem.forced[at(wale.row - 1)] = 1;
    if (wale.last_row() < grid.rows()) problem.forced[at(wale.last_row())] = 1;
    problem.fixed_ms += effort.shaping * ((wale.row > 1 ? 1 : 0) + (wale.last_row() < grid.rows() ? 1 : 0));
    Worked worked = reader.read(wale, w);
    if (worked.tasks.empty()) {
      reading.step(std::ssize(wale.columns));
      continue;
    }
    const bool shares = lanes == Lanes::alike || is_in_place(wale, grid.rows());
    const auto [place, fresh] =
        lane_of.try_emplace(std::pair(shares ? nobody : w, std::move(worked)), problem.lanes.size());
    if (fresh) {
      require_room(wale, problem.lanes.size() + 1, grid.rows());
      reading.also(grid.rows());
      reader.lay_out(problem.lanes.emplace_back(), problem.unit);
    }
    problem.lanes[place->second].wales.push_back(static_cast<int>(w));
    reading.step(std::ssize(wale.columns));
  }
  while (!lane_of.empty()) {
    auto known = lane_of.extract(lane_of.begin());
    Lane& lane = problem.lanes[known.mapped()];
    const auto count = static_cast<std::int64_t>(lane.wales.size());
    lane.tasks = std::move(known.key().second.tasks);
    lane.batch = effort.batch * count * problem.unit;
    lane.hold = effort.hold * count * problem.unit;
    if (count > 1) {
      for (std::int64_t& rungs : lane.upto) rungs *= count;
    }
    lane.before = std::move(known.key().second.rungs);  // one a task, too: no room is asked for anew
    for (std::size_t i = 0; i < lane.tasks.size(); ++i) lane.before[i] = lane.upto[at(lane.tasks[i].low - 1)];
  }
  problem.barred = seeking::merged_findings(std::move(reader.barred));
  return problem;
}

}  // namespace latchwork::inline v0::planning
