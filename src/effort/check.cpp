#include "effort/check.hpp"

#include <fmt/format.h>

#include "latchwork/error.hpp"

namespace latchwork::inline v0 {

void check(const Effort& effort) {
  const auto within = [](const char* field, std::int64_t value) {
    if (value >= 0 && value <= max_effort_ms) return;
    Place place;
    place.field = fmt::format("effort.{}", field);
    throw Error(ErrorCode::bad_argument, place,
                fmt::format("{} is {} ms; it may be 0 to {} ms", place.field, value, max_effort_ms));
  };
  within("stop", effort.stop);
  within("batch", effort.batch);
  within("drop", effort.drop);
  within("rung_knit", effort.rung_knit);
  within("rung_purl", effort.rung_purl);
  within("rung_tuck", effort.rung_tuck);
  within("rung_slip", effort.rung_slip);
  within("crossing", effort.crossing);
  within("crossing_stitch", effort.crossing_stitch);
  within("hold", effort.hold);
  within("shaping", effort.shaping);
  within("row", effort.row);
}

}  // namespace latchwork::inline v0
