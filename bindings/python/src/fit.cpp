// Panels that meet a measure. The request and the candidates are Python's classes.

#include "latchwork/fit.hpp"

#include "watched_fit.hpp"

namespace latchwork::python {

void bind_fit(py::module_& m) {
  m.def(
      "fit",
      [](const FitRequest& request, const Swatch& swatch, const std::stop_source* stop,
         std::optional<py::function> progress) {
        return watched_fit(stop, std::move(progress),
                           [&request, own = swatch](const FitOptions& options) { return fit(request, own, options); });
      },
      "request"_a, "swatch"_a, py::kw_only(), "stop"_a = py::none(), "progress"_a = py::none(),
      "The ways to meet the target, ranked by error, then fewer panels, fewer columns, fewer rows, fewer edge "
      "columns, then fewer times of the first group, the second, and so on. Every combination that makes a grid, "
      "fits the needles, leaves something between the seams and, where panels are sewn together, has the edge "
      "columns that their seam takes in is considered. Without a tolerance_percent nothing is ever too far off. When "
      "nothing fits, the nearest and what would have to give.\n"
      "\n"
      "The work is counted: a width takes 16 and one for each strip of the groups and each texture in each group, a "
      "height 16 and one for each texture, a start two for each strip; candidates may take 400 million, a second or "
      "so, and the nearest as many again.\n"
      "\n"
      "`stop`: a StopSource; once asked to stop, the call raises Error cancelled. `progress`: called with Progress "
      "(only the share is told) on this thread; when it returns False the call is asked to stop.\n"
      "\n"
      "Raises Error bad_argument (field \"width_mm\", \"groups[1].least\"; \"edge\" where two panels or more are "
      "asked for and a seam has no edge columns to take in; \"edge\", \"groups[0].strips\" where a panel's outermost "
      "column could have no stitch in some row), no_gauge (field = texture), too_large (field \"substitutes\"; "
      "\"groups\" when the combinations take more work than that, \"vary_start\" when the starts do), cancelled.");
  m.def(
      "fitted",
      [](FitRequest request, FitCandidate candidate, Whole<"panel"> panel) {
        const py::gil_scoped_release free;
        return fitted(request, candidate, panel);
      },
      "request"_a, "candidate"_a, "panel"_a = 0,
      "One panel of a candidate: the one at index `panel`, 0..panels-1, from the left on the RS. It may break the "
      "request's bounds, as those of FitResult.nearest do. Of the request all but the targets is read, so that a "
      "GradeRequest's design will do. Raises Error bad_argument (field) when its numbers are no "
      "candidate's of this request with whatever bounds loosened; what join_strips() raises.");
}

}  // namespace latchwork::python
