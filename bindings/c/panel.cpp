#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

std::optional<Strip> strip_or_none(const latchwork_strip* strip) {
  return strip == nullptr ? std::nullopt : std::optional<Strip>(strip->value);
}

std::vector<Band> bands_in(std::span<const latchwork_band> bands, std::span<const latchwork_strip_span> spans) {
  std::vector<Band> values;
  std::size_t used = 0;
  for (const latchwork_band& band : bands) {
    const std::size_t left = spans.size() - used;
    if (band.strips < 0 || static_cast<std::size_t>(band.strips) > left) {
      Place place;
      place.field = "bands[" + std::to_string(values.size()) + "].strips";
      throw Error(ErrorCode::size_mismatch, place,
                  place.field + " is " + std::to_string(band.strips) + "; " + std::to_string(left) + " spans are left");
    }
    Band& value = values.emplace_back();
    value.row = band.row;
    value.rows = band.rows;
    for (const latchwork_strip_span& span : spans.subspan(used, static_cast<std::size_t>(band.strips))) {
      const std::string field = "spans[" + std::to_string(used++) + "]";
      value.strips.push_back({&given(span.name, (field + ".name").c_str()),
                              &given(span.texture, (field + ".texture").c_str()), span.column, span.columns,
                              span.repeat_rows});
    }
  }
  if (used == spans.size()) return values;
  Place place;
  place.field = "spans_count";
  throw Error(
      ErrorCode::size_mismatch, place,
      "spans_count is " + std::to_string(spans.size()) + "; the bands have " + std::to_string(used) + " strips");
}

}  // namespace

latchwork_status latchwork_panel_create(const char* name, const latchwork_strip* strip, latchwork_panel** out,
                                        latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return Panel(&given(name, "name"), given(strip, "strip").value); }); });
}

latchwork_status latchwork_panel_from_bands(const char* name, const latchwork_grid* grid, const latchwork_band* bands,
                                            size_t bands_count, const latchwork_strip_span* spans, size_t spans_count,
                                            latchwork_panel** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      return Panel(&given(name, "name"), given(grid, "grid").value,
                   bands_in(array_in(bands, bands_count, "bands"), array_in(spans, spans_count, "spans")));
    });
  });
}

latchwork_status latchwork_build_panel(const latchwork_panel_parts* parts, latchwork_panel** out,
                                       latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const latchwork_panel_parts from = struct_in(parts, LATCHWORK_PANEL_PARTS_INIT, "parts");
      require_zero(from.reserved, "parts.reserved");
      PanelParts value;
      value.name = from.name == nullptr ? "" : from.name;
      value.rows = from.rows;
      value.edge = strip_or_none(from.edge);
      value.left = strips_in(from.left, from.left_count, "parts.left");
      value.centre = strip_or_none(from.centre);
      value.axis = enumerator(from.axis, Axis::stitch, "parts.axis");
      return build_panel(value);
    });
  });
}

latchwork_status latchwork_join_strips(const char* name, int32_t rows, const latchwork_strip* const* strips,
                                       size_t count, latchwork_panel** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] { return join_strips(&given(name, "name"), rows, strips_in(strips, count, "strips")); });
  });
}

latchwork_status latchwork_panel_copy(const latchwork_panel* panel, latchwork_panel** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(panel, "panel").value; }); });
}

latchwork_status latchwork_panel_equal(const latchwork_panel* panel, const latchwork_panel* other, int32_t* equal,
                                       latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(panel, "panel").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_panel_destroy(latchwork_panel* panel) {
  destroy(panel);
}

latchwork_status latchwork_panel_name(const latchwork_panel* panel, char* text, size_t capacity, size_t* needed,
                                      latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(given(panel, "panel").value.name());
  });
}

latchwork_status latchwork_panel_grid(const latchwork_panel* panel, latchwork_grid** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(panel, "panel").value.grid(); }); });
}

latchwork_status latchwork_panel_bands(const latchwork_panel* panel, latchwork_band* bands, size_t capacity,
                                       size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(bands, capacity, needed, "bands");
    room.take(given(panel, "panel").value.bands(), [](const Band& band) {
      return latchwork_band{band.row, band.rows, count_of(band.strips)};
    });
  });
}

latchwork_status latchwork_panel_strips(const latchwork_panel* panel, size_t band, latchwork_strip_span* strips,
                                        size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(strips, capacity, needed, "strips");
    room.take(element(given(panel, "panel").value.bands(), band, "band").strips, [](const StripSpan& span) {
      return latchwork_strip_span{span.name.c_str(), span.texture.c_str(), span.column, span.columns, span.repeat_rows};
    });
  });
}

latchwork_status latchwork_panel_axis_half_columns(const latchwork_panel* panel, int32_t* half_columns,
                                                   latchwork_error* error) {
  return guarded(error, [&] {
    given(half_columns, "half_columns") = given(panel, "panel").value.axis_half_columns().value_or(0);
  });
}

latchwork_status latchwork_panel_set_axis_half_columns(latchwork_panel* panel, int32_t half_columns,
                                                       latchwork_error* error) {
  return guarded(error, [&] {
    given(panel, "panel")
        .value.set_axis_half_columns(half_columns == 0 ? std::nullopt : std::optional<int>(half_columns));
  });
}

latchwork_status latchwork_panel_above(const latchwork_panel* panel, const latchwork_panel* below,
                                       latchwork_panel** out, latchwork_error* error) {
  return guarded(error,
                 [&] { fill(out, [&] { return given(panel, "panel").value.above(given(below, "below").value); }); });
}

latchwork_status latchwork_panel_mirrored(const latchwork_panel* panel, latchwork_panel** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(panel, "panel").value.mirrored(); }); });
}
