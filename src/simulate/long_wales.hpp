#pragma once

#include <cstddef>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include "cloth.hpp"

namespace latchwork::inline v0::knitting {

/// Finds a wale's slot of a row. A tool goes into a loop near the needle as a rule, which is found from the top down;
/// where it goes in far below, the wale is looked through once, and then only what has come on top of it since: however
/// often the tool goes in, all of it together is linear in what was knitted and worked.
class LongWales {
 public:
  /// The first slot of the row from `top` down, or no_slot.
  std::int32_t find(Cloth& cloth, std::int32_t top, int row);
  /// A slot with `by_row` is dropped, and all of its wale down to `end`, which stays, or the wale's end.
  void drop(Cloth& cloth, std::int32_t slot, std::int32_t end);

 private:
  /// A wale from some slot down.
  struct Wale {
    int lowest = 0;                        ///< row of its first slot
    std::vector<std::int32_t> slots;       ///< from the first up
    std::vector<std::int32_t> last;        ///< per row from `lowest` on: the last in `slots` of that row, or -1
    std::vector<std::int32_t> row_before;  ///< per slot: the one before of its row, -1: as almost always, none
    void add(std::int32_t slot, int row);
    void take_off(int row);
    std::int32_t slot_of(int row) const;
  };

  std::unordered_map<std::int32_t, Wale> wales_;  // by their highest slot: looked up only
};

}  // namespace latchwork::inline v0::knitting
