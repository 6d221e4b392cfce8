// One design in several sizes. Request and grading are Python's classes.

#include "latchwork/grading.hpp"

#include "watched_fit.hpp"

namespace latchwork::python {

void bind_grading(py::module_& m) {
  m.def(
      "grade",
      [](const GradeRequest& request, const Swatch& swatch, const std::stop_source* stop,
         std::optional<py::function> progress) {
        return watched_fit(stop, std::move(progress), [&request, own = swatch](const FitOptions& options) {
          return grade(request, own, options);
        });
      },
      "request"_a, "swatch"_a, py::kw_only(), "stop"_a = py::none(), "progress"_a = py::none(),
      "Fits every size so that all are one design: as many panels and as many edge columns in each. Of any two "
      "sizes, neighbours or not, no group stands fewer times in the wider one, and as often where they are as wide; "
      "rows likewise go with the heights. A range is as wide as its middle. Of all ways to choose so, the one whose "
      "greatest error is least; of these that with the least sum of errors; of these fewer panels, then fewer edge "
      "columns. From each size's best candidates under each construction, 300 at first, and twice as many until what "
      "is not listed cannot be part of a better choice. Where that would take more than 10000 candidates of a size, "
      "the work of fit(), or 400 million comparisons of two candidates in all (20 million a search, which only sizes "
      "can come to whose heights do not go with their widths), the best choice so far is returned, and `complete` is "
      "False. Each fit has the work of fit() to itself; `stop` and `progress` watch over all.\n"
      "\n"
      "Raises Error bad_argument (field \"sizes\", \"sizes[2].name\", \"sizes[2].width_mm\", or \"design.\" and a "
      "field of FitRequest), bad_encoding (\"sizes[2].name\"), no_gauge, too_large, cancelled, as fit(); too_large "
      "(field \"design.edge_most\") for more than 1000 constructions times sizes.");
  m.def("graded_text", &graded_text, "numbers"_a,
        "Numbers of several sizes as written patterns give them: \"4 (6, 8)\"; where all are the same, or there is "
        "one, \"4\"; nothing for none.");
  m.def("grading_table", &grading_table, "grading"_a,
        "A line a size, for a terminal: panels, times of each group, edge columns, columns and rows of a panel, width "
        "and height in cm with their errors in percent; below it what each group is, and that there may be a better "
        "choice where the grading is not `complete`. Where there are no candidates, the message. Below either, a line "
        "for each texture that is measured by another's gauge, and for each size that ends open.");
  m.def("grading_words", &grading_words, "grading"_a,
        "The lines of a written pattern that differ between sizes: \"Knit 120 (144, 168) rows\". Where there "
        "are no candidates, the message. Groups are told by what they are made of; what is not `complete`, measured by "
        "another's gauge or open at its end as in grading_table().");
}

}  // namespace latchwork::python
