// Swatches and the gauges measured on them.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

std::vector<Measurement> measurements_in(std::span<const latchwork_measurement> measurements) {
  std::vector<Measurement> values;
  values.reserve(measurements.size());
  for (const latchwork_measurement& from : measurements) {
    const std::string field = "measurements[" + std::to_string(values.size()) + "]";
    Measurement& to = values.emplace_back();
    to.texture = &given(from.texture, (field + ".texture").c_str());
    to.counted = enumerator(from.counted, Counted::rows, (field + ".counted").c_str());
    to.count = from.count;
    to.length_mm = from.length_mm;
    if (from.place != nullptr) to.place = from.place;
  }
  return values;
}

}  // namespace

latchwork_status latchwork_swatch_create(const latchwork_measurement* measurements, size_t count,
                                         latchwork_swatch** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] { return Swatch(measurements_in(array_in(measurements, count, "measurements"))); });
  });
}

latchwork_status latchwork_swatch_copy(const latchwork_swatch* swatch, latchwork_swatch** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(swatch, "swatch").value; }); });
}

latchwork_status latchwork_swatch_equal(const latchwork_swatch* swatch, const latchwork_swatch* other, int32_t* equal,
                                        latchwork_error* error) {
  return guarded(error,
                 [&] { given(equal, "equal") = given(swatch, "swatch").value == given(other, "other").value ? 1 : 0; });
}

void latchwork_swatch_destroy(latchwork_swatch* swatch) {
  destroy(swatch);
}

latchwork_status latchwork_swatch_measurements(const latchwork_swatch* swatch, latchwork_measurement* measurements,
                                               size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(measurements, capacity, needed, "measurements");
    room.take(given(swatch, "swatch").value.measurements(), [](const Measurement& from) {
      return latchwork_measurement{from.texture.c_str(), from.place.c_str(), from.count, from.length_mm,
                                   static_cast<int32_t>(from.counted)};
    });
  });
}

latchwork_status latchwork_swatch_textures(const latchwork_swatch* swatch, const char** textures, size_t capacity,
                                           size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(textures, capacity, needed, "textures");
    const Swatch& from = given(swatch, "swatch").value;
    // The swatch's own texts, not those of the list, which goes when this call returns.
    room.take(from.textures(), [&](const std::string& texture) {
      for (const Measurement& measurement : from.measurements()) {
        if (measurement.texture == texture) return measurement.texture.c_str();
      }
      return "";
    });
  });
}

latchwork_status latchwork_swatch_has(const latchwork_swatch* swatch, const char* texture, int32_t* has,
                                      latchwork_error* error) {
  return guarded(error,
                 [&] { given(has, "has") = given(swatch, "swatch").value.has(&given(texture, "texture")) ? 1 : 0; });
}

latchwork_status latchwork_swatch_gauge(const latchwork_swatch* swatch, const char* texture, latchwork_gauge* gauge,
                                        latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(gauge, "gauge");
    const Gauge from = given(swatch, "swatch").value.gauge(&given(texture, "texture"));
    latchwork_gauge to = LATCHWORK_GAUGE_INIT;
    to.stitches_places = from.stitches.places;
    to.rows_places = from.rows.places;
    to.stitches_per_10cm = from.stitches.per_10cm;
    to.stitches_spread = from.stitches.spread;
    to.rows_per_10cm = from.rows.per_10cm;
    to.rows_spread = from.rows.spread;
    room.take(to);
  });
}
