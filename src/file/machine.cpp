#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "file/object.hpp"
#include "latchwork/error.hpp"
#include "latchwork/file.hpp"

namespace latchwork::inline v0 {
namespace {

using json::Is;
using json::Layout;
using json::Missing;

constexpr std::string_view machine_format = "latchwork-machine";
constexpr std::array<std::string_view, 4> classes = {"fine", "standard", "mid", "bulky"};

// The members of each struct, once, for reading and writing. The ranges are those that every function holds a machine
// to (machine/check.cpp).
struct MachineLists {
  void operator()(auto& members, Is<Effort> auto& effort) const {
    constexpr std::int64_t none = 0;
    constexpr std::int64_t hour = 3'600'000;
    members.integer("stop", effort.stop, none, hour);
    members.integer("batch", effort.batch, none, hour);
    members.integer("drop", effort.drop, none, hour);
    members.integer("rung_knit", effort.rung_knit, none, hour);
    members.integer("rung_purl", effort.rung_purl, none, hour);
    members.integer("rung_tuck", effort.rung_tuck, none, hour);
    members.integer("rung_slip", effort.rung_slip, none, hour);
    members.integer("crossing", effort.crossing, none, hour);
    members.integer("crossing_stitch", effort.crossing_stitch, none, hour);
    members.integer("hold", effort.hold, none, hour);
    members.integer("shaping", effort.shaping, none, hour);
    members.integer("row", effort.row, none, hour);
  }

  void operator()(auto& members, Is<MachineFile> auto& file) const {
    auto& machine = file.machine;
    members.text("name", machine.name);
    members.integer("needles", machine.needles, 2, 4000);
    members.real("pitch_mm", machine.pitch_mm, 0, 50);
    members.needle("leftmost", machine.leftmost, json::NeedleNames{"centred", 4000});
    members.integers("prongs", machine.prongs, 1, 20, 20);
    members.integer("comfortable_crossing", machine.comfortable_crossing, 1, 4000);
    members.integer("tuck_limit", machine.tuck_limit, 1, 65536);
    members.integer("float_limit", machine.float_limit, 1, 4000);
    members.integer("max_ladder", machine.max_ladder, 1, 65536);
    members.boolean("cast_on_loops", machine.cast_on_loops);
    members.boolean("carriage_starts_right", machine.carriage_starts_right);
    members.value("effort_ms", file.effort, json::Object<MachineLists, Missing::keeps_default>{Layout::lines});
  }
};

/// The first entry that another has said before it; -1: none. An entry stands for two tools of that many prongs.
std::ptrdiff_t repeated(const std::vector<int>& prongs) {
  for (auto entry = prongs.begin(); entry != prongs.end(); ++entry) {
    if (std::find(prongs.begin(), entry, *entry) != entry) return entry - prongs.begin();
  }
  return -1;
}

constexpr std::string_view named_once = "tools of so many prongs are named already; an entry stands for two of them";

}  // namespace

MachineFile read_machine(std::string_view json) {
  const json::Document document(json);
  std::vector<std::string_view> known = json::names_of<MachineLists, MachineFile>();
  known.emplace_back("class");
  const json::Fields fields = json::open(document, machine_format, 1, known);
  MachineFile file;
  if (const auto start = fields.find("class")) {
    file.machine = Machine::generic(static_cast<MachineClass>(start->choice(classes.data(), classes.size())));
  }
  json::Taking members(fields, Missing::keeps_default);
  MachineLists{}(members, file);
  if (const auto value = fields.find("prongs")) {
    value->each([again = repeated(file.machine.prongs)](const json::Value& entry, std::size_t i) {
      if (static_cast<std::ptrdiff_t>(i) == again) entry.refuse(ErrorCode::bad_value, std::string(named_once));
    });
  }
  return file;
}

std::string write(const MachineFile& file) {
  if (const std::ptrdiff_t again = repeated(file.machine.prongs); again >= 0) {
    Place place;
    place.field = fmt::format("prongs[{}]", again);
    throw Error(ErrorCode::bad_value, place, fmt::format("{}: {}", place.field, named_once));
  }
  return json::write_file<MachineLists, Missing::keeps_default>(file, machine_format);
}

}  // namespace latchwork::inline v0
