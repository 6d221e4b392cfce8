// The machine, what hand work costs on it, and the names of its needles.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace latchwork::c {

Machine machine_in(const latchwork_machine* machine, const char* name) {
  const latchwork_machine from = struct_in(machine, machine_out(Machine{}), name);
  const std::string prefix = std::string(name) + ".";
  const void* closed = std::memchr(from.name, 0, sizeof from.name);
  if (closed == nullptr) refuse(prefix + "name", "not closed by NUL");
  if (from.prongs_count < 0 || from.prongs_count > LATCHWORK_MACHINE_PRONGS) {
    refuse(prefix + "prongs_count",
           std::to_string(from.prongs_count) + "; it may be 0 to " + std::to_string(LATCHWORK_MACHINE_PRONGS));
  }
  Machine value;
  value.name = from.name;
  value.needles = from.needles;
  value.pitch_mm = from.pitch_mm;
  value.leftmost = from.leftmost;
  value.prongs.assign(from.prongs, from.prongs + from.prongs_count);
  value.comfortable_crossing = from.comfortable_crossing;
  value.tuck_limit = from.tuck_limit;
  value.float_limit = from.float_limit;
  value.max_ladder = from.max_ladder;
  value.cast_on_loops = flag(from.cast_on_loops, (prefix + "cast_on_loops").c_str());
  value.carriage_starts_right = flag(from.carriage_starts_right, (prefix + "carriage_starts_right").c_str());
  return value;
}

latchwork_machine machine_out(const Machine& machine) {
  latchwork_machine to = LATCHWORK_MACHINE_INIT;
  const auto too_large = [](const char* field, std::size_t value, std::size_t limit) {
    Place place;
    place.field = field;
    throw Error(
        ErrorCode::too_large, place,
        std::string(field) + " takes " + std::to_string(value) + "; latchwork_machine holds " + std::to_string(limit));
  };
  if (machine.name.size() >= sizeof to.name) too_large("machine.name", machine.name.size(), sizeof to.name - 1);
  if (machine.prongs.size() > LATCHWORK_MACHINE_PRONGS) {
    too_large("machine.prongs", machine.prongs.size(), LATCHWORK_MACHINE_PRONGS);
  }
  cut(to.name, machine.name);
  to.needles = machine.needles;
  to.pitch_mm = machine.pitch_mm;
  to.leftmost = machine.leftmost;
  for (const int prong : machine.prongs) to.prongs[to.prongs_count++] = prong;
  to.comfortable_crossing = machine.comfortable_crossing;
  to.tuck_limit = machine.tuck_limit;
  to.float_limit = machine.float_limit;
  to.max_ladder = machine.max_ladder;
  to.cast_on_loops = machine.cast_on_loops ? 1 : 0;
  to.carriage_starts_right = machine.carriage_starts_right ? 1 : 0;
  return to;
}

Effort effort_in(const latchwork_effort* effort, const char* name) {
  if (effort == nullptr) return {};
  const latchwork_effort from = struct_in(effort, effort_out({}), name);
  Effort value;
  value.stop = from.stop;
  value.batch = from.batch;
  value.drop = from.drop;
  value.rung_knit = from.rung_knit;
  value.rung_purl = from.rung_purl;
  value.rung_tuck = from.rung_tuck;
  value.rung_slip = from.rung_slip;
  value.crossing = from.crossing;
  value.crossing_stitch = from.crossing_stitch;
  value.hold = from.hold;
  value.shaping = from.shaping;
  value.row = from.row;
  return value;
}

latchwork_effort effort_out(const Effort& effort) {
  latchwork_effort to = LATCHWORK_EFFORT_INIT;
  to.stop = effort.stop;
  to.batch = effort.batch;
  to.drop = effort.drop;
  to.rung_knit = effort.rung_knit;
  to.rung_purl = effort.rung_purl;
  to.rung_tuck = effort.rung_tuck;
  to.rung_slip = effort.rung_slip;
  to.crossing = effort.crossing;
  to.crossing_stitch = effort.crossing_stitch;
  to.hold = effort.hold;
  to.shaping = effort.shaping;
  to.row = effort.row;
  return to;
}

}  // namespace latchwork::c

latchwork_status latchwork_machine_generic(int32_t machine_class, latchwork_machine* machine, latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(machine, "machine");
    room.take(machine_out(Machine::generic(enumerator(machine_class, MachineClass::bulky, "machine_class"))));
  });
}

latchwork_status latchwork_effort_default(latchwork_effort* effort, latchwork_error* error) {
  return guarded(error, [&] { StructRoom(effort, "effort").take(effort_out({})); });
}

latchwork_status latchwork_needle_name(int32_t needle, char* text, size_t capacity, size_t* needed,
                                       latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(needle_name(needle));
  });
}

latchwork_status latchwork_needle_beside(int32_t needle, int32_t steps, int32_t* beside, latchwork_error* error) {
  return guarded(error, [&] { given(beside, "beside") = needle_beside(needle, steps); });
}

latchwork_status latchwork_leftmost_needle(const latchwork_machine* machine, int32_t columns, int32_t* needle,
                                           latchwork_error* error) {
  return guarded(error, [&] { given(needle, "needle") = leftmost_needle(machine_in(machine), columns); });
}

latchwork_status latchwork_needle_of(const latchwork_machine* machine, int32_t columns, int32_t column, int32_t* needle,
                                     latchwork_error* error) {
  return guarded(error, [&] { given(needle, "needle") = needle_of(machine_in(machine), columns, column); });
}
