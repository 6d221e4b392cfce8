#include "brief/sheets.hpp"

#include <algorithm>

#include "chart/sheet.hpp"
#include "chart/view.hpp"

namespace latchwork::inline v0::report {
namespace {

using drawing::DrawnChart;
using drawing::View;

constexpr double row_units = 16;  ///< of the SVG
constexpr int fewest_rows = 20;   ///< a sheet of fewer shows nothing

/// One side of a panel.
struct Chart {
  View view;
  const ChartOptions& options;

  DrawnChart rows(int first, int last) const { return drawn_chart(view, sheet_of(view, first, last), options); }
  std::vector<DrawnChart> sheets(int each) const {
    std::vector<DrawnChart> all;
    const int last = view.grid.rows();
    for (int first = 1; first <= last; first += each) all.push_back(rows(first, std::min(last, first + each - 1)));
    return all;
  }
};

/// How high a picture may be, so that it fits and its rows are high enough.
double highest(const DrawnChart& chart, const Paper& paper) {
  return std::max(row_units / least_row_mm, chart.width / paper.width_mm) * paper.height_mm;
}

/// Rows to a sheet that a chart's sheets all fit with, not above `most`.
int fitting_rows(const Chart& chart, const Paper& paper, int most) {
  int each = most;
  while (each > fewest_rows) {
    double fits = 1;  // so much of the highest sheet
    for (const DrawnChart& sheet : chart.sheets(each)) fits = std::min(fits, highest(sheet, paper) / sheet.height);
    if (fits >= 1) break;
    // What stands round the cells may be as high on a lower sheet: the share is too great by a little, if at all.
    each = std::max(fewest_rows, std::min(each - 1, static_cast<int>(fits * each)));
  }
  return each;
}

}  // namespace

BothCharts chart_sheets(const Panel& panel, const ChartOptions& operator_view, const ChartOptions& right_side) {
  const Chart back{.view = drawing::view_of(panel, operator_view), .options = operator_view};
  const Chart front{.view = drawing::view_of(panel, right_side), .options = right_side};
  const int rows = panel.grid().rows();
  const DrawnChart low = back.rows(1, std::min(rows, fewest_rows));
  const bool wide = row_units * upright.width_mm / low.width < least_upright_mm;
  const Paper& paper = wide ? across : upright;
  // No more than would fit without a word: then nothing much is drawn in vain.
  const int most = static_cast<int>(std::min<double>(rows, highest(low, paper) / row_units));
  int each = fitting_rows(back, paper, std::max(most, 1));
  each = fitting_rows(front, paper, each);
  // As many rows to each of so many sheets; the carriage begins all of them on the same side.
  if (each < rows) {
    const int count = (rows + each - 1) / each;
    const int even = (rows + count - 1) / count;
    each = even + even % 2 <= each ? even + even % 2 : std::max(each - each % 2, 1);
  }
  return {.operator_view = {.sheets = back.sheets(each), .wide = wide},
          .right_side = {.sheets = front.sheets(each), .wide = wide}};
}

}  // namespace latchwork::inline v0::report
