// Panels that meet a measure. The request and the candidates are Python's classes.

#include "latchwork/fit.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_fit(py::module_& m) {
  m.def(
      "fit", without_gil(&fit), "request"_a, "swatch"_a,
      "The ways to meet the target, ranked by error, then fewer panels, fewer columns, fewer rows, fewer edge columns, "
      "then fewer times of the first group, the second, and so on. Every combination that makes a grid, fits the "
      "needles, leaves something between the seams and, where panels are sewn together, has the edge columns that "
      "their seam takes in is considered. When nothing fits, the nearest and what would have to give.\n\nRaises Error "
      "bad_argument (field \"width_mm\", \"groups[1].least\"), no_gauge (field = texture), too_large (field "
      "\"substitutes\"; \"groups\", when more than 20 million widths and heights would have to be looked at).");
  m.def("fitted", without_gil(&fitted), "request"_a, "candidate"_a, "panel"_a = 0,
        "One panel of a candidate: the one at index `panel`, 0..panels-1, from the left on the RS. It may break the "
        "request's bounds, as those of FitResult.nearest do. Raises Error bad_argument (field) when its numbers are no "
        "candidate's of this request with whatever bounds loosened; what join_strips() raises.");
}

}  // namespace latchwork::python
