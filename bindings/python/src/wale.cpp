// Wales. The class keeps the grid it was made from, so that it can be pickled: its text is the grid's.

#include "latchwork/wale.hpp"

#include "bind.hpp"

namespace latchwork::python {

namespace {

struct WalesOf {
  explicit WalesOf(const Grid& from) : grid(from), wales(from) {}
  Grid grid;
  Wales wales;
};

}  // namespace

void bind_wale(py::module_& m) {
  py::class_<WalesOf>(m, "Wales",
                      "All wales of a grid read as a panel (no seam), followed through crossings, ordered by (row, "
                      "column) of their lowest cell. `none` cells belong to no wale. What is changed in the grid later "
                      "does not show here.")
      .def(py::init<const Grid&>(), "grid"_a, "Follows the wales of the grid as it is now.")
      .def_property_readonly(
          "all",
          [](const WalesOf& self) {
            const auto all = self.wales.all();
            return py::tuple(list_to_python(std::vector<Wale>(all.begin(), all.end()), true));
          },
          "The wales, as a tuple.")
      .def(
          "at",
          [](const WalesOf& self, Whole<"row"> row, Whole<"column"> column) { return self.wales.at(row, column); },
          "row"_a, "column"_a,
          "Index into `all` of the wale at (row, column); -1 where the cell is `none`. Raises Error off_grid.")
      .def("__len__", [](const WalesOf& self) { return self.wales.all().size(); })
      .def(
          "__eq__",
          [](const WalesOf& self, const py::object& other) -> py::object {
            if (!py::isinstance<WalesOf>(other)) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
            return py::bool_(self.wales == other.cast<const WalesOf&>().wales);
          },
          "other"_a, "The same wales in a grid of the same size.")
      .def("__repr__",
           [](const WalesOf& self) {
             return "<latchwork.Wales " + count_of(self.wales.all().size(), "wale") + " of " + extent_of(self.grid) +
                    ">";
           })
      .def("__copy__", [](const WalesOf& self) { return WalesOf(self); })
      .def(
          "__deepcopy__", [](const WalesOf& self, const py::dict&) { return WalesOf(self); }, "memo"_a)
      .def("__reduce_ex__", &reduced, "protocol"_a)
      .def(py::pickle([](const WalesOf& self) { return write(self.grid); },
                      [](const std::string& text) { return WalesOf(read_grid(text)); }));
}

}  // namespace latchwork::python
