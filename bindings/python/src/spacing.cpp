// Events spread evenly.

#include "latchwork/spacing.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_spacing(py::module_& m) {
  m.attr("max_spacing") = max_spacing;
  m.def(
      "spaced_evenly",
      [](Whole<"length"> length, Whole<"events"> events, SpacingEnds ends, Whole<"step"> step) {
        return spaced_evenly(length, events, ends, step);
      },
      "length"_a, "events"_a, "ends"_a = SpacingEnds::in_the_round, "step"_a = 1,
      "Events spread over `length` stitches or rows as evenly as whole ones allow; step=2 for even rows only. Any m "
      "gaps in a row sum to within one step of any other m.\n\nRaises Error bad_argument (field \"length\", "
      "\"events\" for more than fit, \"ends\", \"step\").");
  m.def("spacing_text", &spacing_text, "spacing"_a, "counted"_a,
        "For people: \"every 9th row 2 times, every 10th row 9 times\". How many of each, not in which order: that is "
        "in `gaps`. Raises Error bad_argument (field \"counted\").");
}

}  // namespace latchwork::python
