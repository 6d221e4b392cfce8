#include "latchwork/gauge.hpp"

#include <fmt/format.h>

#include <cmath>
#include <set>
#include <utility>

#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "text/csv_table.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr double least_count = 0.1;
constexpr double most_count = 10'000;
constexpr double least_length_mm = 1;
constexpr double most_length_mm = 10'000;
constexpr std::size_t most_text_bytes = 256;

void require_number(double value, double least, double most, const char* unit, const Place& place) {
  if (value >= least && value <= most) return;  // false for NaN too
  throw Error(ErrorCode::bad_value, place,
              fmt::format("{} is {}{}; it must be {}..{}{}", named(place), value, unit, least, most, unit));
}

// Both sums are of differences from the first value, so that equal values give exactly that value and no spread, and
// values that share many digits lose none of those in which they differ.
Density density(const std::vector<double>& values) {
  Density out;
  out.places = static_cast<int>(values.size());
  if (values.empty()) return out;
  const double n = static_cast<double>(values.size());
  const double first = values.front();
  double sum = 0;
  for (const double value : values) sum += value - first;
  const double mean_difference = sum / n;
  out.per_10cm = first + mean_difference;
  if (values.size() < 2) return out;
  double squares = 0;
  for (const double value : values) {
    const double deviation = (value - first) - mean_difference;
    squares += deviation * deviation;
  }
  out.spread = std::sqrt(squares / (n - 1));
  return out;
}

struct Values {
  std::vector<double> stitches;
  std::vector<double> rows;
};

void add(Values& values, const Measurement& measurement) {
  auto& list = measurement.counted == Counted::stitches ? values.stitches : values.rows;
  list.push_back(measurement.count * 100 / measurement.length_mm);
}

Gauge gauge_from(std::string_view texture, const Values& values) {
  return {std::string(texture), density(values.stitches), density(values.rows)};
}

void require_both(const Gauge& gauge) {
  if (gauge.stitches.places > 0 && gauge.rows.places > 0) return;
  Place place;
  place.field = gauge.texture;
  const char* missing = gauge.rows.places > 0       ? "stitches were not measured"
                        : gauge.stitches.places > 0 ? "rows were not measured"
                                                    : "it was not measured";
  throw Error(ErrorCode::no_gauge, place,
              fmt::format("the swatch has no gauge for texture '{}': {}", gauge.texture, missing));
}

}  // namespace

Swatch::Swatch(std::vector<Measurement> measurements) : measurements_(std::move(measurements)) {
  Place whole;
  whole.field = "measurements";
  require_measurements(measurements_.size(), whole);
  for (std::size_t i = 0; i < measurements_.size(); ++i) {
    require_measurement(measurements_[i], [i](std::string_view field) {
      Place place;
      place.field = fmt::format("measurements[{}].{}", i, field);
      return place;
    });
  }
}

std::vector<std::string> Swatch::textures() const {
  std::vector<std::string> out;
  std::set<std::string_view> seen;
  for (const Measurement& measurement : measurements_) {
    if (seen.insert(measurement.texture).second) out.push_back(measurement.texture);
  }
  return out;
}

bool Swatch::has(std::string_view texture) const noexcept {
  bool stitches = false;
  bool rows = false;
  for (const Measurement& measurement : measurements_) {
    if (measurement.texture != texture) continue;
    (measurement.counted == Counted::stitches ? stitches : rows) = true;
  }
  return stitches && rows;
}

Gauge Swatch::gauge(std::string_view texture) const {
  Values values;
  for (const Measurement& measurement : measurements_) {
    if (measurement.texture == texture) add(values, measurement);
  }
  Gauge out = gauge_from(texture, values);
  require_both(out);
  return out;
}

Gauges all_gauges(const Swatch& swatch) {
  std::map<std::string_view, Values> values;
  for (const Measurement& measurement : swatch.measurements()) add(values[measurement.texture], measurement);
  Gauges out;
  for (const auto& [texture, list] : values) out.emplace(texture, gauge_from(texture, list));
  return out;
}

const Gauge& gauge_of(const Gauges& gauges, std::string_view texture) {
  const auto found = gauges.find(texture);
  if (found == gauges.end()) {
    require_both({std::string(texture), {}, {}});
  }
  require_both(found->second);
  return found->second;
}

void require_measurement(const Measurement& measurement, const std::function<Place(std::string_view)>& place_of) {
  if (measurement.texture.empty()) {
    const Place place = place_of("texture");
    throw Error(ErrorCode::bad_value, place, fmt::format("{} is empty; a texture needs a name", named(place)));
  }
  require_field_text(measurement.texture, most_text_bytes, place_of("texture"));
  if (measurement.counted != Counted::stitches && measurement.counted != Counted::rows) {
    const Place place = place_of("counted");
    throw Error(ErrorCode::bad_value, place,
                fmt::format("{} is {}; it must be 0 (stitches) or 1 (rows)", named(place),
                            static_cast<int>(measurement.counted)));
  }
  require_number(measurement.count, least_count, most_count, "", place_of("count"));
  require_number(measurement.length_mm, least_length_mm, most_length_mm, " mm", place_of("length_mm"));
  require_field_text(measurement.place, most_text_bytes, place_of("place"));
}

void require_measurements(std::size_t count, const Place& place) {
  if (count <= Swatch::max_measurements) return;
  throw Error(ErrorCode::too_large, place,
              fmt::format("{} measurements; the limit is {}", count, Swatch::max_measurements));
}

}  // namespace latchwork::inline v0
