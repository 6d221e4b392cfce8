#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

#include "plan/limits.hpp"
#include "plan/problem.hpp"

// A lane over time. After row t it stands at "i tasks done" for some i, or with its needle held over task i. Layer t +
// 1 holds what is possible after the decision at row t (layer 0: at the cast-on, before the decision at row 0).

namespace latchwork::inline v0::planning {

/// States of a lane in one layer: `low..high` tasks done, as far as still of use, and perhaps one held.
struct Window {
  int low = 0;
  int high = 0;   ///< low - 1 when there is none
  int held = -1;  ///< the task held over, -1: none
  int states() const noexcept { return high - low + 1; }
  int size() const noexcept { return states() + (held >= 0 ? 1 : 0); }
  bool has(int i) const noexcept { return i >= low && i <= high; }
};

/// Windows of a lane in every layer. What its states are worth is kept for one layer at a time: over all layers there
/// are as many as rows times the tasks that are open at once, which with deep ladders is far more than the panel.
struct LaneWindows {
  std::vector<Window> layer;  ///< 0..R+1
};

struct Windows {
  std::vector<LaneWindows> lanes;
  std::vector<std::vector<int>> users;  ///< per row 0..R: lanes to which a stop there can be of use
};

/// Where `limits` are over meanwhile some lanes lack theirs, and nothing else may be asked of them.
Windows windows_of(const Problem& problem, Limits* limits = nullptr);

/// Whether a stop after `row` can be of use to the lane that stands in window `from` before it.
bool can_use(const Lane& lane, const Window& from, const Window& to, int row);

// One row for one lane, forward: cheapest ways to the states of layer t + 1 from those of layer t, with no stop at row
// t or with one. `to` may not overlap `from`.

inline void stay(const Window& a, const std::int64_t* from, const Window& b, std::int64_t* to) {
  int k = 0;
  for (int i = b.low; i <= b.high; ++i, ++k) to[k] = a.has(i) ? from[i - a.low] : far;
  if (b.held >= 0) to[k] = a.held == b.held ? from[a.states()] : far;
}

inline void stop(const Lane& lane, int row, const Window& a, const std::int64_t* from, const Window& b,
                 std::int64_t* to) {
  stay(a, from, b, to);
  if (a.held >= 0 && lane.task(a.held).high - 1 == row && b.has(a.held + 1)) {
    auto& released = to[a.held + 1 - b.low];
    released = std::min(released, from[a.states()]);
  }
  const int done = lane.done_at(row);
  std::int64_t worked = far;
  if (done > 0) {
    for (int i = a.low; i <= a.high && i < done; ++i) {
      if (lane.task(i).last_stop >= row) worked = std::min(worked, from[i - a.low] + lane.batch_cost(i, row));
    }
    if (b.has(done)) {
      auto& value = to[done - b.low];
      value = std::min(value, worked);
    }
  }
  if (b.held >= 0 && lane.task(b.held).low - 1 == row) {
    std::int64_t value = a.has(b.held) ? from[b.held - a.low] : far;
    if (done == b.held) value = std::min(value, worked);
    to[b.states()] = std::min(far, value + lane.hold);
  }
}

}  // namespace latchwork::inline v0::planning
