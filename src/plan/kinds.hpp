#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "latchwork/grid.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/wale.hpp"
#include "plan/limits.hpp"
#include "plan/number_table.hpp"
#include "plan/numbered_lists.hpp"
#include "plan/solve.hpp"

namespace latchwork::inline v0::planning {

/// Deeds that go together: those of one lane at one stop.
struct DeedList {
  std::uint64_t sum = 0;  ///< the same for the same deeds in any order; lists together have the sum of theirs
  std::uint32_t from = 0;
  std::uint32_t count = 0;
};

/// What is done to a panel at stops, in numbers: equal deeds have equal numbers, whatever their row.
class Deeds {
 public:
  /// @throws Error too_large (field options.conditions.max_kinds) for 2^26 wales or more.
  Deeds(const Grid& grid, const Wales& wales);

  /// Of a lane's wales, each: a batch over the rows from task `first` up to `row`; task `task` held, or released; such
  /// a batch, and the task above it held. Made once, and told again when asked again.
  DeedList batch(const Lane& lane, int first, int row);
  DeedList hold(const Lane& lane, int task);
  DeedList release(const Lane& lane, int task);
  DeedList batch_and_hold(const Lane& lane, int first, int row);
  /// Until other lists are made.
  std::span<const int> of(const DeedList& list) const { return std::span(all_).subspan(list.from, list.count); }
  /// Crossings and shapings after each row 0..R.
  std::vector<std::vector<int>> forced();
  static std::uint64_t sum_of(std::span<const int> deeds);
  /// Sums of what is seen of deeds without a look at their rungs, needle and depth: stops of one kind have the same sum
  /// of these, so that there are no fewer kinds than sums. Nothing is numbered for it.
  std::uint64_t outline_of_batch(const Lane& lane, int first, int row) const;
  std::uint64_t outline_of_hold(const Lane& lane, int task, bool released) const;
  /// The number of a list of deeds, in any order.
  int kind(std::vector<int> deeds);
  /// By increasing number. Until kinds are forgotten.
  std::span<const int> deeds_of(int kind) const { return kinds_.of(kind); }
  /// How many deeds, or parts from which deeds go on, have a number by now.
  int numbered() const noexcept { return nodes_ - 1; }
  int kind_count() const noexcept { return kinds_.count(); }
  /// What the kinds take, counted the same everywhere: with every stop that is thought of there may be one more.
  std::size_t kind_bytes() const noexcept { return kinds_.bytes(); }
  /// Forgets the kinds from `first` on that are not wanted, told per kind from `first` on; the others move up in their
  /// order. The new number of each, -1: forgotten. Once limits are over none is, for that takes long.
  /// Those that stay are held twice meanwhile.
  std::vector<int> keep(int first, const std::vector<char>& wanted, Limits& limits);

 private:
  template <class Make>
  DeedList made(int what, const Lane& lane, int first, int row, Make make);
  int number(std::span<const int> deed);
  int step(int node, int symbol);

  const Grid* grid_;
  const Wales* wales_;
  NumberTable
      steps_;  // a deed is the end of a path of numbers from node 0 on: exact, and short where deeds begin alike
  int nodes_ = 1;
  NumberTable made_;
  std::vector<DeedList> lists_;
  std::vector<int> all_;
  NumberedLists kinds_;
};

/// The deeds of works of a lane, added to those of each row.
void add_deeds(Deeds& deeds, const Lane& lane, const std::vector<Work>& works, std::vector<std::vector<int>>& at_row);

/// The least schedule with at most `most` kinds of stop. `at_row`: per row 0..R what is done there beside the works of
/// the problem's lanes. `plain`, where it is known: a plan of the same without that limit, which is solved for else.
/// When the search outgrew its memory or its work before anything was found, neither found nor proven.
Solved solve_kinds(const Problem& problem, Deeds& deeds, const std::vector<std::vector<int>>& at_row, int most,
                   const PlanOptions& options, Limits& limits, const Plan* plain = nullptr);

}  // namespace latchwork::inline v0::planning
