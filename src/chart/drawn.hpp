#pragma once

#include <string>
#include <vector>

#include "chart/sheet.hpp"
#include "chart/view.hpp"
#include "latchwork/chart.hpp"

namespace latchwork::inline v0::drawing {

/// A chart and what its picture measures, in units of the SVG: a cell is 16 high.
struct DrawnChart {
  std::string svg;
  double width = 0;
  double height = 0;
};

/// Of the options only the stitch's proportion is looked at.
DrawnChart drawn_chart(const View& view, const Sheet& sheet, const ChartOptions& options);

}  // namespace latchwork::inline v0::drawing
