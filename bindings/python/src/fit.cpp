// Panels that meet a measure. The request and the candidates are Python's classes.

#include "latchwork/fit.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_fit(py::module_& m) {
  m.def("fit", without_gil(&fit), "request"_a, "swatch"_a,
        "The best ways to meet the target, ranked by error, then fewer columns, fewer rows, fewer edge columns. Empty "
        "when nothing fits the bed. Raises Error bad_argument (field), no_gauge.");
  m.def("fitted", &fitted, "request"_a, "candidate"_a,
        "The panel of a candidate. Raises Error bad_argument (field) when its numbers are not the request's; what "
        "join_strips() raises.");
}

}  // namespace latchwork::python
