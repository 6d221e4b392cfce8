#pragma once

#include <string>
#include <vector>

#include "latchwork/chart.hpp"

namespace latchwork::inline v0::drawing {

/// A chart and what its picture measures, in units of the SVG: a cell is 16 high.
struct DrawnChart {
  std::string svg;
  double width = 0;
  double height = 0;
};

/// What a chart may take of a sheet of paper.
struct Paper {
  double width_mm = 186;
  double height_mm = 250;
  double row_mm = 1.4;  ///< a row is at least so high, or as high as the width allows
};

/// The chart on as few sheets as it takes, the lowest rows first, each with title and key; the rows that the options
/// show are not looked at. Linear in cells. @throws Error as chart_svg().
std::vector<DrawnChart> drawn_sheets(const Panel& panel, const ChartOptions& options, const Paper& paper);

}  // namespace latchwork::inline v0::drawing
