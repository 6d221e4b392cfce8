#pragma once

#include <optional>
#include <vector>

#include "latchwork/schematic.hpp"

namespace latchwork::inline v0::schematics {

/// Rows of one side of a piece whose edge lies at one place.
struct EdgeRun {
  double x_mm = 0;
  double low_mm = 0;
  double high_mm = 0;
  int edge = 0;  ///< columns from the left
  int rows = 1;
  bool shifted = false;  ///< its first row is in a band whose columns lie elsewhere than those of the row below
};

/// One side of a piece as it is drawn, from the bottom up.
struct DrawnEdge {
  std::vector<OutlinePoint> corners;
  /// Where the first stitches leave or join, and the last, if the edge is drawn upright below the one and above the
  /// other; of an edge that is drawn sloping from its very end nothing is to be told.
  std::optional<double> first_shaping_mm;
  std::optional<double> last_shaping_mm;
  bool shaped = false;  ///< stitches leave or join somewhere
};

/// The edge as a knitter means it. Stitches that leave, or join, one at a time make a slope, and so do several at once
/// that follow each other every row or two, none more than twice the one before or after: it is drawn from where it
/// begins to where it ends, in straight lines through its steps, a corner only where one line does not pass all of
/// them. A slope begins at its first step where the edge below stands upright for longer than the slope's first
/// interval, and else at the end of the rows below; its upper end likewise. Rows between two steps that are more than
/// both intervals beside them together stand upright, and so do more than two beside several at once. All else are
/// steps. The edge is at its own place at each of `fixed_mm`, heights that rise. No runs: no corners. O(n log n), n^2
/// where every line's worst step is at its end.
DrawnEdge drawn_edge(const std::vector<EdgeRun>& runs, const std::vector<double>& fixed_mm);

/// The same with every step as a step.
std::vector<OutlinePoint> stepped_edge(const std::vector<EdgeRun>& runs);

}  // namespace latchwork::inline v0::schematics
