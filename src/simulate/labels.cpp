#include "labels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <numeric>
#include <vector>

#include "grid/lifting.hpp"
#include "grid/words.hpp"
#include "latchwork/machine.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::labels {
namespace {

/// The operator's leftmost needle of some stitches from a column on; 0 where that is none of the panel's.
int leftmost_needle(const Plan& plan, std::int64_t column, std::int64_t stitches) {
  const std::int64_t steps = plan.columns - column - stitches;
  return steps >= 0 && steps < plan.columns ? needle_beside(plan.leftmost, static_cast<int>(steps)) : 0;
}

}  // namespace

std::string needle_words(int needle) {
  return needle == 0 ? std::string("0") : needle_name(needle);
}

std::string_view group_name(GroupName group) {
  switch (group) {
    case GroupName::left:
      return "left";
    case GroupName::centre:
      return "centre";
    case GroupName::right:
      return "right";
  }
  return "unknown";
}

bool carriage_right_at(const Plan& plan, int row) {
  return plan.carriage_starts_right == (row % 2 == 0);
}

bool stands_on(const Plan& plan, int column, int needle) {
  return needle != 0 && column >= 0 && column < plan.columns && leftmost_needle(plan, column, 1) == needle;
}

std::optional<Mislabel> mislabelled_group(const Plan& plan, const Crossing& crossing, const GroupReturn& group) {
  const std::int64_t left = crossing.left;
  const std::int64_t centre = crossing.centre;
  const std::int64_t right = crossing.right;
  std::int64_t from = crossing.column;
  std::int64_t to = from + centre + right;
  std::int64_t stitches = left;
  if (group.group == GroupName::centre) {
    from = crossing.column + left;
    to = crossing.column + right;
    stitches = centre;
  } else if (group.group == GroupName::right) {
    from = crossing.column + left + centre;
    to = crossing.column;
    stitches = right;
  }
  const std::string whose = fmt::format("the {} group of a {}", group_name(group.group), crossing_name(crossing));
  if (stitches < 1 || group.stitches != stitches) {
    return Mislabel{"stitches", fmt::format("{} has {}, not {}", whose, count_of(stitches, "stitch", "es"),
                                            count_of(group.stitches, "stitch", "es"))};
  }
  const int lifted = leftmost_needle(plan, from, stitches);
  if (lifted == 0 || lifted != group.from_needle) {
    return Mislabel{"from_needle", fmt::format("{} begins on needle {}, not {}", whose, needle_words(lifted),
                                               needle_words(group.from_needle))};
  }
  const int back = leftmost_needle(plan, to, stitches);
  if (back == 0 || back != group.to_needle) {
    return Mislabel{"to_needle", fmt::format("{} is put back from needle {} on, not {}", whose, needle_words(back),
                                             needle_words(group.to_needle))};
  }
  return {};
}

std::optional<Mislabel> mislabelled_returns(const Grid& grid, const CrossingStep& step) {
  const Crossing& crossing = step.crossing;
  const bool left_leads = crossing.lean == Lean::right;
  std::vector<GroupName> order = {left_leads ? GroupName::left : GroupName::right,
                                  left_leads ? GroupName::right : GroupName::left};
  if (crossing.centre > 0 && crossing.place <= Centre::behind) {
    order.insert(order.begin() + static_cast<int>(crossing.place), GroupName::centre);
  }
  const auto wrong = [&](std::string_view does, GroupName group, std::string_view what) {
    return Mislabel{"returns",
                    fmt::format("a {} {} its {} group back{}", crossing_name(crossing), does, group_name(group), what),
                    crossing.column};
  };
  for (const GroupName group : order) {
    const auto times = std::ranges::count(step.returns, group, &GroupReturn::group);
    if (times > 1) return wrong("puts", group, fmt::format(" once, not {} times", times));
  }
  auto next = order.begin();
  for (const GroupReturn& group : step.returns) {
    next = std::find(next, order.end(), group.group);
    if (next == order.end()) {
      return wrong("does not put", group.group, " there; what is put back first shows in front");
    }
    ++next;
  }
  for (const GroupName group : order) {
    if (std::ranges::find(step.returns, group, &GroupReturn::group) != step.returns.end()) continue;
    if (group == GroupName::centre && lifting::bare_centre(grid, crossing)) continue;
    return wrong("puts", group, ", and the plan does not");
  }
  return {};
}

std::optional<Mislabel> miscast(const Grid& grid, const Plan& plan) {
  std::vector<bool> cast_on(static_cast<std::size_t>(grid.columns()), false);
  for (std::size_t i = 0; i < plan.columns_on.size(); ++i) {
    const int column = plan.columns_on[i];
    const auto wrong = [&](std::string_view why) {
      return Mislabel{fmt::format("columns_on[{}]", i), fmt::format("the plan casts on column {}; {}", column, why),
                      column >= 0 && column < grid.columns() ? column : -1};
    };
    if (column < 0 || column >= grid.columns()) {
      return wrong(fmt::format("the panel has columns 0 to {}", grid.columns() - 1));
    }
    if (cast_on[static_cast<std::size_t>(column)]) return wrong("it does so twice");
    if (grid.at(1, column) == Cell::none) return wrong("the chart has no stitch there in row 1");
    cast_on[static_cast<std::size_t>(column)] = true;
  }
  for (int column = 0; column < grid.columns(); ++column) {
    if (cast_on[static_cast<std::size_t>(column)] || grid.at(1, column) == Cell::none) continue;
    return Mislabel{"columns_on",
                    fmt::format("the plan does not cast on column {}, where the chart has a stitch in row 1", column),
                    column};
  }
  return {};
}

std::optional<Mislabel> mislabelled_tools(const GroupReturn& group) {
  for (std::size_t i = 0; i < group.prongs.size(); ++i) {
    if (group.prongs[i] >= 1 && group.prongs[i] <= 20) continue;
    return Mislabel{fmt::format("prongs[{}]", i),
                    fmt::format("{} cannot be lifted on a tool of {}; a tool has 1 to 20",
                                count_of(group.stitches, "stitch", "es"), count_of(group.prongs[i], "prong"))};
  }
  const auto sum = std::accumulate(group.prongs.begin(), group.prongs.end(), std::int64_t{0});
  if (group.prongs.empty() || sum >= group.stitches) return {};
  return Mislabel{"prongs", fmt::format("{} cannot be lifted on tools of {} in all",
                                        count_of(group.stitches, "stitch", "es"), count_of(sum, "prong"))};
}

void InHold::pass(const Stop& stop) {
  for (const int needle : stop.releases) needles_.erase(needle);
  for (const Shaping& shaping : stop.shapings) {
    if (!shaping.on) needles_.erase(shaping.needle);  // bound off
  }
  needles_.insert(stop.holds.begin(), stop.holds.end());
}

std::optional<Mislabel> InHold::eased_in_vain(const Stop& stop) const {
  if (needles_.empty()) return std::nullopt;
  for (std::size_t i = 0; i < stop.crossings.size(); ++i) {
    const CrossingStep& step = stop.crossings[i];
    if (!step.ease) continue;
    return Mislabel{fmt::format("crossings[{}].ease", i),
                    fmt::format("the next row is to knit the needles of the {} at column {} back from hold, and the "
                                "carriage is set to hold for needle {}",
                                crossing_name(step.crossing), step.crossing.column, needle_words(*needles_.begin())),
                    step.crossing.column};
  }
  return std::nullopt;
}

}  // namespace latchwork::inline v0::labels
