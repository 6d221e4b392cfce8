#include "machine/tools.hpp"

#include <algorithm>
#include <functional>
#include <numeric>

namespace latchwork::inline v0 {
namespace {

constexpr int most_searched = 6;  // tools in all; more are shared out greedily

struct Search {
  std::span<const int> groups;
  std::vector<int> sizes;  // widest first
  std::vector<int> left;   // how many of each are still free
  std::vector<std::vector<int>> chosen;

  // Gives group g, of which `open` stitches have no tool yet, tools from sizes[first] on; `tools` and `bare` are the
  // tools and bare prongs that may still be spent, both of which must come out exactly.
  bool fill(std::size_t g, int open, std::size_t first, int tools, int bare) {
    if (open <= 0) {
      if (g + 1 == groups.size()) return tools == 0 && bare == 0;
      return fill(g + 1, groups[g + 1], 0, tools, bare);
    }
    if (tools == 0) return false;
    for (std::size_t i = first; i < sizes.size(); ++i) {
      const int over = sizes[i] - open;
      if (left[i] == 0 || over > bare) continue;
      --left[i];
      chosen[g].push_back(sizes[i]);
      if (fill(g, open - sizes[i], i, tools - 1, over > 0 ? bare - over : bare)) return true;
      chosen[g].pop_back();
      ++left[i];
    }
    return false;
  }
};

// Widest first, whatever is left; when nothing is, more of the widest.
ToolSharing shared_greedily(std::span<const int> groups, const std::vector<int>& sizes) {
  ToolSharing sharing;
  std::vector<int> left(sizes.size(), 2);
  for (const int group : groups) {
    auto& tools = sharing.prongs.emplace_back();
    for (int open = group; open > 0;) {
      std::size_t pick = sizes.size();
      for (std::size_t i = 0; i < sizes.size(); ++i) {
        // The widest that fits, else the narrowest that is too wide.
        if (left[i] > 0 && (pick == sizes.size() || sizes[pick] > open)) pick = i;
      }
      if (pick == sizes.size()) {
        sharing.at_hand = false;
        pick = 0;
        while (pick + 1 < sizes.size() && sizes[pick] > open) ++pick;
      } else {
        --left[pick];
      }
      tools.push_back(sizes[pick]);
      open -= sizes[pick];
    }
  }
  return sharing;
}

}  // namespace

ToolSharing share_tools(std::span<const int> groups, std::span<const int> prongs) {
  ToolSharing none;
  none.prongs.resize(groups.size());
  const int stitches = std::accumulate(groups.begin(), groups.end(), 0);
  if (groups.empty() || stitches == 0) return none;

  std::vector<int> sizes(prongs.begin(), prongs.end());
  std::sort(sizes.begin(), sizes.end(), std::greater<>());
  sizes.erase(std::unique(sizes.begin(), sizes.end()), sizes.end());
  if (sizes.empty()) {
    none.at_hand = false;
    for (std::size_t g = 0; g < groups.size(); ++g) {
      if (groups[g] > 0) none.prongs[g].push_back(groups[g]);
    }
    return none;
  }
  const int least = (stitches + sizes.front() - 1) / sizes.front();
  const int slack = static_cast<int>(groups.size()) * (sizes.front() - 1);
  for (int bare = 0; bare <= slack; ++bare) {
    for (int tools = least; tools <= most_searched; ++tools) {
      Search search{groups, sizes, std::vector<int>(sizes.size(), 2), none.prongs};
      if (search.fill(0, groups[0], 0, tools, bare)) return {std::move(search.chosen), true};
    }
  }
  return shared_greedily(groups, sizes);
}

}  // namespace latchwork::inline v0
