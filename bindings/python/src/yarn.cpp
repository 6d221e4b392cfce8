// Yarn numbers, and the yarn classes of gauges.

#include "latchwork/yarn.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_yarn(py::module_& m) {
  m.def(
      "read_yarn_number", [](const Text& text, const std::string& field) { return read_yarn_number(text.view, field); },
      "text"_a, "field"_a = "",
      "Reads a yarn number: \"20 tex\", \"Nm 28/2\", \"2/24 worsted\", \"cotton 5/2\", \"1000 yd/lb\", \"50 g = 120 "
      "m\". \"Nm 28 x 2\" is two plies of 28; of \"28/2\" the plies are the number that can be plies, 12 or less.\n\n"
      "Raises Error with field and character: bad_syntax (also where either number may be the plies), bad_unit (no "
      "name, an unknown one), bad_value, bad_encoding, too_large.");
  m.def("yarn_number_text", &yarn_number_text, "yarn"_a,
        "\"Nm 28 x 2\": reads back to an equal number. Raises Error bad_argument (field \"number\", \"plies\").");
  m.def("yarn_tex", &yarn_tex, "yarn"_a,
        "g per 1000 m of the whole yarn: plies times one single's. Raises Error bad_argument (field \"number\", "
        "\"plies\"); bad_value when it is out of 1e-6..1e9.");
  m.def("yarn_number_in", &yarn_number_in, "yarn"_a, "system"_a,
        "The whole yarn's number in another system, as one single. Raises Error bad_argument (field \"number\", "
        "\"plies\"); bad_value when it is out of 1e-6..1e9.");
  m.def(
      "yarns_together",
      [](const Named<"yarns", std::vector<YarnNumber>>& yarns) { return yarns_together(yarns.value); }, "yarns"_a,
      "Yarns knitted or twisted together, as one of that many tex. Raises Error bad_argument (field \"yarns\" for "
      "none, \"yarns[1].number\"); bad_value when it is out of 1e-6..1e9.");
  m.def(
      "yarn_number_of", &yarn_number_of, "length"_a, "weight"_a, "system"_a,
      "The number of a yarn of which this length has this weight. Raises Error bad_argument (field \"mm\", \"g\"), for "
      "0 too; bad_value when it is out of 1e-6..1e9.");
  m.def("yarn_weight", &yarn_weight, "yarn"_a, "length"_a,
        "What a length of yarn weighs. Raises Error bad_argument (field); bad_value when the weight is out of range.");
  m.def("yarn_length", &yarn_length, "yarn"_a, "weight"_a,
        "How long yarn of a weight is. Raises Error bad_argument (field); bad_value when the length is out of range.");
  m.def("yarn_diameter_mm", &yarn_diameter_mm, "yarn"_a, "fibre_density"_a,
        "Diameter of a yarn of that fibre density (g/cm3, 0.1..25; cotton 1.54): 0.0444 mm * sqrt(tex / density), a "
        "model of packed fibres. Raises Error bad_argument (field); bad_value, as yarn_tex().");
  m.def("yarn_categories", &yarn_categories,
        "The classes of the Craft Yarn Council's Standard Yarn Weight System, 0 to 7. Guidelines only.");
  m.def("yarn_categories_at", &yarn_categories_at, "gauge"_a,
        "The classes that a gauge of stockinette falls in, taken over 4 in and rounded to whole stitches: none, one or "
        "two. Raises Error bad_argument (field \"counted\", when rows were counted); bad_value, as per_10cm().");
}

}  // namespace latchwork::python
