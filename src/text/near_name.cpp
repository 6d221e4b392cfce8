#include "text/near_name.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <vector>

namespace latchwork::inline v0 {
namespace {

constexpr char lower(char letter) {
  return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

std::size_t distance(std::string_view a, std::string_view b) {
  // Rows of the table of distances between beginnings: of two letters fewer, of one fewer, of this many.
  std::vector<std::size_t> second(b.size() + 1);
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> now(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    now[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const char letter = lower(a[i - 1]);
      const char other = lower(b[j - 1]);
      now[j] = std::min({last[j] + 1, now[j - 1] + 1, last[j - 1] + (letter == other ? 0 : 1)});
      if (i > 1 && j > 1 && letter == lower(b[j - 2]) && lower(a[i - 2]) == other) {
        now[j] = std::min(now[j], second[j - 2] + 1);
      }
    }
    second.swap(last);
    last.swap(now);
  }
  return last[b.size()];
}

}  // namespace

std::string_view near_name(std::string_view misspelt, std::span<const std::string_view> names) {
  std::string_view nearest;
  std::size_t least = 0;
  for (const std::string_view name : names) {
    const auto [shorter, longer] = std::minmax({misspelt.size(), name.size()});
    const std::size_t near = longer / 3;
    if (longer - shorter > near) continue;  // as is any name of a megabyte
    const std::size_t far = distance(misspelt, name);
    if (far <= near && (nearest.empty() || far < least)) {
      nearest = name;
      least = far;
    }
  }
  return nearest;
}

std::string perhaps_meant(std::string_view misspelt, std::span<const std::string_view> names) {
  const std::string_view near = near_name(misspelt, names);
  return near.empty() ? std::string() : fmt::format("; perhaps \"{}\" was meant", near);
}

}  // namespace latchwork::inline v0
