// Yarn for a panel, by every route.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

latchwork_yarn_request yarn_request_default() {
  const YarnRequest from;
  latchwork_yarn_request to = LATCHWORK_YARN_REQUEST_INIT;
  to.pieces = from.pieces;
  to.waste_yarn = from.waste_yarn;
  to.seam_yarn = from.seam_yarn;
  to.plain = {from.plain.courses, from.plain.wales};
  to.cast_on_rows = from.cast_on_rows;
  to.bind_off_rows = from.bind_off_rows;
  to.waste_rows = from.waste_rows;
  to.seam_mm = from.seam_mm;
  to.seam_ratio = from.seam_ratio;
  to.sureness = from.sureness;
  to.allowance = from.allowance;
  return to;
}

// The elements of one of the request's arrays, with the field of each.
template <class To, class From, class Convert>
std::vector<To> list_in(const From* items, size_t count, const char* name, Convert&& convert) {
  std::vector<To> out;
  for (const From& from : array_in(items, count, (std::string("request.") + name).c_str())) {
    const std::string field = std::string(name) + "[" + std::to_string(out.size()) + "].";
    out.push_back(convert(from, field));
  }
  return out;
}

std::string texture_in(const char* texture, const std::string& field) {
  return &given(texture, field.c_str());
}

YarnRequest yarn_request_in(const latchwork_yarn_request* request) {
  const latchwork_yarn_request from = struct_in(request, yarn_request_default(), "request");
  YarnRequest to;
  to.yarns = list_in<Yarn>(from.yarns, from.yarn_count, "yarns", [](const latchwork_yarn& each, const std::string& at) {
    return Yarn{each.name == nullptr ? "" : each.name, latchwork::c::yarn_number_in(each.number, at + "number.system"),
                each.ball_g};
  });
  to.rows = list_in<YarnRows>(from.rows, from.row_count, "rows", [](const latchwork_yarn_rows& each, const auto&) {
    return YarnRows{each.first, each.last, each.yarn};
  });
  to.weighed = list_in<WeighedSwatch>(from.weighed, from.weighed_count, "weighed",
                                      [](const latchwork_weighed_swatch& each, const std::string& at) {
                                        return WeighedSwatch{texture_in(each.texture, at + "texture"),
                                                             each.weight_g,
                                                             each.scale_g,
                                                             each.width_mm,
                                                             each.height_mm,
                                                             each.stitches,
                                                             each.rows,
                                                             each.tex};
                                      });
  to.loops = list_in<MeasuredLoops>(
      from.loops, from.loop_count, "loops", [](const latchwork_measured_loops& each, const std::string& at) {
        return MeasuredLoops{texture_in(each.texture, at + "texture"), each.stitches, each.length_mm};
      });
  to.substitutes = list_in<Substitute>(
      from.substitutes, from.substitute_count, "substitutes",
      [](const latchwork_substitute& each, const std::string& at) {
        return Substitute{texture_in(each.texture, at + "texture"), texture_in(each.use, at + "use")};
      });
  to.plain = {from.plain.courses, from.plain.wales};
  to.pieces = from.pieces;
  to.cast_on_rows = from.cast_on_rows;
  to.bind_off_rows = from.bind_off_rows;
  to.waste_rows = from.waste_rows;
  to.waste_yarn = from.waste_yarn;
  to.seam_mm = from.seam_mm;
  to.seam_ratio = from.seam_ratio;
  to.seam_yarn = from.seam_yarn;
  to.sureness = from.sureness;
  to.allowance = from.allowance;
  return to;
}

}  // namespace

latchwork_status latchwork_yarn_request_default(latchwork_yarn_request* request, latchwork_error* error) {
  return guarded(error, [&] { StructRoom(request, "request").take(yarn_request_default()); });
}

latchwork_status latchwork_panel_yarn_need(const latchwork_panel* panel, const latchwork_swatch* swatch,
                                           const latchwork_yarn_request* request, latchwork_yarn_need** out,
                                           latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      return yarn_need(given(panel, "panel").value, given(swatch, "swatch").value, yarn_request_in(request));
    });
  });
}

latchwork_status latchwork_yarn_need_copy(const latchwork_yarn_need* need, latchwork_yarn_need** out,
                                          latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(need, "need").value; }); });
}

latchwork_status latchwork_yarn_need_equal(const latchwork_yarn_need* need, const latchwork_yarn_need* other,
                                           int32_t* equal, latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(need, "need").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_yarn_need_destroy(latchwork_yarn_need* need) {
  destroy(need);
}

latchwork_status latchwork_yarn_need_estimates(const latchwork_yarn_need* need, latchwork_yarn_estimate* estimates,
                                               size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(estimates, capacity, needed, "estimates");
    room.take(given(need, "need").value.estimates, [](const YarnEstimate& from) {
      return latchwork_yarn_estimate{from.weight_g, from.spread_g, from.length_m, static_cast<int32_t>(from.route)};
    });
  });
}

latchwork_status latchwork_yarn_need_shares(const latchwork_yarn_need* need, size_t index, latchwork_yarn_share* shares,
                                            size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(shares, capacity, needed, "shares");
    room.take(element(given(need, "need").value.estimates, index, "index").shares, [](const YarnShare& from) {
      return latchwork_yarn_share{from.weight_g, from.spread_g, from.length_m, from.buy_g, from.yarn, from.balls};
    });
  });
}

latchwork_status latchwork_yarn_need_notes(const latchwork_yarn_need* need, size_t index, char* text, size_t capacity,
                                           size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(lines_of(element(given(need, "need").value.estimates, index, "index").notes));
  });
}

latchwork_status latchwork_yarn_need_apart(const latchwork_yarn_need* need, double* apart, latchwork_error* error) {
  return guarded(error, [&] { given(apart, "apart") = given(need, "need").value.apart; });
}

latchwork_status latchwork_yarn_need_missing(const latchwork_yarn_need* need, char* text, size_t capacity,
                                             size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(lines_of(given(need, "need").value.missing));
  });
}

latchwork_status latchwork_yarn_need_warnings(const latchwork_yarn_need* need, char* text, size_t capacity,
                                              size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(lines_of(given(need, "need").value.warnings));
  });
}
