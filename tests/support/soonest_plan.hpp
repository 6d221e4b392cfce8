#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include "latchwork/grid.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/wale.hpp"

namespace latchwork_test {

/// A plan without any thrift, written from DEVELOPERS.md, stops, and not from the planner: stop after each row that has
/// something to do, and re-form each hand cell at the soonest stop. Stacks are re-formed with the tool when their
/// closing cell has been knitted; or, with `by_hold`, tucks under a closing knit with no tuck beside them are held
/// instead. Each group wider than three stitches takes several tools.
inline latchwork::Plan soonest_plan(const latchwork::Grid& grid, int leftmost, bool by_hold = false) {
  using namespace latchwork;
  const int rows = grid.rows();
  const int columns = grid.columns();
  const auto needle = [&](int column) {
    const int counted = (leftmost > 0 ? leftmost - 1 : leftmost) + columns - 1 - column;
    return counted >= 0 ? counted + 1 : counted;
  };
  const auto is = [&](int row, int column, Cell cell) {
    return row >= 1 && row <= rows && column >= 0 && column < columns && grid.at(row, column) == cell;
  };
  const Wales wales(grid);
  const auto open = [&](int row, int column) { return is(row, column, Cell::tuck) || is(row, column, Cell::slip); };
  // First row of the stack under (row, column), where all rows up to `row`-1 are tucks with none beside them; else 0.
  const auto held_from = [&](int row, int column) {
    if (!by_hold || !is(row, column, Cell::knit)) return 0;
    int first = row;
    while (open(first - 1, column)) {
      --first;
      if (!is(first, column, Cell::tuck) || open(first, column - 1) || open(first, column + 1)) return 0;
    }
    return first < row ? first : 0;
  };
  // A bare centre may shift: what stands in its old or new columns comes or goes by the crossing, not by shaping.
  const auto crossed = [&](int row, int column) {
    return std::any_of(grid.crossings().begin(), grid.crossings().end(), [&](const Crossing& crossing) {
      return crossing.row == row && column >= crossing.column && column < crossing.column + crossing.width();
    });
  };
  const auto crossing_step = [&](const Crossing& crossing) {
    CrossingStep step{.crossing = crossing, .returns = {}, .ease = false};
    const auto group = [&](GroupName name, int from, int to, int stitches, bool lifted) {
      GroupReturn back{.group = name,
                       .stitches = stitches,
                       .from_needle = needle(from + stitches - 1),
                       .to_needle = needle(to + stitches - 1),
                       .prongs = {}};
      for (int left = lifted ? stitches : 0; left > 0; left -= 3) back.prongs.push_back(std::min(left, 3));
      return back;
    };
    const int c = crossing.column, l = crossing.left, k = crossing.centre, q = crossing.right;
    const GroupReturn left = group(GroupName::left, c, c + k + q, l, true);
    const GroupReturn right = group(GroupName::right, c + l + k, c, q, true);
    step.returns = crossing.lean == Lean::right ? std::vector{left, right} : std::vector{right, left};
    if (k > 0 && grid.at(crossing.row, c + l) != Cell::none) {
      const bool lifted = crossing.place != Centre::front || l != q;
      step.returns.insert(step.returns.begin() + static_cast<int>(crossing.place),
                          group(GroupName::centre, c + l, c + q, k, lifted));
    }
    return step;
  };

  Plan plan;
  plan.rows = rows;
  plan.columns = columns;
  plan.leftmost = leftmost;
  for (int column = 0; column < columns; ++column) {
    if (!is(1, column, Cell::none)) plan.columns_on.push_back(column);
  }
  for (int row = 0; row <= rows; ++row) {
    Stop stop;
    stop.row = row;
    stop.carriage_right = row % 2 == 0;
    for (int column = columns - 1; column >= 0; --column) {  // the operator's left first
      if (row >= 1 && held_from(row + 1, column) > 0) stop.releases.push_back(needle(column));
      if (row < rows && is(row + 1, column, Cell::tuck) && !is(row, column, Cell::tuck)) {
        int closing = row + 1;
        while (open(closing, column)) ++closing;
        if (held_from(closing, column) == row + 1) stop.holds.push_back(needle(column));
      }
      if (row == 0 || is(row, column, Cell::none)) continue;
      if (row < rows && is(row + 1, column, Cell::none) && !crossed(row, column)) {
        stop.shapings.push_back({.needle = needle(column), .column = column, .on = false});
      }
      if (open(row, column)) continue;
      int first = row;
      while (open(first - 1, column)) --first;
      if (first < row ? held_from(row, column) > 0 : is(row, column, Cell::knit)) continue;
      Reform reform{.needle = needle(column),
                    .column = column,
                    .wale = wales.at(row, column),
                    .from_row = first - 1,
                    .rungs = {}};
      for (int rung = first; rung <= row; ++rung) reform.rungs.push_back(grid.at(rung, column));
      stop.reforms.push_back(std::move(reform));
    }
    for (const Crossing& crossing : grid.crossings()) {
      if (crossing.row == row) stop.crossings.push_back(crossing_step(crossing));
    }
    for (int column = columns - 1; column >= 0 && row >= 1 && row < rows; --column) {
      if (is(row, column, Cell::none) && !is(row + 1, column, Cell::none) && !crossed(row, column)) {
        stop.shapings.push_back({.needle = needle(column), .column = column, .on = true});
      }
    }
    const bool idle = stop.releases.empty() && stop.reforms.empty() && stop.crossings.empty() &&
                      stop.shapings.empty() && stop.holds.empty();
    if (!idle) plan.stops.push_back(std::move(stop));
  }
  plan.status = PlanStatus::feasible;
  return plan;
}

}  // namespace latchwork_test
