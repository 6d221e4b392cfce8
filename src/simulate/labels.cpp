#include "labels.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <numeric>

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

}  // namespace latchwork::inline v0::labels
