#pragma once

#include <cmath>
#include <numbers>

#include "random.hpp"

namespace latchwork_test {

/// A normal deviate (Box and Muller, Ann. Math. Statist. 29, 1958). No second draw is kept, so that the numbers do not
/// hang on who drew before.
inline double normal(Random& random) {
  const auto share = [&] { return (static_cast<double>(random.next() >> 11) + 0.5) * 0x1p-53; };
  const double radius = std::sqrt(-2 * std::log(share()));
  return radius * std::cos(2 * std::numbers::pi * share());
}

}  // namespace latchwork_test
