// Geometry of plain knit.

#include "latchwork/plain_knit.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_plain_knit(py::module_& m) {
  m.def("plain_constants_of", &plain_constants_of, "state"_a,
        "Munden's constants of plain wool in that state of relaxation. Raises Error bad_argument (field \"state\").");
  m.def("plain_loop_mm", &plain_loop_mm, "gauge"_a, "constants"_a,
        "Loop length in mm of plain knit of that gauge, by its stitches or by its rows. Raises Error bad_argument "
        "(field); bad_value, as per_10cm().");
  m.def("plain_per_10cm", &plain_per_10cm, "counted"_a, "loop_mm"_a, "constants"_a,
        "Stitches or rows per 10 cm of plain knit of that loop length (0.1..1000 mm). Raises Error bad_argument "
        "(field).");
  m.def("tightness_factor", &tightness_factor, "yarn"_a, "loop_mm"_a,
        "Tightness, sqrt(tex) / loop length in mm; the other custom, per cm, is ten times this. Raises Error "
        "bad_argument (field); bad_value, as yarn_tex().");
  m.def(
      "area_density_g_m2", &area_density_g_m2, "stitches"_a, "rows"_a, "loop_mm"_a, "yarn"_a,
      "Weight of a cloth in g/m2: stitches and rows per cm, times loop length in mm, times tex, over 100. Raises Error "
      "bad_argument (field); bad_value, as per_10cm() and yarn_tex().");
}

}  // namespace latchwork::python
