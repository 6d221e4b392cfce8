#pragma once

#include <algorithm>
#include <cstdint>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "plan/limits.hpp"
#include "plan/pace.hpp"

namespace latchwork::inline v0::planning {

/// Lets a panel be read to its end, unless it, or what comes of it, would be done long after the limits are over.
class ReadOn {
 public:
  /// `limits`: none, where nothing ends it. `cells`: of the panel. `steps`: in which it is read, more than 0.
  ReadOn(Limits* limits, std::int64_t cells, std::int64_t steps) : limits_(limits), all_(2 * cells), pace_(steps) {}

  /// So many steps are made. @throws Error cancelled (field options).
  void step(std::int64_t steps) {
    if (limits_) pace_.step(steps);
    also(steps);
  }
  /// So many that are none of those, and take as long. @throws Error cancelled (field options).
  void also(std::int64_t steps) {
    done_ += steps;
    if (!limits_) return;
    if (limits_->whole_over()) beyond_ += steps;
    if (std::max(all_, done_) <= always_read) return;
    const bool late = limits_->timed() && pace_.known() && limits_->would_be_late(pace_.left(), pace_.whole());
    if (late || beyond_ > most_beyond) {
      refuse(ErrorCode::cancelled, "options",
             "the call was stopped, or its time was or would be over, before the panel was read");
    }
  }

 private:
  static constexpr std::int64_t always_read = 410'000;  // those of 200 wales of 1000 rows, and some more: a few ms
  static constexpr std::int64_t most_beyond = 820'000;
  Limits* limits_;
  std::int64_t all_;  // steps: each cell twice, to follow the wales, or to read them and lay them out, if all differ
  Pace pace_;
  std::int64_t done_ = 0;
  std::int64_t beyond_ = 0;  // since the limits are over
};

}  // namespace latchwork::inline v0::planning
