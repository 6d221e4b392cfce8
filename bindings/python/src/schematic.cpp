// Schematic drawings.

#include "latchwork/schematic.hpp"

#include "bind.hpp"
#include "size_options.hpp"

namespace latchwork::python {

void bind_schematic(py::module_& m) {
  m.def(
      "schematic_svg", without_gil(&schematic_svg), "schematic"_a,
      "The drawing as SVG 1.1, black on white: each piece to one scale, every measure on a dimension line as \"a = "
      "45 (50, 55) cm\", a list of the measures below, and a title that says that the right side is shown. Pieces sewn "
      "together stand edge to edge, the seam dashed; a width of the first of them may go on over the others, whose "
      "place its x then counts on to.\n"
      "\n"
      "Raises Error bad_argument (field \"pieces\", \"pieces[0].outline[2].x_mm\", "
      "\"pieces[0].measures[1].others_mm\", \"pieces[0].others\", \"unit\"; \"pieces[0].outline[2]\" for an "
      "outline that crosses or touches itself or folds back there); too_large; bad_encoding for text that is not "
      "UTF-8.");
  def_with_size_options(
      m, "schematic_piece", &schematic_piece,
      "A panel as a piece, between its seams as size() measures it with the same options: its shape, and its widths at "
      "the cast-on, the widest and the last row, its height, and where it is shaped the heights of its straight "
      "parts. A note names the textures that are measured by another's gauge.\n\nRaises Error no_gauge (field = "
      "texture); bad_argument (row) for a row without a stitch, without a "
      "column in common with the row below, or that its seams take wholly; as size().");
  m.def(
      "graded_schematic", without_gil(&graded_schematic), "request"_a, "grading"_a, "swatch"_a,
      py::arg_v("unit", LengthUnit::cm, "LengthUnit.cm"),
      "One design in all its sizes, on one drawing: the panels edge to edge as they are sewn, as "
      "schematic_piece() has fitted() with the design's state, substitutes and seams; the first size is drawn, the "
      "others thin over it, their lower edges in line and their middles, each of all its panels, one above the other. "
      "Panels alike are measured once, heights on the last one; where there are two or more the first has the width of "
      "them all too. Notes tell what the measures rest on. The title is "
      "the caller's to set.\n\nRaises Error bad_argument (field \"candidates\" for a grading without, or of other "
      "sizes than the request's; \"panels\" where sizes differ in them; as fitted()); too_large (field \"panels\"); "
      "as schematic_piece().");
}

}  // namespace latchwork::python
