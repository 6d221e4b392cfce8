#pragma once

#include <algorithm>
#include <cstdint>
#include <functional>
#include <stop_token>

#include "bind.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::python {

/// Of a time limit what is left for the library, where plans for this grid are to be put by after it, whose stops
/// become objects later: some 10 ns a cell, but no more than half. 0, for none, stays so.
inline std::int64_t less_time_for_objects(std::int64_t limit_ms, const Grid& grid) {
  if (limit_ms <= 0) return limit_ms;
  const std::int64_t cells = std::int64_t{grid.rows()} * grid.columns();
  return limit_ms - std::min(limit_ms / 2, cells / 100'000);
}

/// A long call's line to Python: tells a callback how far it is, asks whether to go on, and lets Ctrl-C through.
/// Made and destroyed with the GIL held; what it hands out may be used without.
class Watch {
 public:
  /// `stop`: a StopSource or nothing. `callback`: called with Progress on the calling thread, or nothing; when it
  /// returns False the call is asked to stop, and what it raises ends the call and reaches the caller.
  Watch(const std::stop_source* stop, std::optional<py::function> callback);
  Watch(const Watch&) = delete;
  Watch& operator=(const Watch&) = delete;

  std::stop_token token() const { return own_.get_token(); }
  std::function<void(const Progress&)> progress() {
    return [this](const Progress& now) { tell(now); };
  }

 private:
  struct Request {
    std::stop_source* source;
    void operator()() const noexcept { source->request_stop(); }
  };

  void tell(const Progress& now);

  std::stop_source own_;  // so that a callback's False stops this call and no other that shares the caller's source
  std::optional<py::function> callback_;
  std::optional<std::stop_callback<Request>> outer_;
};

}  // namespace latchwork::python
