#pragma once

#include <vector>

#include "chart/drawn.hpp"

namespace latchwork::inline v0::report {

/// A chart cut into the sheets of paper that it takes.
struct ChartSheets {
  std::vector<drawing::DrawnChart> sheets;  ///< the lowest rows first, each with its own title and key
  bool wide = false;                        ///< on paper laid across
};

/// What a chart may take of A4 (ISO 216), less the page's margins and a heading.
struct Paper {
  double width_mm = 186;
  double height_mm = 250;
};
inline constexpr Paper upright{};
inline constexpr Paper across{.width_mm = 273, .height_mm = 163};
inline constexpr double least_row_mm = 2;        ///< of a chart's row, or as much as the paper's width allows
inline constexpr double least_upright_mm = 1.4;  ///< where the width allows less, paper is laid across

/// Both of a panel's charts, cut at the same rows; on paper laid across where its width wants rows lower than
/// least_upright_mm. Linear in cells. @throws Error as chart_svg().
struct BothCharts {
  ChartSheets operator_view;
  ChartSheets right_side;
};
BothCharts chart_sheets(const Panel& panel, const ChartOptions& operator_view, const ChartOptions& right_side);

}  // namespace latchwork::inline v0::report
