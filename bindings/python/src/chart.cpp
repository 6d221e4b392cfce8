// Charts and instructions.

#include "latchwork/chart.hpp"

#include "bind.hpp"
#include "latchwork/instructions.hpp"

namespace latchwork::python {

namespace {

constexpr std::int64_t most_cells_shown = 20'000;  // about 2 MB of SVG; a notebook keeps every picture it shows

using Drawer = std::string (*)(const Panel&, const ChartOptions&);

template <Drawer draw>
std::string drawn(const Panel& panel, Side side, const std::optional<Plan>& plan, const std::optional<Machine>& machine,
                  double stitch_width_mm, double stitch_height_mm) {
  return draw(panel, {.side = side,
                      .plan = plan ? &*plan : nullptr,
                      .machine = machine ? &*machine : nullptr,
                      .stitch_width_mm = stitch_width_mm,
                      .stitch_height_mm = stitch_height_mm});
}

}  // namespace

std::optional<std::string> notebook_svg(Panel panel) {
  if (std::int64_t{panel.grid().rows()} * panel.grid().columns() > most_cells_shown) return std::nullopt;
  const py::gil_scoped_release free;
  return chart_svg(panel);
}

void bind_chart(py::module_& m) {
  const ChartOptions defaults;
  m.def("chart_svg", without_gil(&drawn<&chart_svg>), "panel"_a, py::arg_v("side", Side::right_side, "Side.right_side"),
        py::kw_only(), "plan"_a = py::none(), "machine"_a = py::none(), "stitch_width_mm"_a = defaults.stitch_width_mm,
        "stitch_height_mm"_a = defaults.stitch_height_mm,
        "The chart as SVG 1.1, black on white: published standard symbols, crossings as slanted bands, row numbers, "
        "column "
        "or needle numbers, the stops of `plan`, a key of the symbols used, and a title that says which side is shown. "
        "`machine` names the needles in the operator's view; None is the standard machine. Only the proportion of the "
        "stitch counts.\n\nRaises Error bad_argument (field); size_mismatch (plan of another size).");
  m.def("chart_text", without_gil(&drawn<&chart_text>), "panel"_a,
        py::arg_v("side", Side::right_side, "Side.right_side"), py::kw_only(), "plan"_a = py::none(),
        "machine"_a = py::none(), "stitch_width_mm"_a = defaults.stitch_width_mm,
        "stitch_height_mm"_a = defaults.stitch_height_mm, "The same for a terminal. Raises as chart_svg().");
  m.def("instructions", without_gil(&instructions), "panel"_a, "plan"_a, "machine"_a,
        "Machine instructions in words: by row counter and carriage side, one line a stop, needles in the operator's "
        "view; "
        "a key of the abbreviations used; the cautions that fit. What findings() calls an error comes "
        "first; for an infeasible plan, why, and no steps. Raises Error size_mismatch (plan of another size); "
        "bad_argument for a machine out of its ranges, and for a plan with a rung that is no cell, a needle 0, or "
        "needles past every number.");
}

}  // namespace latchwork::python
