#include "file/members.hpp"

#include <charconv>

#include "text/utf8.hpp"

namespace latchwork::inline v0::json {

std::optional<std::string> needle_text(int needle, NeedleNames names) {
  if (needle == 0) return std::string(names.zero);
  const std::int64_t number = needle < 0 ? -std::int64_t{needle} : needle;
  if (number > names.most) return std::nullopt;
  return fmt::format("{}{}", needle < 0 ? 'L' : 'R', number);
}

int get_needle(Value value, NeedleNames names) {
  const std::string_view name = value.text();
  if (name == names.zero) return 0;
  const bool left = name.starts_with('L');
  if ((left || name.starts_with('R')) && name.size() > 1 && name[1] >= '1' && name[1] <= '9') {
    std::int64_t number = 0;
    const char* end = name.data() + name.size();
    const auto [stop, error] = std::from_chars(name.data() + 1, end, number);
    if (error == std::errc() && stop == end && number <= names.most) {
      return static_cast<int>(left ? -number : number);
    }
  }
  value.refuse(ErrorCode::bad_value, fmt::format("\"{}\" is not a needle such as L3 or R12 (up to {}), nor \"{}\"",
                                                 shown(name), names.most, names.zero));
}

}  // namespace latchwork::inline v0::json
