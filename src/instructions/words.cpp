#include "instructions/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "crossing/words.hpp"
#include "latchwork/machine.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::writing {
namespace {

std::string run_words(Cell cell, std::size_t count) {
  return count == 1 ? std::string(1, cell_letter(cell)) : fmt::format("{} {}", count, cell_letter(cell));
}

void append_runs(std::vector<std::string>& words, std::span<const Cell> rungs) {
  for (std::size_t i = 0; i < rungs.size();) {
    std::size_t end = i + 1;
    while (end < rungs.size() && rungs[end] == rungs[i]) ++end;
    words.push_back(run_words(rungs[i], end - i));
    i = end;
  }
}

/// "stitch 3 from the left of the crossing": the bed's needles have names of their own (L3, R2), so that a number must
/// say where it is counted from.
std::string inside(std::string_view thing, int step, int count, std::string_view ending = "s") {
  return run_of(thing, step + 1, step + count, "-", ending) + " from the left of the crossing";
}

/// "the left 3", "the right stitch": stitches as they stand in the block.
std::string stitches_at(int step, int count, int width) {
  if (step == 0) return count == 1 ? "the left stitch" : fmt::format("the left {}", count);
  if (step + count == width) return count == 1 ? "the right stitch" : fmt::format("the right {}", count);
  return inside("stitch", step, count, "es");
}

std::string needles_at(int step, int count, int width) {
  if (step == 0) return count == 1 ? "the left needle" : fmt::format("the left {} needles", count);
  if (step + count == width) return count == 1 ? "the right needle" : fmt::format("the right {} needles", count);
  return inside("needle", step, count);
}

/// A group by its place in the block; the centre by its name.
std::string group_words(const GroupReturn& group, const Crossing& shape) {
  // The operator's left-hand group is the right one on the RS.
  if (shape.centre > 0 && group.from_needle == shape.right && group.stitches == shape.centre) {
    return group.stitches == 1 ? "the centre stitch" : fmt::format("the centre {}", group.stitches);
  }
  return stitches_at(group.from_needle, group.stitches, shape.width());
}

std::string return_words(const GroupReturn& group, const Crossing& shape) {
  const std::string words = group_words(group, shape);
  if (group.from_needle == group.to_needle) {
    return words + (group.stitches == 1 ? " on its own needle" : " on their own needles");
  }
  return words + " on " + needles_at(group.to_needle, group.stitches, shape.width());
}

std::string tool_words(std::span<const int> prongs) {
  std::vector<std::string> tools;
  for (const int n : prongs) tools.push_back(fmt::format("a {}-prong tool", n));
  return joined(tools, " and ");
}

}  // namespace

int place_of(int needle) {
  return needle > 0 ? needle - 1 : needle;
}

std::string needle_run(int first, int count) {
  if (count == 1) return needle_name(first);
  return needle_name(first) + "-" + needle_name(needle_beside(first, count - 1));
}

std::string needle_ranges(std::span<const int> needles) {
  std::vector<std::string> ranges;
  for (std::size_t i = 0; i < needles.size();) {
    std::size_t end = i + 1;
    while (end < needles.size() && place_of(needles[end]) == place_of(needles[end - 1]) + 1) ++end;
    ranges.push_back(needle_run(needles[i], static_cast<int>(end - i)));
    i = end;
  }
  return joined(ranges);
}

std::string rung_words(std::span<const Cell> rungs) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < rungs.size();) {
    // The unit whose repeats from here reach furthest; of equals the shortest. A unit of one rung is a run.
    std::size_t unit = 1;
    std::size_t reach = 1;
    for (std::size_t length = 1; 2 * length <= rungs.size() - i; ++length) {
      std::size_t end = i + length;
      while (end < rungs.size() && rungs[end] == rungs[end - length]) ++end;
      const std::size_t whole = (end - i) / length * length;
      if (whole >= 2 * length && whole > reach) {
        unit = length;
        reach = whole;
      }
      if (reach == rungs.size() - i) break;  // no other reaches further
    }
    if (unit == 1) {
      words.push_back(run_words(rungs[i], reach));
    } else {
      std::vector<std::string> inner;
      append_runs(inner, rungs.subspan(i, unit));
      words.push_back(fmt::format("{} x ({})", reach / unit, joined(inner)));
    }
    i += reach;
  }
  return joined(words);
}

std::string counter(int row) {
  return fmt::format("RC {:03}", row);
}

const char* carriage(bool right) {
  return right ? "COR" : "COL";
}

int block_needle(const Plan& plan, const Crossing& crossing) {
  return needle_beside(plan.leftmost, plan.columns - crossing.column - crossing.width());
}

CrossingWay way_of(const Plan& plan, const CrossingStep& step) {
  CrossingWay way{.shape = step.crossing, .returns = step.returns, .ease = step.ease};
  way.shape.row = 1;
  way.shape.column = 0;
  const int origin = place_of(block_needle(plan, step.crossing));
  for (GroupReturn& group : way.returns) {
    group.from_needle = place_of(group.from_needle) - origin;
    group.to_needle = place_of(group.to_needle) - origin;
  }
  return way;
}

std::string crossing_title(const Crossing& crossing) {
  return crossing_long_name(crossing) + (crossing.centre > 0 ? " on the RS" : "");
}

std::string way_words(const CrossingWay& way) {
  std::vector<GroupReturn> lifted;
  std::vector<GroupReturn> staying;
  for (const GroupReturn& group : way.returns) (group.prongs.empty() ? staying : lifted).push_back(group);
  std::vector<GroupReturn> by_place = lifted;
  std::stable_sort(by_place.begin(), by_place.end(),
                   [](const GroupReturn& a, const GroupReturn& b) { return a.from_needle < b.from_needle; });
  std::vector<std::string> lifts;
  for (std::size_t i = 0; i < by_place.size(); ++i) {
    const GroupReturn& group = by_place[i];
    const bool same = i > 0 && group.prongs.size() == 1 && group.prongs == by_place[i - 1].prongs;
    lifts.push_back(group_words(group, way.shape) + " on " + (same ? "another" : tool_words(group.prongs)));
  }
  std::vector<std::string> parts;
  parts.push_back("lift " + joined(lifts));
  parts.reserve(staying.size() + 2);
  for (const GroupReturn& group : staying) {
    parts.push_back(group_words(group, way.shape) +
                    (group.stitches == 1 ? " stays where it is" : " stay where they are"));
  }
  std::vector<std::string> back;
  back.reserve(lifted.size());
  for (const GroupReturn& group : lifted) {
    back.push_back(return_words(group, way.shape));
  }
  if (!back.empty()) parts.push_back("put back first " + joined(back, ", then "));
  if (way.ease) parts.emplace_back("bring these needles out to hold, and let the next row knit them back");
  return joined(parts, "; ");
}

std::string missing_tools_words(const CrossingWay& way, std::span<const int> at_hand) {
  std::map<int, int> missing;  // by prongs
  for (const GroupReturn& group : way.returns) {
    for (const int prongs : group.prongs) ++missing[prongs];
  }
  for (const int prongs : at_hand) missing[prongs] -= 2;
  std::vector<std::string> tools;
  for (const auto& [prongs, count] : missing) {
    if (count > 0) tools.push_back(fmt::format("{} of the {}-prong tools", count, prongs));
  }
  return tools.empty() ? std::string() : " Not at hand: " + joined(tools) + ".";
}

}  // namespace latchwork::inline v0::writing
