// Swatches and gauges.

#include "latchwork/gauge.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_gauge(py::module_& m) {
  m.attr("max_swatch_bytes") = max_swatch_bytes;
  py::class_<Swatch> swatch(m, "Swatch", "All measurements of a swatch, and the gauge of each texture.");
  swatch.attr("max_measurements") = Swatch::max_measurements;
  swatch.def(py::init<>(), "A swatch without measurements.")
      .def(py::init<std::vector<Measurement>>(), "measurements"_a,
           "Raises Error bad_value for a count, length or text out of its range; too_large.")
      .def_property_readonly(
          "measurements",
          [](const Swatch& self) {
            const auto all = self.measurements();
            return py::tuple(list_to_python(std::vector<Measurement>(all.begin(), all.end()), true));
          },
          "The measurements in their order, as a tuple.")
      .def("textures", &Swatch::textures, "Textures in the order first measured.")
      .def("has", &Swatch::has, "texture"_a, "Whether both stitches and rows were measured.")
      .def("gauge", &Swatch::gauge, "texture"_a,
           "Stitches and rows per 10 cm. Raises Error no_gauge (field = the texture) when stitches or rows were not "
           "measured.")
      .def(
          "__eq__",
          [](const Swatch& self, const py::object& other) -> py::object {
            if (!py::isinstance<Swatch>(other)) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
            return py::bool_(self == other.cast<const Swatch&>());
          },
          "other"_a, "The same measurements in the same order.")
      .def("__repr__",
           [](const Swatch& self) {
             return "<latchwork.Swatch " + count_of(self.measurements().size(), "measurement") + " of " +
                    count_of(self.textures().size(), "texture") + ">";
           })
      .def("__copy__", [](const Swatch& self) { return Swatch(self); })
      .def(
          "__deepcopy__", [](const Swatch& self, const py::dict&) { return Swatch(self); }, "memo"_a)
      .def(py::pickle([](const Swatch& self) { return write(self); },
                      [](const std::string& text) { return read_swatch(text); }));
}

}  // namespace latchwork::python
