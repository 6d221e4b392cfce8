#pragma once

#include <cstdint>
#include <optional>

#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

/// What is seen on the right side (RS) at one row and column. The values are in files and in the C ABI.
///
/// | value | cell | letter | on the RS                                                              |
/// | ----- | ---- | ------ | ---------------------------------------------------------------------- |
/// | 0     | knit | k      | face loop                                                              |
/// | 1     | purl | p      | back loop                                                              |
/// | 2     | tuck | t      | this row's strand is held with the loop below; the closing cell takes both |
/// | 3     | slip | s      | this row's strand passes by uncaught                                   |
/// | 4     | none | .      | no stitch: outside a shaped edge, or inside as a ladder of bare strands |
enum class Cell : std::uint8_t { knit = 0, purl = 1, tuck = 2, slip = 3, none = 4 };

/// The letter of the table above; NUL for a value that is no cell.
LATCHWORK_API char cell_letter(Cell cell) noexcept;

/// The cell of a letter; nothing for a letter that is not in the table (capitals are not).
LATCHWORK_API std::optional<Cell> cell_of(char letter) noexcept;

}  // namespace latchwork::inline v0
