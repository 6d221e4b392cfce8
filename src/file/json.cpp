#include "file/json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstring>
#include <iterator>
#include <nlohmann/json.hpp>

#include "latchwork/file.hpp"
#include "text/near_name.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0::json {

/// How far the parser has read. Its iterators share one, which is how a handler of events knows where it is.
struct Cursor {
  const char* at;
  const char* end;
};

namespace {

class CursorIterator {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  CursorIterator() = default;
  explicit CursorIterator(Cursor* cursor) : cursor_(cursor) {}
  reference operator*() const { return *cursor_->at; }
  CursorIterator& operator++() {
    ++cursor_->at;
    return *this;
  }
  CursorIterator operator++(int) {
    ++cursor_->at;
    return *this;
  }
  // Only ever compared with the end, which has no cursor.
  friend bool operator==(const CursorIterator& a, const CursorIterator& b) { return a.done() == b.done(); }
  friend bool operator!=(const CursorIterator& a, const CursorIterator& b) { return !(a == b); }

 private:
  bool done() const { return cursor_ == nullptr || cursor_->at == cursor_->end; }
  Cursor* cursor_ = nullptr;
};

/// Whether a message begins with the name of that field: "bands[0].rows is 0", not "rows_end is 0".
bool tells_of(std::string_view message, std::string_view field) {
  if (!message.starts_with(field)) return false;
  const std::string_view after = message.substr(field.size());
  return after.starts_with(' ') || after.starts_with(':');
}

std::string_view kind_name(Kind kind) {
  switch (kind) {
    case Kind::null:
      return "null";
    case Kind::boolean:
      return "true or false";
    case Kind::integer:
      return "a whole number";
    case Kind::real:
      return "a number";
    case Kind::text:
      return "a text";
    case Kind::array:
      return "a list";
    case Kind::object:
      return "an object";
  }
  return "nothing";
}

/// The parser's own message without its prefix: what comes after "parse error at line 1, column 5: ".
std::string parser_message(std::string_view what) {
  for (const std::string_view before : {"parse error at ", "] "}) {
    const std::size_t found = what.find(before);
    if (found != std::string_view::npos) what.remove_prefix(found + before.size());
  }
  const std::size_t colon = what.find(": ");
  if (colon != std::string_view::npos) what.remove_prefix(colon + 2);
  return shown(what, 200);
}

}  // namespace

/// Takes the parser's events and appends nodes.
class Builder {
 public:
  Builder(Document& document, std::string_view text, const Cursor& cursor)
      : document_(document), text_(text), cursor_(cursor), counted_(text.data()) {}

  bool null() {
    add(Kind::null);
    return true;
  }
  bool boolean(bool value) {
    add(Kind::boolean).boolean = value;
    return true;
  }
  bool number_integer(std::int64_t value) {
    add(Kind::integer, 1).integer = value;
    return true;
  }
  bool number_unsigned(std::uint64_t value) {
    if (value > static_cast<std::uint64_t>(INT64_MAX)) return number_float(static_cast<double>(value), {});
    return number_integer(static_cast<std::int64_t>(value));
  }
  bool number_float(double value, const std::string&) {
    add(Kind::real, 1).real = value;
    return true;
  }
  bool string(const std::string& value) {
    refuse_nul(value);
    add(Kind::text).text = keep(value);
    return true;
  }
  bool binary(const nlohmann::json::binary_t&) { return false; }  // no such thing in a text
  bool key(const std::string& value) {
    count_in_parent();
    Node node;
    node.kind = Kind::text;
    node.text = keep(value);
    node.line = line();
    node.next = static_cast<std::uint32_t>(document_.nodes_.size()) + 1;
    document_.nodes_.push_back(node);
    return true;
  }
  bool start_object(std::size_t) { return open(Kind::object); }
  bool start_array(std::size_t) { return open(Kind::array); }
  bool end_array() { return close(); }
  bool end_object() {
    refuse_duplicates(open_.back());
    return close();
  }

  bool parse_error(std::size_t, const std::string&, const nlohmann::json::exception& error) {
    constexpr int number_overflow = 406;
    Place place;
    place.line = line(1);
    if (error.id == number_overflow) {
      place.field = path_to_come();
      throw Error(ErrorCode::bad_value, place,
                  fmt::format("line {}, {}: the number is too large", place.line, place.field));
    }
    if (document_.nodes_.empty() && text_.find_first_not_of(" \t\r\n") == std::string_view::npos) {
      throw Error(ErrorCode::bad_syntax, place, fmt::format("line {}: the text is empty", place.line));
    }
    throw Error(ErrorCode::bad_syntax, place, fmt::format("line {}: {}", place.line, parser_message(error.what())));
  }

 private:
  /// The line of the last byte read, less `ahead`: the parser reads one byte past a number, and the byte it stumbles
  /// over. Counts on from where it was, so that the whole is linear.
  std::int32_t line(std::ptrdiff_t ahead = 0) {
    const char* to = std::max(counted_, cursor_.at - std::min(ahead, cursor_.at - text_.data()));
    while (counted_ != to) {
      const void* newline = std::memchr(counted_, '\n', static_cast<std::size_t>(to - counted_));
      if (newline == nullptr) {
        counted_ = to;
      } else {
        counted_ = static_cast<const char*>(newline) + 1;
        ++line_;
      }
    }
    return line_;
  }

  /// C would tell such a text only up to there.
  void refuse_nul(std::string_view value) {
    if (value.find('\0') == std::string_view::npos) return;
    Place place;
    place.line = line();
    place.field = path_to_come();
    throw Error(ErrorCode::bad_value, place,
                fmt::format("line {}: {} holds a NUL, which no text may", place.line, place.field));
  }

  Node::Span keep(std::string_view value) {
    const auto begin = static_cast<std::uint32_t>(document_.texts_.size());
    document_.texts_ += value;
    return {begin, static_cast<std::uint32_t>(value.size())};
  }

  void count_in_parent() {
    if (!open_.empty()) ++document_.nodes_[open_.back()].size;
  }

  Node& add(Kind kind, std::ptrdiff_t ahead = 0) {
    if (!open_.empty() && document_.nodes_[open_.back()].kind == Kind::array) count_in_parent();
    Node node;
    node.integer = 0;
    node.kind = kind;
    node.line = line(ahead);
    node.next = static_cast<std::uint32_t>(document_.nodes_.size()) + 1;
    document_.nodes_.push_back(node);
    return document_.nodes_.back();
  }

  bool open(Kind kind) {
    const auto at = static_cast<std::uint32_t>(document_.nodes_.size());
    Node& node = add(kind);
    node.size = 0;
    node.next = 0;
    if (open_.size() == static_cast<std::size_t>(max_depth)) {
      Place place;
      place.line = line();
      throw Error(ErrorCode::too_large, place,
                  fmt::format("line {}: values are nested more than {} deep", place.line, max_depth));
    }
    open_.push_back(at);
    return true;
  }

  bool close() {
    document_.nodes_[open_.back()].next = static_cast<std::uint32_t>(document_.nodes_.size());
    open_.pop_back();
    return true;
  }

  void refuse_duplicates(std::uint32_t object) {
    const Node& node = document_.nodes_[object];
    keys_.clear();
    std::uint32_t at = object + 1;
    for (std::uint32_t i = 0; i < node.size; ++i) {
      keys_.push_back(at);
      at = document_.nodes_[at + 1].next;
    }
    const auto key = [this](std::uint32_t k) { return document_.text(document_.nodes_[k]); };
    std::sort(keys_.begin(), keys_.end(), [&](std::uint32_t a, std::uint32_t b) {
      const int order = key(a).compare(key(b));
      return order != 0 ? order < 0 : a < b;
    });
    const auto same = std::adjacent_find(keys_.begin(), keys_.end(),
                                         [&](std::uint32_t a, std::uint32_t b) { return key(a) == key(b); });
    if (same == keys_.end()) return;
    const std::uint32_t second = *std::next(same);
    Place place;
    place.line = document_.nodes_[second].line;
    place.field = document_.path(second + 1);
    throw Error(ErrorCode::duplicate_key, place,
                fmt::format("line {}: the key \"{}\" stands a second time (first in line {})", place.line,
                            shown(key(second)), document_.nodes_[*same].line));
  }

  /// Path of the value that could not be read: it is not in the list yet.
  std::string path_to_come() {
    Node node;
    node.integer = 0;
    document_.nodes_.push_back(node);
    if (!open_.empty() && document_.nodes_[open_.back()].kind == Kind::array) count_in_parent();
    return document_.path(static_cast<std::uint32_t>(document_.nodes_.size()) - 1);
  }

  Document& document_;
  std::string_view text_;
  const Cursor& cursor_;
  const char* counted_;
  std::int32_t line_ = 1;
  std::vector<std::uint32_t> open_;  // arrays and objects not closed yet
  std::vector<std::uint32_t> keys_;
};

Document::Document(std::string_view text) {
  if (text.size() > max_file_bytes) {
    Place past;
    past.line = line_of(text, max_file_bytes);
    throw Error(
        ErrorCode::too_large, past,
        fmt::format("line {}: the text has {} bytes; a file may have {}", past.line, text.size(), max_file_bytes));
  }
  require_utf8(text);
  Place start;
  start.line = 1;
  text = without_byte_order_mark(text);  // a reader may ignore one: RFC 8259, section 8.1
  // The parser takes a NUL for the end of the text, and would not see what follows.
  if (const std::size_t nul = text.find('\0'); nul != std::string_view::npos) {
    start.line = line_of(text, nul);
    throw Error(ErrorCode::bad_syntax, start, fmt::format("line {}: a NUL, which JSON has not", start.line));
  }
  texts_.reserve(text.size());
  Cursor cursor{text.data(), text.data() + text.size()};
  Builder builder(*this, text, cursor);
  if (!nlohmann::json::sax_parse(CursorIterator(&cursor), CursorIterator(), &builder)) {
    throw Error(ErrorCode::internal, start, "the JSON parser stopped without a reason");
  }
}

Value Document::root() const {
  return {*this, 0};
}

std::string Document::path(std::uint32_t node) const {
  std::string path;
  for (std::uint32_t at = 0; at != node;) {
    const Node& parent = nodes_[at];
    const bool object = parent.kind == Kind::object;
    std::uint32_t child = at + 1;
    // The child that `node` stands in: the first that reaches past it, or that is still open.
    for (std::uint32_t i = 0; i < parent.size; ++i) {
      const std::uint32_t value = object ? child + 1 : child;
      if (nodes_[value].next == 0 || nodes_[value].next > node) {
        if (object) {
          if (!path.empty()) path += '.';
          path += shown(text(nodes_[child]));
        } else {
          path += fmt::format("[{}]", i);
        }
        child = value;
        break;
      }
      child = nodes_[value].next;
    }
    at = child;
  }
  return path;
}

void Value::refuse(ErrorCode code, const std::string& what, Place place) const {
  if (place.line == 0) place.line = line();
  const std::string own = path();
  if (place.field.empty()) {
    place.field = own;
  } else if (!own.empty() && !place.field.starts_with(own)) {
    place.field = own + (place.field.front() == '[' ? "" : ".") + place.field;
  }
  const bool named = !place.field.empty() && tells_of(what, place.field);
  const std::string where = place.field.empty() ? fmt::format("line {}: ", place.line)
                            : named             ? fmt::format("line {}, ", place.line)
                                                : fmt::format("line {}, {}: ", place.line, place.field);
  throw Error(code, place, what.starts_with("line ") ? what : where + what);
}

// The deepest value that "bands[0].strips[2].name" leads to.
Value Value::below(std::string_view field) const {
  Value value = *this;
  while (!field.empty()) {
    std::optional<Value> next;
    std::size_t length = 0;
    if (field.front() == '[') {
      std::size_t index = 0;
      const auto [end, failure] = std::from_chars(field.data() + 1, field.data() + field.size(), index);
      length = static_cast<std::size_t>(end - field.data()) + 1;
      if (failure != std::errc() || length > field.size() || value.kind() != Kind::array) break;
      value.each([&](Value element, std::size_t i) {
        if (i == index) next = element;
      });
    } else {
      const std::size_t begin = field.front() == '.' ? 1 : 0;
      length = std::min(field.size(), field.find_first_of(".[", begin));
      next = value.member(field.substr(begin, length - begin));
    }
    if (!next) break;
    value = *next;
    field.remove_prefix(length);
  }
  return value;
}

void Value::refuse(const Error& error) const {
  Place place = error.place();
  if (place.line == 0) place.line = below(place.field).line();
  refuse(error.code(), error.what(), place);
}

void Value::require(Kind kind, const char* wanted) const {
  if (node().kind == kind) return;
  refuse(ErrorCode::bad_value, fmt::format("{} stands where {} is wanted", kind_name(node().kind), wanted));
}

std::int64_t Value::integer(std::int64_t least, std::int64_t most) const {
  std::int64_t value = 0;
  if (kind() == Kind::real) {
    // 12.0 is a whole number, to JSON Schema too; past 2^53 a double no longer tells whole numbers apart.
    constexpr double exact = 9007199254740992.0;
    const double number = node().real;
    constexpr double past_all = 9223372036854775808.0;  // 2^63: digits alone are a double, too, where they pass that
    if (number < static_cast<double>(least) || number > static_cast<double>(most) || number >= past_all) {
      refuse(ErrorCode::bad_value, fmt::format("{} is not from {} to {}", number, least, most));
    }
    if (std::abs(number) >= exact) {
      refuse(ErrorCode::bad_value,
             fmt::format("{} has a point or an exponent, and so large a number may be rounded: write its digits alone",
                         number));
    }
    if (number != std::trunc(number)) {
      refuse(ErrorCode::bad_value, fmt::format("{} is not a whole number from {} to {}", number, least, most));
    }
    value = static_cast<std::int64_t>(number);
  } else {
    require(Kind::integer, "a whole number");
    value = node().integer;
  }
  if (value < least || value > most) {
    refuse(ErrorCode::bad_value, fmt::format("{} is not from {} to {}", value, least, most));
  }
  return value;
}

double Value::real() const {
  if (kind() == Kind::integer) return static_cast<double>(node().integer);
  require(Kind::real, "a number");
  return node().real;
}

bool Value::boolean() const {
  require(Kind::boolean, "true or false");
  return node().boolean;
}

std::string_view Value::text() const {
  require(Kind::text, "a text");
  return document_->text(node());
}

std::size_t Value::choice(const std::string_view* choices, std::size_t count) const {
  const std::string_view given = text();
  std::string all;
  for (std::size_t i = 0; i < count; ++i) {
    if (choices[i] == given) return i;
    all += fmt::format("{}\"{}\"", i == 0 ? "" : i + 1 == count ? " or " : ", ", choices[i]);
  }
  refuse(ErrorCode::bad_value, fmt::format("\"{}\" is not {}", shown(given), all));
}

std::size_t Value::size() const {
  require(Kind::array, "a list");
  return node().size;
}

std::optional<Value> Value::member(std::string_view key) const {
  if (kind() != Kind::object) return std::nullopt;
  std::uint32_t at = node_ + 1;
  for (std::uint32_t i = 0; i < node().size; ++i) {
    if (document_->text(document_->nodes_[at]) == key) return Value(*document_, at + 1);
    at = document_->nodes_[at + 1].next;
  }
  return std::nullopt;
}

Fields::Fields(Value object, Known known) : object_(object) {
  object_.require(Kind::object, "an object");
  const Document& document = *object_.document_;
  std::uint32_t at = object_.node_ + 1;
  for (std::uint32_t i = 0; i < object_.node().size; ++i) {
    const std::string_view key = document.text(document.nodes_[at]);
    if (std::find(known.begin(), known.end(), key) == known.end()) {
      // A name that is there already was not meant a second time.
      std::vector<std::string_view> absent;
      std::copy_if(known.begin(), known.end(), std::back_inserter(absent),
                   [&](std::string_view name) { return !find(name); });
      Value(document, at + 1)
          .refuse(ErrorCode::unknown_field, "there is no such field here" + perhaps_meant(key, absent));
    }
    at = document.nodes_[at + 1].next;
  }
}

Value Fields::take(std::string_view key) const {
  if (const auto value = find(key)) return *value;
  Place place;
  place.field = key;
  object_.refuse(ErrorCode::missing_field, "the field is missing", place);
}

Fields open(const Document& document, std::string_view format, int newest_version, Known known) {
  const Value file = document.root();
  const auto kind = file.member("format");
  const auto version = file.member("version");
  if (kind && kind->text() != format) {
    kind->refuse(ErrorCode::wrong_format,
                 fmt::format("this is a \"{}\"; a \"{}\" was asked for", shown(kind->text()), format));
  }
  if (kind && version) {
    // A whole number past what integer() can tell is a newer version as well.
    const bool past_all = version->kind() == Kind::real && version->real() >= 0x1p53;
    const std::int64_t number = past_all ? INT64_MAX : version->integer(1, INT64_MAX);
    if (number > newest_version) {
      const std::string told = past_all ? "past 9007199254740992" : std::to_string(number);
      version->refuse(
          ErrorCode::newer_version,
          fmt::format("the file is of version {}; this library reads up to version {}", told, newest_version));
    }
  }
  std::vector<std::string_view> names = {"format", "version"};
  names.insert(names.end(), known.begin(), known.end());
  Fields fields(file, names);
  fields.take("format");
  fields.take("version");
  return fields;
}

}  // namespace latchwork::inline v0::json
