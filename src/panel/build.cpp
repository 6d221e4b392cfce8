// Panels from strips.
#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <utility>
#include <vector>

#include "error/refuse.hpp"
#include "grid/rules.hpp"
#include "latchwork/error.hpp"
#include "latchwork/panel.hpp"
#include "strip/names.hpp"

namespace latchwork::inline v0 {
namespace {

/// Strips put side by side from the left, one after the other. They are written into one grid at the end, so that the
/// work is linear in the cells however many strips there are.
class Row {
 public:
  explicit Row(int rows) : rows_(rows) {}

  void add(const Strip& strip) {
    const std::int64_t wide = std::int64_t{columns_} + strip.grid.columns();
    rules::require_size(rows_, wide);
    filled_.push_back(strip.filled_up(rows_).grid);
    spans_.push_back({strip.name, strip.texture, columns_, strip.grid.columns(), strip.grid.rows()});
    columns_ = static_cast<int>(wide);
  }

  Panel panel(std::string name) && {
    Grid grid = joined();  // before the spans, which it reads, are moved away
    return panel_of(std::move(name), std::move(grid), std::move(spans_));
  }

  /// The row and its mirror image on its right: about a line, or about its last stitch, whose strip then is one.
  Panel unfolded(std::string name, Axis axis) && {
    Grid grid = joined().unfolded(axis);
    std::vector<StripSpan> spans = spans_;
    auto image = spans_.rbegin();
    if (axis == Axis::stitch) {
      StripSpan& shared = spans.back();
      shared.columns = 2 * shared.columns - 1;
      ++image;
    }
    for (; image != spans_.rend(); ++image) {
      StripSpan span = *image;
      span.name = mirrored_name(span.name);
      span.column = grid.columns() - span.column - span.columns;
      spans.push_back(std::move(span));
    }
    return panel_of(std::move(name), std::move(grid), std::move(spans));
  }

 private:
  Panel panel_of(std::string name, Grid grid, std::vector<StripSpan> spans) const {
    return {std::move(name), std::move(grid), {Band{1, rows_, std::move(spans)}}};
  }

  Grid joined() const {
    const auto width = static_cast<std::size_t>(columns_);
    std::vector<std::uint8_t> cells(static_cast<std::size_t>(rows_) * width);
    std::vector<Crossing> crossings;
    for (std::size_t i = 0; i < filled_.size(); ++i) {
      const auto own = static_cast<std::size_t>(spans_[i].columns);
      const auto from = filled_[i].cells();
      auto* to = cells.data() + spans_[i].column;
      for (std::size_t start = 0; start < from.size(); start += own, to += width) {
        std::transform(from.begin() + static_cast<std::ptrdiff_t>(start),
                       from.begin() + static_cast<std::ptrdiff_t>(start + own), to,
                       [](Cell cell) { return static_cast<std::uint8_t>(cell); });
      }
      for (Crossing crossing : filled_[i].crossings()) {
        crossing.column += spans_[i].column;
        crossings.push_back(crossing);
      }
    }
    Grid grid = Grid::from_cells(rows_, columns_, cells);
    std::sort(crossings.begin(), crossings.end(), [](const Crossing& a, const Crossing& b) {
      return std::pair(a.row, a.column) < std::pair(b.row, b.column);
    });
    for (const Crossing& crossing : crossings) grid.cross(crossing);  // each at the end: nothing moves up
    return grid;
  }

  int rows_;
  int columns_ = 0;
  std::vector<Grid> filled_;
  std::vector<StripSpan> spans_;
};

void require_rows(int rows) {
  if (rows < 1) refuse("rows", fmt::format("a panel of {} rows; at least 1", rows));
}

}  // namespace

Panel build_panel(const PanelParts& parts) {
  require_rows(parts.rows);
  if (!parts.edge && parts.left.empty() && !parts.centre) {
    refuse("parts", "a panel of no strips; at least an edge, a left strip or a centre");
  }
  Row row(parts.rows);
  if (parts.edge) row.add(*parts.edge);
  for (const Strip& strip : parts.left) row.add(strip);
  if (parts.centre) {
    row.add(*parts.centre);
    for (auto strip = parts.left.rbegin(); strip != parts.left.rend(); ++strip) row.add(strip->mirrored());
    if (parts.edge) row.add(parts.edge->mirrored());
  }
  Panel panel = parts.centre ? std::move(row).panel(parts.name) : std::move(row).unfolded(parts.name, parts.axis);
  panel.set_axis_half_columns(panel.grid().columns());
  return panel;
}

Panel join_strips(std::string name, int rows, std::span<const Strip> strips) {
  require_rows(rows);
  if (strips.empty()) refuse("strips", "a panel of no strips; at least 1");
  Row row(rows);
  for (const Strip& strip : strips) row.add(strip);
  return std::move(row).panel(std::move(name));
}

}  // namespace latchwork::inline v0
