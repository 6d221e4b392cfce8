// Reading and writing files' text.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

template <class Handle, class Read>
latchwork_status read(const char* text, std::size_t size, Handle** out, latchwork_error* error, Read&& reader) {
  return guarded(error, [&] { fill(out, [&] { return reader(text_in(text, size)); }); });
}

template <class Handle>
latchwork_status written(const Handle* handle, const char* name, char* text, std::size_t capacity, std::size_t* needed,
                         latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(write(given(handle, name).value));
  });
}

}  // namespace

latchwork_status latchwork_read_grid(const char* text, size_t size, latchwork_grid** out, latchwork_error* error) {
  return read(text, size, out, error, read_grid);
}

latchwork_status latchwork_read_strip(const char* text, size_t size, latchwork_strip** out, latchwork_error* error) {
  return read(text, size, out, error, read_strip);
}

latchwork_status latchwork_read_panel(const char* text, size_t size, latchwork_panel** out, latchwork_error* error) {
  return read(text, size, out, error, read_panel);
}

latchwork_status latchwork_read_plan(const char* text, size_t size, latchwork_plan** out, latchwork_error* error) {
  return read(text, size, out, error, read_plan);
}

latchwork_status latchwork_read_certificate(const char* text, size_t size, latchwork_certificate** out,
                                            latchwork_error* error) {
  return read(text, size, out, error, read_certificate);
}

latchwork_status latchwork_read_swatch(const char* text, size_t size, latchwork_swatch** out, latchwork_error* error) {
  return read(text, size, out, error, read_swatch);
}

latchwork_status latchwork_read_timings(const char* text, size_t size, latchwork_timings** out,
                                        latchwork_error* error) {
  return read(text, size, out, error, read_timings);
}

latchwork_status latchwork_read_machine(const char* text, size_t size, latchwork_machine* machine,
                                        latchwork_effort* effort, latchwork_error* error) {
  return guarded(error, [&] {
    StructRoom machine_room(machine, "machine");
    std::optional<StructRoom<latchwork_effort>> effort_room;
    if (effort != nullptr) effort_room.emplace(effort, "effort");
    const MachineFile file = read_machine(text_in(text, size));
    machine_room.take(machine_out(file.machine));
    if (effort_room) effort_room->take(effort_out(file.effort));
  });
}

latchwork_status latchwork_grid_write(const latchwork_grid* grid, char* text, size_t capacity, size_t* needed,
                                      latchwork_error* error) {
  return written(grid, "grid", text, capacity, needed, error);
}

latchwork_status latchwork_strip_write(const latchwork_strip* strip, char* text, size_t capacity, size_t* needed,
                                       latchwork_error* error) {
  return written(strip, "strip", text, capacity, needed, error);
}

latchwork_status latchwork_panel_write(const latchwork_panel* panel, char* text, size_t capacity, size_t* needed,
                                       latchwork_error* error) {
  return written(panel, "panel", text, capacity, needed, error);
}

latchwork_status latchwork_plan_write(const latchwork_plan* plan, char* text, size_t capacity, size_t* needed,
                                      latchwork_error* error) {
  return written(plan, "plan", text, capacity, needed, error);
}

latchwork_status latchwork_certificate_write(const latchwork_certificate* certificate, char* text, size_t capacity,
                                             size_t* needed, latchwork_error* error) {
  return written(certificate, "certificate", text, capacity, needed, error);
}

latchwork_status latchwork_read_yarn_request(const char* text, size_t size, latchwork_yarn_file** out,
                                             latchwork_error* error) {
  return guarded(error, [&] { fill_yarn_file(out, [&] { return read_yarn_request(text_in(text, size)); }); });
}

latchwork_status latchwork_yarn_request_write(const latchwork_yarn_request* request, char* text, size_t capacity,
                                              size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(write(yarn_request_in(&given(request, "request"))));
  });
}

latchwork_status latchwork_swatch_write(const latchwork_swatch* swatch, char* text, size_t capacity, size_t* needed,
                                        latchwork_error* error) {
  return written(swatch, "swatch", text, capacity, needed, error);
}

latchwork_status latchwork_machine_write(const latchwork_machine* machine, const latchwork_effort* effort, char* text,
                                         size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(write(MachineFile{machine_in(machine), effort_in(effort)}));
  });
}

latchwork_status latchwork_timings_write(const latchwork_timings* timings, char* text, size_t capacity, size_t* needed,
                                         latchwork_error* error) {
  return written(timings, "timings", text, capacity, needed, error);
}
