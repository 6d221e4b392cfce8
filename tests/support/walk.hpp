#pragma once

#include <algorithm>
#include <vector>

#include "latchwork/grid.hpp"
#include "latchwork/wale.hpp"

namespace latchwork_test {

/// Where the stitches of row 1 are `repeats` repeats of the tile higher up, followed by the library along their wales:
/// result[x] is the column in row 1 of the wale that then stands in column x.
inline std::vector<int> carried_up(const latchwork::Grid& tile, int repeats) {
  const latchwork::Grid tall = tile.repeated_up(repeats + 1);
  const latchwork::Wales wales(tall);
  std::vector<int> out;
  for (int x = 0; x < tile.columns(); ++x) {
    const latchwork::Wale& wale = wales.all()[static_cast<std::size_t>(wales.at(repeats * tile.rows() + 1, x))];
    out.push_back(wale.column_at(1));
  }
  return out;
}

/// Repeats after which every wale is back in its own column; 0 when that takes more than `most`.
inline int home_after(const latchwork::Grid& tile, int most) {
  for (int repeats = 1; repeats <= most; ++repeats) {
    const std::vector<int> at = carried_up(tile, repeats);
    if (std::is_sorted(at.begin(), at.end())) return repeats;
  }
  return 0;
}

/// Pairs that stand the other way round.
inline int inversions(const std::vector<int>& at) {
  int out = 0;
  for (std::size_t i = 0; i < at.size(); ++i) {
    for (std::size_t k = i + 1; k < at.size(); ++k) out += at[i] > at[k] ? 1 : 0;
  }
  return out;
}

/// The tile moved right by `shift` columns, 0..W-1, wrapping over its side.
inline latchwork::Grid rolled_across(const latchwork::Grid& tile, int shift) {
  if (shift == 0) return tile;
  return tile.repeated_across(2).sliced(1, tile.columns() - shift, tile.rows(), tile.columns());
}

}  // namespace latchwork_test
