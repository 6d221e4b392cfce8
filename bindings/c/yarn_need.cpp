// Yarn for a panel, by every route.
#include <memory>

#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

// All but the lists.
latchwork_yarn_request request_out(const YarnRequest& from) {
  latchwork_yarn_request to = LATCHWORK_YARN_REQUEST_INIT;
  to.pieces = from.pieces;
  to.waste_yarn = from.waste_yarn;
  to.seam_yarn = from.seam_yarn;
  to.state = from.state ? static_cast<int32_t>(*from.state) : LATCHWORK_CLOTH_STATE_MOST_FINISHED;
  if (from.plain) to.plain = {from.plain->courses, from.plain->wales};
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

// Copies of the lists as C has them.
template <class To, class From, class Convert>
void list_out(const std::vector<From>& from, std::vector<To>& to, Convert&& convert) {
  to.reserve(from.size());
  for (const From& each : from) to.push_back(convert(each));
}

}  // namespace

namespace latchwork::c {

YarnRequest yarn_request_in(const latchwork_yarn_request* request) {
  const latchwork_yarn_request from = struct_in(request, request_out({}), "request");
  YarnRequest to;
  to.yarns = list_in<Yarn>(from.yarns, from.yarn_count, "yarns", [](const latchwork_yarn& each, const std::string& at) {
    return Yarn{each.name == nullptr ? "" : each.name, latchwork::c::yarn_number_in(each.number, at + "number.system"),
                each.ball_g};
  });
  to.rows = list_in<YarnRows>(from.rows, from.row_count, "rows", [](const latchwork_yarn_rows& each, const auto&) {
    return YarnRows{each.first, each.last, each.yarn};
  });
  to.weighed = list_in<WeighedSwatch>(
      from.weighed, from.weighed_count, "weighed", [](const latchwork_weighed_swatch& each, const std::string& at) {
        return WeighedSwatch{texture_in(each.texture, at + "texture"),
                             each.weight_g,
                             each.scale_g,
                             each.width_mm,
                             each.height_mm,
                             each.stitches,
                             each.rows,
                             each.tex,
                             enumerator(each.state, ClothState::washed, (at + "state").c_str())};
      });
  to.loops = list_in<MeasuredLoops>(
      from.loops, from.loop_count, "loops", [](const latchwork_measured_loops& each, const std::string& at) {
        return MeasuredLoops{texture_in(each.texture, at + "texture"), each.stitches, each.length_mm};
      });
  to.substitutes = substitutes_in(from.substitutes, from.substitute_count, "request.substitutes");
  to.state = cloth_state_in(from.state, "request.state");
  if (from.plain.courses != 0 || from.plain.wales != 0) to.plain = {from.plain.courses, from.plain.wales};
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

void fill_yarn_file(latchwork_yarn_file** out, const std::function<YarnRequest()>& make) {
  given(out, "out") = nullptr;
  auto file = std::make_unique<latchwork_yarn_file>();
  file->value = make();
  const YarnRequest& from = file->value;
  list_out(from.yarns, file->yarns, [](const Yarn& each) {
    return latchwork_yarn{each.name.c_str(), yarn_number_out(each.number), each.ball_g};
  });
  list_out(from.rows, file->rows, [](const YarnRows& each) {
    return latchwork_yarn_rows{each.first, each.last, each.yarn};
  });
  list_out(from.weighed, file->weighed, [](const WeighedSwatch& each) {
    return latchwork_weighed_swatch{each.texture.c_str(),
                                    each.weight_g,
                                    each.scale_g,
                                    each.width_mm,
                                    each.height_mm,
                                    each.stitches,
                                    each.rows,
                                    each.tex,
                                    static_cast<int32_t>(each.state)};
  });
  list_out(from.loops, file->loops, [](const MeasuredLoops& each) {
    return latchwork_measured_loops{each.texture.c_str(), each.stitches, each.length_mm};
  });
  list_out(from.substitutes, file->substitutes, [](const Substitute& each) {
    return latchwork_substitute{each.texture.c_str(), each.use.c_str()};
  });
  *out = file.release();
}

}  // namespace latchwork::c

latchwork_status latchwork_yarn_file_copy(const latchwork_yarn_file* file, latchwork_yarn_file** out,
                                          latchwork_error* error) {
  return guarded(error, [&] { fill_yarn_file(out, [&] { return given(file, "file").value; }); });
}

latchwork_status latchwork_yarn_file_equal(const latchwork_yarn_file* file, const latchwork_yarn_file* other,
                                           int32_t* equal, latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(file, "file").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_yarn_file_destroy(latchwork_yarn_file* file) {
  destroy(file);
}

latchwork_status latchwork_yarn_file_request(const latchwork_yarn_file* file, latchwork_yarn_request* request,
                                             latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(request, "request");
    const latchwork_yarn_file& of = given(file, "file");
    latchwork_yarn_request to = request_out(of.value);
    to.yarns = of.yarns.data();
    to.yarn_count = of.yarns.size();
    to.rows = of.rows.data();
    to.row_count = of.rows.size();
    to.weighed = of.weighed.data();
    to.weighed_count = of.weighed.size();
    to.loops = of.loops.data();
    to.loop_count = of.loops.size();
    to.substitutes = of.substitutes.data();
    to.substitute_count = of.substitutes.size();
    room.take(to);
  });
}

latchwork_status latchwork_yarn_request_default(latchwork_yarn_request* request, latchwork_error* error) {
  return guarded(error, [&] { StructRoom(request, "request").take(request_out({})); });
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
      return latchwork_yarn_estimate{from.weight_g,
                                     from.spread_g,
                                     from.margin_g,
                                     from.length_m,
                                     static_cast<int32_t>(from.route),
                                     from.spread_known ? 1 : 0};
    });
  });
}

latchwork_status latchwork_yarn_need_shares(const latchwork_yarn_need* need, size_t index, latchwork_yarn_share* shares,
                                            size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(shares, capacity, needed, "shares");
    room.take(element(given(need, "need").value.estimates, index, "index").shares, [](const YarnShare& from) {
      return latchwork_yarn_share{from.weight_g, from.spread_g, from.margin_g, from.length_m,
                                  from.buy_g,    from.yarn,     from.balls};
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

latchwork_status latchwork_yarn_need_decides(const latchwork_yarn_need* need, int32_t* index, latchwork_error* error) {
  return guarded(error, [&] { given(index, "index") = given(need, "need").value.decides; });
}

latchwork_status latchwork_yarn_need_why(const latchwork_yarn_need* need, char* text, size_t capacity, size_t* needed,
                                         latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(given(need, "need").value.why);
  });
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
