#pragma once

#include <string>

#include "latchwork/chart.hpp"

namespace latchwork::inline v0::drawing {

/// A chart and what its picture measures, in units of the SVG: a cell is 16 high.
struct DrawnChart {
  std::string svg;
  double width = 0;
  double height = 0;
};

/// @throws Error as chart_svg().
DrawnChart drawn_chart(const Panel& panel, const ChartOptions& options);

}  // namespace latchwork::inline v0::drawing
