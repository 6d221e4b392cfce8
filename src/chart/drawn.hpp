#pragma once

#include <string>
#include <vector>

#include "chart/sheet.hpp"
#include "chart/view.hpp"
#include "latchwork/chart.hpp"

namespace latchwork::inline v0::drawing {

/// A picture and what it measures, in units of the SVG: a cell is 16 high.
struct DrawnChart {
  std::string svg;
  double width = 0;
  double height = 0;
  double cells_left = 0;   ///< where its cells begin
  double cells_width = 0;  ///< 0 where it has none
};

/// A whole chart, as suits a picture that fills a page: heading, cells with what stands round them, key. Of the options
/// only the stitch's proportion is looked at, here and below.
DrawnChart drawn_chart(const View& view, const Sheet& sheet, const ChartOptions& options);

/// How large words are drawn, in units of the SVG, where the scale it will be shown at is known.
struct Words {
  double font = 10;
};

/// Only the cells with numbers, letters and stops round them, for a page that has heading and key in its own type.
DrawnChart drawn_cells(const View& view, const Sheet& sheet, const ChartOptions& options, Words words);

/// What of that picture tells one row from another, row numbers and stops, in one narrow picture as high as it: it
/// stays in sight left of cells that scroll.
DrawnChart drawn_rows(const View& view, const Sheet& sheet, const ChartOptions& options, Words words);

/// What is said of a sheet below its title.
std::vector<std::string> notes_of(const View& view, const Sheet& sheet);

/// An entry of a key; without a symbol its picture is empty.
struct KeyPicture {
  DrawnChart symbol{};
  std::string words{};
};
std::vector<KeyPicture> key_pictures(const View& view, const Sheet& sheet, const ChartOptions& options, Words words);

/// What the words left and right of the cells take of the width, counted in the size of their font: at least as much as
/// those of any sheet with some of these rows.
double words_beside(const Sheet& sheet);

/// How many times as wide as high a cell is drawn.
double cell_proportion(const ChartOptions& options);

}  // namespace latchwork::inline v0::drawing
