#include "chart/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace latchwork::inline v0::drawing {
namespace {

void add_kinds(MarkKinds& kinds, std::span<const Mark> marks) {
  for (const Mark& mark : marks) {
    kinds.knit = kinds.knit || mark.cell == Cell::knit;
    kinds.purl = kinds.purl || mark.cell == Cell::purl;
    kinds.tuck = kinds.tuck || mark.cell == Cell::tuck;
    kinds.cap = kinds.cap || mark.cap;
    kinds.slip_behind = kinds.slip_behind || (mark.cell == Cell::slip && !mark.front);
    kinds.slip_front = kinds.slip_front || (mark.cell == Cell::slip && mark.front);
    kinds.none = kinds.none || mark.cell == Cell::none;
  }
}

std::vector<Crossing> kinds_of(std::span<const Crossing> crossings) {
  const auto order = [](const Crossing& c) {
    return std::tuple(c.width(), c.left, c.centre, c.right, c.lean != Lean::right, c.place);
  };
  std::vector<Crossing> kinds;
  kinds.reserve(crossings.size());
  for (Crossing crossing : crossings) {
    crossing.row = 1;
    crossing.column = 0;
    kinds.push_back(crossing);
  }
  std::sort(kinds.begin(), kinds.end(), [&](const auto& a, const auto& b) { return order(a) < order(b); });
  kinds.erase(std::unique(kinds.begin(), kinds.end()), kinds.end());
  return kinds;
}

/// What lies from `first` to `last`, of what is in the order of its rows.
template <class T, class Row>
std::span<const T> between(std::span<const T> all, int first, int last, Row row) {
  const auto from = std::lower_bound(all.begin(), all.end(), first, [&](const T& one, int r) { return row(one) < r; });
  const auto to = std::upper_bound(from, all.end(), last, [&](int r, const T& one) { return r < row(one); });
  return {from, to};
}

/// A strip as far as it reaches into the part's columns; `columns` 0 where it does not.
template <class Strip>
Strip clipped(Strip strip, const Part& part) {
  const int end = std::min(strip.column + strip.columns, part.last_column + 1);
  strip.column = std::max(strip.column, part.first_column);
  strip.columns = std::max(end - strip.column, 0);
  return strip;
}

template <class Strip>
void clip(std::vector<Strip>& strips, const Part& part) {
  for (Strip& strip : strips) strip = clipped(std::move(strip), part);
  strips.erase(std::remove_if(strips.begin(), strips.end(), [](const Strip& strip) { return strip.columns == 0; }),
               strips.end());
}

/// ", columns 0 to 66", ", needles L100 to L34".
std::string columns_words(const View& view, const Part& part) {
  const char* thing = view.side == Side::operator_view ? "needle" : "column";
  const std::string first = view.column_name(part.first_column);
  if (part.first_column == part.last_column) return fmt::format(", {} {}", thing, first);
  return fmt::format(", {}s {} to {}", thing, first, view.column_name(part.last_column));
}

}  // namespace

Part whole(const View& view) {
  return {.first_row = 1, .last_row = view.grid.rows(), .first_column = 0, .last_column = view.grid.columns() - 1};
}

Part part_of(const View& view, const ChartOptions& options) {
  Part part = whole(view);
  part.first_row = options.first_row;
  if (options.last_row != 0) part.last_row = options.last_row;
  part.first_column = options.first_column;
  if (options.columns != 0) part.last_column = options.first_column + options.columns - 1;
  if (view.side == Side::operator_view) {
    const int last = view.grid.columns() - 1;
    const int first = part.first_column;
    part.first_column = last - part.last_column;
    part.last_column = last - first;
  }
  return part;
}

Sheet sheet_of(const View& view, const Part& part) {
  const int rows = view.grid.rows();
  const int first_row = part.first_row;
  const int last_row = part.last_row;
  Sheet sheet{.first_row = first_row,
              .last_row = last_row,
              .first_column = part.first_column,
              .last_column = part.last_column,
              .title = view.title,
              .notes = view.notes};
  const bool all_columns = sheet.columns() == view.grid.columns();
  if (first_row > 1 || last_row < rows || !all_columns) {
    const std::string shown =
        first_row == last_row ? fmt::format("row {}", first_row) : fmt::format("rows {} to {}", first_row, last_row);
    if (first_row > 1 || last_row < rows) sheet.title += ", " + shown;
    if (!all_columns) sheet.title += columns_words(view, part);
    sheet.notes.front() = "Of " + sheet.notes.front();  // goes on from the title
  }
  // With the stop below the first row: its crossings stand in that row.
  sheet.stops = between(std::span<const int>(view.stops), first_row - 1, last_row, [](int row) { return row; });
  // A crossing's block stands in the row after it, one after the panel's last row above that.
  for (const Crossing& crossing : between(view.grid.crossings(), first_row - 1, last_row == rows ? rows : last_row - 1,
                                          [](const Crossing& one) { return one.row; })) {
    const int last = crossing.column + crossing.width() - 1;
    if (last < part.first_column || crossing.column > part.last_column) continue;
    const bool inside = crossing.column >= part.first_column && last <= part.last_column;
    (inside ? sheet.crossings : sheet.cut).push_back(crossing);
  }
  const std::span<const Band> bands = view.bands;
  const auto from = std::lower_bound(bands.begin(), bands.end(), first_row,
                                     [](const Band& band, int row) { return band.row + band.rows <= row; });
  const auto to =
      std::upper_bound(from, bands.end(), last_row, [](int row, const Band& band) { return row < band.row; });
  sheet.bands.assign(from, to);
  for (Band& band : sheet.bands) clip(band.strips, part);
  const auto width = static_cast<std::size_t>(view.grid.columns());
  const std::span<const Mark> marks = view.marks;
  const auto shown_columns = static_cast<std::size_t>(sheet.columns());
  for (int row = first_row; row <= last_row; ++row) {
    const std::size_t from_row = static_cast<std::size_t>(row - 1) * width;
    add_kinds(sheet.kinds, marks.subspan(from_row + static_cast<std::size_t>(part.first_column), shown_columns));
  }
  sheet.crossing_kinds = kinds_of(sheet.crossings);
  sheet.letters = letters_of_rows(view.letters, first_row, last_row);
  if (!all_columns) {
    for (LetterLine& line : sheet.letters.lines) clip(line.strips, part);
    sheet.letters.words = words_of_lines(view.letters, sheet.letters.lines);
  }
  if (view.axis && *view.axis >= 2 * part.first_column && *view.axis <= 2 * (part.last_column + 1)) {
    sheet.axis = view.axis;
  }
  if (const auto middle = view.bed_middle(); middle && *middle > part.first_column && *middle <= part.last_column) {
    sheet.bed_middle = middle;
  }
  return sheet;
}

bool Sheet::has_edges() const {
  return std::any_of(bands.begin(), bands.end(), [](const Band& band) { return band.strips.size() > 1; });
}

bool Sheet::begins_again(bool with_first) const {
  const int lowest = with_first ? first_row : first_row + 1;
  return std::any_of(bands.begin(), bands.end(), [&](const Band& band) {
    if (band.row > 1 && band.row >= lowest) return true;
    return std::any_of(band.strips.begin(), band.strips.end(), [&](const StripSpan& strip) {
      if (strip.repeat_rows < 2) return false;
      const int end = std::min(band.rows - 1, last_row - band.row);  // the highest row it may begin again with, from 0
      const int start = std::max(1, lowest - band.row);
      return end >= start && end / strip.repeat_rows > (start - 1) / strip.repeat_rows;
    });
  });
}

}  // namespace latchwork::inline v0::drawing
