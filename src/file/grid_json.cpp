#include "file/grid_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <climits>
#include <numeric>
#include <vector>

#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::json {
namespace {

constexpr std::array<std::string_view, 2> leans = {"left", "right"};
constexpr std::array<std::string_view, 3> places = {"front", "between", "behind"};

constexpr std::uint8_t no_cell = 0xFF;

/// Cell of each byte: the table of cell.hpp turned round, so that a row is one look-up a letter.
const std::array<std::uint8_t, 256>& cell_table() {
  static const auto table = [] {
    std::array<std::uint8_t, 256> cells{};
    cells.fill(no_cell);
    for (int byte = 1; byte < 128; ++byte) {
      if (const auto cell = cell_of(static_cast<char>(byte))) {
        cells[static_cast<std::size_t>(byte)] = static_cast<std::uint8_t>(*cell);
      }
    }
    return cells;
  }();
  return table;
}

/// Letter of each cell, and NUL for a byte that is none.
const std::array<char, 256>& letter_table() {
  static const auto table = [] {
    std::array<char, 256> letters{};
    for (std::size_t i = 0; i < letters.size(); ++i) {
      const char letter = cell_letter(static_cast<Cell>(i));
      if (cell_of(letter) == static_cast<Cell>(i)) letters[i] = letter;
    }
    return letters;
  }();
  return table;
}

/// Refuses the first letter that stands for no cell, and quotes it alone.
void require_letters(Value value, std::string_view letters, int row) {
  const auto& table = cell_table();
  const auto found = std::find_if(letters.begin(), letters.end(),
                                  [&](char letter) { return table[static_cast<unsigned char>(letter)] == no_cell; });
  if (found == letters.end()) return;
  const auto bad = static_cast<std::size_t>(found - letters.begin());
  Place place;
  place.row = row;
  if (row > 0) place.column = static_cast<int>(bad);
  value.refuse(ErrorCode::bad_letter,
               fmt::format("letter {} is \"{}\", which stands for no cell (k, p, t, s and . do)", bad + 1,
                           shown(letters.substr(bad, character_size(letters[bad])))),
               place);
}

std::vector<std::uint8_t> take_cells(Value list, int& rows, int& columns) {
  const std::size_t count = list.size();
  if (count == 0) list.refuse(ErrorCode::bad_value, "a grid has one row at least");
  if (count > static_cast<std::size_t>(Grid::max_side)) {
    list.refuse(ErrorCode::too_large, fmt::format("{} rows; a grid may have {}", count, Grid::max_side));
  }
  rows = static_cast<int>(count);
  std::vector<std::uint8_t> cells;
  list.each([&](Value value, std::size_t index) {
    const std::string_view letters = value.text();
    const int row = rows - static_cast<int>(index);
    if (index == 0) {
      if (letters.empty()) value.refuse(ErrorCode::bad_value, "a row has one letter at least");
      const auto wide = static_cast<std::int64_t>(letters.size());
      if (wide > Grid::max_side || wide * rows > Grid::max_cells) {
        value.refuse(ErrorCode::too_large, fmt::format("{} rows of {} cells; a grid may have {} a side and {} cells",
                                                       rows, wide, Grid::max_side, Grid::max_cells));
      }
      columns = static_cast<int>(wide);
      cells.resize(count * letters.size());
    }
    if (letters.size() != static_cast<std::size_t>(columns)) {
      require_letters(value, letters, row);  // a letter of several bytes is no row too long
      Place place;
      place.row = row;
      value.refuse(
          ErrorCode::size_mismatch,
          fmt::format("row {} has {}; the top row has {}", row, count_of(std::ssize(letters), "letter"), columns),
          place);
    }
    read_letters(value, letters, row,
                 cells.data() + static_cast<std::size_t>(row - 1) * static_cast<std::size_t>(columns));
  });
  return cells;
}

}  // namespace

void read_letters(Value value, std::string_view letters, int row, std::uint8_t* cells) {
  const auto& table = cell_table();
  std::uint8_t worst = 0;
  for (std::size_t i = 0; i < letters.size(); ++i) {
    cells[i] = table[static_cast<unsigned char>(letters[i])];
    worst = std::max(worst, cells[i]);
  }
  if (worst == no_cell) require_letters(value, letters, row);
}

std::string letters_of(std::span<const Cell> cells) {
  const auto& letters = letter_table();
  std::string text(cells.size(), '\0');
  std::transform(cells.begin(), cells.end(), text.begin(),
                 [&](Cell cell) { return letters[static_cast<std::size_t>(cell)]; });
  return text;
}

Crossing get_crossing(Value value, bool checked) {
  constexpr std::array<std::string_view, 7> known = {"row", "column", "left", "centre", "right", "lean", "place"};
  const Fields fields(value, known);
  const auto number = [&](Value field, int least) {
    return checked ? field.number(least, Grid::max_side) : field.number(INT_MIN, INT_MAX);
  };
  Crossing crossing;
  crossing.row = number(fields.take("row"), 1);
  crossing.column = number(fields.take("column"), 0);
  crossing.left = number(fields.take("left"), 1);
  if (const auto centre = fields.find("centre")) crossing.centre = number(*centre, 0);
  crossing.right = number(fields.take("right"), 1);
  crossing.lean = static_cast<Lean>(fields.take("lean").choice(leans.data(), leans.size()));
  if (const auto place = fields.find("place")) {
    crossing.place = static_cast<Centre>(place->choice(places.data(), places.size()));
    if (checked && crossing.centre == 0 && crossing.place != Centre::between) {
      place->refuse(ErrorCode::bad_value, "a crossing without a centre has its centre \"between\", or no place at all");
    }
  }
  return crossing;
}

void put_crossing(Writer& writer, const Crossing& crossing) {
  const auto lean = static_cast<std::size_t>(crossing.lean);
  const auto place = static_cast<std::size_t>(crossing.place);
  if (lean >= leans.size() || place >= places.size()) {
    Place where;
    const char* which = lean >= leans.size() ? "lean" : "place";
    where.field = writer.field() + "." + which;
    throw Error(ErrorCode::bad_value, where,
                fmt::format("{} of the crossing at row {}, column {} is {}, which has no name", which, crossing.row,
                            crossing.column, lean >= leans.size() ? lean : place));
  }
  writer.begin_object(Layout::line);
  writer.key("row");
  writer.integer(crossing.row);
  writer.key("column");
  writer.integer(crossing.column);
  writer.key("left");
  writer.integer(crossing.left);
  if (crossing.centre != 0) {
    writer.key("centre");
    writer.integer(crossing.centre);
  }
  writer.key("right");
  writer.integer(crossing.right);
  writer.key("lean");
  writer.text(leans[lean]);
  if (crossing.centre != 0 || crossing.place != Centre::between) {
    writer.key("place");
    writer.text(places[place]);
  }
  writer.end_object();
}

Grid take_grid(const Fields& fields) {
  int rows = 0;
  int columns = 0;
  const Value list = fields.take("rows");
  const std::vector<std::uint8_t> cells = take_cells(list, rows, columns);
  Grid grid = list.guard([&] { return Grid::from_cells(rows, columns, cells); });
  const auto crossings = fields.find("crossings");
  if (!crossings) return grid;

  // Added in their own order, which is quick whatever the file's order is.
  std::vector<std::pair<Crossing, Value>> read;
  read.reserve(crossings->size());
  crossings->each([&](Value value, std::size_t) { read.emplace_back(get_crossing(value, true), value); });
  std::stable_sort(read.begin(), read.end(), [](const auto& a, const auto& b) {
    return std::pair(a.first.row, a.first.column) < std::pair(b.first.row, b.first.column);
  });
  for (const auto& [crossing, value] : read) {
    value.guard([&, &crossing = crossing] { grid.cross(crossing); });
  }
  return grid;
}

void put_grid(Writer& writer, const Grid& grid) {
  const auto columns = static_cast<std::size_t>(grid.columns());
  const std::span<const Cell> cells = grid.cells();
  writer.key("rows");
  writer.begin_array(Layout::lines);
  for (auto row = static_cast<std::size_t>(grid.rows()); row-- > 0;) {
    writer.text(letters_of(cells.subspan(row * columns, columns)));
  }
  writer.end_array();
  if (grid.crossings().empty()) return;
  writer.key("crossings");
  writer.begin_array(Layout::lines);
  for (const Crossing& crossing : grid.crossings()) put_crossing(writer, crossing);
  writer.end_array();
}

}  // namespace latchwork::inline v0::json
