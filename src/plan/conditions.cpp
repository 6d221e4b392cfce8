#include "plan/conditions.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "finding/merge.hpp"
#include "latchwork/crossing.hpp"
#include "latchwork/error.hpp"
#include "plan/index.hpp"
#include "plan/inputs.hpp"
#include "plan/rhythm.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::planning {
namespace {

// The same lane with some of its wales only.
Lane part_of(const Lane& lane, std::vector<int> wales) {
  const auto all = static_cast<std::int64_t>(lane.wales.size());
  const auto some = static_cast<std::int64_t>(wales.size());
  Lane part = lane;
  part.wales = std::move(wales);
  for (auto* costs : {&part.upto, &part.before}) {
    for (std::int64_t& cost : *costs) cost = cost / all * some;  // whole: every cost is so many times one wale's
  }
  part.batch = lane.batch / all * some;
  part.hold = lane.hold / all * some;
  return part;
}

enum Closed : char { open = 0, wrong_side = 1, too_near = 2, by_hand = 3 };

struct Poser {
  Posed& posed;
  const Grid& grid;
  const Wales& wales;
  const Conditions& conditions;
  bool starts_right;
  std::vector<char> closed;       // per row 0..R
  std::vector<char> by_the_grid;  // forced by crossings and shapings
  std::vector<int> column;        // per row: where something forces a stop
  const std::vector<Group>& groups;
  const std::vector<const Settled*>& settled;
  std::vector<std::pair<int, int>> cell;  // per row: a hand cell that a rhythm's stop there re-forms; made when asked

  bool right(int row) const { return starts_right == (row % 2 == 0); }
  bool exempt(int row) const { return conditions.forced_exempt && by_the_grid[at(row)]; }
  // The leftmost, and of it the row of the highest hand cell.
  std::pair<int, int> rhythm_cell(int row) {
    if (cell.empty()) {
      cell.assign(by_the_grid.size(), {0, -1});
      for (std::size_t g = 0; g < groups.size(); ++g) {
        for (std::size_t k = 0; k < settled[g]->works.size(); ++k) {
          const Lane& lane = groups[g].lanes[k];
          for (const Work& work : settled[g]->works[k]) {
            const int low = lane.task(work.last).low;
            const int there = wales.all()[at(lane.wales.front())].column_at(low);
            auto& known = cell[at(work.stop)];
            if (known.second < 0 || there < known.second) known = {low, there};
          }
        }
      }
    }
    return cell[at(row)];
  }
  // Where a forced stop is told: at a stitch of what forces it, or at a hand cell that it re-forms.
  std::pair<int, int> spot(int row) {
    if (!by_the_grid[at(row)]) return rhythm_cell(row);
    const bool begins = row == 0 || grid.at(row, column[at(row)]) == Cell::none;  // a needle cast on
    return {begins ? row + 1 : row, column[at(row)]};
  }

  std::string what(int row) {
    if (!by_the_grid[at(row)]) {
      return fmt::format("the rhythm's stop after row {}, column {}", row, rhythm_cell(row).second);
    }
    const auto crossings = grid.crossings();  // by row, then column
    const auto place = std::pair(row, column[at(row)]);
    const auto there = std::lower_bound(
        crossings.begin(), crossings.end(), place,
        [](const Crossing& crossing, const auto& wanted) { return std::pair(crossing.row, crossing.column) < wanted; });
    const bool crossed = there != crossings.end() && std::pair(there->row, there->column) == place;
    const char* const comma = crossed && there->centre > 0 ? "," : "";  // its name has one: "1/1/1 RC, centre behind"
    return fmt::format("the {}{} after row {}, column {}", crossed ? crossing_name(*there) : "shaping", comma, row,
                       place.second);
  }

  void tell_stop(FindingCode code, int row, int value, int limit, std::string message, std::string suggestion) {
    const auto [low, there] = spot(row);
    tell(code, low, std::max(low, row), there, value, limit, std::move(message), std::move(suggestion));
  }

  void tell(FindingCode code, int row, int last_row, int at_column, int value, int limit, std::string message,
            std::string suggestion) {
    Finding finding;
    finding.code = code;
    finding.severity = Severity::error;
    finding.place.row = row;
    finding.last_row = last_row;
    finding.place.column = finding.last_column = at_column;
    finding.value = value;
    finding.limit = limit;
    finding.message = std::move(message);
    finding.suggestion = std::move(suggestion);
    posed.broken.push_back(std::move(finding));
  }

  // A rhythm's stops are not exempt by it, so that it may be set already.
  std::string or_exempt(const char* advice) const {
    return fmt::format("{}{}", advice, conditions.forced_exempt ? "" : ", or exempt forced stops");
  }

  void close_by_hand() {
    for (const int row : conditions.closed_rows) {
      if (!posed.problem.forced[at(row)]) {
        closed[at(row)] = by_hand;
      } else if (!exempt(row)) {
        tell_stop(FindingCode::row_closed, row, 0, 0, fmt::format("closed_rows: {} needs a stop there", what(row)),
                  or_exempt("open the row"));
      }
    }
  }

  void close_left() {
    for (int row = 0; row <= posed.problem.rows; ++row) {
      if (right(row) || closed[at(row)]) continue;
      if (!posed.problem.forced[at(row)]) {
        closed[at(row)] = wrong_side;
      } else if (!exempt(row)) {
        tell_stop(FindingCode::carriage_side, row, 0, 0,
                  fmt::format("carriage_right_only: {} stops it on the left", what(row)),
                  or_exempt("move it by a row or start the carriage on the other side"));
      }
    }
  }

  void close_near() {
    const int apart = conditions.rows_apart;
    posed.problem.apart = apart;
    int last = -1;
    for (int row = 0; row <= posed.problem.rows; ++row) {
      if (!posed.problem.forced[at(row)]) continue;
      if (last >= 0 && row - last < apart && !(exempt(row) && exempt(last))) {
        tell_stop(FindingCode::stops_too_near, row, row - last, apart,
                  fmt::format("rows_apart: {} comes {} after {}; {} are asked for", what(row),
                              count_of(row - last, "row"), what(last), apart),
                  or_exempt("set them further apart or ask for fewer rows"));
      }
      last = row;
      for (int near = std::max(0, row - apart + 1); near <= std::min(posed.problem.rows, row + apart - 1); ++near) {
        if (!posed.problem.forced[at(near)] && !closed[at(near)]) closed[at(near)] = too_near;
      }
    }
  }

  // No lane works at a closed row.
  void close_lanes() {
    std::vector<int> rows;
    for (int row = 0; row <= posed.problem.rows; ++row) {
      if (closed[at(row)]) rows.push_back(row);
    }
    for (Lane& lane : posed.problem.lanes) {
      for (const int row : rows) lane.done[at(row)] = -1;
      int before = posed.problem.rows;  // from above: no batch passes a stack that only a hold can make
      for (std::size_t i = lane.tasks.size(); i-- > 0;) {
        Task& task = lane.tasks[i];
        const Task old = task;
        task.by_hold = task.by_hold && !closed[at(task.low - 1)] && !closed[at(task.high - 1)];
        if (task.by_batch()) task.last_stop = std::min(task.last_stop, before);
        while (task.by_batch() && lane.done_at(task.last_stop) < 0) --task.last_stop;
        if (!task.by_batch()) {
          task.last_stop = -1;
          before = std::min(before, task.low - 1);
          if (!task.by_hold) cannot(lane, old);
        }
      }
    }
  }

  void cannot(const Lane& lane, const Task& task) {
    const int last = std::max(task.high, task.last_stop);
    char why = open;  // the last that closed one of its stops
    for (int row = task.high; task.by_batch() && row <= last; ++row) why = std::max(why, closed[at(row)]);
    if (task.by_hold) why = std::max({why, closed[at(task.low - 1)], closed[at(task.high - 1)]});
    const Wale& wale = wales.all()[at(lane.wales.front())];
    const std::string where =
        fmt::format("the hand cells of {}, column {}", run_of("row", task.low, task.high), wale.column_at(task.low));
    const std::string when = task.by_batch() ? "a stop after " + run_of("row", task.high, last)
                                             : fmt::format("stops after rows {} and {}", task.low - 1, task.high - 1);
    const char* where_one_can_be = task.by_batch() && last > task.high ? " wherever one of these can be" : "";
    if (why == by_hand) {
      tell(FindingCode::row_closed, task.low, task.high, wale.column_at(task.low), 0, 0,
           fmt::format("closed_rows: {} need {}, where none is allowed", where, when),
           task.by_batch() ? "open one of these rows" : "open these rows");
    } else if (why == too_near) {
      tell(FindingCode::stops_too_near, task.low, task.high, wale.column_at(task.low), 0, conditions.rows_apart,
           fmt::format("rows_apart: {} need {}, and none of these is {} rows from the forced stops", where, when,
                       conditions.rows_apart),
           "ask for fewer rows between stops");
    } else {
      tell(FindingCode::carriage_side, task.low, task.high, wale.column_at(task.low), 0, 0,
           fmt::format("carriage_right_only: {} need {}, and the carriage is on the left{}", where, when,
                       where_one_can_be),
           "move them by a row, start the carriage on the other side, or allow both");
    }
  }
};

}  // namespace

std::vector<Group> take_out(Problem& problem, const Wales& wales, const Conditions& conditions) {
  std::vector<Group> groups;
  std::vector<int> group_of(wales.all().size(), -1);
  for (std::size_t i = 0; i < conditions.rhythms.size(); ++i) {
    const KeptRhythm& kept = conditions.rhythms[i];
    groups.push_back({&kept, {}});
    for (int column = kept.first_column; column <= kept.last_column; ++column) {
      const int wale = wales.at(kept.row, column);
      if (wale < 0) continue;
      if (group_of[at(wale)] >= 0) {
        Place place{kept.row, column, 0, fmt::format("options.conditions.rhythms[{}]", i)};
        throw Error(ErrorCode::bad_argument, place,
                    fmt::format("the wale in row {}, column {} is already kept to rhythms[{}]", kept.row, column,
                                group_of[at(wale)]));
      }
      group_of[at(wale)] = static_cast<int>(i);
    }
  }
  if (groups.empty()) return groups;
  std::vector<Lane> left;
  for (Lane& lane : problem.lanes) {
    std::vector<std::vector<int>> members(groups.size() + 1);
    for (const int wale : lane.wales) members[at(group_of[at(wale)] + 1)].push_back(wale);
    const std::size_t first = at(group_of[at(lane.wales.front())] + 1);
    if (members[first].size() == lane.wales.size()) {  // all of it
      (first == 0 ? left : groups[first - 1].lanes).push_back(std::move(lane));
      continue;
    }
    for (std::size_t k = 0; k < members.size(); ++k) {
      if (members[k].empty()) continue;
      (k == 0 ? left : groups[k - 1].lanes).push_back(part_of(lane, std::move(members[k])));
    }
  }
  problem.lanes = std::move(left);
  return groups;
}

Finding finding_at(FindingCode code, int row, int column, std::string message, std::string suggestion) {
  Finding finding;
  finding.code = code;
  finding.severity = Severity::error;
  finding.place.row = row;
  finding.last_row = row;
  finding.place.column = finding.last_column = column;
  finding.message = std::move(message);
  finding.suggestion = std::move(suggestion);
  return finding;
}

Problem narrowed(const Grid& grid, const Machine& machine, const Effort& effort, int depth, Readings& readings,
                 Limits& limits, std::vector<Finding>& barred, Lanes lanes) {
  barred.clear();
  Machine shallow = machine;
  if (depth > 0) shallow.max_ladder = std::min(shallow.max_ladder, depth);
  Problem problem = readings.own_problem(grid, shallow, effort, limits, lanes);
  // What a deep ladder does not reach a shallow one does not: mostly nothing bars the panel, and it is read once.
  if (shallow.max_ladder == machine.max_ladder || problem.barred.empty()) {
    barred = what_bars(grid, machine, problem);
    return problem;
  }
  barred = what_bars(grid, machine, readings.problem(grid, machine, effort, limits, lanes));
  if (!barred.empty()) return problem;
  barred = problem.barred;
  for (Finding& finding : barred) {
    finding.code = FindingCode::too_deep;
    finding.message = fmt::format("max_depth: {}", finding.message);
    finding.suggestion = "allow deeper re-forms, or close the stack sooner";
  }
  return problem;
}

Finding off_rhythm(const Group& group, const Rhythm& rhythm, const Wales& wales) {
  for (const Lane& lane : group.lanes) {
    for (const Task& task : lane.tasks) {
      if (task.by_batch()) {
        int stop = std::max(rhythm.first, task.high);
        stop += (rhythm.every - (stop - rhythm.first) % rhythm.every) % rhythm.every;
        while (stop <= task.last_stop && lane.done_at(stop) < 0) stop += rhythm.every;
        if (stop <= task.last_stop) continue;
      }
      const int column = wales.all()[at(lane.wales.front())].column_at(task.low);
      return finding_at(
          FindingCode::off_rhythm, task.low, column,
          task.by_batch()
              ? fmt::format("rhythms: the hand cells of {}, column {}, need a stop after {}, and the rhythm of {} from "
                            "row {} has none at which they can be re-formed",
                            run_of("row", task.low, task.high), column, run_of("row", task.high, task.last_stop),
                            count_of(rhythm.every, "row"), rhythm.first)
              : fmt::format("rhythms: the tucks of {}, column {}, can only be held, and a rhythm holds none",
                            run_of("row", task.low, task.high - 1), column),
          "another rhythm, or keep fewer wales to it");
    }
  }
  throw Error(ErrorCode::internal, {}, "a rhythm fails, and every hand cell is in time");
}

Settled settle(const Group& group, const Rhythm& rhythm, int rows) {
  Settled settled;
  for (const Lane& lane : group.lanes) {
    Works mine = works_in_rhythm(lane, rhythm, rows);
    if (mine.cost >= far) return {{}, {}, far};
    settled.cost += mine.cost;
    for (const Work& work : mine.list) settled.stops.push_back(work.stop);
    settled.works.push_back(std::move(mine.list));
  }
  std::sort(settled.stops.begin(), settled.stops.end());
  settled.stops.erase(std::unique(settled.stops.begin(), settled.stops.end()), settled.stops.end());
  return settled;
}

Posed pose(Problem problem, const Grid& grid, const Wales& wales, const Machine& machine, const Conditions& conditions,
           const std::vector<Group>& groups, const std::vector<const Settled*>& settled) {
  Posed posed{std::move(problem), {}};
  Problem& own = posed.problem;
  Poser poser{posed, grid, wales, conditions, machine.carriage_starts_right, {}, own.forced, {}, groups, settled, {}};
  poser.closed.assign(own.forced.size(), open);
  poser.column.assign(own.forced.size(), -1);
  const auto force = [&](int row, int column) {
    own.forced[at(row)] = 1;
    if (poser.column[at(row)] < 0 || column < poser.column[at(row)]) poser.column[at(row)] = column;
  };
  for (const Wale& wale : wales.all()) {
    if (wale.row > 1) force(wale.row - 1, wale.column);
    if (wale.last_row() < own.rows) force(wale.last_row(), wale.columns.back());
  }
  for (const Crossing& crossing : grid.crossings()) force(crossing.row, crossing.column);
  for (std::size_t g = 0; g < groups.size(); ++g) {
    own.fixed_ms += settled[g]->cost / own.unit;
    for (const int row : settled[g]->stops) {
      const bool already = poser.by_the_grid[at(row)] != 0;
      force(row, already ? poser.column[at(row)] : groups[g].kept->first_column);
    }
  }
  poser.close_by_hand();
  if (conditions.carriage_right_only) poser.close_left();
  if (conditions.rows_apart > 1) poser.close_near();
  poser.close_lanes();
  posed.broken = seeking::merged_findings(std::move(posed.broken));
  return posed;
}

}  // namespace latchwork::inline v0::planning
