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
                  double stitch_width_mm, double stitch_height_mm, Blank blank, Whole<"first_row"> first_row,
                  Whole<"last_row"> last_row, Whole<"first_column"> first_column, Whole<"columns"> columns) {
  return draw(panel, {.side = side,
                      .plan = plan ? &*plan : nullptr,
                      .machine = machine ? &*machine : nullptr,
                      .stitch_width_mm = stitch_width_mm,
                      .stitch_height_mm = stitch_height_mm,
                      .blank = blank,
                      .first_row = first_row,
                      .last_row = last_row,
                      .first_column = first_column,
                      .columns = columns});
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
        "stitch_height_mm"_a = defaults.stitch_height_mm, py::arg_v("blank", Blank::commoner, "Blank.commoner"),
        "first_row"_a = defaults.first_row, "last_row"_a = defaults.last_row, "first_column"_a = defaults.first_column,
        "columns"_a = defaults.columns,
        "The chart as SVG 1.1, black on white: published standard symbols, crossings as slanted bands, row numbers, "
        "column or needle numbers, the stops of `plan`, a key of the symbols used, and a title that says which side is "
        "shown. `machine` names the needles in the operator's view; None is the standard machine. Only the proportion "
        "of the stitch counts. `blank` says which loops go without a mark; the rows shown are `first_row` to "
        "`last_row`, a sheet of a panel that is too high for one, both counted from 1 (last_row 0: the panel's last): "
        "a crossing stands on the sheet of the row above it, one after the panel's last row on that row's; the stop "
        "below the first row is marked on either sheet. Of a panel that is too wide for one, the columns shown: "
        "`first_column`, counted from 0 from the left on the right side from whichever side the chart is drawn, and "
        "how many (columns 0: all from there on); a crossing that reaches past them is not drawn, its cells are grey.\n"
        "\n"
        "Raises Error bad_argument (field; \"stops[1].row\" for a plan whose stops do not rise within its rows); "
        "size_mismatch (plan of another size).");
  m.def("chart_text", without_gil(&drawn<&chart_text>), "panel"_a,
        py::arg_v("side", Side::right_side, "Side.right_side"), py::kw_only(), "plan"_a = py::none(),
        "machine"_a = py::none(), "stitch_width_mm"_a = defaults.stitch_width_mm,
        "stitch_height_mm"_a = defaults.stitch_height_mm, py::arg_v("blank", Blank::commoner, "Blank.commoner"),
        "first_row"_a = defaults.first_row, "last_row"_a = defaults.last_row, "first_column"_a = defaults.first_column,
        "columns"_a = defaults.columns, "The same for a terminal; every loop is marked. Raises as chart_svg().");
  m.def("instructions", without_gil(&instructions), "panel"_a, "plan"_a, "machine"_a,
        "Machine instructions in words: by row counter and carriage side, one line a stop, needles in the operator's "
        "view, re-forms as one sweep across the bed, crossings by marks of their own (\"X1\"; letters are strips of "
        "charts); a key of the abbreviations used; the cautions that fit. What findings() calls an error comes first; "
        "for an infeasible plan, why, and no steps.\n"
        "\n"
        "Verify the plan first: verify() alone says whether its work makes this panel. Here a plan is refused that no "
        "words can tell, that they would tell wrongly, or that asks what hands cannot do; one that hands can follow to "
        "another cloth is told as it stands. Steps that hands would do for nothing, which verify() counts, are left "
        "out, and a line at the top says so.\n"
        "\n"
        "Raises Error size_mismatch (plan of another size); bad_argument for a machine out of its ranges, and for such "
        "a plan: rows, columns and needles outside the panel, needles cast on other than the chart's in row 1, stops "
        "that are not by rising row, a carriage on the other side than its row's, columns and wales that are not the "
        "needle's, rungs that are not all those from `from_row` up to the stop's row or are no knit, purl, tuck or "
        "slip, a needle re-formed or a stitch crossed twice at one stop, crossings that lack a group or have it twice, "
        "put it on other needles or in another order, or have no tools for it, counts below 1 and times below 0, and "
        "the first step that hands cannot do, such as a batch from a row where its wale has no loop; too_large as "
        "simulate(). Its row is the stop's, its column that on the RS where there is one, its field one such as "
        "\"stops[2].reforms[0].needle\". Of an infeasible plan the stops are not looked at.");
}

}  // namespace latchwork::python
