#include <limits>

#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace latchwork::c {

void cut(char* to, std::size_t size, std::string_view text) noexcept {
  std::size_t length = text.size();
  if (length >= size) {
    length = size - 1;
    while (length > 0 && (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U)
      --length;  // not inside a character
  }
  if (length > 0) std::memcpy(to, text.data(), length);  // an empty view may point nowhere
  std::memset(to + length, 0, size - length);
}

latchwork_status report(latchwork_error* error, latchwork_status code, const Place& place,
                        std::string_view message) noexcept {
  if (error == nullptr || error->struct_size < sizeof(std::uint32_t) || error->struct_size > max_struct_size)
    return code;
  latchwork_error full = LATCHWORK_ERROR_INIT;
  full.code = code;
  full.row = place.row;
  full.column = place.column;
  full.line = place.line;
  full.character = place.character;
  cut(full.field, place.field);
  cut(full.message, message);
  const std::uint32_t size = error->struct_size;
  auto* bytes = reinterpret_cast<unsigned char*>(error);
  std::memcpy(bytes, &full, size < sizeof full ? size : sizeof full);
  if (size > sizeof full) std::memset(bytes + sizeof full, 0, size - sizeof full);
  error->struct_size = size;
  return code;
}

void refuse(const std::string& field, std::string_view what) {
  Place place;
  place.field = field;
  std::string message = field;
  message += " is ";
  message += what;
  throw Error(ErrorCode::bad_argument, place, message);
}

bool flag(std::int32_t value, const char* field) {
  if (value != 0 && value != 1) refuse(field, std::to_string(value) + "; it may be 0 or 1");
  return value == 1;
}

void require_zero(std::int32_t reserved, const std::string& field) {
  if (reserved != 0) refuse(field, std::to_string(reserved) + "; it must be 0");
}

std::string_view text_in(const char* text, std::size_t size, const char* name) {
  if (size > static_cast<std::size_t>(std::numeric_limits<std::ptrdiff_t>::max())) {
    refuse("size", std::to_string(size) + "; no text is so long");
  }
  return {&given(text, name), size};
}

std::vector<Strip> strips_in(const latchwork_strip* const* strips, std::size_t count, const char* name) {
  std::vector<Strip> values;
  const auto handles = array_in(strips, count, name);
  values.reserve(count);
  for (const latchwork_strip* handle : handles) {
    if (handle == nullptr) refuse(std::string(name) + "[" + std::to_string(values.size()) + "]", "NULL");
    values.push_back(handle->value);
  }
  return values;
}

void check_struct_size(std::uint32_t size, const char* name) {
  if (size >= sizeof(std::uint32_t) && size <= max_struct_size) return;
  refuse(std::string(name) + ".struct_size",
         std::to_string(size) + "; begin with the struct's LATCHWORK_..._INIT, which sets it");
}

void check_tail(const unsigned char* bytes, std::size_t from, std::size_t to, const char* name) {
  for (std::size_t i = from; i < to; ++i) {
    if (bytes[i] == 0) continue;
    refuse(std::string(name) + ".struct_size", std::to_string(to) + ", and a field past byte " + std::to_string(from) +
                                                   ", the last that this version knows, is not zero");
  }
}

std::string text_or_none(const char* text) {
  return text == nullptr ? std::string() : text;
}

std::vector<std::string> texts_in(const char* const* texts, size_t count, const std::string& name) {
  std::vector<std::string> out;
  for (const char* text : array_in(texts, count, name.c_str())) {
    const std::string field = name + "[" + std::to_string(out.size()) + "]";
    out.emplace_back(&given(text, field.c_str()));
  }
  return out;
}

std::string lines_of(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) {
    if (!text.empty()) text += '\n';
    text += line;
  }
  return text;
}

}  // namespace latchwork::c

// The names are string literals, so their views end with NUL.
const char* latchwork_error_name(int32_t code) {
  if (code == LATCHWORK_OK) return "ok";
  const std::string_view name = error_name(static_cast<ErrorCode>(code));
  return name.empty() ? "" : name.data();
}

latchwork_status latchwork_error_codes(int32_t* codes, size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] { Room(codes, capacity, needed, "codes").take(error_codes()); });
}

const char* latchwork_version(void) {
  return version().data();
}
