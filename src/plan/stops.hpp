#pragma once

#include "latchwork/plan.hpp"

namespace latchwork::inline v0 {

/// Whoever follows a plan from stop to stop goes by the row counter: each stop lies within the plan's rows and above
/// the one before it.
/// @throws Error bad_argument: row, field "stops[i].row".
void require_stops_rise(const Plan& plan);

/// How many kinds of stop it has: see stop_kinds().
int kinds_of(const Plan& plan);

}  // namespace latchwork::inline v0
