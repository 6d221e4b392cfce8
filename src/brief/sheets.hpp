#pragma once

#include <string>
#include <vector>

#include "chart/drawn.hpp"

namespace latchwork::inline v0::report {

/// A picture of some rows and columns, and all that is said of it in words, which the page sets in its own type: words
/// break as the screen asks, and never scroll with the cells.
struct ChartSheet {
  drawing::DrawnChart cells;
  drawing::DrawnChart rows;  ///< row numbers and stops again, to be kept in sight where the cells scroll
  std::string title;
  std::vector<std::string> notes;
  std::vector<drawing::KeyPicture> key;  ///< empty where that of all sheets is apart
};

/// A chart cut into the sheets of paper that it takes.
struct ChartSheets {
  std::vector<ChartSheet> sheets;        ///< the lowest rows first, their columns from the left
  std::vector<drawing::KeyPicture> key;  ///< of all sheets, where it would take too much of one; may go over sheets
  bool wide = false;                     ///< on paper laid across
  double mm_per_unit = 0;                ///< the scale that all are printed at, so that words come out at font_mm
};

/// What a chart may take of A4 (ISO 216), less the page's margins and a heading.
struct Paper {
  double width_mm = 186;
  double height_mm = 250;
};
inline constexpr Paper upright{};
inline constexpr Paper across{.width_mm = 273, .height_mm = 163};
inline constexpr double font_mm = 2.65;            ///< of the words of a chart: 7.5 points
inline constexpr double line_mm = font_mm * 1.25;  ///< from line to line
inline constexpr double key_gap_mm = 1;            ///< between lines of a key
inline constexpr int key_columns = 2;              ///< on upright paper
inline constexpr int key_columns_across = 3;
inline constexpr double fair_row_mm = 2.5;       ///< of a chart's row, or as much as the paper's width allows
inline constexpr double most_row_mm = 4.5;       ///< as high as rows are drawn to fill a sheet
inline constexpr double least_upright_mm = 1.6;  ///< where the width allows less, paper is laid across
inline constexpr double least_cell_mm = 2;       ///< of a cell across; a panel that leaves less is cut across too
inline constexpr double most_key = 0.45;         ///< of a sheet's height; a higher key goes on sheets of its own
inline constexpr int fewest_columns = 20;        ///< a sheet of fewer shows nothing
inline constexpr int fewest_rows = 8;            ///< a sheet of fewer shows nothing

/// Both of a panel's charts, cut at the same rows and columns and drawn to one scale, into the fewest sheets that show
/// rows fairly high; no sheet has two rows more than another, and the carriage begins all of them on the same side.
/// Cuts across stand where no crossing is cut, between strips if they can; where there is no such place sheets overlap,
/// so that every crossing is whole on one of them. A key that takes up much of a sheet goes on sheets of its own.
/// Linear in cells, times the tries that it takes to find how many sheets: a few. @throws Error as chart_svg().
struct BothCharts {
  ChartSheets operator_view;
  ChartSheets right_side;
};
BothCharts chart_sheets(const Panel& panel, const ChartOptions& operator_view, const ChartOptions& right_side);

/// A chart in text; of more than most_text_columns one below the other, from the left, cut as chart_sheets() cuts
/// across.
inline constexpr int most_text_columns = 100;
std::string text_sheets(const Panel& panel, const ChartOptions& options);

}  // namespace latchwork::inline v0::report
