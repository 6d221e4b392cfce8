// Yarn for a panel, by every route.

#include "latchwork/yarn_need.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_yarn_need(py::module_& m) {
  m.def(
      "yarn_need", &yarn_need, "panel"_a, "swatch"_a, "request"_a,
      "Yarn for a panel by every route that can be gone: weighed swatches by area or by stitches, measured loops, the "
      "geometry of plain knit. Each has its spread, and the reasons of the others are in `missing`. A texture without "
      "a figure bars a route unless `request.substitutes` names one for it; none is built in.\n\nRaises Error "
      "bad_argument (field \"yarns\", \"rows[1].last\", \"weighed[0].weight_g\"); bad_encoding (\"yarns[0].name\"); "
      "too_large.");
}

}  // namespace latchwork::python
