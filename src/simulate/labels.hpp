#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "latchwork/crossing.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/plan.hpp"

// What a plan says of itself beside its moves, and people are told: the side of the carriage, the columns that needles
// stand for, which group of a crossing goes where and on which tools. verify() finds what is wrong in it, and words are
// refused of it.

namespace latchwork::inline v0::labels {

/// A needle's name; "0" for the number that is none.
std::string needle_words(int needle);

std::string_view group_name(GroupName group);

/// Whether the carriage is on the right after a row of 0 or more: it changes sides with every row.
bool carriage_right_at(const Plan& plan, int row);

/// Whether an RS column stands on a needle, for a plan whose leftmost needle is one.
bool stands_on(const Plan& plan, int column, int needle);

struct Mislabel {
  std::string field;  ///< "stitches", "from_needle", "to_needle", "prongs", "prongs[1]", "returns", "columns_on[3]"
  std::string message;
  int column = -1;  ///< RS column, where it is about one
};

/// The needles cast on are those of the chart's stitches in row 1, each once.
std::optional<Mislabel> miscast(const Grid& grid, const Plan& plan);

/// Which group is put back where, against the crossing that the plan names. A group that stays on its needles moves
/// nothing, so that no fabric would show it.
std::optional<Mislabel> mislabelled_group(const Plan& plan, const Crossing& crossing, const GroupReturn& group);

/// The order of a crossing's returns, against what it is called: what is put back first shows in front on the RS. Each
/// of its groups goes back once, but for a bare centre, which does not. For a crossing that lies on the grid.
std::optional<Mislabel> mislabelled_returns(const Grid& grid, const CrossingStep& step);

/// The tools that lift a group: 1 to 20 prongs each, enough for its stitches together; none where it is not lifted.
std::optional<Mislabel> mislabelled_tools(const GroupReturn& group);

/// The needles in hold as the stops of a plan go by, in rising order.
class InHold {
 public:
  void pass(const Stop& stop);
  bool any() const { return !needles_.empty(); }

  /// Of the stop just passed: a crossing whose needles the next row is to knit back from hold, while other needles stay
  /// in hold in that row. One setting of the carriage serves the whole bed, so it knits back none. The field is
  /// "crossings[1].ease", the column the crossing's.
  std::optional<Mislabel> eased_in_vain(const Stop& stop) const;

 private:
  std::set<int> needles_;
};

}  // namespace latchwork::inline v0::labels
