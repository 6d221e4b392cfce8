#pragma once

#include <fmt/format.h>

#include <concepts>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "file/json.hpp"
#include "file/json_writer.hpp"

// A struct's members are listed once, in a function template over one of these three; naming, reading and writing all
// follow that list, so that they cannot come to differ.
namespace latchwork::inline v0::json {

/// How needles stand in a file: "L3", "R12", up to L`most` and R`most`; needle 0, which no bed has, goes by `zero`.
struct NeedleNames {
  std::string_view zero = "none";
  std::int64_t most = std::numeric_limits<int>::max();  // the least int has no opposite and no name
};
/// Nothing for a needle beyond `most`.
std::optional<std::string> needle_text(int needle, NeedleNames names);
int get_needle(Value value, NeedleNames names);

/// What a reader does where a field is missing.
enum class Missing : std::uint8_t { is_refused, keeps_default };

/// Collects the members' names, for Fields to know them.
class Naming {
 public:
  const std::vector<std::string_view>& names() const { return names_; }

  static void required(const auto&...) {}  // each stands among the others too
  void integer(std::string_view key, const auto&...) { add(key); }
  void real(std::string_view key, const auto&...) { add(key); }
  void number(std::string_view key, const auto&...) { add(key); }
  void boolean(std::string_view key, const auto&...) { add(key); }
  void hint(std::string_view key, const auto&...) { add(key); }
  void text(std::string_view key, const auto&...) { add(key); }
  void word(std::string_view key, const auto&...) { add(key); }
  void choice(std::string_view key, const auto&...) { add(key); }
  void needle(std::string_view key, const auto&...) { add(key); }
  void value(std::string_view key, const auto&...) { add(key); }
  void optional(std::string_view key, const auto&...) { add(key); }
  void list(std::string_view key, const auto&...) { add(key); }
  void integers(std::string_view key, const auto&...) { add(key); }
  void needles(std::string_view key, const auto&...) { add(key); }

 private:
  void add(std::string_view key) { names_.push_back(key); }

  std::vector<std::string_view> names_;
};

class Taking {
 public:
  Taking(const Fields& fields, Missing missing) : fields_(fields), missing_(missing) {}

  /// Fields that have no default to keep: they must be there whatever becomes of the others.
  template <class... Keys>
  void required(Keys... keys) {
    (static_cast<void>(fields_.take(keys)), ...);
  }

  template <std::signed_integral Int>
  void integer(std::string_view key, Int& member, Int least, Int most) {
    with(key, [&](Value value) { member = static_cast<Int>(value.integer(least, most)); });
  }
  /// Above `least`, up to `most`.
  void real(std::string_view key, double& member, double least, double most) {
    with(key, [&](Value value) {
      const double number = value.real();
      if (!(number > least && number <= most)) {
        value.refuse(ErrorCode::bad_value, fmt::format("{} is not above {} and up to {}", number, least, most));
      }
      member = number;
    });
  }
  /// Any that is finite: its range is looked at elsewhere.
  void number(std::string_view key, double& member) {
    with(key, [&](Value value) { member = value.real(); });
  }
  void boolean(std::string_view key, bool& member) {
    with(key, [&](Value value) { member = value.boolean(); });
  }
  /// A boolean that is left out when false.
  void hint(std::string_view key, bool& member) {
    if (const auto value = fields_.find(key)) member = value->boolean();
  }
  void text(std::string_view key, std::string& member) {
    with(key, [&](Value value) { member = value.text(); });
  }
  /// An enumeration counted from `first`.
  void word(std::string_view key, std::string& member) { text(key, member); }
  template <class Enum>
  void choice(std::string_view key, Enum& member, std::span<const std::string_view> names, int first = 0) {
    with(key, [&](Value value) {
      member = static_cast<Enum>(static_cast<int>(value.choice(names.data(), names.size())) + first);
    });
  }
  void needle(std::string_view key, int& member, NeedleNames names) {
    with(key, [&](Value value) { member = get_needle(value, names); });
  }
  /// What `get` knows how to read.
  template <class Member, class Get>
  void value(std::string_view key, Member& member, Get&& get) {
    with(key, [&](Value value) { get(value, member); });
  }
  /// The same for what may be absent.
  template <class Member, class Get>
  void optional(std::string_view key, std::optional<Member>& member, Get&& get) {
    if (const auto value = fields_.find(key)) get(*value, member.emplace());
  }
  /// A list that is left out when empty, unless missing fields keep a default.
  template <class Item, class Get>
  void list(std::string_view key, std::vector<Item>& member, Layout, Get&& get,
            std::size_t most_items = std::numeric_limits<std::size_t>::max()) {
    const auto value = fields_.find(key);
    if (!value) return;
    if (value->size() > most_items) {
      value->refuse(ErrorCode::bad_value, fmt::format("{} items; there may be {}", value->size(), most_items));
    }
    member.clear();
    member.reserve(value->size());
    value->each([&](Value element, std::size_t) {
      member.emplace_back();
      get(element, member.back());
    });
  }
  void integers(std::string_view key, std::vector<int>& member, int least, int most,
                std::size_t most_items = std::numeric_limits<std::size_t>::max()) {
    list(
        key, member, Layout::line, [&](Value value, int& item) { item = value.number(least, most); }, most_items);
  }
  void needles(std::string_view key, std::vector<int>& member, NeedleNames names) {
    list(key, member, Layout::line, [&](Value value, int& item) { item = get_needle(value, names); });
  }

 private:
  template <class Get>
  void with(std::string_view key, Get&& get) {
    if (missing_ == Missing::is_refused) {
      get(fields_.take(key));
    } else if (const auto value = fields_.find(key)) {
      get(*value);
    }
  }

  const Fields& fields_;
  Missing missing_;
};

/// Refuses, as the reader would, what the reader would refuse.
class Putting {
 public:
  Putting(Writer& writer, Missing missing) : writer_(writer), missing_(missing) {}

  template <class... Keys>
  static void required(Keys...) {}  // the others are written too

  template <std::signed_integral Int>
  void integer(std::string_view key, Int member, Int least, Int most) {
    if (member < least || member > most) {
      refuse(writer_.field_of(key), fmt::format("is {}, not from {} to {}", member, least, most));
    }
    writer_.key(key);
    writer_.integer(member);
  }
  void real(std::string_view key, double member, double least, double most) {
    if (!(member > least && member <= most)) {
      refuse(writer_.field_of(key), fmt::format("is {}, not above {} and up to {}", member, least, most));
    }
    writer_.key(key);
    writer_.real(member);
  }
  void number(std::string_view key, double member) {
    writer_.key(key);
    writer_.real(member);
  }
  void boolean(std::string_view key, bool member) {
    writer_.key(key);
    writer_.boolean(member);
  }
  void hint(std::string_view key, bool member) {
    if (member) boolean(key, member);
  }
  void text(std::string_view key, std::string_view member) {
    writer_.key(key);
    writer_.text(member);
  }
  /// A text that is left out where it is empty.
  void word(std::string_view key, std::string_view member) {
    if (!member.empty()) text(key, member);
  }
  template <class Enum>
  void choice(std::string_view key, Enum member, std::span<const std::string_view> names, int first = 0) {
    const auto index = static_cast<std::int64_t>(member) - first;
    if (index < 0 || index >= static_cast<std::int64_t>(names.size())) {
      refuse(writer_.field_of(key), fmt::format("is {}, which has no name", index + first));
    }
    text(key, names[static_cast<std::size_t>(index)]);
  }
  void needle(std::string_view key, int member, NeedleNames names) {
    const auto name = needle_text(member, names);
    if (!name) refuse_needle(writer_.field_of(key), member, names);
    text(key, *name);
  }
  template <class Member, class Put>
  void value(std::string_view key, const Member& member, Put&& put) {
    writer_.key(key);
    put(writer_, member);
  }
  template <class Member, class Put>
  void optional(std::string_view key, const std::optional<Member>& member, Put&& put) {
    if (member) value(key, *member, put);
  }
  template <class Item, class Put>
  void list(std::string_view key, const std::vector<Item>& member, Layout layout, Put&& put,
            std::size_t most_items = std::numeric_limits<std::size_t>::max()) {
    if (member.size() > most_items) {
      refuse(writer_.field_of(key), fmt::format("has {} items; there may be {}", member.size(), most_items));
    }
    if (member.empty() && missing_ == Missing::is_refused) return;
    writer_.key(key);
    writer_.begin_array(layout);
    for (const Item& item : member) put(writer_, item);
    writer_.end_array();
  }
  void integers(std::string_view key, const std::vector<int>& member, int least, int most,
                std::size_t most_items = std::numeric_limits<std::size_t>::max()) {
    const auto put = [&](Writer& writer, int item) {
      if (item < least || item > most) {
        refuse(writer.field(), fmt::format("is {}, not from {} to {}", item, least, most));
      }
      writer.integer(item);
    };
    list(key, member, Layout::line, put, most_items);
  }
  void needles(std::string_view key, const std::vector<int>& member, NeedleNames names) {
    list(key, member, Layout::line, [&](Writer& writer, int item) {
      const auto name = needle_text(item, names);
      if (!name) refuse_needle(writer.field(), item, names);
      writer.text(*name);
    });
  }

 private:
  [[noreturn]] static void refuse(const std::string& field, const std::string& what) {
    Place place;
    place.field = field;
    throw Error(ErrorCode::bad_value, place, field + " " + what);
  }
  [[noreturn]] static void refuse_needle(const std::string& field, int needle, NeedleNames names) {
    refuse(field, fmt::format("is needle {}; needles go to L{} and R{}", needle, names.most, names.most));
  }

  Writer& writer_;
  Missing missing_;
};

}  // namespace latchwork::inline v0::json
