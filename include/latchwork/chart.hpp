#pragma once

#include <cstdint>
#include <string>

#include "latchwork/export.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::inline v0 {

/// Which side a picture shows: the right side, or the wrong side as the operator sees it on the bed (columns mirrored,
/// knit and purl as they look from there, needle names under the columns).
enum class Side : std::uint8_t { right_side = 0, operator_view = 1 };

/// Which loops an SVG chart leaves without a mark, as they look from the side shown: an upright stroke marks a face
/// loop and a dash a back loop, where they are marked. The key and a line under the title say which.
enum class Blank : std::uint8_t {
  commoner = 0,  ///< those the panel has more of from this side, knit when equal: the picture is the lightest
  knit = 1,
  purl = 2
};

struct ChartOptions {
  Side side = Side::right_side;
  const Plan* plan = nullptr;        ///< marks its stops; must outlive the call
  const Machine* machine = nullptr;  ///< needle names in the operator's view; the standard machine when absent
  /// Each above 0, to 1000, and 0.2 to 5 times as wide as high; only the proportion counts: plain knit, R = 1.3
  /// (Munden 1959, from memory).
  double stitch_width_mm = 1.3;
  double stitch_height_mm = 1.0;
  Blank blank = Blank::commoner;  ///< of chart_svg(); a chart in text marks every loop
  /// The rows shown, a sheet of a panel that is too high for one: both counted from 1, last_row 0 is the panel's last.
  /// A crossing stands on the sheet of the row above it, one after the panel's last row on that row's; the stop below
  /// the first row is marked on either sheet.
  int first_row = 1;
  int last_row = 0;
  /// The columns shown, a sheet of a panel that is too wide for one: the first, counted from 0 from the left on the RS
  /// from whichever side the chart is drawn, and how many; columns 0 is all from there on. A crossing that reaches past
  /// them is not drawn, its cells are grey: cut where there is none, or let two sheets overlap.
  int first_column = 0;
  int columns = 0;
};

/// The chart as SVG 1.1, black on white, nothing told by colour alone: the symbols of DEVELOPERS.md, "Constants",
/// crossings as slanted bands (the outer group behind is shaded), row numbers, column or needle numbers, repeat lines,
/// centre line, the middle of the bed, stops, strips by capital letters (a schematic's measures have small ones, the
/// crossings of instructions "X1", "X2"), a key of the symbols used, and a title that says which side and which
/// rows are shown. Linear in cells.
/// @throws Error bad_argument (field; "stops[1].row" for a plan whose stops do not rise within its rows); size_mismatch
/// (plan of another size); bad_encoding, when the panel's or a strip's name is not UTF-8.
LATCHWORK_API std::string chart_svg(const Panel& panel, const ChartOptions& options = {});

/// The same for a terminal, in UTF-8. @throws as chart_svg().
LATCHWORK_API std::string chart_text(const Panel& panel, const ChartOptions& options = {});

}  // namespace latchwork::inline v0
