// A plan's time by kind of work, sessions at the machine, rests.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

latchwork_session_options session_options_default() {
  const SessionOptions from;
  return {sizeof(latchwork_session_options), from.from_row, from.session_ms, from.rest_ms};
}

SessionOptions session_options_in(const latchwork_session_options* options) {
  if (options == nullptr) return {};
  const latchwork_session_options from = struct_in(options, session_options_default(), "options");
  return {.session_ms = from.session_ms, .rest_ms = from.rest_ms, .from_row = from.from_row};
}

}  // namespace

namespace latchwork::c {

latchwork_work_times work_times_out(const WorkTimes& from) {
  return {sizeof(latchwork_work_times),
          from.stops_ms,
          from.reforms_ms,
          from.crossings_ms,
          from.holds_ms,
          from.shapings_ms,
          from.carriage_ms,
          from.total_ms};
}

}  // namespace latchwork::c

latchwork_status latchwork_plan_work_times(const latchwork_plan* plan, const latchwork_effort* effort, int32_t pieces,
                                           latchwork_work_times* times, latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom room(times, "times");
    room.take(work_times_out(work_times(given(plan, "plan").value, effort_in(effort), pieces)));
  });
}

latchwork_status latchwork_session_options_default(latchwork_session_options* session_options, latchwork_error* error) {
  return guarded(error, [&] { StructRoom(session_options, "session_options").take(session_options_default()); });
}

latchwork_status latchwork_plan_sessions(const latchwork_plan* plan, const latchwork_effort* effort,
                                         const latchwork_session_options* options, latchwork_session* sessions,
                                         size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(sessions, capacity, needed, "sessions");
    room.take(latchwork::sessions(given(plan, "plan").value, effort_in(effort), session_options_in(options)),
              [](const Session& from) {
                return latchwork_session{from.from_row,      from.to_row,  from.carriage_right ? 1 : 0,
                                         from.clear ? 1 : 0, from.work_ms, from.hand_ms};
              });
  });
}

latchwork_status latchwork_plan_rests(const latchwork_plan* plan, const latchwork_effort* effort,
                                      const latchwork_session_options* options, latchwork_rest* rests, size_t capacity,
                                      size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(rests, capacity, needed, "rests");
    room.take(latchwork::rests(given(plan, "plan").value, effort_in(effort), session_options_in(options)),
              [](const Rest& from) {
                return latchwork_rest{from.session, from.row, from.hand_ms};
              });
  });
}
