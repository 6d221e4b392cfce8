#pragma once

#include "file/json.hpp"
#include "latchwork/strip.hpp"

namespace latchwork::inline v0::json {

/// The strip of a motif object: {"motif": "rope", "front": 3, ...}, or a chart of one's own.
/// @throws Error with line and field, and what the motif throws.
Strip get_motif(Value value);

}  // namespace latchwork::inline v0::json
