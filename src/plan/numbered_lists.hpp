#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace latchwork::inline v0::planning {

/// Lists of whole numbers, each of which has a number of its own: 0, 1, ... as they came. They lie together in a few
/// large blocks, so that millions of them are found, and given back, without going through each.
class NumberedLists {
 public:
  /// The number of a list: count() as it was, where it is a new one.
  int add(std::span<const int> list) {
    if (2 * (lists_.size() + 1) > places_.size()) grow();
    const std::uint32_t hash = hash_of(list);
    Place& place = find(hash, list);
    if (place.number < 0) {
      place = {hash, count()};
      lists_.push_back({laid_down(list), list.size()});
    }
    return place.number;
  }
  /// Stays where it is.
  std::span<const int> of(int number) const {
    const List& list = lists_[static_cast<std::size_t>(number)];
    return {list.begin, list.size};
  }
  int count() const noexcept { return static_cast<int>(lists_.size()); }
  /// What they take, counted the same everywhere.
  std::size_t bytes() const noexcept {
    return lists_.size() * bytes_a_list + numbers_ * sizeof(int) + places_.size() * sizeof(Place);
  }

 private:
  static constexpr std::size_t bytes_a_list = 24;  // where it lies, and as much again for half of them to come
  static constexpr std::size_t block = std::size_t{1} << 16;
  struct List {
    const int* begin;
    std::size_t size;
  };
  struct Place {
    std::uint32_t hash = 0;
    int number = -1;  // of no list
  };

  static std::uint32_t hash_of(std::span<const int> list) {
    std::uint64_t sum = 0xcbf29ce484222325U;
    for (const int number : list) {
      sum = (sum ^ static_cast<std::uint32_t>(number)) * 0x9e3779b97f4a7c15U;
      sum ^= sum >> 32U;
    }
    return static_cast<std::uint32_t>(sum);
  }

  // Of the list, or where it would be.
  Place& find(std::uint32_t hash, std::span<const int> list) {
    const std::size_t mask = places_.size() - 1;  // a power of 2, less 1
    for (std::size_t i = hash & mask;; i = (i + 1) & mask) {
      Place& place = places_[i];
      if (place.number < 0 || (place.hash == hash && std::ranges::equal(of(place.number), list))) return place;
    }
  }

  void grow() {
    std::vector<Place> old(places_.empty() ? 64 : 2 * places_.size());
    std::swap(old, places_);
    const std::size_t mask = places_.size() - 1;
    for (const Place& place : old) {
      if (place.number < 0) continue;
      std::size_t i = place.hash & mask;
      while (places_[i].number >= 0) i = (i + 1) & mask;
      places_[i] = place;
    }
  }

  const int* laid_down(std::span<const int> list) {
    if (list.size() > left_) {
      left_ = std::max(block, list.size());
      blocks_.push_back(std::make_unique_for_overwrite<int[]>(left_));
      next_ = blocks_.back().get();
    }
    const int* const begin = next_;
    next_ = std::ranges::copy(list, next_).out;
    left_ -= list.size();
    numbers_ += list.size();
    return begin;
  }

  std::vector<Place> places_;  // looked up only
  std::vector<List> lists_;
  std::vector<std::unique_ptr<int[]>> blocks_;
  int* next_ = nullptr;      // where the next list goes, in the last block
  std::size_t left_ = 0;     // numbers that have room there
  std::size_t numbers_ = 0;  // of all lists
};

}  // namespace latchwork::inline v0::planning
