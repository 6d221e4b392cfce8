#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/spacing.hpp"

namespace latchwork::inline v0 {

/// How the points of an edge are joined. The values are in the C ABI.
enum class EdgeLine : std::uint8_t {
  straight = 0,  ///< by straight lines: slopes
  curve = 1,  ///< by a smooth curve that passes no point's columns between two points: the monotone cubic of F. Fritsch
              ///< and R. Carlson, SIAM J. Numer. Anal. 17, 1980 (from memory), its inner slopes the harmonic means,
              ///< weighted by heights, of F. Fritsch and J. Butland, 1984 (from memory), 0 at a turn; at an end
              ///< the slope of the chord
};

/// A point that an edge passes through.
struct EdgePoint {
  int row = 0;         ///< when the row counter reads this: 0 (the cast-on) to R
  double columns = 0;  ///< in from the panel's edge, 0..W
  friend bool operator==(const EdgePoint&, const EdgePoint&) = default;
};

/// Stitches that leave or join at an edge, some times over. One stitch is a decrease or an increase, several are bound
/// off or cast on at once; fully fashioned moves, further in from the edge, are not modelled. Several at once need the
/// yarn, which is at one edge after even rows and at the other after odd ones: findings() tells those that are at the
/// wrong one (FindingCode::yarn_away).
struct EdgeEvent {
  int row = 1;       ///< after this row the first time, 1..R-1
  int stitches = 1;  ///< that leave; below 0: that join; not 0
  int every = 1;     ///< rows from one time to the next, 1 or more
  int times = 1;     ///< 1 or more
  friend bool operator==(const EdgeEvent&, const EdgeEvent&) = default;
};

/// One side edge, from the bottom up: points, or a start and events, not both. Neither: straight up. Every field has
/// its default, so that designated initialisers may leave out what is not wanted without a warning.
struct EdgeShape {
  std::vector<EdgePoint> points{};  ///< rows never falling; below the first and above the last straight up; two points
                                    ///< at one row are a step there
  EdgeLine line = EdgeLine::straight;
  int start = 0;                    ///< columns in from the panel's edge in row 1, with events
  std::vector<EdgeEvent> events{};  ///< in any order; those after one row are added up
  friend bool operator==(const EdgeShape&, const EdgeShape&) = default;
};

inline constexpr std::size_t max_edge_items = 1000;  ///< most points, and most events, of one edge

/// The columns in work in one row.
struct RowSpan {
  int first = 0;  ///< 0..last, from the left on the RS
  int last = 0;   ///< ..W-1
  friend bool operator==(const RowSpan&, const RowSpan&) = default;
};

/// A panel's shape: where each row begins and ends. What lies outside is no stitch. Each row shares a column with the
/// row below, or the cloth is in two pieces.
struct Outline {
  std::vector<RowSpan> rows;  ///< row 1 first
  friend bool operator==(const Outline&, const Outline&) = default;
};

/// Events spread over rows as the events of an edge: `stitches` leave (below 0: join) after the row in which each
/// stands, counted from row `above`, so that spaced_evenly(60, 11) in rows 1..60 is `above` 0. Like gaps become one
/// event with its times, in order. Linear in the events.
/// @throws Error bad_argument (field "stitches" for 0, "above" below 0, "spacing.positions[1]" for what does not rise,
/// or lies outside 1..max_spacing); too_large (field "spacing") for more than max_edge_items events.
LATCHWORK_API std::vector<EdgeEvent> edge_events(const Spacing& spacing, int stitches = 1, int above = 0);

/// The shape of rows x columns between two edges, `left` and `right` as seen on the right side; for edges that mirror
/// each other give the same one twice. In each row the edge of points lies where the line is in the middle of that row,
/// rounded to the nearest column, halves up: never more than half a stitch from it. With `step` 2 (3, ...) it changes
/// after even rows only (multiples of step): for each step rows the middle is that of all of them. Events are given by
/// row and not moved: each has to be after such a row (spaced_evenly() takes the same step).
/// O(rows * (points + events)).
/// @throws Error bad_argument (field "rows", "columns", "step"; "left.points[2].row", "right.events[0].every" for what
/// is out of its range, or of events no multiple of step; "left" for points and events at once; with the row: "left" or
/// "right" where events would put an edge outside the panel, "outline" where no stitch is left between them, or none
/// that stands on a stitch of the row below: that would be two pieces); too_large (field "left.points", "rows").
LATCHWORK_API Outline outlined(int rows, int columns, const EdgeShape& left, const EdgeShape& right, int step = 1);

/// The shape that a grid has: the outermost stitches of each row. Linear in cells.
/// @throws Error bad_argument (row, field "grid") for a row without a stitch, or with no column in common with the row
/// below: the cloth is in two pieces there.
LATCHWORK_API Outline outline_of(const Grid& grid);

/// What shaped() does with a crossing or a stack that the edge cuts.
enum class CutWork : std::uint8_t {
  refuse = 0,  ///< nothing is shaped: an error at the place
  knit = 1,    ///< the crossing is left out, and its span in its row and the next, if there is one, or the stack, is
               ///< knitted plain
};

struct ShapeOptions {
  int edge_stitches = 1;  ///< columns at each edge whose cells are knitted plain all the way, 0..100; what crosses
                          ///< them and is not cut is kept
  CutWork cut = CutWork::refuse;
};

/// What the shape does to the panel's hand work, worst first, then by row and column: crossings of which a part is
/// outside in their row or the next (crossing_cut; `value` columns of `limit`; one after the last row has no next, but
/// since a grid is a tile too it is kept only where row 1 has its stitches, and else is cut there), stacks of tucks or
/// slips with their held loop and closing cell of which a part is outside (stack_cut), both errors with how far to move
/// edge or crossing; hand cells that come to lie in the edge stitches and are knitted plain, and crossings that are
/// kept and reach into them (column_cut, advice). What lies outside altogether is not told. What the shaped panel then
/// asks of a machine findings() tells. Linear in cells and crossings, but for the sorting.
/// @throws Error bad_argument (field "outline", with the row; "edge_stitches", "cut"); size_mismatch (field "outline").
LATCHWORK_API std::vector<Finding> shape_findings(const Grid& grid, const Outline& outline,
                                                  const ShapeOptions& options = {});

/// The panel in that shape: cells outside are `none`, those in the edge stitches knit, crossings outside are left out.
/// Bands, axis and name stay. Stitches that begin or end inside are shaping events, which plans stop for.
/// @throws as shape_findings(); with CutWork::refuse crossing_cut at the first crossing, bad_argument (row, column,
/// field "outline") at the first stack that is cut.
LATCHWORK_API Panel shaped(const Panel& panel, const Outline& outline, const ShapeOptions& options = {});

/// What changes after a row.
struct ShapingStep {
  int row = 1;    ///< after this row
  int left = 0;   ///< stitches that leave at the left edge on the RS; below 0: that join
  int right = 0;  ///< at the right edge
  friend bool operator==(const ShapingStep&, const ShapingStep&) = default;
};

/// Every change of a shape, from the bottom up. Linear. @throws Error bad_argument (field "outline", with the row).
LATCHWORK_API std::vector<ShapingStep> shaping_steps(const Outline& outline);

/// For people, a line each: how many stitches to begin with, what leaves or joins at which reading of the row counter,
/// and how many are left. Like steps at even intervals are told once: "RC 12: decrease 1 at each side, then every 6th
/// row 4 times"; so are intervals of two neighbouring lengths, with their rows, and "spread evenly" where they are.
/// Edges that shape at different rows are told each by itself where that is shorter: "RC 6: decrease 1 at the left
/// edge, then every 6th row 7 times.", and after it "Meanwhile, RC 9: decrease 1 at the right edge, then ...". Left and
/// right are those of the right side. @throws as shaping_steps().
LATCHWORK_API std::string outline_text(const Outline& outline);

}  // namespace latchwork::inline v0
