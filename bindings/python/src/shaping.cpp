// Shapes of panels.

#include "latchwork/shaping.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_shaping(py::module_& m) {
  const ShapeOptions defaults;
  m.attr("max_edge_items") = max_edge_items;
  m.def(
      "outlined",
      [](Count<"rows"> rows, Count<"columns"> columns, const Named<"left", EdgeShape>& left,
         const Named<"right", EdgeShape>& right,
         Whole<"step"> step) { return outlined(rows, columns, left, right, step); },
      "rows"_a, "columns"_a, "left"_a, "right"_a, "step"_a = 1,
      "The shape of rows x columns between two edges, as seen on the right side; for edges that mirror each other "
      "give the same one twice. An edge of points lies in each row where the line is in the middle of that row, "
      "rounded to the nearest column, halves up; with step=2 it changes after even rows only, and events have to be "
      "after such rows.\n"
      "\n"
      "Raises Error bad_argument (field \"rows\", \"left.points[2].row\"; \"outline\", with the row, where no stitch "
      "is left, or none on a stitch of the row below: two pieces); too_large.");
  m.def(
      "edge_events",
      [](const Spacing& spacing, Whole<"stitches"> stitches, Whole<"above"> above) {
        return edge_events(spacing, stitches, above);
      },
      "spacing"_a, "stitches"_a = 1, "above"_a = 0,
      "Events spread over rows as those of an edge: `stitches` leave (below 0: join) after the row in which each "
      "stands, counted from row `above`. Like gaps become one event with its times.\n\nRaises Error bad_argument "
      "(field \"stitches\", \"above\", \"spacing.positions[1]\"); too_large (field \"spacing\").");
  m.def("outline_of", &outline_of, "grid"_a,
        "The shape that a grid has: the outermost stitches of each row. Raises Error bad_argument (row) for a row "
        "without a stitch, or with no column in common with the row below: two pieces.");
  m.def(
      "shape_findings",
      [](const Grid& grid, const Outline& outline, Whole<"edge_stitches"> edge_stitches, CutWork cut) {
        return shape_findings(grid, outline, {.edge_stitches = edge_stitches, .cut = cut});
      },
      "grid"_a, "outline"_a, py::kw_only(), "edge_stitches"_a = defaults.edge_stitches,
      py::arg_v("cut", defaults.cut, "CutWork.refuse"),
      "What the shape does to the hand work, worst first: crossings and stacks that it cuts (errors), hand cells that "
      "come to lie in the edge stitches, and crossings that are kept and reach into them (advice). What lies outside "
      "altogether is not told.\n\nRaises Error "
      "bad_argument (field \"outline\", \"edge_stitches\"); size_mismatch.");
  m.def(
      "shaped",
      [](const Panel& panel, const Outline& outline, Whole<"edge_stitches"> edge_stitches, CutWork cut) {
        return shaped(panel, outline, {.edge_stitches = edge_stitches, .cut = cut});
      },
      "panel"_a, "outline"_a, py::kw_only(), "edge_stitches"_a = defaults.edge_stitches,
      py::arg_v("cut", defaults.cut, "CutWork.refuse"),
      "The panel in that shape: no stitch outside, `edge_stitches` columns at each edge knitted plain, crossings "
      "outside left out. A crossing or a stack that the edge cuts is refused, or with CutWork.knit knitted plain.\n"
      "\n"
      "Raises Error crossing_cut (row, column); bad_argument (row, column for a stack; field); size_mismatch.");
  m.def("shaping_steps", &shaping_steps, "outline"_a,
        "Every change of a shape, from the bottom up. Raises Error bad_argument (field \"outline\").");
  m.def("outline_text", &outline_text, "outline"_a,
        "A shape for people, a line each: \"RC 12: decrease 1 at each side, then every 6th row 4 times.\" Edges that "
        "shape at different rows are told each by itself where that is shorter, the second with \"Meanwhile\". Raises "
        "Error bad_argument (field \"outline\").");
}

}  // namespace latchwork::python
