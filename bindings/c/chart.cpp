// Charts and instructions.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

using Draw = std::string (*)(const Panel&, const ChartOptions&);

latchwork_status draw(Draw drawer, const latchwork_panel* panel, const latchwork_chart_options* options, char* text,
                      std::size_t capacity, std::size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    latchwork_chart_options from = LATCHWORK_CHART_OPTIONS_INIT;
    if (options != nullptr) from = struct_in(options, from, "options");
    require_zero(from.reserved, "options.reserved");
    ChartOptions to;
    to.side = enumerator(from.side, Side::operator_view, "side");
    if (from.plan != nullptr) to.plan = &from.plan->value;
    std::optional<Machine> machine;
    if (from.machine != nullptr) to.machine = &machine.emplace(machine_in(from.machine, "options.machine"));
    if (from.stitch_width_mm != 0) to.stitch_width_mm = from.stitch_width_mm;
    if (from.stitch_height_mm != 0) to.stitch_height_mm = from.stitch_height_mm;
    to.blank = enumerator(from.blank, Blank::purl, "blank");
    if (from.first_row != 0) to.first_row = from.first_row;
    to.last_row = from.last_row;
    to.first_column = from.first_column;
    to.columns = from.columns;
    room.take_text(drawer(given(panel, "panel").value, to));
  });
}

}  // namespace

latchwork_status latchwork_panel_chart_svg(const latchwork_panel* panel, const latchwork_chart_options* options,
                                           char* text, size_t capacity, size_t* needed, latchwork_error* error) {
  return draw(chart_svg, panel, options, text, capacity, needed, error);
}

latchwork_status latchwork_panel_chart_text(const latchwork_panel* panel, const latchwork_chart_options* options,
                                            char* text, size_t capacity, size_t* needed, latchwork_error* error) {
  return draw(chart_text, panel, options, text, capacity, needed, error);
}

latchwork_status latchwork_panel_instructions(const latchwork_panel* panel, const latchwork_plan* plan,
                                              const latchwork_machine* machine, char* text, size_t capacity,
                                              size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(instructions(given(panel, "panel").value, given(plan, "plan").value, machine_in(machine)));
  });
}
