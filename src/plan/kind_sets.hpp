#pragma once

#include <algorithm>
#include <cstddef>
#include <span>
#include <vector>

#include "plan/number_table.hpp"
#include "plan/numbered_lists.hpp"

namespace latchwork::inline v0::planning {

/// Sets of kinds of stop, by number. Set 0 is empty. A kind that can be done no more is of use only to be counted: such
/// kinds are -1, -2, ... in a set, whichever they were, so that sets which leave the same to do are the same.
class KindSets {
 public:
  KindSets() { sets_.add({}); }
  /// What they take, counted the same everywhere.
  std::size_t bytes() const noexcept { return sets_.bytes() + with_.bytes(); }
  /// By increasing number. It stays where it is.
  std::span<const int> of(int set) const { return sets_.of(set); }
  std::size_t size(int set) const { return of(set).size(); }
  /// A set of the same kinds as one of others, where these numbers are new: `moved` tells those of kinds from `first`
  /// on, in the order of the old ones.
  int like(const KindSets& others, int set, int first, const std::vector<int>& moved) {
    const std::span<const int> old = others.of(set);
    scratch_.assign(old.begin(), old.end());
    for (int& kind : scratch_) {
      if (kind >= first) kind = moved[static_cast<std::size_t>(kind - first)];
    }
    return sets_.add(scratch_);
  }
  int with(int set, int kind) {
    const auto [known, fresh] = with_.add(key_of(set, kind), sets_.count());
    if (!fresh) return known;
    const std::span<const int> old = of(set);
    scratch_.assign(old.begin(), old.end());
    const auto place = std::lower_bound(scratch_.begin(), scratch_.end(), kind);
    if (place == scratch_.end() || *place != kind) scratch_.insert(place, kind);
    const int found = sets_.add(scratch_);
    with_.exchange(key_of(set, kind), found);
    return found;
  }
  /// The set once those kinds of it are over.
  template <class Over>
  int without(int set, Over over) {
    const std::span<const int> all = of(set);
    if (std::none_of(all.begin(), all.end(), [&](int kind) { return kind >= 0 && over(kind); })) return set;
    scratch_.resize(all.size());
    std::size_t gone = 0;
    for (const int kind : all) {
      if (kind < 0 || over(kind)) ++gone;
    }
    for (std::size_t i = 0; i < gone; ++i) scratch_[i] = static_cast<int>(i) - static_cast<int>(gone);
    std::copy_if(all.begin(), all.end(), scratch_.begin() + static_cast<std::ptrdiff_t>(gone),
                 [&](int kind) { return kind >= 0 && !over(kind); });
    return sets_.add(scratch_);
  }
  /// Whether whatever can be done once the kinds of one are used, and so many in all, can be done as well once those of
  /// the other are.
  bool allows_all(int one, int other) const {
    if (one == other) return true;
    const std::span<const int> mine = of(one);
    const std::span<const int> theirs = of(other);
    if (mine.size() > theirs.size()) return false;
    std::size_t missing = 0;
    for (const int kind : theirs) {
      if (kind >= 0 && !std::binary_search(mine.begin(), mine.end(), kind)) ++missing;
    }
    return mine.size() + missing <= theirs.size();
  }

 private:
  NumberedLists sets_;
  NumberTable with_;          // by set and kind
  std::vector<int> scratch_;  // a set that is being made
};

}  // namespace latchwork::inline v0::planning
