#pragma once

#include "file/json.hpp"
#include "file/json_writer.hpp"
#include "latchwork/grid.hpp"

// The grid's fields, which stand in grid, strip and panel files and in a chart among a panel's parts.
namespace latchwork::inline v0::json {

/// Takes "rows" and "crossings", which are known. @throws Error, with line and field, and row and column where a cell
/// is meant.
Grid take_grid(const Fields& fields);

/// Puts "rows", and "crossings" where there are any.
void put_grid(Writer& writer, const Grid& grid);

/// One crossing as an object on one line, and back. `checked` holds the numbers to what any grid could have.
void put_crossing(Writer& writer, const Crossing& crossing);
Crossing get_crossing(Value value, bool checked);

/// Cells as letters, and back. @throws Error bad_letter, with `column` counted from the first letter when `row` is set.
std::string letters_of(std::span<const Cell> cells);
void read_letters(Value value, std::string_view letters, int row, std::uint8_t* cells);

}  // namespace latchwork::inline v0::json
