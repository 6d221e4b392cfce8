#include "names.hpp"

namespace latchwork::inline v0 {
namespace {

bool in_word(char letter) noexcept {
  return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9') ||
         letter == '_' || static_cast<unsigned char>(letter) >= 0x80;
}

}  // namespace

std::string mirrored_name(std::string_view name) {
  std::string result(name);
  for (std::size_t i = 0; i + 1 < result.size(); ++i) {
    const bool starts = i == 0 || !in_word(result[i - 1]);
    const bool ends = i + 2 == result.size() || !in_word(result[i + 2]);
    if (!starts || !ends || result[i + 1] != 'C') continue;
    if (result[i] == 'R') {
      result[i] = 'L';
    } else if (result[i] == 'L') {
      result[i] = 'R';
    }
  }
  return result;
}

}  // namespace latchwork::inline v0
