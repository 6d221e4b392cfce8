#include "text/duration.hpp"

#include <fmt/format.h>

namespace latchwork::inline v0 {

std::string rounded_duration(std::int64_t ms) {
  const std::string sign = ms < 0 ? "-" : "";
  // Without the sign: the least number has no counterpart above 0.
  const auto size = static_cast<std::uint64_t>(ms);
  const std::uint64_t whole = ms < 0 ? 0 - size : size;
  if (whole > 0 && whole < 1000) return fmt::format("{}{} s", sign, static_cast<double>(whole) / 1000);
  const std::uint64_t seconds = whole / 1000 + (whole % 1000 >= 500 ? 1 : 0);
  if (seconds < 60) return fmt::format("{}{} s", sign, seconds);
  if (seconds < 600) {
    return seconds % 60 == 0 ? fmt::format("{}{} min", sign, seconds / 60)
                             : fmt::format("{}{} min {} s", sign, seconds / 60, seconds % 60);
  }
  const std::uint64_t minutes = (seconds + 30) / 60;
  if (minutes < 60) return fmt::format("{}{} min", sign, minutes);
  if (minutes % 60 == 0) return fmt::format("{}{} h", sign, minutes / 60);
  return fmt::format("{}{} h {:02} min", sign, minutes / 60, minutes % 60);
}

}  // namespace latchwork::inline v0
