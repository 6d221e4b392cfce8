#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "latchwork/crossing.hpp"
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
  std::string field;  ///< of the GroupReturn: "stitches", "from_needle", "to_needle", "prongs", "prongs[1]"
  std::string message;
};

/// Which group is put back where, against the crossing that the plan names. A group that stays on its needles moves
/// nothing, so that no fabric would show it.
std::optional<Mislabel> mislabelled_group(const Plan& plan, const Crossing& crossing, const GroupReturn& group);

/// The tools that lift a group: 1 to 20 prongs each, enough for its stitches together; none where it is not lifted.
std::optional<Mislabel> mislabelled_tools(const GroupReturn& group);

}  // namespace latchwork::inline v0::labels
