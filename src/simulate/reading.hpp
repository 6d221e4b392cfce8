#pragma once

#include <cstdint>
#include <functional>
#include <span>
#include <vector>

#include "cloth.hpp"
#include "latchwork/cell.hpp"
#include "latchwork/crossing.hpp"
#include "latchwork/simulate.hpp"

namespace latchwork::inline v0::knitting {

/// Stands for a cell that no cell describes; its fault has the same place. Never leaves this folder.
inline constexpr Cell unreadable = static_cast<Cell>(255);

/// A cloth as cells and crossings, as far as they describe it.
struct Reading {
  std::vector<Cell> cells;          ///< row by row from row 1
  std::vector<Crossing> crossings;  ///< by row, then column; a bare centre reads as `between`
  std::vector<Fault> faults;        ///< by row, then column; move -1
};

/// Reads rows 1..rows of a cloth that hangs on `on_needles` (a slot a column, or no_slot) and was bound off at
/// `endings`. `tick` is called before each row. Linear in slots and passings, but for sorting a row's passings.
Reading read(const Cloth& cloth, int rows, std::span<const std::int32_t> on_needles, std::span<const Ending> endings,
             const std::function<void()>& tick);

/// True when the whole centre of a crossing is bare in its row: where it lies cannot be told then.
bool bare_centre(const Crossing& crossing, std::span<const Cell> cells, int columns);

}  // namespace latchwork::inline v0::knitting
