// A panel wider than the bed, in parts.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

latchwork_status latchwork_panel_split(const latchwork_panel* panel, const latchwork_machine* machine,
                                       double seam_stitches, latchwork_split_part* parts, size_t capacity,
                                       size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(parts, capacity, needed, "parts");
    room.take(split(given(panel, "panel").value, machine_in(machine), seam_stitches), [](const SplitPart& from) {
      return latchwork_split_part{from.column, from.columns, from.seam_left, from.seam_right};
    });
  });
}

latchwork_status latchwork_panel_split_part(const latchwork_panel* panel, const latchwork_split_part* part,
                                            latchwork_panel** out, latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const latchwork_split_part& from = given(part, "part");
      return split_part(given(panel, "panel").value, {from.column, from.columns, from.seam_left, from.seam_right});
    });
  });
}
