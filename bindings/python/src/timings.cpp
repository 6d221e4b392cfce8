// Timed spells, and the efforts fitted to them. The data classes are Python's.

#include "latchwork/timings.hpp"

#include <fmt/format.h>

#include "bind.hpp"

namespace latchwork::python {

namespace {

std::vector<Spell> spells_of(const Timings& timings) {
  const auto all = timings.spells();
  return {all.begin(), all.end()};
}

}  // namespace

void bind_timings(py::module_& m) {
  m.attr("max_spell_count") = max_spell_count;
  m.attr("max_spell_ms") = max_spell_ms;
  m.attr("max_timings_bytes") = max_timings_bytes;
  py::class_<Timings> type(m, "Timings", "Timed spells of work in their order.");
  type.attr("max_spells") = Timings::max_spells;
  type.def(py::init<>(), "Timings without spells.")
      .def(py::init<std::vector<Spell>>(), "spells"_a,
           "Raises Error bad_value for a count, time, text or line out of its range, or a spell in which nothing was "
           "done (field \"spells[3].rows\"; \"spells[3].time_ms\"); too_large.")
      .def_property_readonly(
          "spells", [](const Timings& self) { return py::tuple(list_to_python(spells_of(self), true)); },
          "The spells in their order, as a tuple.")
      .def(
          "__eq__",
          [](const Timings& self, const py::object& other) -> py::object {
            if (!py::isinstance<Timings>(other)) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
            return py::bool_(self == other.cast<const Timings&>());
          },
          "other"_a, "The same spells in the same order, whichever lines they stood on.")
      .def("__repr__",
           [](const Timings& self) {
             return fmt::format("<latchwork.Timings {} spell{}>", self.spells().size(),
                                self.spells().size() == 1 ? "" : "s");
           })
      .def("__copy__", [](const Timings& self) { return Timings(self); })
      .def(
          "__deepcopy__", [](const Timings& self, const py::dict&) { return Timings(self); }, "memo"_a)
      // Through the spells, and not through the file's text, which does not tell the lines that they stood on.
      .def("__reduce_ex__", &reduced, "protocol"_a)
      .def(py::pickle([](const Timings& self) { return py::make_tuple(list_to_python(spells_of(self), true)); },
                      [](const py::tuple& state) {
                        return Timings(list_from_python<Spell>(state[0], Path{nullptr, "Timings"}));
                      }));

  m.def(
      "fit_effort",
      [](const Timings& timings, const std::optional<Named<"defaults", Effort>>& defaults) {
        const py::gil_scoped_release free;  // timings do not change
        return fit_effort(timings, defaults ? defaults->value : Effort{});
      },
      "timings"_a, "defaults"_a = py::none(),
      "Efforts by non-negative least squares: of all costs of 0 or more, those under which the spells' times have "
      "the least sum of squared residuals, each spell counting the same.\n"
      "\n"
      "Terms of which no spell has any keep the default. Terms whose counts depend on each other (one column a "
      "weighted sum of others, to 1e-7 of its length) are tied: of all costs that fit as well they get those nearest "
      "to the defaults. Standard errors are the textbook's. Outlying spells have a studentized residual beyond "
      "Student's t at 0.05 / spells (Bonferroni's limit; Cook and Weisberg 1982), and take part in the fit all the "
      "same. Raises Error bad_argument (field \"defaults.drop\"); too_large (field \"effort.row\") for a cost that "
      "comes out above Effort's limit: a wrong unit, perhaps.");
  m.def(
      "describe", [](const EffortFit& fit) { return describe(fit); }, "fit"_a,
      "The fit for people: a line for each term with its value and where it comes from, and the outlying spells by "
      "their lines.");
  m.def("effort_term_name", &effort_term_name, "term"_a, "The term's name as in Effort (\"rung_purl\").");
  m.def("term_state_name", &term_state_name, "state"_a, "\"fitted\", \"at_zero\", \"tied\" or \"no_data\".");
}

}  // namespace latchwork::python
