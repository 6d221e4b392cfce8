// Events spread evenly.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

Spacing spaced(std::int32_t length, std::int32_t events, std::int32_t ends, std::int32_t step) {
  return spaced_evenly(length, events, enumerator(ends, SpacingEnds::half_ends, "ends"), step);
}
Spacing spacing_in(const latchwork_spacing* spacing) {
  const latchwork_spacing from = struct_in(spacing, latchwork_spacing LATCHWORK_SPACING_INIT, "spacing");
  return spaced(from.length, from.events, from.ends, from.step);
}

}  // namespace

latchwork_status latchwork_spaced_evenly(int32_t length, int32_t events, int32_t ends, int32_t step,
                                         latchwork_spacing* spacing, latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(spacing, "spacing");
    const Spacing from = spaced(length, events, ends, step);
    room.take({sizeof(latchwork_spacing), from.length, from.events, static_cast<int32_t>(from.ends), from.step,
               from.every, from.times, from.longer_times, from.rest});
  });
}

latchwork_status latchwork_spacing_gaps(const latchwork_spacing* spacing, int32_t* gaps, size_t capacity,
                                        size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(gaps, capacity, needed, "gaps");
    room.take(spacing_in(spacing).gaps);
  });
}

latchwork_status latchwork_spacing_positions(const latchwork_spacing* spacing, int32_t* positions, size_t capacity,
                                             size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(positions, capacity, needed, "positions");
    room.take(spacing_in(spacing).positions);
  });
}

latchwork_status latchwork_spacing_edge_events(const latchwork_spacing* spacing, int32_t stitches, int32_t above,
                                               latchwork_edge_event* events, size_t capacity, size_t* needed,
                                               latchwork_error* error) {
  return guarded(error, [&] {
    Room room(events, capacity, needed, "events");
    room.take(edge_events(spacing_in(spacing), stitches, above), [](const EdgeEvent& from) {
      return latchwork_edge_event{from.row, from.stitches, from.every, from.times};
    });
  });
}

latchwork_status latchwork_spacing_text(const latchwork_spacing* spacing, int32_t counted, char* text, size_t capacity,
                                        size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(spacing_text(spacing_in(spacing), enumerator(counted, Counted::rows, "counted")));
  });
}
