#pragma once

#include <algorithm>
#include <cstddef>
#include <map>
#include <utility>
#include <vector>

#include "plan/number_table.hpp"

namespace latchwork::inline v0::planning {

/// Sets of kinds of stop, by number. Set 0 is empty. A kind that can be done no more is of use only to be counted: such
/// kinds are -1, -2, ... in a set, whichever they were, so that sets which leave the same to do are the same.
class KindSets {
 public:
  KindSets() { sets_.push_back(&numbers_.try_emplace(std::vector<int>{}, 0).first->first); }
  /// What they take, counted the same everywhere.
  std::size_t bytes() const noexcept {
    return sets_.size() * bytes_a_set + kinds_in_sets_ * sizeof(int) + with_.bytes();
  }
  /// By increasing number. It stays where it is.
  const std::vector<int>& of(int set) const { return *sets_[static_cast<std::size_t>(set)]; }
  std::size_t size(int set) const { return of(set).size(); }
  /// A set of the same kinds as one of others, where these numbers are new: `moved` tells those of kinds from `first`
  /// on, in the order of the old ones.
  int like(const KindSets& others, int set, int first, const std::vector<int>& moved) {
    std::vector<int> kinds = others.of(set);
    for (int& kind : kinds) {
      if (kind >= first) kind = moved[static_cast<std::size_t>(kind - first)];
    }
    return number(std::move(kinds));
  }
  int with(int set, int kind) {
    const auto [known, fresh] = with_.add(key_of(set, kind), static_cast<int>(sets_.size()));
    if (!fresh) return known;
    std::vector<int> more = of(set);
    const auto place = std::lower_bound(more.begin(), more.end(), kind);
    if (place == more.end() || *place != kind) more.insert(place, kind);
    const int found = number(std::move(more));
    with_.exchange(key_of(set, kind), found);
    return found;
  }
  /// The set once those kinds of it are over.
  template <class Over>
  int without(int set, Over over) {
    const std::vector<int>& all = of(set);
    if (std::none_of(all.begin(), all.end(), [&](int kind) { return kind >= 0 && over(kind); })) return set;
    std::vector<int> left(all.size());
    std::size_t gone = 0;
    for (const int kind : all) {
      if (kind < 0 || over(kind)) ++gone;
    }
    for (std::size_t i = 0; i < gone; ++i) left[i] = static_cast<int>(i) - static_cast<int>(gone);
    std::copy_if(all.begin(), all.end(), left.begin() + static_cast<std::ptrdiff_t>(gone),
                 [&](int kind) { return kind >= 0 && !over(kind); });
    return number(std::move(left));
  }
  /// Whether whatever can be done once the kinds of one are used, and so many in all, can be done as well once those of
  /// the other are.
  bool allows_all(int one, int other) const {
    if (one == other) return true;
    const std::vector<int>& mine = of(one);
    const std::vector<int>& theirs = of(other);
    if (mine.size() > theirs.size()) return false;
    std::size_t missing = 0;
    for (const int kind : theirs) {
      if (kind >= 0 && !std::binary_search(mine.begin(), mine.end(), kind)) ++missing;
    }
    return mine.size() + missing <= theirs.size();
  }

 private:
  static constexpr std::size_t bytes_a_set = 144;  // in the map and the list, and what an allocator keeps beside them
  int number(std::vector<int> set) {
    const auto [entry, fresh] = numbers_.try_emplace(std::move(set), static_cast<int>(sets_.size()));
    if (fresh) {
      sets_.push_back(&entry->first);
      kinds_in_sets_ += entry->first.size();
    }
    return entry->second;
  }

  std::map<std::vector<int>, int> numbers_;
  std::vector<const std::vector<int>*> sets_;
  NumberTable with_;  // by set and kind
  std::size_t kinds_in_sets_ = 0;
};

}  // namespace latchwork::inline v0::planning
