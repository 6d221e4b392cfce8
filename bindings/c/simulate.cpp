// Moves, the bed that executes them, and the fabric that comes off it.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace latchwork::c {

latchwork_verification verification_out(const Verification& verification) {
  latchwork_verification to = LATCHWORK_VERIFICATION_INIT;
  to.verified = verification.verified ? 1 : 0;
  to.row = verification.difference.row;
  to.column = verification.difference.column;
  to.loops = verification.loops;
  cut(to.field, verification.difference.field);
  cut(to.message, verification.message);
  to.wale = verification.wale;
  cut(to.expected, verification.expected);
  cut(to.found, verification.found);
  if (verification.fault) {
    to.fault = 1;
    to.fault_move = verification.fault->move;
    to.fault_row = verification.fault->place.row;
    to.fault_column = verification.fault->place.column;
    cut(to.fault_message, verification.fault->message);
  }
  to.needless = verification.needless;
  if (verification.first_needless) {
    to.needless_move = verification.first_needless->move;
    to.needless_row = verification.first_needless->place.row;
    to.needless_column = verification.first_needless->place.column;
    cut(to.needless_message, verification.first_needless->message);
  }
  return to;
}

}  // namespace latchwork::c

namespace {

Move move_in(const latchwork_move& move, const char* field) {
  return {enumerator(move.kind, MoveKind::put_back, field), move.needle, move.last_needle, move.row, move.tool};
}

}  // namespace

latchwork_status latchwork_plan_moves(const latchwork_plan* plan, latchwork_move* moves, size_t capacity,
                                      size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(moves, capacity, needed, "moves");
    room.take(latchwork::moves(given(plan, "plan").value), [](const Move& move) {
      return latchwork_move{static_cast<int32_t>(move.kind), move.needle, move.last_needle, move.row, move.tool};
    });
  });
}

latchwork_status latchwork_move_describe(const latchwork_move* move, char* text, size_t capacity, size_t* needed,
                                         latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(describe(move_in(given(move, "move"), "move.kind")));
  });
}

latchwork_status latchwork_simulate(const latchwork_bed* bed, const latchwork_move* moves, size_t count,
                                    const latchwork_watch_options* options, latchwork_fabric** out,
                                    latchwork_error* error) {
  return guarded(error, [&] {
    fill(out, [&] {
      const latchwork_bed from = struct_in(bed, LATCHWORK_BED_INIT, "bed");
      const latchwork_watch_options how = watch_options_in(options);
      std::vector<Move> list;
      for (const latchwork_move& move : array_in(moves, count, "moves")) {
        const bool known = move.kind >= 0 && move.kind <= static_cast<int32_t>(MoveKind::put_back);
        list.push_back(move_in(move, known ? "" : ("moves[" + std::to_string(list.size()) + "].kind").c_str()));
      }
      Watch watch(how.progress, how.user_data);
      return simulate({from.leftmost, from.columns}, list, {watch.token(), watch.progress()});
    });
  });
}

latchwork_status latchwork_grid_verify(const latchwork_grid* grid, const latchwork_plan* plan,
                                       const latchwork_watch_options* options, latchwork_verification* verification,
                                       latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(verification, "verification");
    const latchwork_watch_options how = watch_options_in(options);
    Watch watch(how.progress, how.user_data);
    room.take(verification_out(
        verify(given(grid, "grid").value, given(plan, "plan").value, WatchOptions{watch.token(), watch.progress()})));
  });
}

latchwork_status latchwork_fabric_copy(const latchwork_fabric* fabric, latchwork_fabric** out, latchwork_error* error) {
  return guarded(error, [&] { fill(out, [&] { return given(fabric, "fabric").value; }); });
}

latchwork_status latchwork_fabric_equal(const latchwork_fabric* fabric, const latchwork_fabric* other, int32_t* equal,
                                        latchwork_error* error) {
  return guarded(error, [&] {
    const Fabric& left = given(fabric, "fabric").value;
    const Fabric& right = given(other, "other").value;
    const bool same = left.grid == right.grid && left.faults == right.faults && left.loops == right.loops;
    given(equal, "equal") = same ? 1 : 0;
  });
}

void latchwork_fabric_destroy(latchwork_fabric* fabric) {
  destroy(fabric);
}

latchwork_status latchwork_fabric_grid(const latchwork_fabric* fabric, latchwork_grid** out, latchwork_error* error) {
  return guarded(error, [&] {
    given(out, "out") = nullptr;
    const std::optional<Grid>& grid = given(fabric, "fabric").value.grid;
    if (grid) *out = new latchwork_grid{*grid};
  });
}

latchwork_status latchwork_fabric_loops(const latchwork_fabric* fabric, int64_t* loops, latchwork_error* error) {
  return guarded(error, [&] { given(loops, "loops") = given(fabric, "fabric").value.loops; });
}

latchwork_status latchwork_fabric_faults(const latchwork_fabric* fabric, size_t* count, latchwork_error* error) {
  return guarded(error, [&] { given(count, "count") = given(fabric, "fabric").value.faults.size(); });
}

latchwork_status latchwork_fabric_fault(const latchwork_fabric* fabric, size_t index, latchwork_fault* fault,
                                        latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(fault, "fault");
    const Fault& from = element(given(fabric, "fabric").value.faults, index, "index");
    latchwork_fault to = LATCHWORK_FAULT_INIT;
    to.row = from.place.row;
    to.column = from.place.column;
    to.move = from.move;
    cut(to.message, from.message);
    room.take(to);
  });
}
