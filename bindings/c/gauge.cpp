// Swatches and the gauges measured on them.
#include <string_view>
#include <unordered_map>

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
    if (from.swatch != nullptr) to.swatch = from.swatch;
    to.state = enumerator(from.state, ClothState::washed, (field + ".state").c_str());
    to.line = from.line;
  }
  return values;
}

// The swatch's own texts, which live as long as it does.
class LentTextures {
 public:
  explicit LentTextures(const Swatch& swatch) {
    for (const Measurement& each : swatch.measurements()) texts_.emplace(each.texture, each.texture.c_str());
  }
  const char* of(std::string_view texture) const { return texts_.at(texture); }

 private:
  std::unordered_map<std::string_view, const char*> texts_;
};

}  // namespace

namespace latchwork::c {

std::optional<ClothState> cloth_state_in(std::int32_t state, const char* field) {
  if (state == LATCHWORK_CLOTH_STATE_MOST_FINISHED) return std::nullopt;
  constexpr std::int32_t last = LATCHWORK_CLOTH_STATE_WASHED;
  if (state < 0 || state > last) refuse(field, std::to_string(state) + "; it may be -1 to " + std::to_string(last));
  return static_cast<ClothState>(state);
}

std::vector<Substitute> substitutes_in(const latchwork_substitute* substitutes, std::size_t count, const char* name) {
  std::vector<Substitute> out;
  for (const latchwork_substitute& from : array_in(substitutes, count, name)) {
    const std::string field = "substitutes[" + std::to_string(out.size()) + "].";
    out.push_back({&given(from.texture, (field + "texture").c_str()), &given(from.use, (field + "use").c_str())});
  }
  return out;
}

}  // namespace latchwork::c

const char* latchwork_cloth_state_name(int32_t state) {
  if (state < 0 || state > LATCHWORK_CLOTH_STATE_WASHED) return "";
  return cloth_state_name(static_cast<ClothState>(state)).data();
}

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
      return latchwork_measurement{from.texture.c_str(),
                                   from.place.c_str(),
                                   from.swatch.c_str(),
                                   from.count,
                                   from.length_mm,
                                   static_cast<int32_t>(from.counted),
                                   static_cast<int32_t>(from.state),
                                   from.line};
    });
  });
}

latchwork_status latchwork_swatch_textures(const latchwork_swatch* swatch, const char** textures, size_t capacity,
                                           size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(textures, capacity, needed, "textures");
    const Swatch& from = given(swatch, "swatch").value;
    const LentTextures lent(from);
    room.take(from.textures(), [&](const std::string& texture) { return lent.of(texture); });
  });
}

latchwork_status latchwork_swatch_states(const latchwork_swatch* swatch, const char* texture, int32_t* states,
                                         size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(states, capacity, needed, "states");
    room.take(given(swatch, "swatch").value.states(&given(texture, "texture")));
  });
}

latchwork_status latchwork_swatch_has(const latchwork_swatch* swatch, const char* texture, int32_t state, int32_t* has,
                                      latchwork_error* error) {
  return guarded(error, [&] {
    const Swatch& from = given(swatch, "swatch").value;
    given(has, "has") = from.has(&given(texture, "texture"), cloth_state_in(state, "state")) ? 1 : 0;
  });
}

latchwork_status latchwork_swatch_gauge(const latchwork_swatch* swatch, const char* texture, int32_t state,
                                        latchwork_gauge* gauge, latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(gauge, "gauge");
    const Gauge from = given(swatch, "swatch").value.gauge(&given(texture, "texture"), cloth_state_in(state, "state"));
    latchwork_gauge to = LATCHWORK_GAUGE_INIT;
    to.state = static_cast<int32_t>(from.state);
    to.stitches_places = from.stitches.places;
    to.rows_places = from.rows.places;
    to.stitches_per_10cm = from.stitches.per_10cm;
    to.stitches_spread = from.stitches.spread;
    to.stitches_standard_error = from.stitches.standard_error;
    to.rows_per_10cm = from.rows.per_10cm;
    to.rows_spread = from.rows.spread;
    to.rows_standard_error = from.rows.standard_error;
    to.stitches_swatches = from.stitches.swatches;
    to.rows_swatches = from.rows.swatches;
    to.stitches_freedom = from.stitches.freedom;
    to.rows_freedom = from.rows.freedom;
    room.take(to);
  });
}

latchwork_status latchwork_swatch_shrinkages(const latchwork_swatch* swatch, latchwork_shrinkage* shrinkages_of,
                                             size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(shrinkages_of, capacity, needed, "shrinkages");
    const Swatch& from = given(swatch, "swatch").value;
    const LentTextures lent(from);
    room.take(shrinkages(from), [&](const Shrinkage& each) {
      return latchwork_shrinkage{lent.of(each.texture),
                                 each.width_percent,
                                 each.width_error,
                                 each.length_percent,
                                 each.length_error,
                                 static_cast<int32_t>(each.from_state),
                                 static_cast<int32_t>(each.to_state),
                                 each.error_known ? 1 : 0};
    });
  });
}

latchwork_status latchwork_swatch_findings(const latchwork_swatch* swatch, latchwork_findings** out,
                                           latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return swatch_findings(given(swatch, "swatch").value); }); });
}
