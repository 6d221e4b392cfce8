#pragma once

#include <string>

#include "latchwork/export.hpp"
#include "latchwork/grid.hpp"

namespace latchwork::inline v0 {

/// A grid, the name people call it by, and the texture whose gauge measures it. A value; all calls are const.
/// Mirroring and repeating keep the texture: the cloth measures the same.
struct LATCHWORK_API Strip {
  std::string name;     ///< "rope 3/3 RC every 8"
  std::string texture;  ///< key into a swatch's gauges: "rope 3/3 every 8"
  Grid grid;            ///< one vertical repeat, as seen on the RS

  [[nodiscard]] Strip mirrored() const;                  ///< name keeps, lean words in it are exchanged (RC <-> LC)
  [[nodiscard]] Strip repeated_across(int times) const;  ///< @throws Error bad_argument (times) below 1; too_large
  [[nodiscard]] Strip repeated_up(int times) const;      ///< @throws as repeated_across()
  /// Repeated upward and cut at exactly `rows` rows, row 1 at the bottom. @throws Error bad_argument (rows);
  /// too_large; crossing_over_none, as Grid::sliced().
  [[nodiscard]] Strip filled_up(int rows) const;
  friend bool operator==(const Strip&, const Strip&) = default;
};

}  // namespace latchwork::inline v0
