#pragma once

#include <algorithm>
#include <cstdint>
#include <iterator>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"
#include "plan/limits.hpp"
#include "plan/pace.hpp"

namespace latchwork::inline v0::planning {

/// Lets a panel be read to its end, unless it, or what comes of it, would be done long after the limits are over.
class ReadOn {
 public:
  /// `limits`: none, where nothing ends it. `steps`: of each cell, in which it is read.
  ReadOn(Limits* limits, const Grid& grid, int steps)
      : limits_(limits),
        cells_(std::int64_t{grid.rows()} * grid.columns()),
        crossed_(std::ssize(grid.crossings()) * Limits::crossing_as_cells),
        pace_(cells_ * steps) {}

  /// So many steps are made. @throws Error cancelled (field options).
  void step(std::int64_t steps) {
    if (limits_) pace_.step(steps);
    also(steps);
  }
  /// So many that are none of those, and take as long. @throws Error cancelled (field options).
  void also(std::int64_t steps) {
    done_ += steps;
    if (!limits_) return;
    const bool over = limits_->whole_over();
    if (over) beyond_ += steps;
    if (std::max(2 * cells_, done_) + 2 * crossed_ <= always_read) return;
    const bool sure =
        pace_.known() && (over || pace_.done() >= 0.5);  // while there is time, what is begun slowly may mend
    const bool late = limits_->timed() && sure && limits_->would_be_late(pace_.left(), then());
    if (late || beyond_ > most_beyond) {
      refuse(ErrorCode::cancelled, "options",
             "the call was stopped, or its time was or would be over, before the panel was read");
    }
  }

 private:
  // What comes of it, by measure. The one plan that is had without a search takes up to two and a half times as long as
  // reading, where wales have stacks and all it takes is room that is used for the first time; half as long, where most
  // of what is read are rows of lanes in which their wales are not. A crossing is written up in the time in which so
  // many cells are read.
  Deadline::Duration then() const {
    const double all = static_cast<double>(done_) / pace_.done();
    const double dense = std::min(1.0, 2.0 * static_cast<double>(cells_) / all);
    const double after = limits_->quarters_after() / 4.0;  // of the plan as it is written up, crossings and all
    const double crossed = static_cast<double>(crossed_) / static_cast<double>(cells_);
    return pace_.whole() * (0.5 + 2 * dense + crossed + after * (1 + crossed));
  }

  static constexpr std::int64_t always_read = 410'000;  // those of 200 wales of 1000 rows, and some more: a few ms
  static constexpr std::int64_t most_beyond = 820'000;
  Limits* limits_;
  std::int64_t cells_;
  std::int64_t crossed_;  // the crossings, as so many cells
  Pace pace_;
  std::int64_t done_ = 0;    // each cell twice, to follow the wales, or to read them and lay them out, if all differ
  std::int64_t beyond_ = 0;  // of these, since the limits are over
};

}  // namespace latchwork::inline v0::planning
