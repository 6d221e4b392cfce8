#include "latchwork/crossing.hpp"

#include <fmt/format.h>

#include <string_view>

#include "crossing/words.hpp"

namespace latchwork::inline v0 {
namespace {

std::string_view place_name(Centre place) noexcept {
  switch (place) {
    case Centre::front:
      return "front";
    case Centre::between:
      return "between";
    case Centre::behind:
      return "behind";
  }
  return "?";
}

/// n/m: n is the group in front, which is the left one in a right cross and the right one in a left cross.
std::string counts_of(const Crossing& crossing) {
  const bool right = crossing.lean == Lean::right;
  const int front = right ? crossing.left : crossing.right;
  const int back = right ? crossing.right : crossing.left;
  if (crossing.centre == 0) return fmt::format("{}/{}", front, back);
  return fmt::format("{}/{}/{}", front, crossing.centre, back);
}

}  // namespace

std::string crossing_name(const Crossing& crossing) {
  const std::string name = fmt::format("{} {}", counts_of(crossing), crossing.lean == Lean::right ? "RC" : "LC");
  return crossing.centre == 0 ? name : fmt::format("{}, centre {}", name, place_name(crossing.place));
}

std::string crossing_long_name(const Crossing& crossing) {
  std::string words = fmt::format("{} {} cross", counts_of(crossing), crossing.lean == Lean::right ? "right" : "left");
  if (crossing.centre == 0) return words;
  return fmt::format("{}, centre {}{}", words, crossing.place == Centre::front ? "in " : "",
                     place_name(crossing.place));
}

}  // namespace latchwork::inline v0
