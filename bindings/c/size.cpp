// What a panel measures.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

latchwork_row_width row_out(const RowWidth& row) {
  return {row.row, row.columns, row.width_mm, row.spread_mm, row.margin_mm};
}

}  // namespace

namespace latchwork::c {

latchwork_size size_out(const Size& size) {
  latchwork_size to = LATCHWORK_SIZE_INIT;
  to.width_mm = size.width_mm;
  to.least_width_mm = size.least_width_mm;
  to.height_mm = size.height_mm;
  to.least_height_mm = size.least_height_mm;
  to.greatest_height_mm = size.greatest_height_mm;
  to.seam_width_mm = size.seam_width_mm;
  to.seam_height_mm = size.seam_height_mm;
  to.width_spread_mm = size.width_spread_mm;
  to.height_spread_mm = size.height_spread_mm;
  to.level = size.level;
  to.width_margin_mm = size.width_margin_mm;
  to.height_margin_mm = size.height_margin_mm;
  to.spread_known = size.spread_known ? 1 : 0;
  to.widest_row = size.widest_row;
  to.widest_columns = size.widest_columns;
  to.cast_on = row_out(size.cast_on);
  to.bind_off = row_out(size.bind_off);
  return to;
}

std::vector<latchwork_strip_size> strip_sizes_out(const Size& size) {
  std::vector<latchwork_strip_size> list;
  for (const StripSize& strip : size.strips) {
    const bool same_band = !list.empty() && list.back().band == strip.band;
    const int32_t index = same_band ? list.back().strip + 1 : 0;
    list.push_back({strip.band, index, strip.columns, strip.rows, strip.width_mm, strip.height_mm});
  }
  return list;
}

}  // namespace latchwork::c

namespace {

latchwork_size_options size_options_default() {
  const SizeOptions from;
  latchwork_size_options to = LATCHWORK_SIZE_OPTIONS_INIT;
  to.state = LATCHWORK_CLOTH_STATE_MOST_FINISHED;
  to.seam_left = from.seam_left;
  to.seam_right = from.seam_right;
  to.seam_bottom = from.seam_bottom;
  to.seam_top = from.seam_top;
  to.level = from.level;
  return to;
}

Size measured(const latchwork_panel* panel, const latchwork_swatch* swatch, const latchwork_size_options* options) {
  return latchwork::size(given(panel, "panel").value, given(swatch, "swatch").value, size_options_in(options));
}

}  // namespace

namespace latchwork::c {

SizeOptions size_options_in(const latchwork_size_options* options) {
  if (options == nullptr) return {};
  const latchwork_size_options from = struct_in(options, size_options_default(), "options");
  SizeOptions to;
  to.state = cloth_state_in(from.state, "options.state");
  to.substitutes = substitutes_in(from.substitutes, from.substitute_count, "options.substitutes");
  to.seam_left = from.seam_left;
  to.seam_right = from.seam_right;
  to.seam_bottom = from.seam_bottom;
  to.seam_top = from.seam_top;
  to.level = from.level;
  return to;
}

}  // namespace latchwork::c

latchwork_status latchwork_size_options_default(latchwork_size_options* size_options, latchwork_error* error) {
  return guarded(error, [&] { StructRoom(size_options, "size_options").take(size_options_default()); });
}

latchwork_status latchwork_panel_size(const latchwork_panel* panel, const latchwork_swatch* swatch,
                                      const latchwork_size_options* options, latchwork_size* size,
                                      latchwork_error* error) {
  return guarded(error, [&] { StructRoom(size, "size").take(size_out(measured(panel, swatch, options))); });
}

latchwork_status latchwork_panel_size_strips(const latchwork_panel* panel, const latchwork_swatch* swatch,
                                             const latchwork_size_options* options, latchwork_strip_size* strips,
                                             size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(strips, capacity, needed, "strips");
    room.take(strip_sizes_out(measured(panel, swatch, options)));
  });
}

latchwork_status latchwork_panel_size_findings(const latchwork_panel* panel, const latchwork_swatch* swatch,
                                               const latchwork_size_options* options, latchwork_findings** out,
                                               latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return measured(panel, swatch, options).findings; }); });
}

latchwork_status latchwork_panel_measuring_findings(const latchwork_panel* panel, const latchwork_swatch* swatch,
                                                    const latchwork_size_options* options, latchwork_findings** out,
                                                    latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      return measuring_findings(given(panel, "panel").value, given(swatch, "swatch").value, size_options_in(options));
    });
  });
}
