// The four views of a grid (the table in DEVELOPERS.md, views): each moves every cell and crossing to one other place.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstring>
#include <iterator>
#include <utility>

#include "latchwork/grid.hpp"
#include "rules.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace rules;

// Eight cells at a time: moving cells is all the work there is in a view of a large grid. A cell is one byte; bit 1 is
// set in tuck (2) and slip (3) only, and none (4) has bit 2.
static_assert(sizeof(Cell) == 1);
constexpr std::uint64_t ones = 0x0101010101010101U;

std::uint64_t reversed_bytes(std::uint64_t word) noexcept {
  word = ((word & 0x00FF00FF00FF00FFU) << 8) | ((word >> 8) & 0x00FF00FF00FF00FFU);
  word = ((word & 0x0000FFFF0000FFFFU) << 16) | ((word >> 16) & 0x0000FFFF0000FFFFU);
  return (word << 32) | (word >> 32);
}

/// Knit (0) and purl (1) change places in each byte; the others stay.
std::uint64_t swapped_sides(std::uint64_t word) noexcept {
  return word ^ (~(word >> 1) & ~(word >> 2) & ones);
}

/// `to` becomes `from`, last cell first, each word of cells changed on the way.
template <class Change>
void reverse_row(const Cell* from, Cell* to, std::size_t count, Change change) noexcept {
  const Cell* end = from + count;
  for (; count >= 8; count -= 8, to += 8) {
    end -= 8;
    std::uint64_t word = 0;
    std::memcpy(&word, end, 8);
    word = change(reversed_bytes(word));
    std::memcpy(to, &word, 8);
  }
  for (; count > 0; --count) *to++ = static_cast<Cell>(change(static_cast<std::uint64_t>(*--end)) & 0xFFU);
}

/// Whether a row holds a tuck or slip. Four words at a time, none of which waits for another.
bool has_stack(const Cell* row, std::size_t count) noexcept {
  std::array<std::uint64_t, 4> found{};
  for (; count >= sizeof found; count -= sizeof found, row += sizeof found) {
    std::array<std::uint64_t, 4> words{};
    std::memcpy(words.data(), row, sizeof words);
    for (std::size_t i = 0; i < words.size(); ++i) found[i] |= words[i];
  }
  for (; count > 0; --count) found[0] |= static_cast<std::uint64_t>(*row++);
  return ((found[0] | found[1] | found[2] | found[3]) & (ones << 1)) != 0;
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
    reverse_row(cells.data() + start, row.data(), width, change);
    result.insert(result.end(), row.begin(), row.end());
  }
  return result;
}

/// `to` has the rows of `from` in the other order; this puts each stack and the cell that follows it back into its own
/// order. Row by row, with the open stack of each column counted on the way; `stacked` tells the rows that hold one. A
/// column of tucks and slips only is a ring without a first row and stays reversed.
void turn_stacks_over(std::span<const Cell> from, std::span<Cell> to, int columns,
                      const std::vector<std::uint8_t>& stacked) {
  const int rows = static_cast<int>(stacked.size());
  const auto width = static_cast<std::size_t>(columns);
  const auto row_of = [&](int y) { return from.data() + static_cast<std::size_t>(y) * width; };
  std::vector<int> run(width, 0);  // rows of the stack that is open below row y, round the seam too
  std::vector<std::uint8_t> open(width, 1);
  bool running = false;
  for (int y = rows - 1; y >= 0 && stacked[static_cast<std::size_t>(y)] != 0; --y) {
    running = false;
    for (std::size_t x = 0; x < width; ++x) {
      open[x] = static_cast<std::uint8_t>(open[x] != 0 && in_stack(row_of(y)[x]));
      run[x] += open[x];
      running = running || open[x] != 0;
    }
    if (!running) break;
  }
  running = stacked.back() != 0;
  for (int y = 0; y < rows; ++y) {
    const Cell* row = row_of(y);
    const bool here = stacked[static_cast<std::size_t>(y)] != 0;
    if (!here && !running) continue;
    running = here;
    for (std::size_t x = 0; x < width; ++x) {
      if (in_stack(row[x])) {
        ++run[x];
      } else if (run[x] > 0) {
        // Rows y - run .. y are one unit, and row y becomes rows - 1 - y: the unit's new lowest row.
        for (int i = 0; i <= run[x]; ++i) {
          const int source = (y - run[x] + i + rows) % rows;
          const int target = (rows - 1 - y + i) % rows;
          to[static_cast<std::size_t>(target) * width + x] = from[static_cast<std::size_t>(source) * width + x];
        }
        run[x] = 0;
      }
    }
  }
}

/// The stack that ends on no stitch for which a crossing cannot be turned over: its cell just above the
/// crossing, or just below a centre that is bare. Turned over, the bare cell changes places with the stack.
Place stack_in_the_way(const Grid& grid, const Crossing& crossing) {
  const int rows = grid.rows();
  const int above = row_after(crossing.row, rows);
  const int below = crossing.row == 1 ? rows : crossing.row - 1;
  for (int x = crossing.column; x < crossing.column + crossing.width(); ++x) {
    int end = above;  // a column with a crossing is never all stack: the row below it has closed loops
    while (in_stack(grid.at(end, x))) end = row_after(end, rows);
    if (end != above && grid.at(end, x) == Cell::none) return place_at(above, x);
  }
  int x = crossing.column + crossing.left;
  while (x < crossing.column + crossing.left + crossing.centre - 1 && !in_stack(grid.at(below, x))) ++x;
  return place_at(below, x);
}

}  // namespace

Grid Grid::mirrored() const {
  std::vector<Crossing> crossings = mirrored_columns(crossings_, columns_);
  for (Crossing& crossing : crossings) crossing.lean = flipped(crossing.lean);
  return {rows_, columns_, mirrored_cells(cells_, columns_, [](std::uint64_t word) { return word; }),
          std::move(crossings)};
}

Grid Grid::turned() const {
  std::vector<Crossing> crossings = mirrored_columns(crossings_, columns_);
  for (Crossing& crossing : crossings) crossing.place = from_behind(crossing.place);
  return {rows_, columns_, mirrored_cells(cells_, columns_, swapped_sides), std::move(crossings)};
}

Grid Grid::upside_down() const {
  const auto width = static_cast<std::size_t>(columns_);
  std::vector<Cell> cells;
  cells.reserve(cells_.size());
  std::vector<std::uint8_t> stacked(static_cast<std::size_t>(rows_), 0);
  for (std::size_t end = cells_.size(); end > 0; end -= width) {
    const Cell* row = cells_.data() + (end - width);
    cells.insert(cells.end(), row, row + width);
    stacked[end / width - 1] = static_cast<std::uint8_t>(has_stack(row, width));  // while the row is at hand
  }
  const bool any = std::ranges::find(stacked, 1) != stacked.end();
  if (any) turn_stacks_over(cells_, cells, columns_, stacked);

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

  // A stack just above a crossing may end on no stitch, which would then stand just below it; or one under a bare
  // centre does, which would then stand above it.
  for (const Crossing& crossing : crossings) {
    if (!any) break;
    const auto broken = broken_rule(rows_, columns_, cells, crossing);
    if (!broken) continue;
    Crossing mine = crossing;
    mine.row = crossing.row == rows_ ? rows_ : rows_ - crossing.row;
    std::swap(mine.left, mine.right);
    const Place place = stack_in_the_way(*this, mine);
    throw Error(
        broken->code, place,
        fmt::format("row {}, column {} is in a stack of tucks or slips that ends on no stitch; upside down, the "
                    "crossing after row {} would have no stitch where it needs one, or a bare centre in one "
                    "row only",
                    place.row, place.column, mine.row));
  }
  return {rows_, columns_, std::move(cells), std::move(crossings)};
}

Grid Grid::half_turn() const {
  return upside_down().mirrored();  // they commute; this way round, an error's place is this grid's
}

}  // namespace latchwork::inline v0
