// The main job.

#include "latchwork/brief.hpp"

#include "planning.hpp"

namespace latchwork::python {

void bind_brief(py::module_& m) {
  m.def(
      "read_brief",
      [](const Folder& folder) {
        const py::gil_scoped_release free;
        return read_brief(folder.name);
      },
      "folder"_a,
      "Reads a folder with panel.json, machine.json and, if there, swatch.csv (else an empty swatch), yarn.json, "
      "article.json and "
      "substitutes.csv (columns texture,use: a texture that lacks a swatch, and the one whose gauge is used for it) "
      "and brief.json (format \"latchwork-brief\": "
      "state, session_ms, rest_ms; each may be left out). "
      "Raises Error bad_argument (folder) for an empty name or a NUL in it; io (field = file name), and what the "
      "readers raise with the file's name before the field: of article.json also, with its line, what targets() and "
      "panel_design() refuse, and an article that is neither the library's nor a file \"name.json\" of the folder that "
      "is no other file of a brief or a job, as \"plan.json\" is; "
      "bad_encoding for text that is not UTF-8; of substitutes.csv, with its line, bad_syntax, missing_field, "
      "unknown_field (\"column 3\" for one without a name), bad_value for a texture that is empty, named twice or its "
      "own substitute, and too_large.");
  m.def(
      "run",
      [](const Brief& brief, const std::stop_source* stop, std::optional<py::function> progress,
         Wide<"options.work_limit"> work_limit, Wide<"options.time_limit_ms"> time_limit_ms,
         Wide<"options.memory_limit"> memory_limit, const std::optional<Conditions>& conditions) {
        const Planning planning(stop, std::move(progress), work_limit, time_limit_ms, memory_limit, conditions);
        const py::gil_scoped_release free;
        return run(brief, planning.options());
      },
      "brief"_a, py::kw_only(), "stop"_a = py::none(), "progress"_a = py::none(), "work_limit"_a = 0,
      "time_limit_ms"_a = 0, "memory_limit"_a = 0, "conditions"_a = py::none(),
      "Finds, plans both ways, verifies both, sizes, reckons the yarn; fits the article and plans the panels that "
      "fit. What wants a gauge that the swatch has not is None, and Job.missing tells which texture. `stop`, "
      "`progress` and the limits as in plan(), for each plan anew, but for a time limit, which is for `plan` and "
      "`unconditioned` together; `conditions` bind all plans but `unconditioned`. Raises what those calls raise; "
      "bad_argument (field \"brief.state\", \"brief.session_ms\", \"brief.rest_ms\"); "
      "too_large (field \"article\", \"article.seam_ms_per_m\") for an article of more than 2^60 ms of work at the "
      "machine, or of sewing up.");
  m.def(
      "fitted_brief",
      [](const Brief& brief, const Job& job, Wide<"index"> index) {
        if (index < 0 && brief.article && job.article) {  // no size_t; else something else is refused first
          throw Error(ErrorCode::bad_argument, Place{.field = "index"},
                      "index is " + std::to_string(index) + "; fitted panels are counted from 0");
        }
        const py::gil_scoped_release free;
        return fitted_brief(brief, job, static_cast<std::size_t>(static_cast<std::int64_t>(index)));
      },
      "brief"_a, "job"_a, "index"_a,
      "A brief of its own for a panel of ArticleJob.panels, by its index, on which run() and write_job() go as on "
      "any other: panel, machine, efforts, swatch and the substitutes that it was fitted by, no article. Its yarn is "
      "that of one panel, without seams; where YarnRequest.rows say which yarns knit which rows, and the panel has "
      "other rows, it has none. Its size is told as any brief's, with what the seams take in, in the state that it was "
      "fitted in: the article's design's, or, where that names none, the brief's. The panel is called after the "
      "brief's and what it is for, \"runner: front, left panels\", and then \", seams included\" where a seam takes in "
      "any of it, at the piece's edges or between panels.\n"
      "\n"
      "Raises Error bad_argument (field \"brief.article\", \"index\"; \"job.article.fit\" for a job of another "
      "brief); size_mismatch (field \"job.article\"); as fit_article().");
  m.def("summary", without_gil(&summary), "brief"_a, "job"_a,
        "For a terminal: size and the state of the cloth that it is of (or which textures of swatch.csv it wants), "
        "yarn, article, feasibility, stops, hand work by kind, hours, sessions and rests, bound, price of regularity, "
        "\"verified\" or not, and what is doubtful in the swatch.\n"
        "\n"
        "Raises Error size_mismatch (field \"job.plan\", \"job.size\", \"job.size.strips[2]\", \"job.yarn\", ...) for "
        "a job of another brief; bad_argument (field \"job.verification\", \"job.plan.leftmost\", "
        "\"job.plan.total_ms\", ...) for a plan that is called verified and does not knit the brief's panel, stands on "
        "other needles than its machine's, takes other times by its efforts, or breaks the job's conditions (but "
        "rhythms, which are not looked at); for findings of another machine; for another size or need of yarn than the "
        "brief's panel, swatch and yarns come to (field \"job.size\", \"job.yarn\"); for an article that is fitted or "
        "reckoned in another way than the brief's (field \"job.article.fit\", \"job.article.works[0].plan\", ...); as "
        "size(), yarn_need() and fit_article().");
  m.def("page_html", without_gil(&page_html), "brief"_a, "job"_a,
        "One HTML5 page to print and take to the machine: summary, schematic, article, instructions, and both "
        "charts, cut at the same rows into as many A4 sheets as they take. Raises as summary(), chart_svg() and "
        "instructions().");
  m.def(
      "write_job",
      [](const Brief& brief, const Job& job, const Folder& folder) {
        const py::gil_scoped_release free;
        write_job(brief, job, folder.name);
      },
      "brief"_a, "job"_a, "folder"_a,
      "Writes chart-rs.svg, chart-operator.svg, chart.txt, instructions.txt, plan.json, summary.txt, page.html and, "
      "for a panel with a size and in one piece (a stitch in every row, and a column in common with the row below), "
      "schematic.svg, for an article that is fitted article.txt, into `folder`, which is made if it is not there; an "
      "older schematic.svg or article.txt of which there is none now is taken away. The schematic is of the brief's "
      "panel, or, where an article is fitted, of its pieces as they are made, and of that panel as it stands where no "
      "piece is made of it: each piece's panels sewn together, seams dashed, measured between the seams, with the "
      "width of a panel and of all together. Pieces alike are drawn once; notes say which edges are sewn and what is "
      "not drawn. Raises Error bad_argument (folder) for an empty name or a NUL; io (field = file name, or folder); "
      "crossing_cut where a group of the article cuts a crossing; bad_encoding for a name that is not UTF-8; as "
      "page_html(), and as write() of a plan.");
  m.def(
      "write_brief",
      [](const Brief& brief, const Folder& folder) {
        const py::gil_scoped_release free;
        write_brief(brief, folder.name);
      },
      "brief"_a, "folder"_a,
      "Writes the files that read_brief() reads back to an equal brief into `folder`, which is made if it is not "
      "there; an older yarn.json, article.json, substitutes.csv or brief.json of which there is none now is taken "
      "away. Where "
      "anything is refused nothing is written. Raises Error bad_argument (folder) for an empty name or a NUL; "
      "bad_argument (field \"brief.article.article\") for an own article that article.json does not name as a file "
      "of the folder, or names as one that a brief or a job has for something else (\"yarn.json\", \"plan.json\"), in "
      "whatever letters; bad_value, bad_encoding or too_large (field \"brief.substitutes[0].use\", "
      "\"brief.substitutes\") for what substitutes.csv does not take; io (field = file name, or folder); what "
      "write() of the parts raises.");
}

}  // namespace latchwork::python
