// Lengths, weights, durations and counts per length, from text and back.

#include "latchwork/quantity.hpp"

#include "bind.hpp"

namespace latchwork::python {

namespace {

template <class T, T (*read)(std::string_view, std::string_view)>
T read_text(const Text& text, const std::string& field) {
  return read(text.view, field);
}

}  // namespace

void bind_quantity(py::module_& m) {
  m.attr("max_quantity_bytes") = max_quantity_bytes;
  constexpr auto errors =
      "\n"
      "\n"
      "Raises Error with field and character: bad_syntax, bad_unit (missing, unknown, ambiguous, of another kind or "
      "another system), bad_value, bad_encoding, too_large.";
  const auto doc = [&](const char* words) { return std::string(words) + errors; };
  m.def("read_length", &read_text<Length, &read_length>, "text"_a, "field"_a = "",
        doc("Reads a length: \"45 cm\", \"17 3/4 in\", \"5 ft 6 in\". Units are mm, cm, m, in (also \" for inches), ft "
            "and yd. `field` is what you call it, for errors.")
            .c_str());
  m.def("read_weight", &read_text<Weight, &read_weight>, "text"_a, "field"_a = "",
        doc("Reads a weight: \"50 g\", \"1.75 oz\", \"1 lb 4 oz\". Units are g, kg, oz, lb and grain.").c_str());
  m.def("read_duration", &read_text<Duration, &read_duration>, "text"_a, "field"_a = "",
        doc("Reads a duration: \"90 min\", \"1 h 20 min\". Units are h, min, s and ms; it must be a whole number of "
            "milliseconds.")
            .c_str());
  m.def(
      "read_count_per_length", &read_text<CountPerLength, &read_count_per_length>, "text"_a, "field"_a = "",
      doc("Reads stitches or rows over a length: \"28 sts / 10 cm\", \"7 sts/in\", \"28 rows / 4 in\". Two lengths, as "
          "in \"10 cm / 4 in\", are refused: they are 1.6 % apart.")
          .c_str());

  m.def("length_text", &length_text, "length"_a, "unit"_a,
        "\"450.85 mm\": the shortest decimal number of that unit that reads back to an equal length. Raises Error "
        "bad_argument (field \"mm\") for a length out of its range.");
  m.def("weight_text", &weight_text, "weight"_a, "unit"_a,
        "\"50 g\": the shortest decimal number of that unit that reads back to an equal weight. Raises Error "
        "bad_argument (field \"g\").");
  m.def("duration_text", &duration_text, "duration"_a,
        "\"1 h 20 min\": reads back to an equal duration. Raises Error bad_argument (field \"ms\").");
  m.def("rounded_duration_text", &rounded_duration_text, "duration"_a,
        "For people, rounded: \"40 s\", \"3 min 20 s\", \"12 min\", \"5 h 12 min\"; from ten minutes on to the "
        "minute, and below a second as it is (\"0.5 s\"). As summaries and instructions have it. Raises Error "
        "bad_argument (field \"ms\").");
  m.def(
      "count_per_length_text", &count_per_length_text, "density"_a, "unit"_a,
      "\"28 sts / 10 cm\": reads back to an equal value. Raises Error bad_argument (field \"count\", \"length_mm\").");

  m.def("length_of", &length_of, "value"_a, "unit"_a,
        "The length of a number of units, the nearest double. Raises Error bad_argument (field \"value\").");
  m.def("length_in", &length_in, "length"_a, "unit"_a,
        "How many units a length is. Raises Error bad_argument (field \"mm\").");
  m.def("weight_of", &weight_of, "value"_a, "unit"_a,
        "The weight of a number of units, the nearest double. Raises Error bad_argument (field \"value\").");
  m.def("weight_in", &weight_in, "weight"_a, "unit"_a,
        "How many units a weight is. Raises Error bad_argument (field \"g\").");
  m.def("per_10cm", &per_10cm, "density"_a,
        "Stitches or rows per 10 cm: 28 over 4 in are 27.56 over 10 cm. Raises Error bad_argument (field); bad_value "
        "when the result is out of range.");
}

}  // namespace latchwork::python
