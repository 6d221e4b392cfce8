#pragma once

#include <algorithm>
#include <cstddef>
#include <map>
#include <utility>
#include <vector>

namespace latchwork::inline v0::planning {

/// Sets of kinds of stop, by number. Set 0 is empty.
class KindSets {
 public:
  KindSets() { sets_.push_back(&numbers_.try_emplace(std::vector<int>{}, 0).first->first); }
  const std::vector<int>& of(int set) const { return *sets_[static_cast<std::size_t>(set)]; }
  int with(int set, int kind) {
    std::vector<int> more = of(set);
    const auto place = std::lower_bound(more.begin(), more.end(), kind);
    if (place != more.end() && *place == kind) return set;
    more.insert(place, kind);
    const auto [entry, fresh] = numbers_.try_emplace(std::move(more), static_cast<int>(sets_.size()));
    if (fresh) sets_.push_back(&entry->first);
    return entry->second;
  }

 private:
  std::map<std::vector<int>, int> numbers_;
  std::vector<const std::vector<int>*> sets_;
};

}  // namespace latchwork::inline v0::planning
