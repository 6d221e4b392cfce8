#pragma once

#include <optional>
#include <vector>

#include "latchwork/conditions.hpp"
#include "plan/problem.hpp"
#include "plan/works.hpp"

namespace latchwork::inline v0::planning {

/// What a lane does when all that is due is done at each stop of a rhythm; no cost when a task comes too late for its
/// last stop. No holds. Linear in the rhythm's stops.
Works works_in_rhythm(const Lane& lane, const Rhythm& rhythm, int rows);

}  // namespace latchwork::inline v0::planning
