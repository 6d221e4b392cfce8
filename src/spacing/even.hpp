#pragma once

#include <vector>

namespace latchwork::inline v0 {

/// Whether gaps of two lengths (or one) stand as evenly as they can: no stretch of them has more long ones than another
/// of as many gaps by two, as in spaced_evenly(). Linear.
bool spread_evenly(const std::vector<int>& gaps);

}  // namespace latchwork::inline v0
