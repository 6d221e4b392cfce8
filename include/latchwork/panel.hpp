#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/strip.hpp"

namespace latchwork::inline v0 {

/// One strip's place in a band.
struct StripSpan {
  std::string name;
  std::string texture;
  int column = 0;  ///< first column, from the left on the RS
  int columns = 1;
  int repeat_rows = 1;  ///< the strip's vertical repeat in rows
  friend bool operator==(const StripSpan&, const StripSpan&) = default;
};

/// A run of rows in which the strips stand side by side.
struct Band {
  int row = 1;  ///< first row
  int rows = 1;
  std::vector<StripSpan> strips;  ///< from the left on the RS, covering every column once
  friend bool operator==(const Band&, const Band&) = default;
};

/// What is knitted: a grid that ends, and which texture measures which part of it. Bands cover the rows from row 1 up.
/// Const calls may run at once on one object; any other call needs it alone.
class LATCHWORK_API Panel {
 public:
  /// A panel of one band and one strip. @throws Error bad_encoding (field name, strip.name, strip.texture) for text
  /// that is not UTF-8; bad_value for a NUL in it, for C would tell it only up to there.
  Panel(std::string name, const Strip& strip);
  /// @throws Error size_mismatch (row, column) when the bands do not cover the grid exactly; bad_argument (field rows,
  /// columns, repeat_rows) below 1; bad_encoding (field name, bands[0].strips[2].texture) for text that is not UTF-8,
  /// bad_value for a NUL in it.
  Panel(std::string name, Grid grid, std::vector<Band> bands);

  const std::string& name() const noexcept { return name_; }
  const Grid& grid() const noexcept { return grid_; }
  std::span<const Band> bands() const noexcept { return bands_; }
  /// The mirror axis in half columns from the left edge (W when it is the panel's middle); nothing when none was named.
  std::optional<int> axis_half_columns() const noexcept { return axis_; }
  /// @throws Error bad_argument (axis_half_columns) outside 1..2W-1.
  void set_axis_half_columns(std::optional<int> half_columns);

  /// This panel on top of `below`; the name is this panel's, the axis kept if both have the same.
  /// @throws Error as Grid::above().
  [[nodiscard]] Panel above(const Panel& below) const;
  /// Reflected left to right, strips and axis too; lean words in the strips' names are exchanged.
  [[nodiscard]] Panel mirrored() const;

  friend bool operator==(const Panel&, const Panel&) = default;

 private:
  std::string name_;
  Grid grid_;
  std::vector<Band> bands_;
  std::optional<int> axis_;
};

/// What build_panel() builds: edge + left half + centre + mirrored half + edge. Every field has its default, so that
/// designated initialisers may leave out what is not wanted without a warning.
struct PanelParts {
  std::string name{};
  int rows = 1;                   ///< every strip is filled up to this height
  std::optional<Strip> edge{};    ///< at the left; mirrored at the right
  std::vector<Strip> left{};      ///< from the left edge towards the middle
  std::optional<Strip> centre{};  ///< stands once in the middle
  /// Without a centre: about the line after `left`, or about its last stitch, which both halves share, so that its
  /// strip of n columns becomes one of 2n - 1. With a centre its middle is the axis and this is not looked at.
  Axis axis = Axis::line;
};

/// Builds a mirrored panel in one call: one band, its axis in the middle. The centre stands as it is, mirror image of
/// itself or not. A panel that ends inside a strip's repeat is cut at the top.
/// @throws Error bad_argument (field rows; parts, when there is nothing; axis); crossing_cut, when the shared stitch is
/// in a crossing; crossing_over_none, as Strip::filled_up(); too_large; bad_encoding, as Panel::Panel().
LATCHWORK_API Panel build_panel(const PanelParts& parts);

/// Strips side by side from the left on the RS, each filled up to `rows`. @throws Error bad_argument (field rows below
/// 1; strips, when there is none); crossing_over_none, as Strip::filled_up(); too_large; bad_encoding, as
/// Panel::Panel().
LATCHWORK_API Panel join_strips(std::string name, int rows, std::span<const Strip> strips);

}  // namespace latchwork::inline v0
