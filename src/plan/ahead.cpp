#include "plan/ahead.hpp"

#include <algorithm>

namespace latchwork::inline v0::planning {

void Ahead::forget() {
  std::fill(gain_.begin(), gain_.end(), 0);
  looked_.clear();
}

bool Ahead::look(const Problem& problem, const Windows& windows, Prices& prices, std::size_t width,
                 const Stretches& stretches, std::int64_t slack, Limits& limits) {
  forget();
  for (int row = problem.rows - stretches.apart; row > 0; row -= stretches.apart) {
    limits.done(static_cast<double>(problem.rows - row) / problem.rows);
    const int last = std::min(problem.rows, row + stretches.depth);
    const Pass pass = look_ahead(problem, windows, prices, width, slack, gain_, row + 1, last, limits);
    if (pass.broken_off) return false;
    const std::int64_t above = gain_[static_cast<std::size_t>(row) + 1];
    if (pass.bound > above) looked_.push_back({row, last, pass.bound});
    const std::int64_t gain = std::max(above, pass.bound);
    std::fill(gain_.begin(), gain_.begin() + row + 1, gain);  // what is gained above a row is gained from it too
  }
  return true;
}

}  // namespace latchwork::inline v0::planning
