// The four views of a grid (the table of DOMAIN section 2): each moves every cell and crossing to one other place.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cstring>
#include <iterator>
#include <utility>

#include "latchwork/grid.hpp"
#include "rules.hpp"

namespace latchwork::inline v0 {
namespace {

std::uint64_t reversed_bytes(std::uint64_t word) noexcept {
  word = ((word & 0x00FF00FF00FF00FFU) << 8) | ((word >> 8) & 0x00FF00FF00FF00FFU);
  word = ((word & 0x0000FFFF0000FFFFU) << 16) | ((word >> 16) & 0x0000FFFF0000FFFFU);
  return (word << 32) | (word >> 32);
}

/// `to` becomes `from`, last cell first. Eight cells at a time: this is all the work there is in a mirrored grid.
void reverse_row(const Cell* from, Cell* to, std::size_t count) noexcept {
  static_assert(sizeof(Cell) == 1);
  const Cell* end = from + count;
  for (; count >= 8; count -= 8, to += 8) {
    end -= 8;
    std::uint64_t word = 0;
    std::memcpy(&word, end, 8);
    word = reversed_bytes(word);
    std::memcpy(to, &word, 8);
  }
  for (; count > 0; --count) *to++ = *--end;
}

Lean flipped(Lean lean) noexcept {
  return lean == Lean::left ? Lean::right : Lean::left;
}

Centre from_behind(Centre place) noexcept {
  if (place == Centre::between) return place;
  return place == Centre::front ? Centre::behind : Centre::front;
}

/// The crossings with their columns mirrored, in order: rows stay, and each row's own run backwards.
std::vector<Crossing> mirrored_columns(std::span<const Crossing> crossings, int columns) {
  std::vector<Crossing> result;
  result.reserve(crossings.size());
  for (auto first = crossings.begin(); first != crossings.end();) {
    auto last = first;
    while (last != crossings.end() && last->row == first->row) ++last;
    for (auto crossing = last; crossing != first;) {
      Crossing moved = *--crossing;
      moved.column = columns - moved.column - moved.width();
      std::swap(moved.left, moved.right);
      result.push_back(moved);
    }
    first = last;
  }
  return result;
}

/// Mirrors the rows one by one through a small buffer, so that each cell is written to memory once.
template <class Change>
std::vector<Cell> mirrored_cells(std::span<const Cell> cells, int columns, Change change) {
  const auto width = static_cast<std::size_t>(columns);
  std::vector<Cell> result;
  result.reserve(cells.size());
  std::vector<Cell> row(width);
  for (std::size_t start = 0; start < cells.size(); start += width) {
    reverse_row(cells.data() + start, row.data(), width);
    change(row);
    result.insert(result.end(), row.begin(), row.end());
  }
  return result;
}

/// Columns that hold a tuck or slip.
std::vector<int> stacked_columns(std::span<const Cell> cells, int columns) {
  std::vector<std::uint8_t> marks(static_cast<std::size_t>(columns), 0);
  for (std::size_t start = 0; start < cells.size(); start += marks.size()) {
    for (std::size_t x = 0; x < marks.size(); ++x) {
      marks[x] = static_cast<std::uint8_t>(marks[x] | static_cast<std::uint8_t>(in_stack(cells[start + x])));
    }
  }
  std::vector<int> found;
  for (std::size_t x = 0; x < marks.size(); ++x) {
    if (marks[x] != 0) found.push_back(static_cast<int>(x));
  }
  return found;
}

/// Turns one column over, each stack and the cell that follows it kept in its own order. A column of tucks and slips
/// only is one ring without a first row, and is simply reversed.
void turn_column_over(std::span<const Cell> from, std::span<Cell> to, int rows, int columns, int column) {
  const auto index = [&](int y) {  // rows from 0 here, so that they can be counted round the ring
    return static_cast<std::size_t>(y % rows) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(column);
  };
  int start = 0;
  while (start < rows && in_stack(from[index(start)])) ++start;
  if (start == rows) return;  // the rows were reversed already
  int unit = start + 1;       // the ring is walked from the row after a closed loop
  for (int y = start + 1; y <= start + rows; ++y) {
    if (in_stack(from[index(y)])) continue;
    // Rows unit..y are one unit. Row y becomes rows - 1 - y: the unit's new lowest row.
    const int low = rows - 1 - (y % rows) + rows;
    for (int i = unit; i <= y; ++i) to[index(low + i - unit)] = from[index(i)];
    unit = y + 1;
  }
}

}  // namespace

Grid Grid::mirrored() const {
  std::vector<Crossing> crossings = mirrored_columns(crossings_, columns_);
  for (Crossing& crossing : crossings) crossing.lean = flipped(crossing.lean);
  return {rows_, columns_, mirrored_cells(cells_, columns_, [](const std::vector<Cell>&) {}), std::move(crossings)};
}

Grid Grid::turned() const {
  std::vector<Crossing> crossings = mirrored_columns(crossings_, columns_);
  for (Crossing& crossing : crossings) crossing.place = from_behind(crossing.place);
  const auto swap_sides = [](std::vector<Cell>& row) {
    // knit 0 <-> purl 1; the others have a higher bit and stay.
    for (Cell& cell : row) {
      const auto number = static_cast<unsigned>(cell);
      cell = static_cast<Cell>(number ^ static_cast<unsigned>(number < 2U));
    }
  };
  return {rows_, columns_, mirrored_cells(cells_, columns_, swap_sides), std::move(crossings)};
}

Grid Grid::upside_down() const {
  const auto width = static_cast<std::size_t>(columns_);
  std::vector<Cell> cells;
  cells.reserve(cells_.size());
  for (std::size_t end = cells_.size(); end > 0; end -= width) {
    const Cell* row = cells_.data() + (end - width);
    cells.insert(cells.end(), row, row + width);
  }
  for (const int column : stacked_columns(cells_, columns_)) {
    turn_column_over(cells_, cells, rows_, columns_, column);
  }

  // Rows, .. 1 become 1, 2, .. R-1; the crossings on the seam, after row R, stay there.
  std::vector<Crossing> crossings;
  crossings.reserve(crossings_.size());
  const auto turn_over = [&](auto first, auto last, int row) {
    for (; first != last; ++first) {
      Crossing moved = *first;
      moved.row = row;
      std::swap(moved.left, moved.right);
      moved.lean = flipped(moved.lean);
      crossings.push_back(moved);
    }
  };
  const auto seam = std::ranges::lower_bound(crossings_, rows_, {}, &Crossing::row);
  for (auto last = seam; last != crossings_.begin();) {
    auto first = std::prev(last);
    while (first != crossings_.begin() && std::prev(first)->row == first->row) --first;
    turn_over(first, last, rows_ - first->row);
    last = first;
  }
  turn_over(seam, crossings_.end(), rows_);

  // A stack just above a crossing may end on no stitch, which would then stand just below it.
  for (const Crossing& crossing : crossings) {
    const auto broken = broken_rule(rows_, columns_, cells, crossing);
    if (!broken) continue;
    const int row = crossing.row == rows_ ? rows_ : rows_ - crossing.row;
    throw Error(broken->code, place_at(row_after(row, rows_), broken->column),
                fmt::format("row {}, column {} is a stack of tucks or slips that ends on no stitch; upside down, the "
                            "crossing after row {} would have no stitch there",
                            row_after(row, rows_), broken->column, row));
  }
  return {rows_, columns_, std::move(cells), std::move(crossings)};
}

Grid Grid::half_turn() const {
  return upside_down().mirrored();  // they commute; this way round, an error's place is this grid's
}

}  // namespace latchwork::inline v0
