// Shapes of panels.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

EdgeShape edge_in(const latchwork_edge_shape* edge, const std::string& name) {
  const latchwork_edge_shape from = struct_in(edge, latchwork_edge_shape LATCHWORK_EDGE_SHAPE_INIT, name.c_str());
  require_zero(from.reserved, name + ".reserved");
  EdgeShape to;
  to.line = enumerator(from.line, EdgeLine::curve, (name + ".line").c_str());
  to.start = from.start;
  for (const auto& point : array_in(from.points, from.point_count, (name + ".points").c_str())) {
    to.points.push_back({point.row, point.columns});
  }
  for (const auto& event : array_in(from.events, from.event_count, (name + ".events").c_str())) {
    to.events.push_back({event.row, event.stitches, event.every, event.times});
  }
  return to;
}

Outline outline_in(const latchwork_outline* outline) {
  const latchwork_outline from = struct_in(outline, latchwork_outline LATCHWORK_OUTLINE_INIT, "outline");
  Outline to;
  to.rows.reserve(from.row_count);
  for (const auto& span : array_in(from.rows, from.row_count, "outline.rows"))
    to.rows.push_back({span.first, span.last});
  return to;
}

}  // namespace

namespace latchwork::c {

ShapeOptions shape_options_in(const latchwork_shape_options* options) {
  ShapeOptions to;
  if (options == nullptr) return to;
  const latchwork_shape_options from =
      struct_in(options, latchwork_shape_options LATCHWORK_SHAPE_OPTIONS_INIT, "options");
  if (from.edge_stitches < -1) refuse("edge_stitches", std::to_string(from.edge_stitches) + "; it may be -1 to 100");
  if (from.edge_stitches != 0) to.edge_stitches = from.edge_stitches < 0 ? 0 : from.edge_stitches;
  to.cut = enumerator(from.cut, CutWork::knit, "cut");
  return to;
}

}  // namespace latchwork::c

namespace latchwork::c {

latchwork_row_span row_span_out(const RowSpan& span) {
  return {span.first, span.last};
}

}  // namespace latchwork::c

latchwork_status latchwork_outlined(int32_t rows, int32_t columns, const latchwork_edge_shape* left,
                                    const latchwork_edge_shape* right, int32_t step, latchwork_row_span* spans,
                                    size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(spans, capacity, needed, "spans");
    room.take(outlined(rows, columns, edge_in(left, "left"), edge_in(right, "right"), step).rows, row_span_out);
  });
}

latchwork_status latchwork_grid_outline_of(const latchwork_grid* grid, latchwork_row_span* spans, size_t capacity,
                                           size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(spans, capacity, needed, "spans");
    room.take(outline_of(given(grid, "grid").value).rows, row_span_out);
  });
}

latchwork_status latchwork_grid_shape_findings(const latchwork_grid* grid, const latchwork_outline* outline,
                                               const latchwork_shape_options* options, latchwork_findings** out,
                                               latchwork_error* error) {
  return guarded(error, [&] {
    fill(out,
         [&] { return shape_findings(given(grid, "grid").value, outline_in(outline), shape_options_in(options)); });
  });
}

latchwork_status latchwork_panel_shaped(const latchwork_panel* panel, const latchwork_outline* outline,
                                        const latchwork_shape_options* options, latchwork_panel** out,
                                        latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] { return shaped(given(panel, "panel").value, outline_in(outline), shape_options_in(options)); });
  });
}

latchwork_status latchwork_outline_shaping_steps(const latchwork_outline* outline, latchwork_shaping_step* steps,
                                                 size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(steps, capacity, needed, "steps");
    room.take(shaping_steps(outline_in(outline)), [](const ShapingStep& step) {
      return latchwork_shaping_step{step.row, step.left, step.right};
    });
  });
}

latchwork_status latchwork_outline_text(const latchwork_outline* outline, char* text, size_t capacity, size_t* needed,
                                        latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(outline_text(outline_in(outline)));
  });
}
