#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>

#include "latchwork/crossing.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"

namespace latchwork::inline v0::rules {

/// The row above, in the tile reading: after row R comes row 1 of the next copy.
inline int row_after(int row, int rows) noexcept {
  return row == rows ? 1 : row + 1;
}

inline bool in_stack(Cell cell) noexcept {
  return cell == Cell::tuck || cell == Cell::slip;
}

inline Place place_at(int row, int column) {
  Place place;
  place.row = row;
  place.column = column;
  return place;
}

inline Place place_of_field(std::string field) {
  Place place;
  place.field = std::move(field);
  return place;
}

/// Where a cell breaks a crossing's rule, and which.
struct BrokenRule {
  ErrorCode code;  ///< crossing_over_stack or crossing_over_none
  int row;
  int column;
};

/// The first cell that breaks the crossing's rule (DEVELOPERS.md, crossings): a tuck or slip in its span in row r; a
/// `none` in its span in row r or in the row after, unless the whole centre is `none` in both. The centre's columns in
/// the row after are the ones it has moved to. The crossing must lie inside the grid. Linear in its width.
std::optional<BrokenRule> broken_rule(int rows, int columns, std::span<const Cell> cells, const Crossing& crossing);

/// The error for a broken rule, at the cell's place.
Error refusal(const BrokenRule& broken, const Crossing& crossing);

/// @throws Error as refusal(), when broken_rule() finds one.
void require_rule(int rows, int columns, std::span<const Cell> cells, const Crossing& crossing);

/// @throws Error bad_argument (field rows, columns) below 1; too_large past Grid's limits.
void require_size(std::int64_t rows, std::int64_t columns);

/// @throws Error off_grid outside rows 1..rows and columns 0..columns-1.
void require_inside(int row, int column, int rows, int columns);

/// "crossing 3/3 RC after row 12, columns 30 to 35"
std::string crossing_words(const Crossing& crossing);

}  // namespace latchwork::inline v0::rules
