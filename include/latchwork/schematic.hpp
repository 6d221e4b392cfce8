#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/grading.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/quantity.hpp"
#include "latchwork/size.hpp"

namespace latchwork::inline v0 {

/// A corner of a piece's outline.
struct OutlinePoint {
  double x_mm = 0;  ///< from the left on the RS, -1e6..1e6
  double y_mm = 0;  ///< up from the cast-on, -1e6..1e6
  friend bool operator==(const OutlinePoint&, const OutlinePoint&) = default;
};

/// On which side of the piece a measure's line is drawn. The values are in the C ABI.
enum class MeasureSide : std::uint8_t { bottom = 0, top = 1, left = 2, right = 3 };

/// One measure of a piece: where it is taken on the drawn outline, and what it is in each size.
struct SchematicMeasure {
  std::string label;  ///< "width at the cast-on"
  MeasureSide side = MeasureSide::bottom;
  OutlinePoint start;             ///< a width (bottom, top) is taken between the x of both, a height between the y
  OutlinePoint end;               ///< extension lines are drawn from both points
  double mm = 0;                  ///< in the drawn size, 0..1e6; written, not taken from the points
  std::vector<double> others_mm;  ///< in the other sizes, in order
  friend bool operator==(const SchematicMeasure&, const SchematicMeasure&) = default;
};

/// A piece: one panel off the machine.
struct SchematicPiece {
  std::string name;  ///< "front"
  /// Its corners in order, three or more; closed by itself. Its edges meet at the corners alone, each edge the next, to
  /// a thousandth of a millimetre; corners of one place that follow each other are one.
  std::vector<OutlinePoint> outline;
  std::vector<SchematicMeasure> measures;
  bool seam_left = false;   ///< its left side is sewn to the piece before it, so that they are drawn edge to edge
  bool seam_right = false;  ///< its right side to the piece after it, likewise
  /// The same piece in the other sizes, in order, where `outline` lies in the drawn one's place: all of them, or none.
  /// Drawn thin, each as an outline of its own.
  std::vector<std::vector<OutlinePoint>> others{};
  /// What its measures rest on, for people: below the drawing, before the schematic's; what two pieces say once.
  std::vector<std::string> notes{};
  friend bool operator==(const SchematicPiece&, const SchematicPiece&) = default;
};

/// What a schematic drawing shows. Plain data, so that an article can fill it.
struct Schematic {
  static constexpr std::size_t max_pieces = 50;
  static constexpr std::size_t max_sizes = 50;
  static constexpr std::size_t max_points = 200'000;  ///< of one outline
  static constexpr std::size_t max_measures = 26;     ///< of one piece

  std::string title;                   ///< "cushion cover, three sizes"
  std::vector<std::string> sizes;      ///< their names, the drawn one first; empty: one size without a name
  std::vector<SchematicPiece> pieces;  ///< from the left on the RS, one or more
  std::vector<std::string> notes;      ///< lines for people, below the drawing
  LengthUnit unit = LengthUnit::cm;    ///< of the measures: cm, to one decimal, or inch, to a quarter; what
                                       ///< is less than half of that "under 0.05", "under 1/8"
  friend bool operator==(const Schematic&, const Schematic&) = default;
};

/// The drawing as SVG 1.1, black on white: each piece to one scale, its measures on dimension lines with extension
/// lines as "a = 45 (50, 55) cm", each with a small letter that the list below explains (capitals are strips of charts,
/// "X1" crossings of instructions); a title that says that the
/// right side is shown. Pieces stand side by side, in rows where they would not fit a page. Pieces that are sewn
/// together stand edge to edge on one lower line, from the left, the seam dashed in place of their sides; the same
/// where a piece is sewn to one that is not there, but inside its side. A width of the first of them may go on over the
/// others, whose place its x then counts on to. Outlines of the other sizes are drawn thin. Made for 190 mm of A4 and
/// for a phone: text is a thirtieth of the width, smaller only where words need more room. Linear in measures, O(n log
/// n) in an outline's points.
/// @throws Error bad_argument (field "pieces", "pieces[0].outline[2].x_mm", "pieces[0].measures[1].others_mm" for as
/// many as are not the sizes, "pieces[0].others" likewise, "unit") for what is out of its range, or an outline under 1
/// mm wide or high; for an outline that crosses or touches itself or folds back (field "pieces[0].outline[2]",
/// "pieces[0].others[0][2]": the corner where it does, or from which the first of two edges that meet goes on);
/// too_large; bad_encoding for text that is not UTF-8.
LATCHWORK_API std::string schematic_svg(const Schematic& schematic);

/// A panel as a piece, at its gauges: its shape (straight up where it has no `none` at its sides); bands of unlike
/// width stand on the middle of the columns that they share. Its edges are drawn as they are meant: where stitches
/// leave or join one at a time, or several every row or two and none more than twice the one before or after, a slope,
/// from its first step to its last, or to the piece's end where the rows up to that are no more than an interval; no
/// further than a stitch, or two rows, from where the cloth ends. Several at once else are a step. Where two slopes
/// would meet, all are steps. Measured are the widths at the cast-on, the widest row and the last row, where they
/// differ by 0.5 mm, the height, and, where it is shaped, the heights to the widest row, and of the straight parts
/// below the first shaping and above the last, from 10 mm up; of each edge by itself where these differ; and of up to
/// four steps of 25 mm or more the height and the widths below and above, where they are not told yet. Every measure
/// is as long in the drawing as it is written, to scale, and between points of the outline. It is drawn between its
/// seams, as size() measures it with the same options: the widest width is its width_mm, the height its height_mm. A
/// note names the textures that are measured by another's gauge, as size() finds it. Linear in cells, but for the
/// slopes' corners.
/// @throws Error no_gauge (field = texture); bad_argument (row, field "grid") for a row without a stitch, or without a
/// column in common with the row below: that is two pieces; bad_argument (field "seam_left"), as size(), and (row,
/// field of the seam that takes more) for a row that its seams take wholly, or all of it that stands on the row below;
/// too_large (field "substitutes").
LATCHWORK_API SchematicPiece schematic_piece(const Panel& panel, const Swatch& swatch, const SizeOptions& options = {});

/// One design in all its sizes, on one drawing: the panels edge to edge as they are sewn, as
/// schematic_piece() has fitted() with the design's state, substitutes and seams; the first size is drawn, the others
/// thin over it, their lower edges in line and their middles, each of all its panels, one above the other. Measures
/// stand as "45 (50, 55) cm"; panels alike are measured once, heights on the last one. Where there are two or more the
/// first has the width of them all too. Notes tell what the measures rest on. The title is the caller's to set. Linear
/// in the cells of all panels.
/// @throws Error bad_argument (field "candidates" for a grading without, or of other sizes than the request's; "panels"
/// where sizes differ in them; "unit" for another than cm or inch; what fitted() refuses); too_large (field "panels")
/// for more than Schematic::max_pieces; as schematic_piece().
LATCHWORK_API Schematic graded_schematic(const GradeRequest& request, const Grading& grading, const Swatch& swatch,
                                         LengthUnit unit = LengthUnit::cm);

}  // namespace latchwork::inline v0
