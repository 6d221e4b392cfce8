#pragma once

#include <map>
#include <vector>

#include "latchwork/grid.hpp"
#include "latchwork/wale.hpp"
#include "plan/solve.hpp"

namespace latchwork::inline v0::planning {

/// What is done to a panel at stops, in numbers: equal deeds have equal numbers, whatever their row.
class Deeds {
 public:
  Deeds(const Grid& grid, const Wales& wales) : grid_(&grid), wales_(&wales) {}

  /// Of a lane's wales, each: a batch over the rows from task `first` up to `row`; task `task` held, or released.
  std::vector<int> batch(const Lane& lane, int first, int row);
  std::vector<int> hold(const Lane& lane, int task);
  std::vector<int> release(const Lane& lane, int task);
  /// Crossings and shapings after each row 0..R.
  std::vector<std::vector<int>> forced();
  /// The number of a list of deeds, in any order.
  int kind(std::vector<int> deeds);
  const std::vector<int>& deeds_of(int kind) const { return *kinds_by_number_[static_cast<std::size_t>(kind)]; }

 private:
  int number(std::vector<int> deed);
  const Grid* grid_;
  const Wales* wales_;
  std::map<std::vector<int>, int> deeds_;
  std::map<std::vector<int>, int> kinds_;
  std::vector<const std::vector<int>*> kinds_by_number_;
};

/// The deeds of works of a lane, added to those of each row.
void add_deeds(Deeds& deeds, const Lane& lane, const std::vector<Work>& works, std::vector<std::vector<int>>& at_row);

/// The least schedule with at most `most` kinds of stop. `at_row`: per row 0..R what is done there beside the works of
/// the problem's lanes. When the search outgrew its memory or its work before anything was found, neither found nor
/// proven.
Solved solve_kinds(const Problem& problem, Deeds& deeds, const std::vector<std::vector<int>>& at_row, int most,
                   const PlanOptions& options, Limits& limits);

}  // namespace latchwork::inline v0::planning
