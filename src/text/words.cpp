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

std::string every_words(int gap, std::string_view thing) {
  if (gap == 1) return fmt::format("every {}", thing);
  const int tens = gap / 10 % 10;
  const int ones = tens == 1 ? 0 : gap % 10;
  const std::string_view ending = ones == 1 ? "st" : ones == 2 ? "nd" : ones == 3 ? "rd" : "th";
  return fmt::format("every {}{} {}", gap, ending, thing);
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
