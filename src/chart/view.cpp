#include "chart/view.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "error/refuse.hpp"
#include "grid/words.hpp"
#include "machine/check.hpp"
#include "plan/stops.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::drawing {
namespace {

void check(const Panel& panel, const ChartOptions& options) {
  if (options.side != Side::right_side && options.side != Side::operator_view) {
    refuse(ErrorCode::bad_argument, "side",
           fmt::format("side is {}; it is 0 (right side) or 1 (operator's view)", static_cast<int>(options.side)));
  }
  for (const auto& [field, value] : {std::pair{"stitch_width_mm", options.stitch_width_mm},
                                     std::pair{"stitch_height_mm", options.stitch_height_mm}}) {
    if (!(value > 0) || !(value <= 1000)) {
      refuse(ErrorCode::bad_argument, field, fmt::format("{} is {}; it must be above 0, to 1000", field, value));
    }
  }
  const double ratio = options.stitch_width_mm / options.stitch_height_mm;
  if (ratio < 0.2 || ratio > 5) {
    refuse(ErrorCode::bad_argument, "stitch_width_mm",
           fmt::format("a stitch is {:.2f} times as wide as high; a chart takes 0.2 to 5", ratio));
  }
  if (options.blank > Blank::purl) {
    refuse(ErrorCode::bad_argument, "blank",
           fmt::format("blank is {}; it is 0 (the commoner loops), 1 (knit) or 2 (purl)",
                       static_cast<int>(options.blank)));
  }
  const int rows = panel.grid().rows();
  if (options.first_row < 1 || options.first_row > rows) {
    refuse(ErrorCode::bad_argument, "first_row",
           fmt::format("the chart's first row is {}; the panel has rows 1 to {}", options.first_row, rows));
  }
  if (options.last_row != 0 && (options.last_row < options.first_row || options.last_row > rows)) {
    refuse(ErrorCode::bad_argument, "last_row",
           fmt::format("the chart's last row is {}; it may be {} to {}, or 0 for the panel's last", options.last_row,
                       options.first_row, rows));
  }
  const int columns = panel.grid().columns();
  if (options.first_column < 0 || options.first_column >= columns) {
    refuse(ErrorCode::bad_argument, "first_column",
           fmt::format("the chart's first column is {}; the panel has columns 0 to {}", options.first_column,
                       columns - 1));
  }
  if (options.columns < 0 || options.columns > columns - options.first_column) {
    refuse(ErrorCode::bad_argument, "columns",
           fmt::format("the chart shows {} columns from column {}; it may be 1 to {}, or 0 for all from there",
                       options.columns, options.first_column, columns - options.first_column));
  }
  require_utf8(panel.name());
  for (const Band& band : panel.bands()) {
    for (const StripSpan& strip : band.strips) require_utf8(strip.name);
  }
  if (options.plan == nullptr) return;
  const Plan& plan = *options.plan;
  const Grid& grid = panel.grid();
  require_extent("plan", {.columns = plan.columns, .rows = plan.rows}, "panel", grid);
  require_stops_rise(plan);
}

std::vector<Mark> marks_of(const Grid& grid) {
  const auto width = static_cast<std::size_t>(grid.columns());
  const auto height = static_cast<std::size_t>(grid.rows());
  const auto cells = grid.cells();
  std::vector<Mark> marks(cells.size());
  std::vector<bool> tucked(width, false);
  const auto stacked = [](Cell cell) { return cell == Cell::tuck || cell == Cell::slip; };
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const std::size_t column = i % width;
    marks[i].cell = cells[i];
    if (cells[i] == Cell::tuck) {
      marks[i].foot = i < width || cells[i - width] != Cell::tuck;
      tucked[column] = true;
    } else if (cells[i] != Cell::slip) {
      marks[i].cap = tucked[column] && cells[i] != Cell::none;
      tucked[column] = false;
    }
  }
  // Downward: a slip's strand lies on the side where the cell that closes its stack shows a back loop.
  for (std::size_t i = width * (height - 1); i-- > 0;) {
    if (!stacked(cells[i])) continue;
    const std::size_t above = i + width;
    marks[i].front = stacked(cells[above]) ? marks[above].front : cells[above] == Cell::purl;
  }
  return marks;
}

Cell blank_of(const Grid& grid, Blank blank) {
  if (blank == Blank::knit) return Cell::knit;
  if (blank == Blank::purl) return Cell::purl;
  const auto cells = grid.cells();
  const auto purls = std::count(cells.begin(), cells.end(), Cell::purl);
  return purls > std::count(cells.begin(), cells.end(), Cell::knit) ? Cell::purl : Cell::knit;
}

std::vector<Band> bands_seen(const Panel& panel, bool turned) {
  std::vector<Band> bands(panel.bands().begin(), panel.bands().end());
  if (!turned) return bands;
  for (Band& band : bands) {
    std::reverse(band.strips.begin(), band.strips.end());
    for (StripSpan& strip : band.strips) strip.column = panel.grid().columns() - strip.column - strip.columns;
  }
  return bands;
}

}  // namespace

View view_of(const Panel& panel, const ChartOptions& options) {
  check(panel, options);
  if (options.machine != nullptr) check(*options.machine);
  const bool turned = options.side == Side::operator_view;
  const Machine standard;
  const Machine& machine = options.machine != nullptr ? *options.machine : standard;
  View view{.side = options.side, .grid = turned ? panel.grid().turned() : panel.grid()};
  const int columns = view.grid.columns();
  view.bands = bands_seen(panel, turned);
  view.axis = panel.axis_half_columns();
  if (view.axis && turned) view.axis = 2 * columns - *view.axis;
  view.starts_right = options.plan != nullptr ? options.plan->carriage_starts_right : machine.carriage_starts_right;
  view.leftmost = options.plan != nullptr ? options.plan->leftmost : leftmost_needle(machine, columns);
  if (turned) needle_name(view.leftmost);  // refuses a plan without a place on the bed
  if (options.plan != nullptr) {
    const std::vector<int> kinds = stop_kinds(*options.plan);
    int known = 0;
    for (std::size_t i = 0; i < kinds.size(); ++i) {
      const int row = options.plan->stops[i].row;
      view.stops.push_back(row);
      if (kinds[i] < known) continue;
      view.new_stops.push_back(row);
      ++known;
    }
  }
  const std::string name = one_line(panel.name());
  const std::string size = extent_words(view.grid) + ", read from the bottom up";
  if (turned) {
    view.title = fmt::format("Operator's view: wrong side (WS) of {}, as it faces you on the bed", name);
    view.notes = {size + "; needles as you stand at the bed.",
                  "Every symbol shows what you see from here: a face loop of the right side (RS) is a back loop here."};
  } else {
    view.title = fmt::format("Right side (RS) of {}", name);
    view.notes = {size + "; columns counted from 0 at the left.",
                  "On the bed the wrong side faces you, left and right exchanged: see the operator's view."};
  }
  view.marks = marks_of(view.grid);
  view.blank = blank_of(view.grid, options.blank);
  view.letters = strip_letters(view.bands, view.side);
  return view;
}

std::optional<int> View::bed_middle() const {
  // Needles are counted from the operator's left, without a 0: R1 stands this many columns from the leftmost.
  const std::int64_t column = leftmost < 0 ? -std::int64_t{leftmost} : 0;
  if (side != Side::operator_view || column < 1 || column >= grid.columns()) return std::nullopt;
  return static_cast<int>(column);
}

std::string View::column_name(int column) const {
  return side == Side::operator_view ? needle_name(needle_beside(leftmost, column)) : fmt::to_string(column);
}

std::vector<int> View::shared_edges() const {
  const auto columns = static_cast<std::size_t>(grid.columns());
  std::vector<std::size_t> bands_with_edge(columns, 0);
  for (const Band& band : bands) {
    for (const StripSpan& strip : band.strips) ++bands_with_edge[static_cast<std::size_t>(strip.column)];
  }
  for (const Crossing& crossing : grid.crossings()) {
    const auto first = bands_with_edge.begin() + crossing.column;
    std::fill(first + 1, first + crossing.width(), std::size_t{0});
  }
  std::vector<int> edges;
  for (std::size_t column = 1; column < columns; ++column) {
    if (bands_with_edge[column] == bands.size()) edges.push_back(static_cast<int>(column));
  }
  return edges;
}

std::vector<Group> groups_back_to_front(const Crossing& crossing) {
  const Group left{crossing.left, 0, crossing.centre + crossing.right, true};
  const Group centre{crossing.centre, crossing.left, crossing.right, false};
  const Group right{crossing.right, crossing.left + crossing.centre, 0, true};
  // In a right cross the left group passes in front and travels right.
  const Group& front = crossing.lean == Lean::right ? left : right;
  const Group& back = crossing.lean == Lean::right ? right : left;
  if (crossing.centre == 0) return {back, front};
  switch (crossing.place) {
    case Centre::front:
      return {back, front, centre};
    case Centre::between:
      return {back, centre, front};
    case Centre::behind:
      return {centre, back, front};
  }
  return {back, centre, front};
}

}  // namespace latchwork::inline v0::drawing
