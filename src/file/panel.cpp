#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <climits>
#include <cstdint>
#include <iterator>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "file/grid_json.hpp"
#include "file/motif_json.hpp"
#include "file/object.hpp"
#include "grid/rules.hpp"
#include "latchwork/file.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using json::Fields;
using json::Is;
using json::Known;
using json::Layout;
using json::Value;

constexpr std::string_view panel_format = "latchwork-panel";

// In full.

// The members of each struct, once, for reading and writing.
struct PanelLists {
  void operator()(auto& members, Is<StripSpan> auto& span) const {
    members.text("name", span.name);
    members.text("texture", span.texture);
    members.integer("column", span.column, 0, Grid::max_side);
    members.integer("columns", span.columns, 1, Grid::max_side);
    members.integer("repeat_rows", span.repeat_rows, 1, INT_MAX);
  }
  void operator()(auto& members, Is<Band> auto& band) const {
    members.required("strips");
    members.integer("row", band.row, 1, Grid::max_side);
    members.integer("rows", band.rows, 1, Grid::max_side);
    members.list("strips", band.strips, Layout::lines, json::Object<PanelLists>{});
  }
};
constexpr json::Object<PanelLists> one_band{Layout::lines};

constexpr std::array<std::string_view, 4> names_in_full = {"axis_half_columns", "rows", "crossings", "bands"};

Panel take_panel_in_full(const Fields& fields, std::string name) {
  Grid grid = json::take_grid(fields);
  const Value list = fields.take("bands");
  std::vector<Band> bands;
  bands.reserve(list.size());
  list.each([&](Value band, std::size_t) { one_band(band, bands.emplace_back()); });
  Panel panel = list.guard([&] { return Panel(std::move(name), std::move(grid), std::move(bands)); });
  if (const auto axis = fields.find("axis_half_columns")) {
    panel.set_axis_half_columns(axis->number(1, 2 * panel.grid().columns() - 1));
  }
  return panel;
}

// By parts.

/// Motifs of one part. They are held to a grid's size together, so that a short text cannot ask for endless room.
class Motifs {
 public:
  Strip get(Value value) {
    Strip strip = json::get_motif(value);
    columns_ += strip.grid.columns();
    cells_ += std::int64_t{strip.grid.columns()} * strip.grid.rows();
    if (columns_ > Grid::max_side || cells_ > Grid::max_cells) {
      value.refuse(ErrorCode::too_large,
                   fmt::format("the motifs up to this one have {} columns and {} cells; a panel may have {} and {}",
                               columns_, cells_, Grid::max_side, Grid::max_cells));
    }
    return strip;
  }
  std::vector<Strip> list(Value value) {
    std::vector<Strip> strips;
    value.each([&](Value motif, std::size_t) { strips.push_back(get(motif)); });
    return strips;
  }

 private:
  std::int64_t columns_ = 0;
  std::int64_t cells_ = 0;
};

// "strips" is known beside the other fields too: another name may be near to it.
constexpr std::array<std::string_view, 2> names_of_strips = {"rows", "strips"};
constexpr std::array<std::string_view, 6> names_of_halves = {"rows", "edge", "left", "centre", "axis", "strips"};

Panel get_part(Value value, const std::string& name) {
  const auto list = value.member("strips");
  const Fields fields(value, list ? Known(names_of_strips) : Known(names_of_halves));
  Motifs motifs;
  const int rows = fields.take("rows").number(1, Grid::max_side);
  if (list) {
    const std::vector<Strip> strips = motifs.list(*list);
    if (strips.empty()) list->refuse(ErrorCode::bad_value, "a part has one strip at least");
    return value.guard([&] { return join_strips(name, rows, strips); });
  }
  PanelParts parts;
  parts.name = name;
  parts.rows = rows;
  const auto edge = fields.find("edge");
  const auto left = fields.find("left");
  const auto centre = fields.find("centre");
  if (!edge && !centre && !left) {
    Place place;
    place.field = "strips";
    value.refuse(ErrorCode::missing_field, "a part has \"strips\", or else \"edge\", \"left\" or \"centre\"", place);
  }
  if (edge) parts.edge = motifs.get(*edge);
  if (left) parts.left = motifs.list(*left);
  if (centre) parts.centre = motifs.get(*centre);
  if (!edge && !centre && parts.left.empty()) left->refuse(ErrorCode::bad_value, "a part has one strip at least");
  if (const auto axis = fields.find("axis")) {
    constexpr std::array<std::string_view, 2> axes = {"line", "stitch"};
    parts.axis = static_cast<Axis>(axis->choice(axes.data(), axes.size()));
    if (centre) axis->refuse(ErrorCode::bad_value, "a part with a centre has its axis there, and names no other");
  }
  return value.guard([&] { return build_panel(parts); });
}

/// Parts from the bottom up, put together once all are read: each on all below it would be copied time and again.
class Parts {
 public:
  explicit Parts(std::string name) : name_(std::move(name)) {}

  void add(Value value) {
    const Panel part = get_part(value, name_);
    const Grid& grid = part.grid();
    if (!values_.empty() && columns_ != grid.columns()) {
      value.refuse(ErrorCode::size_mismatch, fmt::format("this part has {}; the parts below have {}",
                                                         count_of(grid.columns(), "column"), columns_));
    }
    const int below = rows_;
    value.guard([&] { rules::require_size(std::int64_t{below} + grid.rows(), grid.columns()); });
    axis_ = values_.empty() || axis_ == part.axis_half_columns() ? part.axis_half_columns() : std::nullopt;
    columns_ = grid.columns();
    rows_ += grid.rows();
    values_.emplace_back(rows_, value);
    for (const Cell cell : grid.cells()) cells_.push_back(static_cast<std::uint8_t>(cell));
    for (Crossing crossing : grid.crossings()) {
      crossing.row += below;
      crossings_.push_back(crossing);
    }
    for (Band band : part.bands()) {
      band.row += below;
      bands_.push_back(std::move(band));
    }
  }

  bool empty() const { return values_.empty(); }

  Panel together() && {
    Grid grid = Grid::from_cells(rows_, columns_, cells_);
    for (const Crossing& crossing : crossings_) {
      // What it lacks is in the row above it.
      const auto part = std::upper_bound(values_.begin(), std::prev(values_.end()), crossing.row,
                                         [](int row, const std::pair<int, Value>& one) { return row < one.first; });
      part->second.guard([&] { grid.cross(crossing); });
    }
    Panel panel(std::move(name_), std::move(grid), std::move(bands_));
    panel.set_axis_half_columns(axis_);
    return panel;
  }

 private:
  std::string name_;
  int rows_ = 0;
  int columns_ = 0;
  std::vector<std::pair<int, Value>> values_;  ///< of each part its top row
  std::vector<std::uint8_t> cells_;
  std::vector<Crossing> crossings_;
  std::vector<Band> bands_;
  std::optional<int> axis_;
};

Panel take_panel_by_parts(const Value& list, const std::string& name) {
  Parts parts(name);
  list.each([&](Value value, std::size_t) { parts.add(value); });
  if (parts.empty()) list.refuse(ErrorCode::bad_value, "a panel has one part at least");
  return std::move(parts).together();
}

}  // namespace

Panel read_panel(std::string_view json) {
  const json::Document document(json);
  const auto parts = document.root().member("parts");
  std::vector<std::string_view> known = {"name", "parts"};
  if (!parts) known.insert(known.end(), names_in_full.begin(), names_in_full.end());
  const Fields fields = json::open(document, panel_format, 1, known);
  const std::string name(fields.take("name").text());
  return parts ? take_panel_by_parts(*parts, name) : take_panel_in_full(fields, name);
}

std::string write(const Panel& panel) {
  json::Writer writer;
  writer.begin_file(panel_format, 1);
  writer.key("name");
  writer.text(panel.name());
  if (const auto axis = panel.axis_half_columns()) {
    writer.key("axis_half_columns");
    writer.integer(*axis);
  }
  json::put_grid(writer, panel.grid());
  writer.key("bands");
  writer.begin_array(Layout::lines);
  for (const Band& band : panel.bands()) one_band(writer, band);
  writer.end_array();
  writer.end_object();
  return writer.take();
}

}  // namespace latchwork::inline v0
