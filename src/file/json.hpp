#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "latchwork/error.hpp"

// JSON as the file readers see it: a whole text checked at once, every value with the line it ends on and the path that
// leads to it, so that each refusal can say where. Only json.cpp knows which parser is underneath.
namespace latchwork::inline v0::json {

enum class Kind : std::uint8_t { null, boolean, integer, real, text, array, object };

/// Deepest nesting taken. The formats need seven.
inline constexpr int max_depth = 32;

/// One value, or the key of one, in a flat list in the order of the text.
struct Node {
  struct Span {
    std::uint32_t begin, size;
  };
  union {
    std::int64_t integer;
    double real;
    bool boolean;
    Span text;           // of a text or a key: where it stands in Document::text
    std::uint32_t size;  // of an array or object: how many
  };
  Kind kind = Kind::null;
  std::int32_t line = 0;
  std::uint32_t next = 0;  // the node after this value and all within it; 0 while it is being read
};

class Value;

/// A parsed text. Stays where it is, since values point into it.
class Document {
 public:
  /// @throws Error too_large (bytes, nesting), bad_encoding, bad_syntax, duplicate_key, bad_value (a number past
  /// double's range), all with line, and field where one is known.
  explicit Document(std::string_view text);
  Document(const Document&) = delete;
  Document& operator=(const Document&) = delete;

  Value root() const;

 private:
  friend class Value;
  friend class Builder;
  friend class Fields;
  std::string_view text(const Node& node) const {
    return std::string_view(texts_).substr(node.text.begin, node.text.size);
  }
  std::string path(std::uint32_t node) const;

  std::vector<Node> nodes_;
  std::string texts_;
};

/// A view of one value of a document.
class Value {
 public:
  Value(const Document& document, std::uint32_t node) : document_(&document), node_(node) {}

  Kind kind() const { return node().kind; }
  int line() const { return node().line; }
  /// "crossings[2].left"; empty for the whole.
  std::string path() const { return document_->path(node_); }

  // Each refuses another kind, or what is out of range, as bad_value.
  /// A number without a part behind the point, however it is written: 12, 12.0, 1.2e1.
  std::int64_t integer(std::int64_t least, std::int64_t most) const;
  int number(int least, int most) const { return static_cast<int>(integer(least, most)); }
  double real() const;
  bool boolean() const;
  std::string_view text() const;
  /// Index of a text among `choices`.
  std::size_t choice(const std::string_view* choices, std::size_t count) const;
  /// Elements of an array.
  std::size_t size() const;
  /// The field of that name; nothing where there is none, or this is no object.
  std::optional<Value> member(std::string_view key) const;

  /// Calls `see(element, index)` for each element of an array.
  template <class See>
  void each(See&& see) const {
    const std::size_t count = size();
    std::uint32_t at = node_ + 1;
    for (std::size_t i = 0; i < count; ++i) {
      see(Value(*document_, at), i);
      at = document_->nodes_[at].next;
    }
  }

  /// Throws with this value's line and path; `place` may add row and column, and a field below this one.
  [[noreturn]] void refuse(ErrorCode code, const std::string& what, Place place = {}) const;
  /// Throws `error` again, its place completed with the line and path of the value that its field names, as far as
  /// there is one below this.
  [[noreturn]] void refuse(const Error& error) const;

  /// Does `make`, and completes the place of what it throws.
  template <class Make>
  auto guard(Make&& make) const {
    try {
      return std::forward<Make>(make)();
    } catch (const Error& error) {
      refuse(error);
    }
  }

 private:
  friend class Fields;
  const Node& node() const { return document_->nodes_[node_]; }
  Value below(std::string_view field) const;
  void require(Kind kind, const char* wanted) const;

  const Document* document_;
  std::uint32_t node_;
};

/// The names that an object's fields may have.
using Known = std::span<const std::string_view>;

/// The fields of an object, each taken by its name. What is there under another name than those that are known is
/// refused before any field is read: a misspelt field would else be told as one that is missing.
class Fields {
 public:
  /// @throws Error bad_value when it is no object; unknown_field, for the first one, with the known name that it is
  /// near to and that is not there.
  Fields(Value object, Known known);

  const Value& object() const { return object_; }
  /// @throws Error missing_field.
  Value take(std::string_view key) const;
  std::optional<Value> find(std::string_view key) const { return object_.member(key); }

 private:
  Value object_;
};

/// The fields of a file beside its "format" and "version". What the file is, is told before its fields are looked at: a
/// newer version may know more. @throws Error wrong_format, newer_version, and as Fields.
Fields open(const Document& document, std::string_view format, int newest_version, Known known);

}  // namespace latchwork::inline v0::json
