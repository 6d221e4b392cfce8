#include "brief/sheets.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <utility>

#include "chart/sheet.hpp"
#include "chart/view.hpp"

namespace latchwork::inline v0::report {
namespace {

using drawing::View;

constexpr double row_units = 16;  ///< of the SVG

/// One side of a panel.
struct Chart {
  View view;
  const ChartOptions& options;

  /// The highest row that the width of the paper allows.
  double most_row_mm(const Paper& paper) const {
    const double beside = drawing::words_beside(drawing::sheet_of(view, 1, view.grid.rows()));
    return (paper.width_mm - beside * font_mm) / (view.grid.columns() * drawing::cell_proportion(options));
  }
};

/// The last row of each of so many sheets: pairs of rows, as evenly as integers allow.
std::vector<int> even_cut(int rows, int sheets) {
  std::vector<int> ends;
  ends.reserve(static_cast<std::size_t>(sheets));
  for (std::int64_t i = 1; i < sheets; ++i) {
    const std::int64_t pairs = (rows * i + sheets) / (2 * std::int64_t{sheets});
    ends.push_back(static_cast<int>(2 * pairs));
  }
  ends.push_back(rows);
  return ends;
}

/// To a hundredth of a millimetre, so that no rounding comes out twice the size.
double floored(double row_mm) {
  return std::max(std::floor(row_mm * 100) / 100, 0.01);
}

class Cutting {
 public:
  Cutting(const Panel& panel, const ChartOptions& back, const ChartOptions& front)
      : back_{.view = drawing::view_of(panel, back), .options = back},
        front_{.view = drawing::view_of(panel, front), .options = front},
        rows_(panel.grid().rows()) {}

  BothCharts made() {
    wide_ = widest(upright) < least_upright_mm;
    paper_ = wide_ ? across : upright;
    const double most = std::min(widest(paper_), report::most_row_mm);
    const double fair = floored(std::min(most, fair_row_mm));
    Try best = fewest_sheets(fair);
    // What room is left goes to the rows.
    for (double wanted = floored(std::min(most, best.row_mm)); wanted > fair * 1.02;) {
      Try larger = tried(best.sheets, wanted);
      if (larger.fits) return std::move(larger.charts);
      wanted = floored(std::min(larger.row_mm, wanted * 0.95));
    }
    return std::move(best.charts);
  }

 private:
  struct Try {
    BothCharts charts;  ///< of a try that does not fit, as far as it was drawn
    int sheets = 1;
    double row_mm = 0;  ///< the row that would fit the paper if the words stood as they are
    double rows = 0;    ///< of the sheet that did not fit, as many as would
    bool fits = true;
  };

  double widest(const Paper& paper) const { return std::min(back_.most_row_mm(paper), front_.most_row_mm(paper)); }

  Try fewest_sheets(double row_mm) const {
    const int most = std::max(1, rows_ / fewest_rows);
    int sheets = std::clamp(static_cast<int>(std::ceil(rows_ * row_mm / paper_.height_mm)), 1, most);
    while (sheets < most) {
      Try next = tried(sheets, row_mm);
      if (next.fits) return next;
      const double wanted = next.rows > 1 ? std::min<double>(std::ceil(rows_ / next.rows), most) : most;
      // Half the way: what stands round fewer rows may be less high.
      sheets += std::max(1, (static_cast<int>(wanted) - sheets) / 2);
    }
    return tried(most, row_mm, true);
  }

  /// Draws all, or until a sheet does not fit.
  Try tried(int sheets, double row_mm, bool whole = false) const {
    Try out{.charts = {}, .sheets = sheets, .row_mm = std::numeric_limits<double>::max()};
    const std::vector<int> ends = even_cut(rows_, sheets);
    const double scale = row_mm / row_units;
    for (const auto& [chart, drawn] :
         {std::pair{&back_, &out.charts.operator_view}, std::pair{&front_, &out.charts.right_side}}) {
      drawn->wide = wide_;
      drawn->mm_per_unit = scale;
      int first = 1;
      for (const int last : ends) {
        drawn->sheets.push_back(drawing::drawn_chart(chart->view, drawing::sheet_of(chart->view, first, last),
                                                     chart->options, font_mm / scale));
        const double rows = last - first + 1;
        const double spare = paper_.height_mm - drawn->sheets.back().height * scale;
        out.row_mm = std::min(out.row_mm, row_mm + spare / rows);
        if (spare < 0) {
          out.fits = false;
          out.rows = rows + spare / row_mm;
          if (!whole) return out;
        }
        first = last + 1;
      }
    }
    return out;
  }

  Chart back_;
  Chart front_;
  int rows_;
  Paper paper_{};
  bool wide_ = false;
};

}  // namespace

BothCharts chart_sheets(const Panel& panel, const ChartOptions& operator_view, const ChartOptions& right_side) {
  return Cutting(panel, operator_view, right_side).made();
}

}  // namespace latchwork::inline v0::report
