// Panels from strips.
#include <fmt/format.h>

#include <utility>

#include "latchwork/error.hpp"
#include "latchwork/panel.hpp"
#include "strip/names.hpp"

namespace latchwork::inline v0 {
namespace {

[[noreturn]] void refuse_field(const char* field, const std::string& message) {
  Place place;
  place.field = field;
  throw Error(ErrorCode::bad_argument, std::move(place), message);
}

/// Strips put side by side from the left, one after the other.
class Row {
 public:
  explicit Row(int rows) : rows_(rows) {}

  void add(const Strip& strip) {
    const Strip filled = strip.filled_up(rows_);
    const int column = grid_ ? grid_->columns() : 0;
    grid_ = grid_ ? grid_->beside(filled.grid) : filled.grid;
    spans_.push_back({strip.name, strip.texture, column, filled.grid.columns(), strip.grid.rows()});
  }

  bool empty() const noexcept { return spans_.empty(); }

  /// The row and its mirror image on its right: about a line, or about its last stitch, whose strip then is one.
  Row unfolded(Axis axis) const {
    Row result(rows_);
    result.grid_ = grid_->unfolded(axis);
    result.spans_ = spans_;
    auto image = spans_.rbegin();
    if (axis == Axis::stitch) {
      StripSpan& shared = result.spans_.back();
      shared.columns = 2 * shared.columns - 1;
      ++image;
    }
    for (; image != spans_.rend(); ++image) {
      StripSpan span = *image;
      span.name = mirrored_name(span.name);
      span.column = result.grid_->columns() - span.column - span.columns;
      result.spans_.push_back(std::move(span));
    }
    return result;
  }

  Panel panel(std::string name) && { return {std::move(name), *std::move(grid_), {Band{1, rows_, std::move(spans_)}}}; }

 private:
  int rows_;
  std::optional<Grid> grid_;
  std::vector<StripSpan> spans_;
};

void require_rows(int rows) {
  if (rows < 1) refuse_field("rows", fmt::format("a panel of {} rows; at least 1", rows));
}

}  // namespace

Panel build_panel(const PanelParts& parts) {
  require_rows(parts.rows);
  if (!parts.edge && parts.left.empty() && !parts.centre) {
    refuse_field("parts", "a panel of no strips; at least an edge, a left strip or a centre");
  }
  if (parts.axis != Axis::line && parts.axis != Axis::stitch) {
    refuse_field("axis", fmt::format("axis {}; 0 is line, 1 is stitch", static_cast<int>(parts.axis)));
  }
  Row row(parts.rows);
  if (parts.edge) row.add(*parts.edge);
  for (const Strip& strip : parts.left) row.add(strip);
  if (!parts.centre) {
    row = row.unfolded(parts.axis);
  } else {
    row.add(*parts.centre);
    for (auto strip = parts.left.rbegin(); strip != parts.left.rend(); ++strip) row.add(strip->mirrored());
    if (parts.edge) row.add(parts.edge->mirrored());
  }
  Panel panel = std::move(row).panel(parts.name);
  panel.set_axis_half_columns(panel.grid().columns());
  return panel;
}

Panel join_strips(std::string name, int rows, std::span<const Strip> strips) {
  require_rows(rows);
  if (strips.empty()) refuse_field("strips", "a panel of no strips; at least 1");
  Row row(rows);
  for (const Strip& strip : strips) row.add(strip);
  return std::move(row).panel(std::move(name));
}

}  // namespace latchwork::inline v0
