#pragma once

#include <concepts>
#include <limits>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "file/members.hpp"

// Structs as objects of a file. A format has one struct of lists, with a call operator for each type that it knows,
//   void operator()(auto& members, Is<Reform> auto& reform) const;
// which names the members for knowing their names, reading and writing alike.
namespace latchwork::inline v0::json {

template <class Given, class Struct>
concept Is = std::same_as<std::remove_const_t<Given>, Struct>;

/// Every number that the member can hold: for plain data, wrong data too.
void whole(auto& members, std::string_view key, auto& member) {
  using Int = std::remove_cvref_t<decltype(member)>;
  members.integer(key, member, std::numeric_limits<Int>::min(), std::numeric_limits<Int>::max());
}

/// The names of the members that `Lists` has for a type.
template <class Lists, class Struct>
const std::vector<std::string_view>& names_of() {
  static const std::vector<std::string_view> names = [] {
    const Struct item{};
    Naming members;
    Lists{}(members, item);
    return members.names();
  }();
  return names;
}

/// An object with the members that `Lists` names for its type.
template <class Lists, Missing missing = Missing::is_refused>
struct Object {
  Layout layout = Layout::line;

  template <class Struct>
  void operator()(Value value, Struct& item) const {
    const Fields fields(value, names_of<Lists, Struct>());
    Taking members(fields, missing);
    Lists{}(members, item);
  }
  template <class Struct>
  void operator()(Writer& writer, const Struct& item) const {
    writer.begin_object(layout);
    Putting members(writer, missing);
    Lists{}(members, item);
    writer.end_object();
  }
};

/// A whole file of version 1 that is such an object. What `check` refuses is told with its line.
template <class Struct, class Lists, Missing missing = Missing::is_refused>
Struct read_file(
    std::string_view json, std::string_view format, void (*check)(const Struct&) = [](const Struct&) {}) {
  const Document document(json);
  const Fields fields = open(document, format, 1, names_of<Lists, Struct>());
  Taking members(fields, missing);
  Struct item;
  Lists{}(members, item);
  fields.object().guard([&] { check(item); });
  return item;
}

template <class Lists, Missing missing = Missing::is_refused>
std::string write_file(const auto& item, std::string_view format) {
  Writer writer;
  writer.begin_file(format, 1);
  Putting members(writer, missing);
  Lists{}(members, item);
  writer.end_object();
  return writer.take();
}

}  // namespace latchwork::inline v0::json
