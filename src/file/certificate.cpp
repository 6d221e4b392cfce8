#include <array>
#include <cstdint>
#include <limits>
#include <string>
#include <type_traits>

#include "file/members.hpp"
#include "latchwork/file.hpp"

namespace latchwork::inline v0 {
namespace {

using json::Fields;
using json::Layout;
using json::Missing;
using json::Value;
using json::Writer;

constexpr std::string_view certificate_format = "latchwork-certificate";
constexpr std::array<std::string_view, 3> ends = {"kept", "bound", "dominated"};

// The members of each struct, once, for reading and writing. A certificate is plain data, wrong ones too: every number
// that a member can hold is taken.

template <class Given, class Struct>
concept Is = std::same_as<std::remove_const_t<Given>, Struct>;

void whole(auto& members, std::string_view key, auto& member) {
  using Int = std::remove_cvref_t<decltype(member)>;
  members.integer(key, member, std::numeric_limits<Int>::min(), std::numeric_limits<Int>::max());
}

void rows(auto& members, std::string_view key, auto& member) {
  members.integers(key, member, std::numeric_limits<int>::min(), std::numeric_limits<int>::max());
}

struct Object {
  Layout layout = Layout::line;
  template <class Struct>
  void operator()(Value value, Struct& item) const;
  template <class Struct>
  void operator()(Writer& writer, const Struct& item) const;
};

void members_of(auto& members, Is<StopPrice> auto& price) {
  whole(members, "row", price.row);
  whole(members, "price", price.price);
}

void members_of(auto& members, Is<WaleClass> auto& one) {
  rows(members, "wales", one.wales);
  whole(members, "least", one.least);
  members.list("prices", one.prices, Layout::line, Object{});
}

void members_of(auto& members, Is<Branch> auto& branch) {
  whole(members, "row", branch.row);
  whole(members, "below", branch.below);
  members.boolean("stop", branch.stop);
  members.choice("end", branch.end, ends);
  whole(members, "by", branch.by);
}

void members_of(auto& members, Is<Stretch> auto& stretch) {
  whole(members, "row", stretch.row);
  whole(members, "gain", stretch.gain);
  members.list("branches", stretch.branches, Layout::lines, Object{});
}

void members_of(auto& members, Is<Certificate> auto& certificate) {
  whole(members, "rows", certificate.rows);
  whole(members, "columns", certificate.columns);
  whole(members, "bound_ms", certificate.bound_ms);
  whole(members, "unit", certificate.unit);
  rows(members, "forced", certificate.forced);
  members.list("classes", certificate.classes, Layout::lines, Object{Layout::lines});
  members.list("stretches", certificate.stretches, Layout::lines, Object{Layout::lines});
  members.list("branches", certificate.branches, Layout::lines, Object{});
}

template <class Struct>
void Object::operator()(Value value, Struct& item) const {
  Fields fields(value);
  json::Taking members(fields, Missing::is_refused);
  members_of(members, item);
  fields.finish();
}

template <class Struct>
void Object::operator()(Writer& writer, const Struct& item) const {
  writer.begin_object(layout);
  json::Putting members(writer, Missing::is_refused);
  members_of(members, item);
  writer.end_object();
}

}  // namespace

Certificate read_certificate(std::string_view json) {
  const json::Document document(json);
  Fields fields = json::open(document, certificate_format, 1);
  json::Taking members(fields, Missing::is_refused);
  Certificate certificate;
  members_of(members, certificate);
  fields.finish();
  return certificate;
}

std::string write(const Certificate& certificate) {
  Writer writer;
  writer.begin_file(certificate_format, 1);
  json::Putting members(writer, Missing::is_refused);
  members_of(members, certificate);
  writer.end_object();
  return writer.take();
}

}  // namespace latchwork::inline v0
