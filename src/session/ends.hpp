#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace latchwork::inline v0::sitting {

/// What the choice of ends looks at, for each row from the one before the first session on: the first is where it
/// begins, the last is the panel's last.
struct Rows {
  std::vector<std::int64_t> spent;  ///< work up to and with the row, its stop too; 0 at the first, and never falling
  std::vector<char> stop;           ///< there is a stop after it that leaves nothing in hold
  std::vector<char> clear;          ///< it leaves nothing in hold
};

/// Where sessions of this length end, as indices of rows, by the rule of sessions(). None for one row. Linear in rows,
/// times the bits of the longest session.
std::vector<std::size_t> even_ends(Rows rows, std::int64_t length_ms);

}  // namespace latchwork::inline v0::sitting
