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
/// operator's view, re-forms listed by what is alike, like neighbours folded into ranges, equal stops folded into
/// repeats; a key of the abbreviations used; the cautions that fit. At an edge one stitch is decreased or increased and
/// several are bound off or cast on, as outline_text() has it; where the work goes into a cast-on, it is told to give
/// each needle a loop of its own. What findings() calls an error comes first; for an infeasible plan, why, and no
/// steps.
/// @throws Error size_mismatch (field "plan"); bad_argument for a machine out of its ranges, and for a plan with
/// numbers that no words can tell. Its place is the stop's row, the RS column where there is one, and a field such as
/// "stops[2].row" (outside the panel's rows, or not above the stop before), "stops[2].reforms[0].needle" (none of the
/// panel's needles; so too for releases, shapings and holds), "...from_row" (not below the stop's row), "...rungs" (not
/// all rungs from there up to the stop's row), "...rungs[1]" (no knit, purl, tuck or slip), "stops[2].crossings[0]
/// .crossing.left" (a count below 1, or wider than the panel), "...column", "...returns[1].to_needle" (outside the
/// crossing), "...returns" (in another order than the crossing's lean and centre say), "...stitches", "...prongs[0]"
/// (below 1), "stops[2].effort_ms" (below 0); "leftmost" (0, or needles past
/// every number), "columns_on[3]", "rhythm.every". Words tell a plan as it is, right or wrong: have it verified first.
/// Of an infeasible plan, which has no steps, the stops are not looked at.
LATCHWORK_API std::string instructions(const Panel& panel, const Plan& plan, const Machine& machine);

}  // namespace latchwork::inline v0
