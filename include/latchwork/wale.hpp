#pragma once

#include <span>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/grid.hpp"

namespace latchwork::inline v0::following {
struct Watched;
}

namespace latchwork::inline v0 {

/// A physical chain of loops, followed through crossings, in the panel reading (no seam).
struct Wale {
  int column = 0;            ///< column of its lowest cell: with `row`, its name
  int row = 1;               ///< row of its lowest cell
  std::vector<int> columns;  ///< columns[i]: its column in row `row + i`
  int last_row() const noexcept { return row + static_cast<int>(columns.size()) - 1; }
  int column_at(int r) const { return columns[static_cast<std::size_t>(r - row)]; }
  friend bool operator==(const Wale&, const Wale&) = default;
};

/// All wales of a grid, ordered by (row, column) of their lowest cell. `none` cells belong to no wale; a wale's rows
/// are one unbroken run. Linear in cells.
/// Const calls may run at once on one object; any other call needs it alone.
class LATCHWORK_API Wales {
 public:
  explicit Wales(const Grid& grid);
  std::span<const Wale> all() const noexcept { return wales_; }
  /// Index into all() of the wale at (row, column); -1 where the cell is `none`. @throws Error off_grid.
  int at(int row, int column) const;
  /// The same wales in a grid of the same size.
  friend bool operator==(const Wales&, const Wales&) = default;

 private:
  friend struct following::Watched;
  Wales(const Grid& grid, const following::Watched* watched);

  int rows_;
  int columns_;
  std::vector<Wale> wales_;
  std::vector<int> index_;
};

}  // namespace latchwork::inline v0
