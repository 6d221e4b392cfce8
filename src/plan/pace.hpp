#pragma once

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace latchwork::inline v0::planning {

/// How fast steps are made that are known to be so many: by the middle one of equal parts of them, of two the faster,
/// so that where the machine did something else for a while does not count.
class Pace {
 public:
  using Duration = std::chrono::duration<double, std::milli>;

  /// `all` steps, more than 0, from now on.
  explicit Pace(std::int64_t all) : all_(all) {}

  /// So many steps were made.
  void step(std::int64_t steps) {
    done_ += steps;
    if ((done_ - looked_) * parts < all_) return;
    const auto now = Clock::now();
    each_.push_back(Duration(now - since_) / static_cast<double>(done_ - looked_));
    since_ = now;
    looked_ = done_;
  }
  /// Whether so many parts are made that the rest can be foreseen, even if there was a pause in one.
  bool known() const noexcept { return each_.size() >= least_parts; }
  /// The share of the steps that is made, above 0 once it is known.
  double done() const noexcept { return static_cast<double>(done_) / static_cast<double>(all_); }
  /// All steps.
  Duration whole() const { return middle() * static_cast<double>(all_); }
  /// Those that are still to be made.
  Duration left() const { return middle() * static_cast<double>(std::max<std::int64_t>(0, all_ - done_)); }

 private:
  using Clock = std::chrono::steady_clock;
  static constexpr std::int64_t parts = 16;
  static constexpr std::size_t least_parts = 3;

  Duration middle() const {
    std::vector<Duration> sorted = each_;
    const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>((sorted.size() - 1) / 2);
    std::nth_element(sorted.begin(), middle, sorted.end());
    return *middle;
  }

  std::int64_t all_;
  std::int64_t done_ = 0;
  std::int64_t looked_ = 0;  // done when the last part was
  Clock::time_point since_ = Clock::now();
  std::vector<Duration> each_;  // per part: of a step
};

}  // namespace latchwork::inline v0::planning
