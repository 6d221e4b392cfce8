#include "latchwork/grid.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <tuple>
#include <utility>

#include "grid/words.hpp"
#include "rules.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace rules;

std::size_t index_of(int row, int column, int columns) noexcept {
  return static_cast<std::size_t>(row - 1) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(column);
}

/// Before the first crossing that does not come before (row, column).
auto position_of(auto& crossings, int row, int column) {
  return std::ranges::lower_bound(crossings, std::tuple(row, column), std::less<>{},
                                  [](const Crossing& crossing) { return std::tuple(crossing.row, crossing.column); });
}

/// What can be said of a crossing without its cells. Sums are made in 64 bits: the groups are any integers here.
void require_shape(const Crossing& crossing, int rows, int columns) {
  const auto refuse_field = [&](const char* field, int value, const char* limit) {
    Place place = place_at(crossing.row, crossing.column);
    place.field = field;
    throw Error(ErrorCode::bad_argument, place,
                fmt::format("crossing at row {}, column {} has {} = {}; {}", crossing.row, crossing.column, field,
                            value, limit));
  };
  if (crossing.left < 1) refuse_field("left", crossing.left, "at least 1 stitch");
  if (crossing.centre < 0) refuse_field("centre", crossing.centre, "0 or more stitches");
  if (crossing.right < 1) refuse_field("right", crossing.right, "at least 1 stitch");
  if (crossing.lean != Lean::left && crossing.lean != Lean::right) {
    refuse_field("lean", static_cast<int>(crossing.lean), "0 is left, 1 is right");
  }
  if (static_cast<std::uint8_t>(crossing.place) > static_cast<std::uint8_t>(Centre::behind)) {
    refuse_field("place", static_cast<int>(crossing.place), "0 is front, 1 between, 2 behind");
  }
  const std::int64_t width = std::int64_t{crossing.left} + std::int64_t{crossing.centre} + std::int64_t{crossing.right};
  if (crossing.row < 1 || crossing.row > rows) {
    throw Error(ErrorCode::off_grid, place_at(crossing.row, crossing.column),
                fmt::format("crossing at row {}, column {}; the grid has {}", crossing.row, crossing.column,
                            run_of("row", 1, rows)));
  }
  if (crossing.column < 0 || crossing.column + width > columns) {
    throw Error(ErrorCode::off_grid, place_at(crossing.row, crossing.column),
                fmt::format("crossing at row {}, column {} takes {} stitches; the grid is {} wide", crossing.row,
                            crossing.column, width, columns));
  }
}

}  // namespace

Grid::Grid(int rows, int columns) : rows_(rows), columns_(columns) {
  require_size(rows, columns);
  cells_.resize(static_cast<std::size_t>(rows) * static_cast<std::size_t>(columns), Cell::knit);
}

Grid::Grid(int rows, int columns, std::vector<Cell> cells, std::vector<Crossing> crossings) noexcept
    : rows_(rows), columns_(columns), cells_(std::move(cells)), crossings_(std::move(crossings)) {}

Grid Grid::from_cells(int rows, int columns, std::span<const std::uint8_t> cells) {
  require_size(rows, columns);
  const std::size_t count = static_cast<std::size_t>(rows) * static_cast<std::size_t>(columns);
  if (cells.size() != count) {
    throw Error(ErrorCode::size_mismatch, place_of_field("cells"),
                fmt::format("{} for a grid of {} x {}; {} are needed", count_of(std::ssize(cells), "cell"), rows,
                            columns, count));
  }
  std::vector<Cell> copied;
  copied.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    if (cells[i] > static_cast<std::uint8_t>(Cell::none)) {
      const int row = static_cast<int>(i / static_cast<std::size_t>(columns)) + 1;
      const int column = static_cast<int>(i % static_cast<std::size_t>(columns));
      throw Error(ErrorCode::bad_value, place_at(row, column),
                  fmt::format("cell at row {}, column {} is {}; cells are 0 to 4", row, column, cells[i]));
    }
    copied.push_back(static_cast<Cell>(cells[i]));
  }
  return {rows, columns, std::move(copied), {}};
}

void Grid::set(int row, int column, Cell cell) {
  require_inside(row, column, rows_, columns_);
  if (static_cast<std::uint8_t>(cell) > static_cast<std::uint8_t>(Cell::none)) {
    Place place = place_at(row, column);
    place.field = "cell";
    throw Error(ErrorCode::bad_argument, place,
                fmt::format("cell {} at row {}, column {}; cells are 0 to 4", static_cast<int>(cell), row, column));
  }
  Cell& here = cells_[index_of(row, column, columns_)];
  const Cell before = std::exchange(here, cell);
  // Two crossings look at this cell: the one after its row and the one after the row below.
  for (const int crossed : {row, row == 1 ? rows_ : row - 1}) {
    const auto next = position_of(crossings_, crossed, column + 1);
    if (next == crossings_.begin()) continue;
    const Crossing& crossing = *std::prev(next);
    if (crossing.row != crossed || crossing.column + crossing.width() <= column) continue;
    if (const auto broken = broken_rule(rows_, columns_, cells_, crossing)) {
      here = before;
      throw Error(broken->code, place_at(row, column), refusal(*broken, crossing).what());
    }
  }
}

void Grid::cross(const Crossing& crossing) {
  require_shape(crossing, rows_, columns_);
  const auto next = position_of(crossings_, crossing.row, crossing.column);
  const auto refuse = [&](const Crossing& other) {
    throw Error(ErrorCode::stitch_taken, place_at(crossing.row, crossing.column),
                fmt::format("{} shares a stitch with {}", crossing_words(crossing), crossing_words(other)));
  };
  if (next != crossings_.end() && next->row == crossing.row && next->column < crossing.column + crossing.width()) {
    refuse(*next);
  }
  if (next != crossings_.begin()) {
    const Crossing& other = *std::prev(next);
    if (other.row == crossing.row && other.column + other.width() > crossing.column) refuse(other);
  }
  require_rule(rows_, columns_, cells_, crossing);
  Crossing added = crossing;
  if (added.centre == 0) added.place = Centre::between;  // one way to say it, so that equal cloth is equal
  crossings_.insert(next, added);
}

void Grid::uncross(int row, int column) {
  const auto found = position_of(crossings_, row, column);
  if (found == crossings_.end() || found->row != row || found->column != column) {
    throw Error(ErrorCode::off_grid, place_at(row, column),
                fmt::format("no crossing after row {} starts at column {}; the grid is {} x {}", row, column,
                            count_of(columns_, "column"), count_of(rows_, "row")));
  }
  crossings_.erase(found);
}

Cell Grid::at(int row, int column) const {
  require_inside(row, column, rows_, columns_);
  return cells_[index_of(row, column, columns_)];
}

std::uint64_t Grid::hash() const noexcept {
  std::uint64_t hash = 14695981039346656037U;  // FNV-1a's offset basis and prime for 64 bits
  const auto add_byte = [&hash](std::uint8_t byte) { hash = (hash ^ byte) * 1099511628211U; };
  const auto add_number = [&](int number) {
    for (int shift = 0; shift < 32; shift += 8) {
      add_byte(static_cast<std::uint8_t>(static_cast<std::uint32_t>(number) >> shift));
    }
  };
  add_number(rows_);
  add_number(columns_);
  for (const Cell cell : cells_) add_byte(static_cast<std::uint8_t>(cell));
  for (const Crossing& crossing : crossings_) {
    for (const int number : {crossing.row, crossing.column, crossing.left, crossing.centre, crossing.right}) {
      add_number(number);
    }
    add_byte(static_cast<std::uint8_t>(crossing.lean));
    add_byte(static_cast<std::uint8_t>(crossing.place));
  }
  return hash;
}

std::string Grid::describe() const {
  constexpr std::array kinds = {"knit", "purl", "tuck", "slip", "none"};
  std::array<std::int64_t, kinds.size()> counts{};
  for (const Cell cell : cells_) ++counts[static_cast<std::size_t>(cell)];
  std::string text = fmt::format("{}, RS: ", extent_words(*this));
  const char* before = "";
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    if (counts[i] == 0) continue;
    text += fmt::format("{}{} {}", before, counts[i], kinds[i]);
    before = ", ";
  }
  if (crossings_.empty()) return text + "; no crossings";
  return text + "; " + count_of(std::ssize(crossings_), "crossing");
}

}  // namespace latchwork::inline v0
