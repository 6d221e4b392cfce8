#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <optional>

#include "finding/kinds.hpp"
#include "grid/stitches.hpp"

namespace latchwork::inline v0::seeking {
namespace {

/// What leaves (below 0: joins) at one edge after a row.
struct Group {
  int row = 1;
  int stitches = 0;
  int column = 0;  ///< leftmost
  bool left = true;
};

void find_group(const Group& group, std::vector<Finding>& found) {
  const int count = std::abs(group.stitches);
  Finding finding = found_at(FindingCode::yarn_away, Severity::warning, group.row, group.column);
  finding.last_column = group.column + count - 1;
  finding.value = count;
  finding.limit = 1;
  const bool off = group.stitches > 0;
  finding.message = fmt::format(
      "{} stitches are {} at the {} edge, the operator's {}, after row {}: the carriage and its yarn are at the other",
      count, off ? "bound off" : "cast on", group.left ? "left" : "right", group.left ? "right" : "left", group.row);
  finding.suggestion = fmt::format("{} a row later or earlier, or with a length of yarn of their own",
                                   off ? "bind them off" : "cast them on");
  found.push_back(std::move(finding));
}

}  // namespace

void find_yarn_away(const Grid& grid, const Machine& machine, std::vector<Finding>& found) {
  for (int row = 1; row < grid.rows(); ++row) {
    const std::optional<OuterStitches> below = outer_stitches(grid, row);
    const std::optional<OuterStitches> above = outer_stitches(grid, row + 1);
    if (!below || !above || std::max(below->first, above->first) > std::min(below->last, above->last)) continue;
    // The operator's right is the left of the right side.
    const bool yarn_at_left = machine.carriage_starts_right == (row % 2 == 0);
    Group group{row, above->first - below->first, std::min(below->first, above->first), true};
    if (yarn_at_left) group = {row, below->last - above->last, std::min(below->last, above->last) + 1, false};
    if (std::abs(group.stitches) > 1) find_group(group, found);
  }
}

}  // namespace latchwork::inline v0::seeking
