#include "plan/share.hpp"

#include <numeric>

namespace latchwork::inline v0::planning {
namespace {

void add_evenly(std::vector<std::int64_t>& worth, std::int64_t rest) {
  const auto count = static_cast<std::int64_t>(worth.size());
  const std::int64_t each = rest / count;
  std::int64_t ones = rest % count;
  for (auto& value : worth) value += each + (ones-- > 0 ? 1 : 0);
}

}  // namespace

void share_out(std::vector<std::int64_t>& worth, std::int64_t cost) {
  std::int64_t sum = std::accumulate(worth.begin(), worth.end(), std::int64_t{0});
  if (sum <= cost) {
    add_evenly(worth, cost - sum);
    return;
  }
  // What each payer keeps; who has no more than that pays nothing, and the others keep the less for it.
  auto count = static_cast<std::int64_t>(worth.size());
  std::int64_t level = 0;
  for (bool fewer = count > 0; fewer;) {
    level = (sum - cost) / count;
    std::int64_t payers = 0;
    for (auto& value : worth) {
      if (value == 0) continue;
      if (value > level) {
        ++payers;
        continue;
      }
      sum -= value;
      value = 0;
    }
    fewer = payers != count && payers > 0;
    count = payers;
  }
  std::int64_t excess = sum - count * level - cost;  // below `count`: the first ones keep one unit more
  for (auto& value : worth) {
    if (value == 0) continue;
    value -= level;
    if (excess > 0) {
      --value;
      --excess;
    }
  }
}

}  // namespace latchwork::inline v0::planning
