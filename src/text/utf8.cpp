#include "text/utf8.hpp"

#include <algorithm>
#include <cstdint>
#include <cstring>

#include "latchwork/error.hpp"

namespace latchwork::inline v0 {

std::size_t utf8_error(std::string_view text) noexcept {
  const auto byte = [&](std::size_t i) -> unsigned {
    return i < text.size() ? static_cast<std::uint8_t>(text[i]) : 0U;
  };
  const auto within = [](unsigned b, unsigned low, unsigned high) { return b >= low && b <= high; };
  for (std::size_t i = 0; i < text.size();) {
    const unsigned lead = byte(i);
    if (lead < 0x80) {
      ++i;
      for (std::uint64_t eight = 0; text.size() - i >= sizeof eight; i += sizeof eight) {  // most texts are ASCII
        std::memcpy(&eight, text.data() + i, sizeof eight);
        if ((eight & 0x8080808080808080U) != 0) break;
      }
      continue;
    }
    std::size_t length = 0;
    unsigned low = 0x80;
    unsigned high = 0xBF;
    if (within(lead, 0xC2, 0xDF)) {
      length = 2;
    } else if (within(lead, 0xE0, 0xEF)) {
      length = 3;
      if (lead == 0xE0) low = 0xA0;
      if (lead == 0xED) high = 0x9F;
    } else if (within(lead, 0xF0, 0xF4)) {
      length = 4;
      if (lead == 0xF0) low = 0x90;
      if (lead == 0xF4) high = 0x8F;
    } else {
      return i;
    }
    if (!within(byte(i + 1), low, high)) return i;
    for (std::size_t k = 2; k < length; ++k) {
      if (!within(byte(i + k), 0x80, 0xBF)) return i;
    }
    i += length;
  }
  return std::string_view::npos;
}

std::size_t character_size(char first) noexcept {
  const auto lead = static_cast<std::uint8_t>(first);
  return lead < 0xC2 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : lead < 0xF5 ? 4 : 1;
}

int line_of(std::string_view text, std::size_t offset) noexcept {
  const auto end = text.begin() + static_cast<std::ptrdiff_t>(std::min(offset, text.size()));
  return 1 + static_cast<int>(std::count(text.begin(), end, '\n'));
}

void require_utf8(std::string_view text) {
  const std::size_t bad = utf8_error(text);
  if (bad == std::string_view::npos) return;
  Place place;
  place.line = line_of(text, bad);
  throw Error(
      ErrorCode::bad_encoding, place,
      "line " + std::to_string(place.line) + " holds a byte that is not UTF-8 (offset " + std::to_string(bad) + ")");
}

std::string escaped_xml(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20 || c == '\n' || c == '\t') out += c;
    }
  }
  return out;
}

}  // namespace latchwork::inline v0
