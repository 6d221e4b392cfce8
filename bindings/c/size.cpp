// What a panel measures, and which panel measures what is wanted.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

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

Size measured(const latchwork_panel* panel, const latchwork_swatch* swatch, const latchwork_size_options* options) {
  return latchwork::size(given(panel, "panel").value, given(swatch, "swatch").value, size_options_in(options));
}

latchwork_fit_request fit_request_default() {
  const FitRequest from;
  latchwork_fit_request to = LATCHWORK_FIT_REQUEST_INIT;
  to.edge_least = from.edge_least;
  to.edge_most = from.edge_most;
  to.repeats_least = from.repeats_least;
  to.repeats_most = from.repeats_most;
  to.rows_step = from.rows_step;
  to.rows_extra = from.rows_extra;
  to.needles = from.needles;
  to.most = from.most;
  return to;
}

FitRequest fit_request_in(const latchwork_fit_request* request) {
  const latchwork_fit_request from = struct_in(request, fit_request_default(), "request");
  FitRequest to;
  to.width_mm = from.width_mm;
  to.height_mm = from.height_mm;
  to.repeat = strips_in(from.repeat, from.repeat_count, "request.repeat");
  to.closing = strips_in(from.closing, from.closing_count, "request.closing");
  if (from.edge != nullptr) to.edge = from.edge->value;
  to.edge_least = from.edge_least;
  to.edge_most = from.edge_most;
  to.repeats_least = from.repeats_least;
  to.repeats_most = from.repeats_most;
  to.rows_step = from.rows_step;
  to.rows_extra = from.rows_extra;
  to.needles = from.needles;
  to.most = from.most;
  return to;
}

}  // namespace

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

latchwork_status latchwork_fit_request_default(latchwork_fit_request* request, latchwork_error* error) {
  return guarded(error, [&] { StructRoom(request, "request").take(fit_request_default()); });
}

latchwork_status latchwork_fit(const latchwork_fit_request* request, const latchwork_swatch* swatch,
                               latchwork_fit_candidate* candidates, size_t capacity, size_t* needed,
                               latchwork_error* error) {
  return guarded(error, [&] {
    Room room(candidates, capacity, needed, "candidates");
    room.take(fit(fit_request_in(request), given(swatch, "swatch").value), [](const FitCandidate& from) {
      return latchwork_fit_candidate{from.repeats,        from.edge_columns,    from.columns,
                                     from.rows,           from.width_mm,        from.height_mm,
                                     from.width_error_mm, from.height_error_mm, from.error};
    });
  });
}

latchwork_status latchwork_fitted(const latchwork_fit_request* request, const latchwork_fit_candidate* candidate,
                                  latchwork_panel** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const latchwork_fit_candidate& from = given(candidate, "candidate");
      return fitted(fit_request_in(request), {from.repeats, from.edge_columns, from.columns, from.rows, from.width_mm,
                                              from.height_mm, from.width_error_mm, from.height_error_mm, from.error});
    });
  });
}
