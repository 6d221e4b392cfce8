// Swatches and gauges.

#include "latchwork/gauge.hpp"

#include "bind.hpp"

namespace latchwork::python {

namespace {

std::vector<Measurement> measurements_of(const Swatch& swatch) {
  const auto all = swatch.measurements();
  return {all.begin(), all.end()};
}

}  // namespace

void bind_gauge(py::module_& m) {
  m.attr("max_swatch_bytes") = max_swatch_bytes;
  py::class_<Swatch> swatch(m, "Swatch",
                            "All measurements of the swatches, and the gauge of each texture in each state. Where no "
                            "state is asked for, a texture's is the most finished one in which both its stitches and "
                            "its rows were measured.");
  swatch.attr("max_measurements") = Swatch::max_measurements;
  swatch.def(py::init<>(), "A swatch without measurements.")
      .def(py::init([](Named<"measurements", std::vector<Measurement>> measurements) {
             return Swatch(std::move(measurements.value));
           }),
           "measurements"_a, "Raises Error bad_value for a count, length or text out of its range; too_large.")
      .def_property_readonly(
          "measurements", [](const Swatch& self) { return py::tuple(list_to_python(measurements_of(self), true)); },
          "The measurements in their order, as a tuple.")
      .def("textures", &Swatch::textures, "Textures in the order first measured.")
      .def(
          "states", [](const Swatch& self, const Words<"texture">& texture) { return self.states(texture.value); },
          "texture"_a,
          "The states in which both stitches and rows of a texture were measured, the least finished first.")
      .def(
          "has",
          [](const Swatch& self, const Words<"texture">& texture, std::optional<ClothState> state) {
            return self.has(texture.value, state);
          },
          "texture"_a, "state"_a = py::none(),
          "Whether both stitches and rows were measured in that state; in any, when none is named.")
      .def(
          "gauge",
          [](const Swatch& self, const Words<"texture">& texture, std::optional<ClothState> state) {
            return self.gauge(texture.value, state);
          },
          "texture"_a, "state"_a = py::none(),
          "Stitches and rows per 10 cm. Raises Error no_gauge (field = the texture) when stitches or rows were not "
          "measured in that state, or in any; bad_argument (state).")
      .def(
          "__eq__",
          [](const Swatch& self, const py::object& other) -> py::object {
            if (!py::isinstance<Swatch>(other)) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
            return py::bool_(self == other.cast<const Swatch&>());
          },
          "other"_a, "The same measurements in the same order, whichever lines they stood on.")
      .def("__repr__",
           [](const Swatch& self) {
             return "<latchwork.Swatch " + count_of(self.measurements().size(), "measurement") + " of " +
                    count_of(self.textures().size(), "texture") + ">";
           })
      .def("__copy__", [](const Swatch& self) { return Swatch(self); })
      .def(
          "__deepcopy__", [](const Swatch& self, const py::dict&) { return Swatch(self); }, "memo"_a)
      // Through the measurements, and not through the file's text, which does not tell the lines that they stood on.
      .def("__reduce_ex__", &reduced, "protocol"_a)
      .def(py::pickle([](const Swatch& self) { return py::make_tuple(list_to_python(measurements_of(self), true)); },
                      [](const py::tuple& state) {
                        return Swatch(list_from_python<Measurement>(state[0], Path{nullptr, "Swatch"}));
                      }));
  m.attr("usual_places") = usual_places;
  m.attr("usual_length_mm") = usual_length_mm;
  m.def(
      "cloth_state_name", [](ClothState state) { return std::string(cloth_state_name(state)); }, "state"_a,
      "What a swatch file calls a state: off the machine, rested, washed.");
  m.def("shrinkages", &shrinkages, "swatch"_a,
        "How much each texture shrinks between each two states that it has a gauge in, with the standard error.");
  m.def(
      "swatch_findings", &swatch_findings, "swatch"_a,
      "What is doubtful in a swatch, in the order first measured: half_measured, few_places (below usual_places), "
      "short_measure (below usual_length_mm), odd_one_out (Grubbs's test, two-sided at 5 %, and a whole stitch or row "
      "off the others, one and a half where all counts are whole), unlike_swatches (two swatches further apart than "
      "their "
      "places explain). Nothing is left out of a gauge for it. place.field is the measurement, place.line its line.");
}

}  // namespace latchwork::python
