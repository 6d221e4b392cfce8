#pragma once

#include <cstdint>
#include <functional>
#include <stop_token>

namespace latchwork::inline v0 {

/// Told now and then during a long call, on the calling thread, and once more, with share 1, before it gives its
/// result, also after it was asked to stop. A call of several plans tells bound and best of the first, its least plan,
/// and those of stop_reasons() and certify() are of the plan that is handed in.
struct Progress {
  std::int64_t bound_ms = 0;  ///< plans: proven so far; never falls (others: 0)
  std::int64_t best_ms = 0;   ///< plans: best so far; -1: none yet; never rises once there is one (others: 0)
  double share = 0;           ///< of the work, 0..1; never falls
};

/// How to watch a simulation, a verification or the check of a certificate, and end it.
struct WatchOptions {
  std::stop_token stop;                           ///< @throws Error cancelled
  std::function<void(const Progress&)> progress;  ///< share only; what it throws ends the call and reaches the caller
};

}  // namespace latchwork::inline v0
