#pragma once

#include <span>
#include <vector>

namespace latchwork::inline v0 {

inline constexpr int most_prongs = 20;  ///< of one tool

/// How the groups of one crossing, lifted all at once, are shared out among pronged tools.
struct ToolSharing {
  std::vector<std::vector<int>> prongs;  ///< a group each: its tools, widest first
  bool at_hand = true;  ///< false: two of each tool are not enough, and the sharing asks for more of the widest, or for
                        ///< a tool that is not there
};

/// The fewest tools that carry each group exactly, two of each size at hand; where none do, the fewest with the fewest
/// prongs left bare. Ties: wider tools first, for the earlier group first. A group of 0 gets none.
ToolSharing share_tools(std::span<const int> groups, std::span<const int> prongs);

}  // namespace latchwork::inline v0
