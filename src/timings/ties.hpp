#pragma once

#include <cstddef>
#include <vector>

#include "timings/basis.hpp"

namespace latchwork::inline v0::timing {

/// Which columns cannot be told apart.
struct Ties {
  std::vector<std::size_t> group;  ///< of each column: the lowest column that it is tied with; itself when it is free
  std::vector<char> tied;          ///< whether it is tied with any other
  std::vector<Column> exchanges;   ///< changes of the columns' weights that change no sum; a basis of all that do
};

/// Columns are tied when one is a weighted sum of others, to rank_tolerance; then so are all in that sum, and all in
/// sums that share a column. (These are the connected components of the columns' matroid, so it does not matter from
/// which columns the sums are told.)
Ties ties_of(const std::vector<Column>& columns);

/// Of all weights, each 0 or more, that make the same sum as `weights`: those nearest to `wanted`, each change counted
/// over wanted[i] or 1, whichever is more. By algorithm LDP of Lawson and Hanson, 1974, chapter 23, section 4.
void settle(const Ties& ties, const Column& wanted, Column& weights);

}  // namespace latchwork::inline v0::timing
