#pragma once

#include <cstddef>
#include <vector>

#include "gauge/gauges.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/size.hpp"

namespace latchwork::inline v0::shaping {

/// Where the columns and rows of a band lie, in mm.
struct BandLay {
  std::vector<double> column_mm;  ///< W + 1: from the band's left edge to the left edge of each column, and its width
  std::vector<double> top_mm;     ///< of each of its rows the upper end, from the lower seam, as size() has heights

  /// From the band's left edge to a place in its columns, 0..W, whole or not.
  double mm_at(double column) const;
  /// The place in its columns that lies so far in; 0 or W for what lies outside.
  double column_at(double mm) const;
};

/// Where a row lies.
struct RowLay {
  std::size_t band = 0;  ///< index of its band
  double top_mm = 0;     ///< its upper end, from the lower seam; a seam's rows have no height
};

/// Bottom band first; those wholly in a seam have no height. Strips that are cut off need a gauge where they count;
/// left out, they are as wide as their gauge, or without one take no width. @throws Error no_gauge (field = texture).
std::vector<BandLay> lay_of(const Panel& panel, const Gauges& gauges, const SizeOptions& options,
                            CutOff cut_off = CutOff::counts);

/// Row 1 first.
std::vector<RowLay> rows_of(const Panel& panel, const std::vector<BandLay>& lays);

}  // namespace latchwork::inline v0::shaping
