#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "latchwork/cell.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::inline v0::writing {

/// Needles as places in a row without the gap where a needle 0 would be.
int place_of(int needle);

/// "L5-L3, R2": neighbours folded into ranges. Needles from the operator's left to right.
std::string needle_ranges(std::span<const int> needles);

/// "R12-R17": `count` neighbours from `first` to the operator's right.
std::string needle_run(int first, int count);

/// Rungs from the lowest: "2 x (t, p), k", "4 p, k". Written out again they give the same rungs.
std::string rung_words(std::span<const Cell> rungs);

/// "RC 012".
std::string counter(int row);

/// "COR" or "COL".
const char* carriage(bool right);

/// How a crossing is made, wherever on the bed it stands: places are steps from the leftmost needle of its block.
struct CrossingWay {
  Crossing shape;                    ///< row and column 1 and 0
  std::vector<GroupReturn> returns;  ///< from_needle, to_needle: steps, from 0
  bool ease = false;
  friend bool operator==(const CrossingWay&, const CrossingWay&) = default;
};

/// The leftmost needle of a crossing's block, operator's view.
int block_needle(const Plan& plan, const Crossing& crossing);
CrossingWay way_of(const Plan& plan, const CrossingStep& step);
/// "3/3 right cross", "2/1/2 left cross, centre behind on the RS".
std::string crossing_title(const Crossing& crossing);
/// "lift the left 3 on a 3-prong tool and the right 3 on another; put back first the right 3 on the left 3 needles,
/// ..."
std::string way_words(const CrossingWay& way);
/// What of that is not at hand, where two of each of these tools are: " Not at hand: 4 of the 1-prong tools."; empty
/// where all is.
std::string missing_tools_words(const CrossingWay& way, std::span<const int> at_hand);

}  // namespace latchwork::inline v0::writing
