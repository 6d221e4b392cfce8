#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace latchwork::inline v0 {

/// Offset of the first byte that is not well-formed UTF-8 (Unicode 15, table 3-7); npos when all is.
std::size_t utf8_error(std::string_view text) noexcept;

/// Bytes of the character that begins with this one; 1 where none begins.
std::size_t character_size(char first) noexcept;

/// Line of a byte offset, from 1: newlines before it, plus one.
int line_of(std::string_view text, std::size_t offset) noexcept;

/// @throws Error bad_encoding with the line.
void require_utf8(std::string_view text);

/// The text safe inside XML and HTML, attribute values included: & < > " ' as entities, control characters left out.
std::string escaped_xml(std::string_view text);

}  // namespace latchwork::inline v0
