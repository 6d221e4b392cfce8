// Panels.

#include "latchwork/panel.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_panel(py::module_& m) {
  py::class_<Panel>(
      m, "Panel",
      "What is knitted: a grid that ends, and which texture measures which part of it. Bands cover the rows "
      "from row 1 up.")
      .def(py::init([](Words<"name"> name, const Named<"strip", Strip>& strip) {
             return Panel(std::move(name.value), strip.value);
           }),
           "name"_a, "strip"_a,
           "A panel of one band and one strip. Raises Error bad_encoding (name, strip.name, strip.texture) for a lone "
           "surrogate, bad_value for a NUL.")
      .def(py::init([](Words<"name"> name, Grid grid, std::vector<Band> bands) {
             return Panel(std::move(name.value), std::move(grid), std::move(bands));
           }),
           "name"_a, "grid"_a, "bands"_a,
           "Raises Error size_mismatch (row, column) when the bands do not cover the grid exactly; bad_argument (rows, "
           "columns, repeat_rows below 1); bad_encoding (name, bands[0].strips[2].texture) for a lone surrogate, "
           "bad_value for a NUL.")
      .def_property_readonly("name", &Panel::name, "What people call it.")
      .def_property_readonly(
          "grid", [](const Panel& self) { return Grid(self.grid()); },
          "A copy of the panel's grid. Changing it does not change the panel, whose bands and axis tell of the grid it "
          "has; Panel(name, grid, bands) makes a panel of a changed one.")
      .def_property_readonly(
          "bands",
          [](const Panel& self) {
            return py::tuple(list_to_python(std::vector<Band>(self.bands().begin(), self.bands().end()), true));
          },
          "The bands from row 1 up, as a tuple.")
      .def_property(
          "axis_half_columns", &Panel::axis_half_columns, &Panel::set_axis_half_columns,
          "The mirror axis in half columns from the left edge (W when it is the panel's middle); None when none "
          "was named. Setting it outside 1..2W-1 raises Error bad_argument.")
      .def("above", &Panel::above, "below"_a,
           "This panel on top of `below`; the name is this panel's, the axis kept if both have the same. Raises as "
           "Grid.above().")
      .def("mirrored", &Panel::mirrored, "Reflected left to right, strips and axis too.")
      .def(
          "__eq__",
          [](const Panel& self, const py::object& other) -> py::object {
            if (!py::isinstance<Panel>(other)) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
            return py::bool_(self == other.cast<const Panel&>());
          },
          "other"_a, "Equal in name, grid, bands and axis.")
      .def("__repr__",
           [](const Panel& self) {
             return "<latchwork.Panel " + std::string(py::repr(py::str(self.name()))) + ", " + extent_of(self.grid()) +
                    ">";
           })
      .def("__copy__", [](const Panel& self) { return Panel(self); })
      .def(
          "__deepcopy__", [](const Panel& self, const py::dict&) { return Panel(self); }, "memo"_a)
      .def("_repr_svg_", &notebook_svg, "The chart on the right side, for notebooks; None for a panel too big to show.")
      .def("__reduce_ex__", &reduced, "protocol"_a)
      .def(py::pickle([](const Panel& self) { return write(self); },
                      [](const std::string& text) { return read_panel(text); }));

  m.def(
      "build_panel",
      [](Words<"name"> name, Count<"rows"> rows, std::optional<Strip> edge, std::vector<Strip> left,
         std::optional<Strip> centre, Axis axis) {
        return build_panel({.name = std::move(name.value),
                            .rows = rows,
                            .edge = std::move(edge),
                            .left = std::move(left),
                            .centre = std::move(centre),
                            .axis = axis});
      },
      "name"_a, "rows"_a, py::kw_only(), "edge"_a = py::none(), "left"_a = py::list(), "centre"_a = py::none(),
      py::arg_v("axis", Axis::line, "Axis.line"),
      "Builds a mirrored panel in one call: edge + left half + centre + mirrored half + edge, every strip filled up to "
      "`rows`. `left` goes from the left edge towards the middle; without a centre the mirror axis is the line after "
      "`left`, or its shared last stitch.\n\n"
      "Raises Error bad_argument (rows; parts, when there is nothing); crossing_cut, when the shared stitch is in a "
      "crossing; crossing_over_none, as Strip.filled_up(); too_large.");
  m.def(
      "join_strips",
      [](Words<"name"> name, Count<"rows"> rows, const std::vector<Strip>& strips) {
        return join_strips(std::move(name.value), rows, strips);
      },
      "name"_a, "rows"_a, "strips"_a,
      "Strips side by side from the left on the RS, each filled up to `rows`. Raises Error bad_argument (rows below "
      "1; strips, when there is none); crossing_over_none, as Strip.filled_up(); too_large.");
}

}  // namespace latchwork::python
