// Strips and motifs. The Strip class is Python's; its methods call the functions with an underscore.

#include "latchwork/strip.hpp"

#include "bind.hpp"
#include "latchwork/motif.hpp"

namespace latchwork::python {

void bind_strip(py::module_& m) {
  m.def("_strip_mirrored", &Strip::mirrored, "strip"_a);
  m.def(
      "_strip_repeated_across", [](const Strip& strip, Count<"times"> times) { return strip.repeated_across(times); },
      "strip"_a, "times"_a);
  m.def(
      "_strip_repeated_up", [](const Strip& strip, Count<"times"> times) { return strip.repeated_up(times); },
      "strip"_a, "times"_a);
  m.def(
      "_strip_filled_up", [](const Strip& strip, Count<"rows"> rows) { return strip.filled_up(rows); }, "strip"_a,
      "rows"_a);

  m.def("stockinette", counted<"columns">(&stockinette), "columns"_a = 1,
        "All knit; 1 row. Raises Error bad_argument (columns below 1), too_large.");
  m.def("reverse", counted<"columns">(&reverse), "columns"_a = 1,
        "Reverse stockinette: all purl; 1 row. Raises Error bad_argument (columns below 1), too_large.");
  m.def("garter", counted<"knit_rows", "purl_rows", "columns">(&garter), "knit_rows"_a = 1, "purl_rows"_a = 1,
        "columns"_a = 1, "Rows of knit, then rows of purl. Raises Error bad_argument for a number below 1, too_large.");
  m.def("moss", counted<"columns">(&moss), "columns"_a = 2,
        "Knit and purl alternate both ways; 2 rows. Raises Error bad_argument (columns below 1), too_large.");
  m.def("basket", counted<"block_columns", "block_rows">(&basket), "block_columns"_a = 3, "block_rows"_a = 4,
        "Two by two blocks of knit and purl. Raises Error bad_argument for a number below 1, too_large.");
  m.def("tuck_rib", counted<"height">(&tuck_rib), "height"_a = 1,
        "One wale: `height` tucks closed by a purl; height + 1 rows. Raises Error bad_argument (height below 1), "
        "too_large.");
  m.def("ladder", counted<"columns">(&ladder), "columns"_a = 1,
        "Needles out of work: bare strands; 1 row. Raises Error bad_argument (columns below 1), too_large.");
  m.def(
      "rope",
      [](Count<"front"> front, Count<"back"> back, Count<"interval"> interval, Lean lean) {
        return rope(front, back, interval, lean);
      },
      "front"_a, "back"_a, "interval"_a, "lean"_a,
      "A crossing of `front` over `back` stitches on the same stitches every `interval` rows (2 or more), half way up "
      "the interval. Raises Error bad_argument (the parameter's name), too_large.");
  m.def(
      "plait",
      [](Count<"stitches"> stitches, Count<"interval"> interval, Lean lean) { return plait(stitches, interval, lean); },
      "stitches"_a, "interval"_a, py::arg_v("lean", Lean::right, "Lean.right"),
      "Three groups of `stitches`; every `interval` rows the left pair crosses with `lean`, then the right pair with "
      "the other. Raises Error bad_argument (the parameter's name), too_large.");
  m.def(
      "wave",
      [](Count<"stitches"> stitches, Count<"interval"> interval, Lean lean) { return wave(stitches, interval, lean); },
      "stitches"_a, "interval"_a, py::arg_v("lean", Lean::right, "Lean.right"),
      "A crossing of n over n whose lean changes each time: `lean` first. 2 * interval rows. Raises Error "
      "bad_argument (the parameter's name), too_large.");
}

}  // namespace latchwork::python
