#pragma once

#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/panel.hpp"

namespace latchwork::inline v0 {

/// A part of a panel that is knitted by itself and sewn to its neighbours.
struct SplitPart {
  int column = 0;      ///< the panel's column that it begins with, from the left on the RS
  int columns = 1;     ///< of the panel
  int seam_left = 0;   ///< stitches more at its left edge, which the seam takes in; 0..max_seam_stitches
  int seam_right = 0;  ///< likewise
  friend bool operator==(const SplitPart&, const SplitPart&) = default;
};

inline constexpr int max_seam_stitches = 10;  ///< that a seam may take in of an edge: our rule

/// Parts a finished panel that is wider than the bed, from the left on the RS. Between two parts the panel is cut
/// between two columns, and each gets `seam_stitches` columns of knit at that edge, so that sewn together they are as
/// wide as the panel: a seam takes a stitch of each edge (common practice, no source). They are whole: half a stitch of
/// each edge has no column that could be added at both, and FitRequest::seam_stitches, which may be half, makes panels
/// that are narrower when sewn. A panel that the bed has needles for is one part, as it is.
///
/// It is never cut inside a strip, since that is a motif, but where all the strip's cells in that band and inside the
/// panel's shape are knit; nor through a crossing; nor between two columns of which one has a stitch in a row and the
/// other has none. Where the panel's grid is its own mirror image, so are the cuts, if they can be with the fewest
/// parts or one more (a motif in the middle takes an odd number): then the halves mirror each other. Else it is parted
/// in the fewest. Of all ways that are left it is one with the widest part (with its seams) as narrow as can be; and of
/// those each part from the left, up to the middle of a mirrored one, as wide as can be. Linear in cells, times the
/// bits of the bed.
/// @throws Error bad_argument (field "seam_stitches", also for a fraction; "machine.needles"); too_large (field
/// "panel", with the column of the part that there is no end for: all lines to cut at are further than the bed has
/// needles).
LATCHWORK_API std::vector<SplitPart> split(const Panel& panel, const Machine& machine = {}, double seam_stitches = 1);

/// One part of a panel as a panel, named after its columns: also one that is cut where you choose, inside a strip too.
/// Seam stitches are knit in each row that has a stitch beside them; for a gauge they count as the strip beside them,
/// and size() with `seam_left` and `seam_right` measures what is left of the part when it is sewn.
/// @throws Error bad_argument (field "part.column", "part.columns", "part.seam_left", "part.seam_right");
/// crossing_cut (row, column), as Grid::sliced(); too_large.
LATCHWORK_API Panel split_part(const Panel& panel, const SplitPart& part);

}  // namespace latchwork::inline v0
