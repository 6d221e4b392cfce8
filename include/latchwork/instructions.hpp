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
/// operator's view, like neighbours folded into ranges, equal stops folded into repeats; a key of the abbreviations
/// used; the cautions that fit. What findings() calls an error comes first; for an infeasible plan, why, and no steps.
/// @throws Error size_mismatch; bad_argument for a machine out of its ranges, and for a plan with a rung that is no
/// cell (place: its stop's row and column), a needle 0, needles past every number, or stops that are not by rising row
/// or past the panel's last.
LATCHWORK_API std::string instructions(const Panel& panel, const Plan& plan, const Machine& machine);

}  // namespace latchwork::inline v0
