#include "plan/problem.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <compare>
#include <map>
#include <numeric>
#include <tuple>
#include <utility>

#include "finding/merge.hpp"
#include "finding/reach.hpp"
#include "grid/lifting.hpp"
#include "latchwork/error.hpp"
#include "plan/index.hpp"

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

struct Reader {
  const Grid& grid;
  const Machine& machine;
  const Effort& effort;
  Lanes lanes;
  std::vector<std::vector<int>> barriers;  // per wale: rows after which it is in a crossing
  std::vector<Finding> barred;

  // A wale lies inside its grid, so that nothing is to be checked.
  Cell cell(const Wale& wale, int row) const {
    return grid.cells()[at(row - 1) * at(grid.columns()) + at(wale.column_at(row))];
  }

  std::int64_t rung_cost(Cell cell) const {
    switch (cell) {
      case Cell::knit:
        return effort.drop + effort.rung_knit;
      case Cell::purl:
        return effort.drop + effort.rung_purl;
      case Cell::tuck:
        return effort.drop + effort.rung_tuck;
      case Cell::slip:
        return effort.drop + effort.rung_slip;
      case Cell::none:
        break;
    }
    return 0;
  }

  Worked read(const Wale& wale, std::size_t index) {
    Worked worked;
    const std::vector<seeking::HandCells> all = seeking::hand_cells(grid, wale);
    worked.tasks.reserve(all.size());
    worked.rungs.reserve(all.size());
    for (const seeking::HandCells& cells : all) {
      if (auto why = seeking::out_of_reach(wale, cells, machine)) {
        barred.push_back(std::move(*why));
        continue;
      }
      const auto& crossed = barriers[index];
      const auto barrier = std::lower_bound(crossed.begin(), crossed.end(), cells.low);
      Task task{cells.low, cells.high, std::min(wale.last_row(), cells.low - 1 + machine.max_ladder), cells.by_hold};
      if (barrier != crossed.end()) task.last_stop = std::min(task.last_stop, *barrier);
      if (!task.by_batch()) task.last_stop = -1;
      std::int64_t rungs = 0;
      for (int row = task.low; row <= task.high; ++row) {
        rungs += rung_cost(cell(wale, row));
        if (lanes == Lanes::in_place) worked.cells.push_back(cell(wale, row));
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
};

/// Lets a panel be read to its end, unless that takes long after the limits are over.
class Reading {
 public:
  explicit Reading(Limits* limits) : limits_(limits) {}
  void read(std::int64_t cells) {
    if (!limits_ || !limits_->whole_over()) return;
    beyond_ += cells;
    if (beyond_ <= most_beyond) return;
    Place place;
    place.field = "options";
    throw Error(ErrorCode::cancelled, place, "the call was stopped, or its time over, before the panel was read");
  }

 private:
  static constexpr std::int64_t most_beyond = 1'000'000;  // cells, and rows of kinds of wale: a few ms
  Limits* limits_;
  std::int64_t beyond_ = 0;
};

// Rows 1..R of a lane: which batches may end there, and the rungs below.
void lay_out(Lane& lane, const Worked& worked, int rows, std::int64_t knit_rung, std::int64_t unit) {
  const auto wales = static_cast<std::int64_t>(lane.wales.size());
  const std::int64_t scale = wales * unit;
  lane.done.resize(at(rows) + 1);
  lane.upto.resize(at(rows) + 1);
  lane.before.resize(worked.tasks.size());
  std::int64_t sum = 0;
  int row = 1;
  int done = 0;
  const auto knit_up_to = [&](int end) {
    for (; row < end; ++row) {
      sum += knit_rung;
      lane.done[at(row)] = done;
      lane.upto[at(row)] = sum * scale;
    }
  };
  for (const Task& task : worked.tasks) {
    knit_up_to(task.low);
    lane.before[at(done)] = sum * scale;
    for (; row < task.high; ++row) {
      lane.done[at(row)] = -1;
      lane.upto[at(row)] = sum * scale;
    }
    sum += worked.rungs[at(done)];
    ++done;
    lane.done[at(row)] = done;
    lane.upto[at(row)] = sum * scale;
    ++row;
  }
  knit_up_to(rows + 1);
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
  Place place;
  place.field = "effort";
  throw Error(ErrorCode::too_large, place,
              fmt::format("{} rows of {} stitches at these efforts could take {} ms; a plan of so many rows is kept to "
                          "{} ms",
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

  Reader reader{grid, machine, effort, lanes, std::vector<std::vector<int>>(wales.all().size()), {}};
  for (const Crossing& crossing : grid.crossings()) {
    problem.forced[at(crossing.row)] = 1;
    problem.fixed_ms += effort.crossing + effort.crossing_stitch * lifting::stitches_lifted(grid, crossing);
    for (int column = crossing.column; column < crossing.column + crossing.width(); ++column) {
      const int wale = wales.at(crossing.row, column);
      if (wale >= 0) reader.barriers[at(wale)].push_back(crossing.row);
    }
  }
  Reading reading(limits);
  // By the wale that is not to share its lane, or one that stands for all that may.
  const std::size_t nobody = wales.all().size();
  std::map<std::pair<std::size_t, Worked>, std::size_t> lane_of;
  std::vector<const Worked*> worked_of;
  for (std::size_t w = 0; w < wales.all().size(); ++w) {
    const Wale& wale = wales.all()[w];
    if (wale.row > 1) problem.forced[at(wale.row - 1)] = 1;
    if (wale.last_row() < grid.rows()) problem.forced[at(wale.last_row())] = 1;
    problem.fixed_ms += effort.shaping * ((wale.row > 1 ? 1 : 0) + (wale.last_row() < grid.rows() ? 1 : 0));
    reading.read(std::ssize(wale.columns));
    Worked worked = reader.read(wale, w);
    if (worked.tasks.empty()) continue;
    const bool shares = lanes == Lanes::alike || is_in_place(wale, grid.rows());
    const auto [place, fresh] =
        lane_of.try_emplace(std::pair(shares ? nobody : w, std::move(worked)), problem.lanes.size());
    if (fresh) {
      problem.lanes.emplace_back();
      worked_of.push_back(&place->first.second);
    }
    problem.lanes[place->second].wales.push_back(static_cast<int>(w));
  }
  for (std::size_t i = 0; i < problem.lanes.size(); ++i) {
    reading.read(grid.rows());
    Lane& lane = problem.lanes[i];
    const auto count = static_cast<std::int64_t>(lane.wales.size());
    lane.tasks = worked_of[i]->tasks;
    lane.batch = effort.batch * count * problem.unit;
    lane.hold = effort.hold * count * problem.unit;
    lay_out(lane, *worked_of[i], grid.rows(), effort.drop + effort.rung_knit, problem.unit);
  }
  problem.barred = seeking::merged_findings(std::move(reader.barred));
  return problem;
}

}  // namespace latchwork::inline v0::planning
