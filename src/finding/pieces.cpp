#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "finding/kinds.hpp"
#include "grid/stitches.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::seeking {
namespace {

// A crossing's outer groups have stitches in both rows, so that columns tell what wales would.
bool joined_rows(const Grid& grid, int below, int above) {
  for (int column = 0; column < grid.columns(); ++column) {
    if (grid.at(below, column) != Cell::none && grid.at(above, column) != Cell::none) return true;
  }
  return false;
}

}  // namespace

void find_pieces(const Grid& grid, std::vector<Finding>& found) {
  int below = 0;  // the last row with a stitch
  for (int row = 1; row <= grid.rows(); ++row) {
    const std::optional<OuterStitches> outer = outer_stitches(grid, row);
    if (!outer) continue;
    if (below > 0 && (row - below > 1 || !joined_rows(grid, below, row))) {
      Finding finding = found_at(FindingCode::two_pieces, Severity::error, row, outer->first);
      finding.last_column = outer->last;
      finding.value = 0;
      finding.limit = 1;
      finding.message = row - below > 1
                            ? fmt::format("{} without a stitch between rows {} and {}: they are two pieces",
                                          count_of(row - below - 1, "row"), below, row)
                            : fmt::format("rows {} and {} have no column in common: they are two pieces", below, row);
      finding.suggestion = "let 1 wale or more run on from below, or make a panel of each piece";
      found.push_back(std::move(finding));
    }
    below = row;
  }
}

}  // namespace latchwork::inline v0::seeking
