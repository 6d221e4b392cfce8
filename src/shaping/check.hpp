#pragma once

#include <string>

#include "latchwork/error.hpp"
#include "latchwork/shaping.hpp"

namespace latchwork::inline v0::shaping {

/// @throws Error bad_argument at that field (and row, where there is one).
[[noreturn]] void refuse(std::string field, const std::string& message, int row = 0);

/// The columns that a row shares with the row below, `row` - 1. @throws Error bad_argument (that field, row) where
/// there is none: the cloth is in two pieces there, and has no one outline.
RowSpan shared_columns(const RowSpan& below, const RowSpan& above, int row, const char* field);

/// @throws Error bad_argument (field "outline", row) for a row that ends before it begins or begins before column 0, or
/// that shares no column with the row below, or for no row at all.
void check(const Outline& outline);

/// The same, and that it is of the grid. @throws Error size_mismatch (field "outline"); bad_argument (field
/// "edge_stitches", "cut").
void check(const Grid& grid, const Outline& outline, const ShapeOptions& options);

}  // namespace latchwork::inline v0::shaping
