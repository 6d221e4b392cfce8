#include <array>
#include <limits>
#include <string>

#include "file/object.hpp"
#include "latchwork/file.hpp"

namespace latchwork::inline v0 {
namespace {

using json::Is;
using json::Layout;
using json::whole;

constexpr std::string_view certificate_format = "latchwork-certificate";
constexpr std::array<std::string_view, 3> ends = {"kept", "bound", "dominated"};

// The members of each struct, once, for reading and writing. A certificate is plain data, wrong ones too: every number
// that a member can hold is taken.

struct CertificateLists {
  using Object = json::Object<CertificateLists>;

  static void rows(auto& members, std::string_view key, auto& member) {
    members.integers(key, member, std::numeric_limits<int>::min(), std::numeric_limits<int>::max());
  }

  void operator()(auto& members, Is<StopPrice> auto& price) const {
    whole(members, "row", price.row);
    whole(members, "price", price.price);
  }

  void operator()(auto& members, Is<WaleClass> auto& one) const {
    rows(members, "wales", one.wales);
    whole(members, "least", one.least);
    members.list("prices", one.prices, Layout::line, Object{});
  }

  void operator()(auto& members, Is<Branch> auto& branch) const {
    whole(members, "row", branch.row);
    whole(members, "below", branch.below);
    members.boolean("stop", branch.stop);
    members.choice("end", branch.end, ends);
    whole(members, "by", branch.by);
  }

  void operator()(auto& members, Is<Stretch> auto& stretch) const {
    whole(members, "row", stretch.row);
    whole(members, "gain", stretch.gain);
    members.list("branches", stretch.branches, Layout::lines, Object{});
  }

  void operator()(auto& members, Is<Certificate> auto& certificate) const {
    whole(members, "rows", certificate.rows);
    whole(members, "columns", certificate.columns);
    whole(members, "bound_ms", certificate.bound_ms);
    whole(members, "unit", certificate.unit);
    rows(members, "forced", certificate.forced);
    members.list("classes", certificate.classes, Layout::lines, Object{Layout::lines});
    members.list("stretches", certificate.stretches, Layout::lines, Object{Layout::lines});
    members.list("branches", certificate.branches, Layout::lines, Object{});
  }
};

}  // namespace

Certificate read_certificate(std::string_view json) {
  return json::read_file<Certificate, CertificateLists>(json, certificate_format);
}

std::string write(const Certificate& certificate) {
  return json::write_file<CertificateLists>(certificate, certificate_format);
}

}  // namespace latchwork::inline v0
