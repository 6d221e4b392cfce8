#include "latchwork/crossing.hpp"

#include <fmt/format.h>

#include <string_view>

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

}  // namespace

std::string crossing_name(const Crossing& crossing) {
  // n/m: n is the group in front, which is the left one in a right cross and the right one in a left cross.
  const bool right = crossing.lean == Lean::right;
  const int front = right ? crossing.left : crossing.right;
  const int back = right ? crossing.right : crossing.left;
  const std::string_view lean = right ? "RC" : "LC";
  if (crossing.centre == 0) return fmt::format("{}/{} {}", front, back, lean);
  return fmt::format("{}/{}/{} {}, centre {}", front, crossing.centre, back, lean, place_name(crossing.place));
}

}  // namespace latchwork::inline v0
