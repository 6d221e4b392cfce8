#pragma once

#include <vector>

#include "chart/drawn.hpp"

namespace latchwork::inline v0::report {

/// A chart cut into the sheets of paper that it takes.
struct ChartSheets {
  std::vector<drawing::DrawnChart> sheets;  ///< the lowest rows first, each with its own title and key
  bool wide = false;                        ///< on paper laid across
  double mm_per_unit = 0;                   ///< the scale that all are printed at, so that words come out at font_mm
};

/// What a chart may take of A4 (ISO 216), less the page's margins and a heading.
struct Paper {
  double width_mm = 186;
  double height_mm = 250;
};
inline constexpr Paper upright{};
inline constexpr Paper across{.width_mm = 273, .height_mm = 163};
inline constexpr double font_mm = 2.65;          ///< of the words round a chart: 7.5 points
inline constexpr double fair_row_mm = 2.5;       ///< of a chart's row, or as much as the paper's width allows
inline constexpr double most_row_mm = 4.5;       ///< as high as rows are drawn to fill a sheet
inline constexpr double least_upright_mm = 1.4;  ///< where the width allows less, paper is laid across
inline constexpr int fewest_rows = 8;            ///< a sheet of fewer shows nothing

/// Both of a panel's charts, cut at the same rows and drawn to one scale, into the fewest sheets that show rows fairly
/// high; no sheet has two rows more than another, and the carriage begins all of them on the same side. A key that
/// takes up nearly a sheet alone may leave one higher than the paper. Linear in cells, times the tries that it takes to
/// find how many sheets: a few. @throws Error as chart_svg().
struct BothCharts {
  ChartSheets operator_view;
  ChartSheets right_side;
};
BothCharts chart_sheets(const Panel& panel, const ChartOptions& operator_view, const ChartOptions& right_side);

}  // namespace latchwork::inline v0::report
