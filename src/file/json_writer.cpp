#include "file/json_writer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "latchwork/error.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0::json {

void Writer::begin_file(std::string_view format, int version) {
  begin_object(Layout::lines);
  key("format");
  text(format);
  key("version");
  integer(version);
}

void Writer::open(char bracket, Layout layout) {
  const std::string_view name = after_key_ ? key_ : std::string_view();
  before_value();
  out_ += bracket;
  const bool inside_line = !levels_.empty() && levels_.back().layout == Layout::line;
  levels_.push_back({inside_line ? Layout::line : layout, bracket == '[', name});
}

void Writer::close(char bracket) {
  const Level level = levels_.back();
  levels_.pop_back();
  if (level.layout == Layout::lines && level.members > 0) new_line();
  out_ += bracket;
}

void Writer::separate() {
  if (levels_.empty()) return;
  Level& level = levels_.back();
  if (level.members > 0) out_ += level.layout == Layout::line ? ", " : ",";
  if (level.layout == Layout::lines) new_line();
  ++level.members;
}

// Of the innermost object or array that is open.
std::string Writer::path() const {
  std::string out;
  for (std::size_t i = 1; i < levels_.size(); ++i) {
    const Level& outer = levels_[i - 1];
    if (outer.array) {
      out += fmt::format("[{}]", outer.members - 1);
    } else {
      out += fmt::format("{}{}", out.empty() ? "" : ".", levels_[i].name);
    }
  }
  return out;
}

std::string Writer::field_of(std::string_view key) const {
  const std::string outer = path();
  return fmt::format("{}{}{}", outer, outer.empty() ? "" : ".", key);
}

std::string Writer::field() const {
  if (after_key_) return field_of(key_);
  return levels_.empty() ? std::string() : fmt::format("{}[{}]", path(), levels_.back().members);
}

void Writer::before_value() {
  if (!std::exchange(after_key_, false)) separate();
}

void Writer::key(std::string_view name) {
  separate();
  out_ += '"';
  out_ += name;  // a member's name: nothing in it wants a backslash
  out_ += "\": ";
  key_ = name;
  after_key_ = true;
}

void Writer::integer(std::int64_t value) {
  before_value();
  const fmt::format_int digits(value);
  out_.append(digits.data(), digits.size());
}

void Writer::real(double value) {
  if (!std::isfinite(value)) {
    Place place;
    place.field = field();
    throw Error(ErrorCode::bad_value, place, fmt::format("{} is {}: no file can hold that", place.field, value));
  }
  before_value();
  fmt::format_to(std::back_inserter(out_), "{}", value);
}

void Writer::boolean(bool value) {
  before_value();
  out_ += value ? "true" : "false";
}

void Writer::text(std::string_view value) {
  if (const std::size_t bad = utf8_error(value); bad != std::string_view::npos) {
    Place place;
    place.field = field();
    throw Error(ErrorCode::bad_encoding, place,
                fmt::format("{} holds a byte that is not UTF-8 (offset {})", place.field, bad));
  }
  if (value.find('\0') != std::string_view::npos) {  // C would tell it only up to there
    Place place;
    place.field = field();
    throw Error(ErrorCode::bad_value, place, place.field + " holds a NUL, which no text may");
  }
  before_value();
  quote(value);
}

void Writer::quote(std::string_view value) {
  const auto plain = [](char c) { return static_cast<unsigned char>(c) >= 0x20 && c != '"' && c != '\\'; };
  out_ += '"';
  while (!value.empty()) {
    const auto stop = std::find_if_not(value.begin(), value.end(), plain);
    const auto length = static_cast<std::size_t>(stop - value.begin());
    out_ += value.substr(0, length);
    if (length == value.size()) break;
    const char c = value[length];
    switch (c) {
      case '"':
        out_ += "\\\"";
        break;
      case '\\':
        out_ += "\\\\";
        break;
      case '\n':
        out_ += "\\n";
        break;
      case '\t':
        out_ += "\\t";
        break;
      case '\r':
        out_ += "\\r";
        break;
      default:
        fmt::format_to(std::back_inserter(out_), "\\u{:04x}", static_cast<unsigned char>(c));
    }
    value.remove_prefix(length + 1);
  }
  out_ += '"';
}

std::string Writer::take() {
  out_ += '\n';
  levels_.clear();
  after_key_ = false;
  return std::exchange(out_, {});
}

}  // namespace latchwork::inline v0::json
