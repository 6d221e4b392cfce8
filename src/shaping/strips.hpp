#pragma once

#include <string_view>
#include <vector>

#include "gauge/gauges.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/size.hpp"

namespace latchwork::inline v0::shaping {

/// Where the columns and rows of a band lie, in mm.
struct BandLay {
  std::vector<double> column_mm;  ///< W + 1: from the band's left edge to the left edge of each column, and its width
  double bottom_mm = 0;           ///< of its first row, from the cast-on
  double height_mm = 0;           ///< its width-weighted mean height between the seams, as size() has it
};

/// Bottom band first; those wholly in a seam have no height. @throws Error no_gauge (field = texture).
std::vector<BandLay> lay_of(const Panel& panel, const Gauges& gauges, const SizeOptions& options);

}  // namespace latchwork::inline v0::shaping
