#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "plan/number_table.hpp"

namespace latchwork::inline v0::planning {

/// Lists of whole numbers, each of which has a number of its own: 0, 1, ... as they came. They lie together in a few
/// large blocks, so that millions of them are found, and given back, without going through each.
class NumberedLists {
 public:
  /// The number of a list: count() as it was, where it is a new one.
  int add(std::span<const int> list) {
    const std::uint64_t key = key_of_list(list);
    const int fresh = count();
    const auto [last, is_fresh] = last_with_.add(key, fresh);
    const int before = is_fresh ? -1 : last;
    for (int same = before; same >= 0; same = lists_[static_cast<std::size_t>(same)].before) {
      if (std::ranges::equal(of(same), list)) return same;
    }
    if (!is_fresh) last_with_.exchange(key, fresh);
    lists_.push_back({laid_down(list), static_cast<std::uint32_t>(list.size()), before});
    return fresh;
  }
  /// Stays where it is.
  std::span<const int> of(int number) const {
    const List& list = lists_[static_cast<std::size_t>(number)];
    return {list.begin, list.size};
  }
  int count() const noexcept { return static_cast<int>(lists_.size()); }
  /// What they take, counted the same everywhere.
  std::size_t bytes() const noexcept {
    return lists_.size() * bytes_a_list + numbers_ * sizeof(int) + last_with_.bytes();
  }

 private:
  static constexpr std::size_t bytes_a_list = 24;  // where it lies, and as much again for half of them to come
  static constexpr std::size_t block = std::size_t{1} << 16;
  struct List {
    const int* begin;
    std::uint32_t size;
    int before;  // the one before it with its key; -1: none
  };

  static std::uint64_t key_of_list(std::span<const int> list) {
    std::uint64_t sum = 0xcbf29ce484222325U;
    for (const int number : list) {
      sum = (sum ^ static_cast<std::uint32_t>(number)) * 0x9e3779b97f4a7c15U;
      sum ^= sum >> 32U;
    }
    return sum >> 1U;  // no key is the greatest
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

  NumberTable last_with_;  // the last list with a key
  std::vector<List> lists_;
  std::vector<std::unique_ptr<int[]>> blocks_;
  int* next_ = nullptr;      // where the next list goes, in the last block
  std::size_t left_ = 0;     // numbers that have room there
  std::size_t numbers_ = 0;  // of all lists
};

}  // namespace latchwork::inline v0::planning
