#pragma once

#include <cstdint>
#include <vector>

namespace latchwork::inline v0::planning {

/// Shares a stop's cost out among what it is worth to each: takes worths (0 or more), leaves prices (0 or more) whose
/// sum is the cost. When it is worth less than it costs, each pays its worth and an even part of the rest; when it is
/// worth more, each keeps as much of the surplus as the others, if it has that.
void share_out(std::vector<std::int64_t>& worth, std::int64_t cost);

}  // namespace latchwork::inline v0::planning
