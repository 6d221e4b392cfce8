// Sizes. The Size class is Python's.

#include "latchwork/size.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_size(py::module_& m) {
  m.def("size", &size, "panel"_a, "swatch"_a,
        "Size of a panel in mm from the swatch's gauges. A ladder is measured like any texture. Raises Error no_gauge "
        "(field = texture).");
}

}  // namespace latchwork::python
