#include "latchwork/gauge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
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
constexpr std::size_t most_swatch_bytes = 64;  // so that the longest swatch there can be is still read back
constexpr std::array all_states = {ClothState::off_machine, ClothState::rested, ClothState::washed};

void require_number(double value, double least, double most, const char* unit, const Place& place) {
  if (value >= least && value <= most) return;  // false for NaN too
  throw Error(ErrorCode::bad_value, place,
              fmt::format("{} is {}{}; it must be {}..{}{}", named(place), value, unit, least, most, unit));
}

}  // namespace

std::string_view cloth_state_name(ClothState state) noexcept {
  switch (state) {
    case ClothState::off_machine:
      return "off the machine";
    case ClothState::rested:
      return "rested";
    case ClothState::washed:
      return "washed";
  }
  return {};
}

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

std::vector<ClothState> Swatch::states(std::string_view texture) const {
  std::vector<ClothState> out;
  for (const ClothState state : all_states) {
    if (has(texture, state)) out.push_back(state);
  }
  return out;
}

bool Swatch::has(std::string_view texture, std::optional<ClothState> state) const noexcept {
  std::array<bool, 3> stitches{};
  std::array<bool, 3> rows{};
  for (const Measurement& measurement : measurements_) {
    if (measurement.texture != texture) continue;
    (measurement.counted == Counted::stitches ? stitches : rows)[static_cast<std::size_t>(measurement.state)] = true;
  }
  return std::any_of(all_states.begin(), all_states.end(), [&](ClothState each) {
    const auto i = static_cast<std::size_t>(each);
    return stitches[i] && rows[i] && (!state || *state == each);
  });
}

Gauge Swatch::gauge(std::string_view texture, std::optional<ClothState> state) const {
  return Gauges(*this, state).of(texture);
}

bool operator==(const Swatch& a, const Swatch& b) noexcept {
  return std::equal(a.measurements_.begin(), a.measurements_.end(), b.measurements_.begin(), b.measurements_.end(),
                    [](const Measurement& one, const Measurement& other) {
                      return one.texture == other.texture && one.counted == other.counted && one.count == other.count &&
                             one.length_mm == other.length_mm && one.place == other.place &&
                             one.swatch == other.swatch && one.state == other.state;
                    });
}

std::vector<Shrinkage> shrinkages(const Swatch& swatch) {
  const MeasuredGauges gauges = measured_gauges(swatch);
  const auto shrunk = [](const Density& from, const Density& to, double& percent, double& error) {
    const double q = from.per_10cm / to.per_10cm;
    percent = 100 * (1 - q);
    error = 100 * q * std::hypot(from.standard_error / from.per_10cm, to.standard_error / to.per_10cm);
    return from.places > 1 && to.places > 1;
  };
  std::vector<Shrinkage> out;
  for (const std::string& texture : swatch.textures()) {
    const std::map<ClothState, Gauge>& of = gauges.at(texture);
    for (auto from = of.begin(); from != of.end(); ++from) {
      for (auto to = std::next(from); to != of.end(); ++to) {
        if (!is_whole(from->second) || !is_whole(to->second)) continue;
        Shrinkage each{.texture = texture, .from_state = from->first, .to_state = to->first};
        const bool width = shrunk(from->second.stitches, to->second.stitches, each.width_percent, each.width_error);
        const bool length = shrunk(from->second.rows, to->second.rows, each.length_percent, each.length_error);
        each.error_known = width && length;
        if (!width) each.width_error = 0;
        if (!length) each.length_error = 0;
        out.push_back(std::move(each));
      }
    }
  }
  return out;
}

void require_measurement(const Measurement& measurement, const std::function<Place(std::string_view)>& place_of) {
  if (measurement.texture.empty()) {
    const Place place = place_of("texture");
    throw Error(ErrorCode::bad_value, place, fmt::format("{} is empty; a texture needs a name", named(place)));
  }
  require_field_text(measurement.texture, most_measurement_bytes, place_of("texture"));
  if (measurement.counted != Counted::stitches && measurement.counted != Counted::rows) {
    const Place place = place_of("counted");
    throw Error(ErrorCode::bad_value, place,
                fmt::format("{} is {}; it must be 0 (stitches) or 1 (rows)", named(place),
                            static_cast<int>(measurement.counted)));
  }
  require_number(measurement.count, least_count, most_count, "", place_of("count"));
  require_number(measurement.length_mm, least_length_mm, most_length_mm, " mm", place_of("length_mm"));
  require_field_text(measurement.place, most_measurement_bytes, place_of("place"));
  require_field_text(measurement.swatch, most_swatch_bytes, place_of("swatch"));
  if (cloth_state_name(measurement.state).empty()) {
    const Place place = place_of("state");
    throw Error(ErrorCode::bad_value, place,
                fmt::format("{} is {}; it must be 0..{}", named(place), static_cast<int>(measurement.state),
                            static_cast<int>(ClothState::washed)));
  }
  if (measurement.line < 0) {
    const Place place = place_of("line");
    throw Error(ErrorCode::bad_value, place,
                fmt::format("{} is {}; it must be 0 or more", named(place), measurement.line));
  }
}

void require_measurements(std::size_t count, const Place& place) {
  if (count <= Swatch::max_measurements) return;
  throw Error(ErrorCode::too_large, place,
              fmt::format("{} measurements; the limit is {}", count, Swatch::max_measurements));
}

}  // namespace latchwork::inline v0
