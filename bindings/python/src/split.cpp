// A panel wider than the bed, in parts.

#include "latchwork/split.hpp"

#include "bind.hpp"

namespace latchwork::python {

void bind_split(py::module_& m) {
  m.attr("max_seam_stitches") = max_seam_stitches;
  m.def(
      "split",
      [](const Panel& panel, const std::optional<Machine>& machine, double seam_stitches) {
        const Panel own = panel;
        const py::gil_scoped_release free;
        return split(own, machine.value_or(Machine{}), seam_stitches);
      },
      "panel"_a, "machine"_a = py::none(), "seam_stitches"_a = 1.0,
      "Parts a finished panel that is wider than the bed, from the left on the RS. Between two parts the panel is "
      "cut between two columns, and each gets `seam_stitches` columns of knit at that edge, so that sewn together "
      "they are as wide as the panel: a seam takes a stitch of each edge (common practice, no source). They are "
      "whole: half a stitch of each edge has no column that could be added at both. A panel that the bed has needles "
      "for is one part, as it is.\n"
      "\n"
      "It is never cut inside a strip, since that is a motif, but where all the strip's cells in that band and inside "
      "the panel's shape are knit; nor through a crossing; nor between two columns of which one has a stitch in a row "
      "and the other has none. Where the panel's grid is its own mirror image, so are the cuts, if they can be with "
      "the "
      "fewest parts or one more (a motif in the middle takes an odd number): then the halves mirror each other. Else "
      "it "
      "is parted in the fewest. Of all ways that are left it is one with the widest "
      "part (with its seams) as narrow as can be; and of those each part from the left, up to the middle of a "
      "mirrored one, as wide as can be.\n"
      "\n"
      "Raises Error bad_argument (field \"seam_stitches\", also for a fraction; \"machine.needles\"); too_large (field "
      "\"panel\", with "
      "the column of the part that there is no end for).");
  m.def("split_part", without_gil(&split_part), "panel"_a, "part"_a,
        "One part of a panel as a panel, named after its columns: also one that is cut where you choose, inside a "
        "strip too. Seam stitches are knit in each row that has a stitch beside them; for a gauge they count as the "
        "strip beside them, and size() with `seam_left` and `seam_right` measures what is left of the part when it is "
        "sewn.\n"
        "\n"
        "Raises Error bad_argument (field \"part.column\", \"part.columns\", \"part.seam_left\", \"part.seam_right\"); "
        "crossing_cut (row, column), as Grid.sliced(); too_large.");
}

}  // namespace latchwork::python
