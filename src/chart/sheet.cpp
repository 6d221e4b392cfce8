#include "chart/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace latchwork::inline v0::drawing {
namespace {

MarkKinds kinds_of(std::span<const Mark> marks) {
  MarkKinds kinds;
  for (const Mark& mark : marks) {
    kinds.knit = kinds.knit || mark.cell == Cell::knit;
    kinds.purl = kinds.purl || mark.cell == Cell::purl;
    kinds.tuck = kinds.tuck || mark.cell == Cell::tuck;
    kinds.cap = kinds.cap || mark.cap;
    kinds.slip_behind = kinds.slip_behind || (mark.cell == Cell::slip && !mark.front);
    kinds.slip_front = kinds.slip_front || (mark.cell == Cell::slip && mark.front);
    kinds.none = kinds.none || mark.cell == Cell::none;
  }
  return kinds;
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

}  // namespace

Sheet sheet_of(const View& view, int first_row, int last_row) {
  const int rows = view.grid.rows();
  Sheet sheet{.first_row = first_row, .last_row = last_row, .title = view.title, .notes = view.notes};
  if (first_row > 1 || last_row < rows) {
    const std::string shown =
        first_row == last_row ? fmt::format("row {}", first_row) : fmt::format("rows {} to {}", first_row, last_row);
    sheet.title += ", " + shown;
    sheet.notes.front() = "Of " + sheet.notes.front();  // goes on from the title
  }
  // With the stop below the first row: its crossings stand in that row.
  sheet.stops = between(std::span<const int>(view.stops), first_row - 1, last_row, [](int row) { return row; });
  // A crossing's block stands in the row after it, one after the panel's last row above that.
  sheet.crossings = between(view.grid.crossings(), first_row - 1, last_row == rows ? rows : last_row - 1,
                            [](const Crossing& crossing) { return crossing.row; });
  const std::span<const Band> bands = view.bands;
  const auto from = std::lower_bound(bands.begin(), bands.end(), first_row,
                                     [](const Band& band, int row) { return band.row + band.rows <= row; });
  const auto to =
      std::upper_bound(from, bands.end(), last_row, [](int row, const Band& band) { return row < band.row; });
  sheet.bands = {from, to};
  const auto width = static_cast<std::size_t>(view.grid.columns());
  const std::span<const Mark> marks = view.marks;
  sheet.kinds = kinds_of(marks.subspan(static_cast<std::size_t>(first_row - 1) * width,
                                       static_cast<std::size_t>(last_row - first_row + 1) * width));
  sheet.crossing_kinds = kinds_of(sheet.crossings);
  sheet.letters = letters_of_rows(view.letters, first_row, last_row);
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
