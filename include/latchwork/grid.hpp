#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/cell.hpp"
#include "latchwork/crossing.hpp"
#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

/// Where a mirror axis lies: on the line between two stitches, or on a stitch that both halves share.
enum class Axis : std::uint8_t { line = 0, stitch = 1 };

/// A stitch chart as seen from the right side (RS): R rows of W cells, and the crossings between rows.
///
/// Rows are numbered 1..R up from the cast-on, columns 0..W-1 from the left on the RS. One grid is read two ways: as a
/// tile, whose row R runs on into row 1 of the next copy, and as a panel, which ends. The class keeps what is true in
/// both: crossings stay inside, share no column after one row, and their spans hold no tuck or slip in row r and no
/// `none` in rows r and r+1 (after R the next row is row 1), but for a centre that is bare in both rows.
/// What is merely open at a panel's edge is told by findings(), not refused here.
/// Const calls may run at once on one object; any other call needs it alone. The size is fixed at birth.
class LATCHWORK_API Grid {
 public:
  static constexpr int max_side = 1 << 16;                          ///< most rows, and most columns
  static constexpr std::int64_t max_cells = std::int64_t{1} << 28;  ///< most cells in all

  // Make.

  /// A grid of knit stitches. @throws Error bad_argument (field rows, columns) below 1; too_large.
  Grid(int rows, int columns);

  /// A grid from rows of letters (see Cell), TOP row first, as a chart is seen, one row a line. A line that starts with
  /// `x` puts a crossing after the row written just below it: `x COLUMN LEFT/RIGHT R|L` or
  /// `x COLUMN LEFT/CENTRE/RIGHT R|L front|between|behind`. Blank lines and spaces at both ends of a
  /// line are passed over.
  /// @throws Error bad_letter (the cell's row and column; the message counts the letters of a line from 1, as in
  /// files), bad_syntax, too_large (rows, columns), size_mismatch (columns: a row of another length) and what cross()
  /// throws, all with `line`.
  static Grid from_text(std::string_view text);

  /// A grid from rows * columns cells, row 1 first. @throws Error bad_argument (rows, columns) below 1;
  /// size_mismatch; bad_value (row, column) for a number that is no cell; too_large.
  static Grid from_cells(int rows, int columns, std::span<const std::uint8_t> cells);

  // Change. On error the grid is as it was.

  /// Puts a cell at (row, column). @throws Error off_grid; bad_argument; crossing_over_stack, crossing_over_none.
  void set(int row, int column, Cell cell);

  /// Adds a crossing; without a centre its place is taken as `between`. Linear in the crossings after it, so adding
  /// them in order is quick. The centre is bare only if all of it is `none` in row r and, at the columns it moves to,
  /// in the row after. What a cell forbids is refused at that cell's place, the rest at the crossing's.
  /// @throws Error off_grid; bad_argument (left, centre, right); stitch_taken; crossing_over_stack; crossing_over_none.
  void cross(const Crossing& crossing);

  /// Takes away the crossing after `row` that starts at `column`. @throws Error off_grid when there is none.
  void uncross(int row, int column);

  /// Writes `patch` over this grid with its row 1, column 0 at (row, column), and its crossings in place of those whose
  /// span and row lie inside. @throws Error off_grid; crossing_cut, when a crossing here lies partly under the patch;
  /// crossing_over_none, when a crossing below or on top of the patch would have no stitch above it.
  void paste(const Grid& patch, int row, int column);

  // Ask.

  int rows() const noexcept { return rows_; }
  int columns() const noexcept { return columns_; }
  /// @throws Error off_grid.
  Cell at(int row, int column) const;
  /// Row by row from the cast-on, columns() cells each. Valid until the grid is assigned to or destroyed.
  std::span<const Cell> cells() const noexcept { return cells_; }
  /// By row, then column. Valid until the grid is changed.
  std::span<const Crossing> crossings() const noexcept { return crossings_; }
  /// One value for equal grids, the same on every machine and in every version of one file format: FNV-1a, 64 bits,
  /// over rows, columns, the cells from row 1 up, and each crossing's row, column, left, centre, right, lean, place;
  /// cells, lean and place one byte each, all others four, the lowest first.
  std::uint64_t hash() const noexcept;
  /// One line for people: size, cells by kind, crossings. "24 stitches x 32 rows, RS: 610 knit, 158 purl; 4 crossings"
  std::string describe() const;
  /// The letters and crossing lines that from_text() reads back to an equal grid.
  std::string to_text() const;

  // Derive. All linear in cells and crossings.

  /// Reflected left to right: knit and purl stay, every lean flips.
  [[nodiscard]] Grid mirrored() const;
  /// Reflected top to bottom: leans flip; a stack of tucks or slips and the cell that closes it (wrapping over the
  /// seam) keep their own order. @throws Error crossing_over_none, when a stack just above a crossing ends on no
  /// stitch, or one just below a bare centre.
  [[nodiscard]] Grid upside_down() const;
  /// Turned by 180 degrees in its plane: mirrored().upside_down(); leans keep. @throws as upside_down().
  [[nodiscard]] Grid half_turn() const;
  /// The same cloth seen from the other side: columns mirrored, knit and purl swapped, leans keep, centre front and
  /// behind swapped.
  [[nodiscard]] Grid turned() const;
  /// This grid and, on its right, its mirror image: 2W columns about a line, 2W-1 about a shared last stitch.
  /// @throws Error bad_argument (axis, when it is neither); crossing_cut when the shared stitch is in a crossing;
  /// too_large.
  [[nodiscard]] Grid unfolded(Axis axis) const;
  /// `times` copies side by side; copy i is moved up by i * shift rows, wrapping over the tile's seam (half-drop:
  /// shift = R/2). @throws Error bad_argument (times below 1); too_large.
  [[nodiscard]] Grid repeated_across(int times, int shift = 0) const;
  /// `times` copies upward; copy i is moved right by i * shift columns, and what leaves there comes in on the left (as
  /// bricks lie: shift = W/2). @throws Error bad_argument (times below 1); too_large; crossing_cut, when a crossing
  /// would leave in part; crossing_over_none, when a shifted copy has no stitch above one.
  [[nodiscard]] Grid repeated_up(int times, int shift = 0) const;
  /// Row y moves to y + shift, wrapping over the tile's seam. Any integer shift.
  [[nodiscard]] Grid rolled_up(int shift) const;
  /// This grid with `right` on its right. @throws Error size_mismatch (unequal rows); too_large.
  [[nodiscard]] Grid beside(const Grid& right) const;
  /// This grid on top of `below`. @throws Error size_mismatch (unequal columns); too_large; crossing_over_none, when
  /// a crossing on one's seam would have no stitch above it in the other.
  [[nodiscard]] Grid above(const Grid& below) const;
  /// Rows row..row+rows-1 and columns column..column+columns-1; a crossing belongs to the row it
  /// follows. @throws Error bad_argument (rows, columns below 1); off_grid; crossing_cut, at the crossing; and
  /// crossing_over_none, when one after the slice's last row would have no stitch in its first.
  [[nodiscard]] Grid sliced(int row, int column, int rows, int columns) const;

  friend bool operator==(const Grid&, const Grid&) = default;

 private:
  /// From parts that keep the rules already: nothing is checked again.
  Grid(int rows, int columns, std::vector<Cell> cells, std::vector<Crossing> crossings) noexcept;

  int rows_;
  int columns_;
  std::vector<Cell> cells_;
  std::vector<Crossing> crossings_;  // sorted by (row, column)
};

}  // namespace latchwork::inline v0
