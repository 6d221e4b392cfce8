#include "finding/bed.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "machine/check.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::seeking {
namespace {

// Columns at whose left edge the panel can be parted without cutting a crossing, 0 and W included.
std::vector<char> seams(const Grid& grid) {
  std::vector<int> change(static_cast<std::size_t>(grid.columns()) + 1, 0);
  for (const Crossing& crossing : grid.crossings()) {
    ++change[static_cast<std::size_t>(crossing.column) + 1];
    const int past = crossing.column + crossing.width();
    --change[static_cast<std::size_t>(past)];
  }
  std::vector<char> free(change.size(), 1);
  int covered = 0;
  for (std::size_t c = 0; c < free.size(); ++c) {
    covered += change[c];
    free[c] = covered == 0 ? 1 : 0;
  }
  return free;
}

// The fewest parts, each cut as near to even parts as the crossings and the parts to come let it be; empty when there
// is no way. A cut may stand no further left than where the parts to come still reach the right edge.
std::vector<int> cuts(const Grid& grid, int widest) {
  const std::vector<char> free = seams(grid);
  const int columns = grid.columns();
  std::vector<int> leftmost = {columns};  // [k]: the leftmost seam from which k parts reach the right edge
  while (leftmost.back() > 0) {
    int seam = std::max(0, leftmost.back() - widest);
    while (free[static_cast<std::size_t>(seam)] == 0) ++seam;
    if (seam == leftmost.back()) return {};  // crossings lock more columns together than a part may have
    leftmost.push_back(seam);
  }
  const int parts = static_cast<int>(leftmost.size()) - 1;
  std::vector<int> at;
  int from = 0;
  for (int k = 1; k < parts; ++k) {
    const int ideal = static_cast<int>(std::int64_t{columns} * k / parts);
    const int low = std::max(from + 1, leftmost[static_cast<std::size_t>(parts - k)]);
    int best = low;
    for (int seam = low; seam <= std::min(from + widest, columns - 1); ++seam) {
      if (free[static_cast<std::size_t>(seam)] == 0) continue;
      if (free[static_cast<std::size_t>(best)] == 0 || std::abs(seam - ideal) < std::abs(best - ideal)) best = seam;
    }
    at.push_back(best);
    from = best;
  }
  return at;
}

constexpr std::size_t most_named = 8;  // cuts that a suggestion names one by one

std::string how_to_split(const Grid& grid, int needles) {
  const int widest = needles - 2;  // a seam takes a stitch of each part it joins
  const std::vector<int> at = widest >= 1 ? cuts(grid, widest) : std::vector<int>{};
  if (at.empty()) return "no split keeps every crossing whole: use a finer bed, or fewer stitches";
  std::vector<std::string> columns;
  for (std::size_t i = 0; i < std::min(at.size(), most_named); ++i) columns.push_back(fmt::to_string(at[i]));
  std::string named = joined(columns);
  if (at.size() > most_named) named += fmt::format(" and {} more", at.size() - most_named);
  return fmt::format(
      "knit it as {} panels, parted at the left of {} {} where no crossing is cut, with a stitch more "
      "at each seam",
      at.size() + 1, at.size() == 1 ? "column" : "columns", named);
}

}  // namespace

std::optional<Finding> off_bed(const Grid& grid, const Machine& machine) {
  const int columns = grid.columns();
  const int first = leftmost_needle(machine, columns);
  const int last = needle_beside(first, columns - 1);
  const int left = needles_left(machine);
  const int right = needles_right(machine);
  if (first >= -left && last <= right) return {};

  Finding finding;
  finding.code = FindingCode::off_bed;
  finding.severity = Severity::error;
  finding.place.row = 1;
  finding.last_row = grid.rows();
  const auto off = [&](int column) {
    const int needle = needle_of(machine, columns, column);
    return needle < -left || needle > right;
  };
  int from = 0;
  while (!off(from)) ++from;
  int to = columns - 1;
  while (!off(to)) --to;
  finding.place.column = from;
  finding.last_column = to;
  if (columns > machine.needles) {
    finding.value = columns;
    finding.limit = machine.needles;
    finding.message =
        fmt::format("the panel takes {}, {} to {}; the bed has {}, L{} to R{}", count_of(columns, "needle"),
                    needle_name(first), needle_name(last), machine.needles, left, right);
    finding.suggestion = how_to_split(grid, machine.needles);
  } else {
    const bool on_left = first < -left;
    finding.value = on_left ? -first : last;
    finding.limit = on_left ? left : right;
    finding.message = fmt::format("the panel stands on {} to {}; the bed ends at {}", needle_name(first),
                                  needle_name(last), needle_name(on_left ? -left : right));
    const int fitting = on_left ? -left : needle_beside(right, 1 - columns);
    finding.suggestion =
        fmt::format("centre it, or let its leftmost needle be {}",
                    on_left ? needle_name(fitting) + " or further right" : needle_name(fitting) + " or further left");
  }
  return finding;
}

}  // namespace latchwork::inline v0::seeking
