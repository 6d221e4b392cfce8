// Geometry of plain knit.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

CountPerLength count_in(const latchwork_count_per_length* count, const char* name) {
  const latchwork_count_per_length& from = given(count, name);
  return {enumerator(from.counted, Counted::rows, "counted"), from.count, from.length_mm};
}
PlainConstants constants_in(const latchwork_plain_constants* constants) {
  const latchwork_plain_constants& from = given(constants, "constants");
  return {from.courses, from.wales};
}
YarnNumber yarn_in(const latchwork_yarn_number* yarn) {
  return latchwork::c::yarn_number_in(given(yarn, "yarn"), "system");
}

}  // namespace

latchwork_status latchwork_plain_constants_of(int32_t state, latchwork_plain_constants* constants,
                                              latchwork_error* error) {
  return guarded(error, [&] {
    latchwork_plain_constants& to = given(constants, "constants");
    const PlainConstants from = plain_constants_of(enumerator(state, PlainState::fully_relaxed, "state"));
    to = {from.courses, from.wales};
  });
}

latchwork_status latchwork_plain_loop_mm(const latchwork_count_per_length* gauge,
                                         const latchwork_plain_constants* constants, double* loop_mm,
                                         latchwork_error* error) {
  return guarded(error,
                 [&] { given(loop_mm, "loop_mm") = plain_loop_mm(count_in(gauge, "gauge"), constants_in(constants)); });
}

latchwork_status latchwork_plain_per_10cm(int32_t counted, double loop_mm, const latchwork_plain_constants* constants,
                                          double* value, latchwork_error* error) {
  return guarded(error, [&] {
    given(value, "value") =
        plain_per_10cm(enumerator(counted, Counted::rows, "counted"), loop_mm, constants_in(constants));
  });
}

latchwork_status latchwork_tightness_factor(const latchwork_yarn_number* yarn, double loop_mm, double* value,
                                            latchwork_error* error) {
  return guarded(error, [&] { given(value, "value") = tightness_factor(yarn_in(yarn), loop_mm); });
}

latchwork_status latchwork_area_density_g_m2(const latchwork_count_per_length* stitches,
                                             const latchwork_count_per_length* rows, double loop_mm,
                                             const latchwork_yarn_number* yarn, double* value, latchwork_error* error) {
  return guarded(error, [&] {
    given(value, "value") =
        area_density_g_m2(count_in(stitches, "stitches"), count_in(rows, "rows"), loop_mm, yarn_in(yarn));
  });
}
