#pragma once

#include <optional>
#include <span>
#include <vector>

#include "latchwork/finding.hpp"
#include "latchwork/wale.hpp"

namespace latchwork::inline v0::seeking {

/// A stack of tucks and slips with the cell that closes it, or a lone purl: hand cells of one wale that can only be
/// made together.
struct HandCells {
  int low = 1;           ///< lowest row
  int high = 1;          ///< highest row: the purl's own, or the closing cell's; the wale's last row when none closes
  bool closed = true;    ///< false: a stack that reaches the wale's last row
  bool by_hold = false;  ///< all tucks under a knit, with no tuck beside them: the needle may be held instead
  bool slips = false;    ///< a slip is among them: its strand passes the needle's hook, a tuck's lies in it
  int stack() const noexcept { return closed ? high - low : high - low + 1; }
};

/// The hand cells of a wale, from the lowest. Linear in its rows.
std::vector<HandCells> hand_cells(const Grid& grid, const Wale& wale);

/// The same where its cells, from the lowest, are at hand already: put in place of what `found` had.
void find_hand_cells(const Grid& grid, const Wale& wale, std::span<const Cell> cells, std::vector<HandCells>& found);

/// After how many rows of tucks or slips a stack like this must be closed, both to be no high stack and, where it
/// cannot be made by hold, to be in reach of a ladder; one limit, so that no two findings ask for unlike things.
int most_in_stack(const HandCells& cells, const Machine& machine) noexcept;

/// Whether some batch or hold that the rules allow can make hand cells.
inline bool in_reach(const Wale& wale, const HandCells& cells, const Machine& machine) noexcept {
  const bool loop = cells.low > wale.row || machine.cast_on_loops;
  return cells.closed && loop && (cells.high - cells.low < machine.max_ladder || cells.by_hold);
}

/// Why hand cells cannot be made by any batch or hold that the rules allow: open_stack, no_held_loop or out_of_reach;
/// nothing when they can.
std::optional<Finding> out_of_reach(const Wale& wale, const HandCells& cells, const Machine& machine);

}  // namespace latchwork::inline v0::seeking
