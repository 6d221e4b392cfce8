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

std::string_view without_byte_order_mark(std::string_view text) noexcept {
  constexpr std::string_view mark = "\xEF\xBB\xBF";
  if (text.starts_with(mark)) text.remove_prefix(mark.size());
  return text;
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

namespace {

/// Code point of a character of well-formed UTF-8.
std::uint32_t code_point(std::string_view character) noexcept {
  const auto lead = static_cast<std::uint8_t>(character.front());
  std::uint32_t code = character.size() == 1 ? lead : lead & (0x7FU >> character.size());
  for (std::size_t i = 1; i < character.size(); ++i)
    code = code << 6 | (static_cast<std::uint8_t>(character[i]) & 0x3FU);
  return code;
}

bool no_text(std::uint32_t code) noexcept {
  return code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0x2028 || code == 0x2029 || code == 0xFFFE ||
         code == 0xFFFF;
}

}  // namespace

std::string one_line(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  while (!text.empty()) {
    const bool broken = utf8_error(text.substr(0, 4)) == 0;
    const std::string_view character = text.substr(0, broken ? 1 : character_size(text.front()));
    if (broken || no_text(code_point(character))) {
      out += '?';
    } else {
      out += character;
    }
    text.remove_prefix(character.size());
  }
  return out;
}

std::string shown(std::string_view text, std::size_t most) {
  if (text.size() <= most) return one_line(text);
  std::size_t cut = most;
  // Back to where a character begins; a character has at most three more bytes.
  while (cut > 0 && most - cut < 3 && (static_cast<std::uint8_t>(text[cut]) & 0xC0U) == 0x80U) --cut;
  return one_line(text.substr(0, cut)) + "...";
}

std::string escaped_xml(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : one_line(text)) {
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
        out += c;
    }
  }
  return out;
}

}  // namespace latchwork::inline v0
