#pragma once

#include <algorithm>
#include <vector>

#include "latchwork/plan.hpp"

namespace latchwork_test {

/// How many kinds of stop a plan has.
inline int kinds_of(const latchwork::Plan& plan) {
  const std::vector<int> kinds = stop_kinds(plan);
  return kinds.empty() ? 0 : *std::max_element(kinds.begin(), kinds.end()) + 1;
}

}  // namespace latchwork_test
