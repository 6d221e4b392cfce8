// Machines, needles and findings. The Machine class is Python's.

#include "latchwork/machine.hpp"

#include "bind.hpp"
#include "latchwork/finding.hpp"

namespace latchwork::python {

void bind_machine(py::module_& m) {
  m.def("_machine_generic", &Machine::generic, "machine_class"_a);
  m.def(
      "needle_name", [](Whole<"needle"> needle) { return needle_name(needle); }, "needle"_a,
      "\"L3\" for -3, \"R12\" for 12. Raises Error bad_argument for 0.");
  m.def(
      "needle_beside", [](Whole<"needle"> needle, Whole<"steps"> steps) { return needle_beside(needle, steps); },
      "needle"_a, "steps"_a,
      "The needle `steps` places to the operator's right of `needle`, over the centre without a needle 0. Raises Error "
      "bad_argument for needle 0.");
  m.def(
      "leftmost_needle",
      [](const Machine& machine, Count<"columns"> columns) { return leftmost_needle(machine, columns); }, "machine"_a,
      "columns"_a,
      "The panel's leftmost needle in the operator's view: machine.leftmost, or centred. Not checked against the bed. "
      "Raises Error bad_argument (columns below 1).");
  m.def(
      "needle_of",
      [](const Machine& machine, Count<"columns"> columns, Whole<"column"> column) {
        return needle_of(machine, columns, column);
      },
      "machine"_a, "columns"_a, "column"_a,
      "The needle of an RS column: column 0 is the operator's rightmost stitch. Raises Error bad_argument (columns "
      "below 1, column outside 0..columns-1).");
  m.def(
      "findings", without_gil(&findings), "grid"_a, "machine"_a,
      "Everything this machine cannot make or will find hard about the grid read as a panel, worst first, then by row "
      "and column. Raises Error bad_argument for a machine out of its ranges.");
  m.def("finding_name", &finding_name, "code"_a, "The code's name (\"off_bed\").");
}

}  // namespace latchwork::python
