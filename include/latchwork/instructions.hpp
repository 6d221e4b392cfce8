#pragma once

#include <string>

#include "latchwork/effort.hpp"
#include "latchwork/export.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/size.hpp"

namespace latchwork::inline v0 {

/// Machine instructions in words, plain UTF-8 text: by row counter and carriage side, one line a stop, needles in the
/// operator's view, re-forms in the plan's order, one sweep across the bed: one list where all are alike, else each run
/// of like needles with its rows and rungs, and what comes again along the bed told once ("8 x [L89-L84: cross X1],
/// each 22 needles further right, to R82"); equal stops folded into repeats, sweeps told more than once named ("sweep
/// 1"); crossings by marks of their own ("X1"; letters are strips of charts); a key of the abbreviations used; the
/// cautions that fit. At an edge one stitch is decreased or increased and
/// several are bound off or cast on, as outline_text() has it; where the work goes into a cast-on, it is told to give
/// each needle a loop of its own. What findings() calls an error comes first; for an infeasible plan, why, and no
/// steps.
///
/// Verify the plan first: verify() alone says whether its work makes this panel. Here a plan is refused that no words
/// can tell, that they would tell wrongly, or that asks what hands cannot do; the tests are those of verify(). A plan
/// that hands can follow to another cloth (a batch left out, rungs as other stitches, a crossing that the chart does
/// not have) is told as it stands. Steps that hands would do for nothing, which verify() counts, are left out, and a
/// line at the top says so; a stop without work says that there is none.
/// @throws Error size_mismatch (field "plan"); bad_argument for a machine out of its ranges, and for such a plan. Its
/// place is the stop's row, the RS column where there is one, and a field such as
/// - "leftmost" (0, or needles past every number), "rhythm.every", "columns_on[3]" (no column with a stitch in row 1 of
///   the chart, or one twice), "columns_on" (lacks one);
/// - "stops[2].row" (outside the panel's rows, or not above the stop before), "stops[2].effort_ms" (below 0),
///   "stops[2].carriage_right" (the other side than its row's, row 0 too);
/// - "stops[2].reforms[0].needle" (none of the panel's needles, so too for releases, shapings and holds; or re-formed
///   before at this stop), "...column" (on another needle; so too for shapings), "...wale" (another than the chart's
///   there), "...from_row" (not below the stop's row), "...rungs" (not all rungs from there up to the stop's row),
///   "...rungs[1]" (no knit, purl, tuck or slip);
/// - "stops[2].crossings[0].crossing.row" (another than the stop's), "...left" (a count below 1, or wider than the
///   panel), "...column" (off the panel, or stitches of a crossing before at this stop), "...returns" (in another order
///   than the crossing's lean and centre say, or one of its groups missing, but for a bare centre, or given twice),
///   "...returns[1].stitches", "...from_needle", "...to_needle" (others than the group's), "...prongs" (none though it
///   is lifted, or fewer than its stitches), "...prongs[0]" (not 1 to 20);
/// - "stops[2].reforms[0]", "stops[2].holds[1]" and so on: the first step that hands cannot do, as verify() finds it (a
///   batch whose wale has no loop at its from_row, as where that row is a tuck or slip; a needle without a stitch).
/// Of an infeasible plan, which has no steps, the stops are not looked at. too_large as simulate().
LATCHWORK_API std::string instructions(const Panel& panel, const Plan& plan, const Machine& machine);

}  // namespace latchwork::inline v0
