#include "effort/check.hpp"

#include <fmt/format.h>

#include "effort/terms.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0 {

void check(const Effort& effort, const char* name) {
  for (const EffortPart& part : effort_parts) {
    const std::int64_t value = effort.*part.cost;
    if (value >= 0 && value <= max_effort_ms) continue;
    Place place;
    place.field = fmt::format("{}.{}", name, part.name);
    throw Error(ErrorCode::bad_argument, place,
                fmt::format("{} is {} ms; it may be 0 to {} ms", place.field, value, max_effort_ms));
  }
}

std::string_view effort_term_name(EffortTerm term) noexcept {
  const auto index = static_cast<std::size_t>(term);
  return index < effort_parts.size() ? effort_parts[index].name : std::string_view();
}

}  // namespace latchwork::inline v0
