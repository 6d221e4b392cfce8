#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "grid/rules.hpp"
#include "grid/stitches.hpp"
#include "latchwork/shaping.hpp"
#include "shaping/check.hpp"
#include "shaping/curve.hpp"

namespace latchwork::inline v0 {
namespace shaping {

void refuse(std::string field, const std::string& message, int row) {
  Place place;
  place.row = row;
  place.field = std::move(field);
  throw Error(ErrorCode::bad_argument, place, message);
}

RowSpan shared_columns(const RowSpan& below, const RowSpan& above, int row, const char* field) {
  const RowSpan shared{std::max(below.first, above.first), std::min(below.last, above.last)};
  if (shared.first > shared.last) {
    refuse(field, fmt::format("rows {} and {} have no column in common: they are two pieces", row - 1, row), row);
  }
  return shared;
}

void check(const Outline& outline) {
  if (outline.rows.empty()) refuse("outline", "the outline has no row");
  if (outline.rows.size() > static_cast<std::size_t>(Grid::max_side)) {
    refuse("outline", fmt::format("the outline has {} rows; the limit is {}", outline.rows.size(), Grid::max_side));
  }
  int row = 0;
  for (const RowSpan& span : outline.rows) {
    ++row;
    if (span.first < 0 || span.first > span.last || span.last >= Grid::max_side) {
      refuse("outline", fmt::format("row {} of the outline goes from column {} to {}", row, span.first, span.last),
             row);
    }
    if (row > 1) shared_columns(outline.rows[static_cast<std::size_t>(row) - 2], span, row, "outline");
  }
}

void check(const Grid& grid, const Outline& outline, const ShapeOptions& options) {
  check(outline);
  const auto mismatch = [&](int row, const std::string& message) {
    Place place;
    place.row = row;
    place.field = "outline";
    throw Error(ErrorCode::size_mismatch, place, message);
  };
  if (outline.rows.size() != static_cast<std::size_t>(grid.rows())) {
    mismatch(0, fmt::format("the outline has {} rows; the grid has {}", outline.rows.size(), grid.rows()));
  }
  int row = 0;
  for (const RowSpan& span : outline.rows) {
    ++row;
    if (span.last >= grid.columns()) {
      mismatch(row, fmt::format("row {} of the outline ends at column {}; the grid has columns 0 to {}", row, span.last,
                                grid.columns() - 1));
    }
  }
  if (options.edge_stitches < 0 || options.edge_stitches > 100) {
    refuse("edge_stitches", fmt::format("edge_stitches is {}; it must be 0..100", options.edge_stitches));
  }
  if (options.cut > CutWork::knit) {
    refuse("cut", fmt::format("cut is {}; it must be 0 (refuse) or 1 (knit)", static_cast<int>(options.cut)));
  }
}

}  // namespace shaping

namespace {

using shaping::refuse;

void check_points(const std::vector<EdgePoint>& points, int rows, int columns, const std::string& side) {
  int below = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const EdgePoint& point = points[i];
    const std::string at = fmt::format("{}.points[{}].", side, i);
    if (point.row < below || point.row > rows) {
      refuse(at + "row", fmt::format("{}row is {}; it must be {}..{}, from the bottom up", at, point.row, below, rows));
    }
    if (!(point.columns >= 0 && point.columns <= columns)) {  // NaN too
      refuse(at + "columns", fmt::format("{}columns is {}; it must be 0..{}", at, point.columns, columns));
    }
    below = point.row;
  }
}

void check_events(const std::vector<EdgeEvent>& events, int rows, int step, const std::string& side) {
  const int last = rows - 1;
  for (std::size_t i = 0; i < events.size(); ++i) {
    const EdgeEvent& event = events[i];
    const std::string at = fmt::format("{}.events[{}].", side, i);
    const auto require = [&](const char* field, std::int64_t value, bool fits, const std::string& limits) {
      if (!fits) refuse(at + field, fmt::format("{}{} is {}; it must be {}", at, field, value, limits));
    };
    require("row", event.row, event.row >= 1 && event.row <= last, fmt::format("1..{}", last));
    require("stitches", event.stitches, event.stitches != 0 && std::abs(std::int64_t{event.stitches}) <= Grid::max_side,
            fmt::format("-{0}..{0} and not 0", Grid::max_side));
    require("every", event.every, event.every >= 1, "1 or more");
    const int most = 1 + (last - event.row) / event.every;
    require("times", event.times, event.times >= 1 && event.times <= most,
            fmt::format("1..{}, so that the last is after row {} or below", most, last));
    const std::string multiple = fmt::format("a multiple of the step, {}", step);
    require("row", event.row, event.row % step == 0, multiple);
    require("every", event.every, event.times == 1 || event.every % step == 0, multiple);
  }
}

void check_edge(const EdgeShape& edge, int rows, int columns, int step, const std::string& side) {
  for (const auto& [count, name] : {std::pair{edge.points.size(), "points"}, std::pair{edge.events.size(), "events"}}) {
    if (count <= max_edge_items) continue;
    Place place;
    place.field = fmt::format("{}.{}", side, name);
    throw Error(ErrorCode::too_large, place,
                fmt::format("{} holds {}; the limit is {}", place.field, count, max_edge_items));
  }
  if (edge.line > EdgeLine::curve) {
    refuse(side + ".line",
           fmt::format("{}.line is {}; it must be 0 (straight) or 1 (curve)", side, static_cast<int>(edge.line)));
  }
  if (edge.start < 0 || edge.start > columns) {
    refuse(side + ".start", fmt::format("{}.start is {}; it must be 0..{}", side, edge.start, columns));
  }
  if (!edge.points.empty() && (!edge.events.empty() || edge.start != 0)) {
    refuse(side, fmt::format("the {} edge has points and a start or events; it may have one or the other", side));
  }
  check_points(edge.points, rows, columns, side);
  check_events(edge.events, rows, step, side);
}

/// Columns in from the panel's edge, by row.
std::vector<int> insets_of(const EdgeShape& edge, int rows, int columns, int step, const std::string& side) {
  std::vector<int> insets(static_cast<std::size_t>(rows), edge.start);
  if (!edge.points.empty()) {
    const shaping::EdgeCurve curve(edge.points, edge.line);
    for (int low = 0; low < rows; low += std::min(step, rows - low)) {
      const int high = low + std::min(step, rows - low);
      const double middle = low + (high - low) / 2.0;
      // Halves go up, also where binary fractions come out a trace below them: a slope is to be even.
      const auto inset = static_cast<int>(std::floor(curve.at(middle) + 0.5 + 1e-9));
      std::fill(insets.begin() + low, insets.begin() + high, inset);
    }
    return insets;
  }
  std::vector<std::int64_t> change(static_cast<std::size_t>(rows), 0);  // by the first row that is changed, less 1
  for (const EdgeEvent& event : edge.events) {
    for (int i = 0; i < event.times; ++i)
      change[static_cast<std::size_t>(event.row) +
             static_cast<std::size_t>(i) * static_cast<std::size_t>(event.every)] += event.stitches;
  }
  std::int64_t inset = edge.start;
  for (int row = 1; row <= rows; ++row) {
    inset += change[static_cast<std::size_t>(row) - 1];
    if (inset < 0 || inset > columns) {
      refuse(side,
             fmt::format("the {} edge lies {} columns in from the panel's edge in row {}; it must be 0..{}", side,
                         inset, row, columns),
             row);
    }
    insets[static_cast<std::size_t>(row) - 1] = static_cast<int>(inset);
  }
  return insets;
}

}  // namespace

Outline outlined(int rows, int columns, const EdgeShape& left, const EdgeShape& right, int step) {
  rules::require_size(rows, columns);
  if (step < 1 || step > Grid::max_side) {
    refuse("step", fmt::format("step is {}; it must be 1..{}", step, Grid::max_side));
  }
  check_edge(left, rows, columns, step, "left");
  check_edge(right, rows, columns, step, "right");
  const std::vector<int> lefts = insets_of(left, rows, columns, step, "left");
  const std::vector<int> rights = insets_of(right, rows, columns, step, "right");
  Outline out;
  out.rows.reserve(lefts.size());
  for (std::size_t i = 0; i < lefts.size(); ++i) {
    const RowSpan span{lefts[i], columns - 1 - rights[i]};
    const int row = static_cast<int>(i) + 1;
    if (span.first > span.last) {
      refuse("outline",
             fmt::format("no stitch is left in row {}: the left edge lies {} columns in, the right edge {}, of {}", row,
                         lefts[i], rights[i], columns),
             row);
    }
    if (row > 1) shaping::shared_columns(out.rows.back(), span, row, "outline");
    out.rows.push_back(span);
  }
  return out;
}

Outline outline_of(const Grid& grid) {
  Outline out;
  out.rows.reserve(static_cast<std::size_t>(grid.rows()));
  for (int row = 1; row <= grid.rows(); ++row) {
    const std::optional<OuterStitches> outer = outer_stitches(grid, row);
    if (!outer) refuse("grid", fmt::format("row {} has no stitch", row), row);
    const RowSpan span{outer->first, outer->last};
    if (row > 1) shaping::shared_columns(out.rows.back(), span, row, "grid");
    out.rows.push_back(span);
  }
  return out;
}

}  // namespace latchwork::inline v0
