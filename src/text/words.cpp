#include "text/words.hpp"

#include <fmt/format.h>

namespace latchwork::inline v0 {

std::string count_of(std::int64_t count, std::string_view thing, std::string_view ending) {
  return fmt::format("{} {}{}", count, thing, count == 1 ? std::string_view() : ending);
}

std::string run_of(std::string_view thing, std::int64_t first, std::int64_t last, std::string_view between,
                   std::string_view ending) {
  if (first == last) return fmt::format("{} {}", thing, first);
  return fmt::format("{}{} {}{}{}", thing, ending, first, between, last);
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) out += between;
    out += parts[i];
  }
  return out;
}

}  // namespace latchwork::inline v0
