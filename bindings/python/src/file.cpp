// Readers and writers.

#include "latchwork/file.hpp"

#include "bind.hpp"
#include "latchwork/article.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/timings.hpp"

namespace latchwork::python {

namespace {

template <class T, T (*read)(std::string_view)>
T read_free(const Text& text) {
  const py::gil_scoped_release free;  // str and bytes do not change, and `text` keeps its owner
  return read(text.view);
}

template <class T>
std::string write_one(const T& value) {
  return write(value);
}

}  // namespace

void bind_file(py::module_& m) {
  m.attr("max_file_bytes") = max_file_bytes;
  constexpr auto errors =
      "\n\nRaises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, "
      "duplicate_key, missing_field, unknown_field, bad_value; and what the types' own checks raise.";
  const auto doc = [&](const char* first) { return std::string(first) + errors; };
  m.def("read_grid", &read_free<Grid, &read_grid>, "json"_a, doc("Reads \"latchwork-grid\", version 1.").c_str());
  m.def("read_strip", &read_free<Strip, &read_strip>, "json"_a, doc("Reads \"latchwork-strip\", version 1.").c_str());
  m.def("read_panel", &read_free<Panel, &read_panel>, "json"_a,
        doc("Reads \"latchwork-panel\", version 1: parts by motif, or cells in full.").c_str());
  m.def("read_machine", &read_free<MachineFile, &read_machine>, "json"_a,
        doc("Reads \"latchwork-machine\", version 1.").c_str());
  m.def("read_yarn_request", &read_free<YarnRequest, &read_yarn_request>, "json"_a,
        doc("Reads \"latchwork-yarn\", version 1: what a need of yarn is reckoned from.").c_str());
  m.def("read_article_request", &read_free<ArticleRequest, &read_article_request>, "json"_a,
        "Reads \"latchwork-article-choices\", version 1: the members of ArticleRequest by their names, of `design` "
        "those that are read; what has a default may be left out, but for `article`, the names of measures and counts, "
        "and both textures of a substitute. `least_mm` and `greatest_mm` of a measure are numbers, or texts as "
        "read_length() takes them: \"45 cm\".\n"
        "\n"
        "Raises Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, "
        "duplicate_key, missing_field, unknown_field, bad_value; bad_argument for what no panel's design can be; as "
        "read_length().");
  m.def("read_plan", &read_free<Plan, &read_plan>, "json"_a, doc("Reads \"latchwork-plan\", version 1.").c_str());
  m.def("read_certificate", &read_free<Certificate, &read_certificate>, "json"_a,
        doc("Reads \"latchwork-certificate\", version 1.").c_str());
  m.def("read_swatch", &read_free<Swatch, &read_swatch>, "csv"_a,
        "Reads a swatch file: CSV (RFC 4180) with a first line that names its columns, in any order: "
        "texture,counted,count,length,unit,place,swatch,state; the last four may be left out. counted is `stitches` or "
        "`rows`; unit is mm, cm, in or inches, m, ft or yd; without that column each length has its own (\"10 cm\"). "
        "state is `off the "
        "machine`, `rested` or `washed`, rested when it is left out. Lines that start "
        "with # and blank lines are passed over.\n\nRaises Error with line and field: bad_syntax, missing_field, "
        "unknown_field (field \"column 3\", counted from 1, for a column without a name), duplicate_key, bad_value, "
        "bad_unit, bad_encoding, too_large.");

  m.def("read_timings", &read_free<Timings, &read_timings>, "csv"_a,
        "Reads a timings file: CSV (RFC 4180), one spell a line, with a first line that names its columns, in any "
        "order: the counts stops, batches, drops, rungs_knit, rungs_purl, rungs_tuck, rungs_slip, crossings, "
        "stitches_crossed, holds, shapings, rows (those that no spell has may be left out, not all), time, unit (ms, "
        "s, min, h) and note (may be left out). A count is a whole number, nothing is 0; a time is a whole number of "
        "milliseconds (1.5 min is, 1.33333 min is refused). Lines that start with # and blank lines are passed over.\n"
        "\n"
        "Raises Error with line and field: bad_syntax, missing_field, unknown_field (field \"column 3\", counted from "
        "1, for a column without a name), duplicate_key, bad_value, bad_unit, bad_encoding, too_large.");

  m.def("write", without_gil(&write_one<Grid>), "grid"_a, "The JSON that read_grid() reads back to an equal grid.");
  m.def("write", without_gil(&write_one<Strip>), "strip"_a, "The JSON that read_strip() reads back to an equal strip.");
  m.def("write", without_gil(&write_one<Panel>), "panel"_a,
        "The JSON that read_panel() reads back to an equal panel: cells in full.");
  m.def("write", without_gil(&write_one<MachineFile>), "file"_a,
        "The JSON that read_machine() reads back to an equal value.");
  m.def("write", without_gil(&write_one<YarnRequest>), "request"_a,
        "The JSON that read_yarn_request() reads back to an equal request.");
  m.def("write", without_gil(&write_one<Article>), "article"_a,
        "The JSON that read_article() reads back to an equal article.");
  m.def("write", without_gil(&write_one<ArticleRequest>), "article_request"_a,
        "The JSON that read_article_request() reads back to an equal request; of the design, targets, groups and edge "
        "are not written.");
  m.def("write", without_gil(&write_one<Plan>), "plan"_a, "The JSON that read_plan() reads back to an equal plan.");
  m.def("write", without_gil(&write_one<Certificate>), "certificate"_a,
        "The JSON that read_certificate() reads back to an equal certificate.");
  m.def("write", without_gil(&write_one<Swatch>), "swatch"_a,
        "The CSV that read_swatch() reads back to an equal swatch (lengths in mm).");
  m.def("write", without_gil(&write_one<Timings>), "timings"_a,
        "The CSV that read_timings() reads back to equal timings (every column, times in ms).");
}

}  // namespace latchwork::python
