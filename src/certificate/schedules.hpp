#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "certificate/ways.hpp"

namespace latchwork::inline v0::checking {

/// Where the classes may stand after the decision at one row: the places of use of all of them, class by class.
class RowPlaces {
 public:
  RowPlaces(const std::vector<Ways>& classes, int row) : row_(row) {
    from_.reserve(classes.size() + 1);
    from_.push_back(0);
    for (const Ways& ways : classes) from_.push_back(from_.back() + ways.count(row));
  }
  int row() const noexcept { return row_; }
  std::size_t count() const noexcept { return from_.back(); }
  /// A class's part of values at all these places.
  template <class Number>
  std::span<Number> of(std::size_t k, std::span<Number> values) const {
    return values.subspan(from_[k], from_[k + 1] - from_[k]);
  }

 private:
  int row_;
  std::vector<std::size_t> from_;  // per class, and where the last ends
};

/// Up to some row: what is paid for stops, and the cheapest ways to its places.
struct Schedule {
  std::int64_t paid = 0;
  std::span<const std::int64_t> ways;
};

/// The schedules kept at one row, by rising branch. A certificate may keep very many, so they lie side by side: 8 bytes
/// a place, and no more is reserved than is asked for.
class KeptSchedules {
 public:
  KeptSchedules(std::size_t places_of_one, std::size_t reserved) : places_of_one_(places_of_one) {
    kept_.reserve(reserved);
    ways_.reserve(reserved * places_of_one);
  }
  std::size_t size() const noexcept { return kept_.size(); }
  std::size_t places() const noexcept { return ways_.size(); }
  std::size_t places_of_one() const noexcept { return places_of_one_; }
  int branch(std::size_t i) const { return kept_[i].branch; }
  Schedule operator[](std::size_t i) const {
    return {kept_[i].paid, std::span(ways_).subspan(i * places_of_one_, places_of_one_)};
  }
  std::optional<std::size_t> find(int branch) const {
    const auto found = std::ranges::lower_bound(kept_, branch, {}, &Kept::branch);
    if (found == kept_.end() || found->branch != branch) return {};
    return static_cast<std::size_t>(found - kept_.begin());
  }
  void add(int branch, const Schedule& schedule) {
    kept_.push_back({branch, schedule.paid});
    ways_.insert(ways_.end(), schedule.ways.begin(), schedule.ways.end());
  }

 private:
  struct Kept {
    int branch = -1;
    std::int64_t paid = 0;
  };
  std::size_t places_of_one_;
  std::vector<Kept> kept_;
  std::vector<std::int64_t> ways_;
};

}  // namespace latchwork::inline v0::checking
