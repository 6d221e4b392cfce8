#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace latchwork::inline v0::planning {

/// Two numbers in one key.
constexpr std::uint64_t key_of(int high, int low) noexcept {
  return std::uint64_t{static_cast<std::uint32_t>(high)} << 32U | static_cast<std::uint32_t>(low);
}

/// Numbers by keys, for looking up only: what is in it comes in no order. Any key but the greatest of all.
class NumberTable {
 public:
  /// The number of a key, `fresh` where it has none yet, and whether that was so.
  std::pair<int, bool> add(std::uint64_t key, int fresh) {
    if (2 * (count_ + 1) > places_.size()) grow();
    Place& place = find(key);
    if (place.key == key) return {place.number, false};
    place = {key, fresh};
    ++count_;
    return {fresh, true};
  }
  /// The number a key had, -1 for none, and has no more: now it is this.
  int exchange(std::uint64_t key, int number) {
    const auto [had, fresh] = add(key, number);
    if (fresh) return -1;
    find(key).number = number;
    return had;
  }
  std::size_t bytes() const noexcept { return places_.size() * sizeof(Place); }
  void clear() {
    places_.assign(places_.size(), {});
    count_ = 0;
  }

 private:
  static constexpr std::uint64_t none = ~std::uint64_t{0};
  struct Place {
    std::uint64_t key = none;
    int number = 0;
  };

  Place& find(std::uint64_t key) {
    const std::size_t mask = places_.size() - 1;  // a power of 2, less 1
    std::uint64_t mixed = key * 0x9e3779b97f4a7c15U;
    mixed ^= mixed >> 32U;
    std::size_t i = static_cast<std::size_t>(mixed) & mask;
    while (places_[i].key != key && places_[i].key != none) i = (i + 1) & mask;
    return places_[i];
  }

  void grow() {
    std::vector<Place> old(places_.empty() ? 64 : 2 * places_.size());
    std::swap(old, places_);
    for (const Place& place : old) {
      if (place.key != none) find(place.key) = place;
    }
  }

  std::vector<Place> places_;
  std::size_t count_ = 0;
};

}  // namespace latchwork::inline v0::planning
