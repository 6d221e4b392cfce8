#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "latchwork/error.hpp"
#include "latchwork/progress.hpp"

namespace latchwork::inline v0 {

/// Looks at each step of a long call whether it is asked to stop, and tells now and then how far it is: at the first
/// step, at the end, and between them some 256 times at most, so that whoever listens does not slow it down.
class Pulse {
 public:
  /// `steps`: of the whole call. `what` is asked to stop: "the simulation".
  Pulse(const WatchOptions& options, std::int64_t steps, const char* what)
      : options_(options), steps_(std::max<std::int64_t>(steps, 1)), what_(what) {}

  /// @throws Error cancelled, and what the caller's function throws.
  void step(std::int64_t steps = 1) {
    done_ = std::min(steps_, done_ + steps);
    look();
    if (done_ > next_) tell();
  }
  /// All is done, whatever was left out. @throws as step().
  void finish() {
    done_ = steps_;
    look();
    tell();
  }

 private:
  void look() const {
    if (!options_.stop.stop_requested()) return;
    throw Error(ErrorCode::cancelled, {}, fmt::format("{} was asked to stop", what_));
  }
  void tell() {
    next_ = done_ + std::max<std::int64_t>(64, steps_ / 256);
    if (!options_.progress) return;
    options_.progress({.share = static_cast<double>(done_) / static_cast<double>(steps_)});
  }

  const WatchOptions& options_;
  std::int64_t steps_;
  const char* what_;
  std::int64_t done_ = 0;
  std::int64_t next_ = 0;
};

}  // namespace latchwork::inline v0
