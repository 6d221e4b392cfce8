#pragma once

#include <optional>
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

/// Where a chart's key stands: below the cells, on another sheet, or here without the cells.
enum class KeyPlace { below, apart, alone };

/// Of the options only the stitch's proportion is looked at. `font`: how large the words round the cells are, in units
/// of the SVG, where the scale it will be printed at is known; else as suits a picture that fills a page.
DrawnChart drawn_chart(const View& view, const Sheet& sheet, const ChartOptions& options,
                       std::optional<double> font = std::nullopt, KeyPlace key = KeyPlace::below);

/// What the words left and right of the cells take of the width, counted in the size of their font: at least as much as
/// those of any sheet with some of these rows.
double words_beside(const Sheet& sheet);

/// How many times as wide as high a cell is drawn.
double cell_proportion(const ChartOptions& options);

}  // namespace latchwork::inline v0::drawing
