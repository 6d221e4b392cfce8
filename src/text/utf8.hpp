#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace latchwork::inline v0 {

/// Offset of the first byte that is not well-formed UTF-8 (Unicode 15, table 3-7); npos when all is.
std::size_t utf8_error(std::string_view text) noexcept;

/// Bytes of the character that begins with this one; 1 where none begins.
std::size_t character_size(char first) noexcept;

/// The text without the byte order mark that some editors put first: every file reader passes over one.
std::string_view without_byte_order_mark(std::string_view text) noexcept;

/// Line of a byte offset, from 1: newlines before it, plus one.
int line_of(std::string_view text, std::size_t offset) noexcept;

/// @throws Error bad_encoding with the line.
void require_utf8(std::string_view text);

/// The text as one line for people, in well-formed UTF-8, the rule for every name in messages and outputs: ? for each
/// character that is no text (control characters, the separators U+2028 and U+2029, U+FFFE, U+FFFF) and for each byte
/// that is not UTF-8.
std::string one_line(std::string_view text);

/// For messages: one_line() of at most `most` bytes, whole characters only, with dots where something was cut.
std::string shown(std::string_view text, std::size_t most = 60);

/// one_line(), safe inside XML and HTML, attribute values included: & < > " ' as entities.
std::string escaped_xml(std::string_view text);

}  // namespace latchwork::inline v0
