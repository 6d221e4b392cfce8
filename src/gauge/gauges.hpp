#pragma once

#include <functional>
#include <map>
#include <string>
#include <string_view>

#include "latchwork/error.hpp"
#include "latchwork/gauge.hpp"

namespace latchwork::inline v0 {

/// The gauges of a swatch by texture, made in one pass. A texture of which only stitches or only rows were measured is
/// there with 0 places of the other.
using Gauges = std::map<std::string, Gauge, std::less<>>;

Gauges all_gauges(const Swatch& swatch);

/// @throws Error no_gauge (field = the texture), naming what was not measured.
const Gauge& gauge_of(const Gauges& gauges, std::string_view texture);

/// Throws unless the measurement is one that a swatch may hold; `place_of` says where a field of it stands.
void require_measurement(const Measurement& measurement, const std::function<Place(std::string_view)>& place_of);

/// @throws Error too_large with this place, when there are more measurements than Swatch::max_measurements.
void require_measurements(std::size_t count, const Place& place);

}  // namespace latchwork::inline v0
