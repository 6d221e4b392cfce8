#pragma once

#include <cstdint>
#include <string>

#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

/// Lean, on the right side (RS), of the outer group that passes in front. The values are in files and in the C ABI.
enum class Lean : std::uint8_t { left = 0, right = 1 };

/// Where the centre group of a crossing lies, from the RS: in front of both outer groups, between them, or behind both.
enum class Centre : std::uint8_t { front = 0, between = 1, behind = 2 };

/// Two neighbouring groups of stitches that change places between two rows; a centre group may stay between them.
/// In a right cross the left group passes in front and travels right (n/m RC has left = n); in a left cross the right
/// group passes in front (n/m LC has right = n): the Craft Yarn Council's terms.
struct Crossing {
  int row = 1;                     ///< crossed after this row is knitted: 1..R; after R it sits on a tile's seam
  int column = 0;                  ///< leftmost stitch: 0..W-1, from the left on the RS
  int left = 1;                    ///< stitches in the left group, 1 or more
  int centre = 0;                  ///< stitches in the centre group, 0 or more
  int right = 1;                   ///< stitches in the right group, 1 or more
  Lean lean = Lean::right;         ///< lean on the RS of the front outer group
  Centre place = Centre::between;  ///< where the centre lies; `between` when there is no centre

  /// Stitches in all: left + centre + right. The groups have up to Grid::max_side stitches each, here and below.
  int width() const noexcept { return left + centre + right; }
  /// Longest sideways travel in stitches: max(left, right) + centre.
  int travel() const noexcept { return (left > right ? left : right) + centre; }
  friend bool operator==(const Crossing&, const Crossing&) = default;
};

/// The trade's name: "3/3 RC", "2/1 LC"; with a centre "2/1/2 RC, centre behind".
LATCHWORK_API std::string crossing_name(const Crossing& crossing);

}  // namespace latchwork::inline v0
