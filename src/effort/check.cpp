#include "effort/check.hpp"

#include <fmt/format.h>

#include "effort/terms.hpp"
#include "error/refuse.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0 {

void check(const Effort& effort, const char* name) {
  for (const EffortPart& part : effort_parts) {
    const std::int64_t value = effort.*part.cost;
    if (value >= 0 && value <= max_effort_ms) continue;
    const std::string field = fmt::format("{}.{}", name, part.name);
    refuse(field, fmt::format("{} is {} ms; it may be 0 to {} ms", field, value, max_effort_ms));
  }
}

std::string_view effort_term_name(EffortTerm term) noexcept {
  const auto index = static_cast<std::size_t>(term);
  return index < effort_parts.size() ? effort_parts[index].name : std::string_view();
}

}  // namespace latchwork::inline v0
