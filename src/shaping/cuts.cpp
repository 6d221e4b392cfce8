#include "shaping/cuts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "finding/kinds.hpp"
#include "finding/merge.hpp"
#include "grid/rules.hpp"
#include "shaping/check.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace shaping {
namespace {

const RowSpan& span_of(const Outline& outline, int row) {
  return outline.rows[static_cast<std::size_t>(row) - 1];
}

/// Columns of [first, last] that are outside in that row.
int outside(const RowSpan& span, int first, int last) {
  const int inside = std::min(span.last, last) - std::max(span.first, first) + 1;
  return last - first + 1 - std::max(inside, 0);
}

}  // namespace

bool in_work(const Outline& outline, int row, int column) {
  const RowSpan& span = span_of(outline, row);
  return column >= span.first && column <= span.last;
}

bool in_edge(const Outline& outline, int row, int column, int edge) {
  const RowSpan& span = span_of(outline, row);
  return in_work(outline, row, column) && (column < span.first + edge || column > span.last - edge);
}

bool is_cut_on_seam(const CutCrossing& cut) {
  return cut.row < cut.crossing.row;
}

std::vector<CutCrossing> cut_crossings(const Grid& grid, const Outline& outline) {
  std::vector<CutCrossing> cuts;
  for (const Crossing& crossing : grid.crossings()) {
    const int last = crossing.column + crossing.width() - 1;
    const auto outside_in = [&](int row) { return outside(span_of(outline, row), crossing.column, last); };
    const int below = outside_in(crossing.row);
    if (crossing.row == grid.rows()) {
      const int seam = outside_in(1);
      if (below > 0) {
        cuts.push_back({crossing, below, crossing.row, below == crossing.width()});
      } else if (seam > 0) {
        cuts.push_back({crossing, seam, 1, false});
      }
      continue;
    }
    const int above = outside_in(crossing.row + 1);
    if (below + above == 0) continue;
    cuts.push_back({crossing, std::max(below, above), above > below ? crossing.row + 1 : crossing.row,
                    std::min(below, above) == crossing.width()});
  }
  return cuts;
}

std::vector<CutStack> cut_stacks(const Grid& grid, const Outline& outline) {
  std::vector<CutStack> cuts;
  for (int column = 0; column < grid.columns(); ++column) {
    for (int low = 1; low <= grid.rows();) {
      int high = low;
      while (high <= grid.rows() && rules::in_stack(grid.at(high, column))) ++high;  // the closing cell
      if (high > low) {
        int inside = 0;
        for (int row = low; row < high; ++row) inside += in_work(outline, row, column) ? 1 : 0;
        const bool held = low == 1 || in_work(outline, low - 1, column);
        const bool closed = high > grid.rows() || in_work(outline, high, column);
        if (inside > 0 && !(inside == high - low && held && closed)) cuts.push_back({low, high - 1, column});
      }
      low = high + 1;
    }
  }
  std::sort(cuts.begin(), cuts.end(), [](const CutStack& a, const CutStack& b) {
    return std::pair(a.row, a.column) < std::pair(b.row, b.column);
  });
  return cuts;
}

}  // namespace shaping

namespace {

using namespace shaping;

/// By how many rows a crossing would have to move to lie wholly inside: the fewest, up before down; none where nothing
/// does.
std::optional<int> rows_to_shift(const Grid& grid, const Outline& outline, const Crossing& crossing) {
  const int last = crossing.column + crossing.width() - 1;
  const auto whole = [&](int row) {
    return row >= 1 && row < grid.rows() && outside(span_of(outline, row), crossing.column, last) == 0 &&
           outside(span_of(outline, row + 1), crossing.column, last) == 0;
  };
  for (int shift = 1; shift < grid.rows() && shift <= 100; ++shift) {
    if (whole(crossing.row + shift)) return shift;
    if (whole(crossing.row - shift)) return -shift;
  }
  return std::nullopt;
}

Finding crossing_finding(const Grid& grid, const Outline& outline, const CutCrossing& cut) {
  const Crossing& crossing = cut.crossing;
  const int last = crossing.column + crossing.width() - 1;
  Finding finding = seeking::found_at(FindingCode::crossing_cut, Severity::error, crossing.row, crossing.column);
  finding.last_column = last;
  finding.value = cut.columns;
  finding.limit = crossing.width();
  const std::string which = fmt::format("{} after row {}, {}", crossing_name(crossing), crossing.row,
                                        run_of("column", crossing.column, last));
  std::vector<std::string> ways;
  if (is_cut_on_seam(cut)) {
    finding.message = fmt::format(
        "the {}, the panel's last, is kept only where row 1 has its stitches too, and {} of its {} are "
        "outside there",
        which, cut.columns, crossing.width());
    ways.push_back(fmt::format("move the edge out by {} in row 1", count_of(cut.columns, "column")));
  } else {
    finding.message = fmt::format("the edge cuts the {}: {} of its {} stitches {} outside in row {}", which,
                                  cut.columns, crossing.width(), cut.columns == 1 ? "is" : "are", cut.row);
    ways.push_back(fmt::format("move the edge out by {}", count_of(cut.columns, "column")));
    if (const int in = crossing.width() - cut.columns; in > 0) {
      ways.push_back(fmt::format("move it in by {}, so that the crossing falls away", count_of(in, "column")));
    }
  }
  if (const auto shift = rows_to_shift(grid, outline, crossing)) {
    ways.push_back(
        fmt::format("make the crossing {} {}", count_of(std::abs(*shift), "row"), *shift > 0 ? "later" : "earlier"));
  }
  ways.emplace_back("leave it out and knit its stitches plain");
  finding.suggestion = joined(ways, "; or ");
  return finding;
}

Finding stack_finding(const Outline& outline, const CutStack& cut) {
  Finding finding = seeking::found_at(FindingCode::stack_cut, Severity::error, cut.row, cut.column);
  finding.last_row = cut.last_row;
  finding.value = cut.last_row - cut.row + 1;
  finding.message = fmt::format(
      "the edge cuts the tucks or slips of column {}, {}, off from the loop they hold or from what closes them",
      cut.column, run_of("row", cut.row, cut.last_row));
  // How far the column is outside at most, in the stack's rows and the two beside them.
  int columns = 1;
  const int top = std::min(cut.last_row + 1, static_cast<int>(outline.rows.size()));
  for (int row = std::max(cut.row - 1, 1); row <= top; ++row) {
    const RowSpan& span = outline.rows[static_cast<std::size_t>(row) - 1];
    columns = std::max({columns, span.first - cut.column, cut.column - span.last});
  }
  finding.suggestion = fmt::format("move the edge out by {}; or knit the stack plain", count_of(columns, "column"));
  return finding;
}

void find_columns(const Grid& grid, const Outline& outline, int edge, std::vector<Finding>& found) {
  for (int row = 1; row <= grid.rows() && edge > 0; ++row) {
    const RowSpan& span = span_of(outline, row);
    for (int column = span.first; column <= span.last; ++column) {
      if (!in_edge(outline, row, column, edge)) {
        column = std::max(column, span.last - edge);
        continue;
      }
      const Cell cell = grid.at(row, column);
      if (cell == Cell::knit || cell == Cell::none) continue;
      Finding finding = seeking::found_at(FindingCode::column_cut, Severity::advice, row, column);
      finding.value = edge;
      finding.message = fmt::format(
          "hand work at row {}, column {} comes to lie in the edge stitches and is knitted plain", row, column);
      finding.suggestion = "move the edge, or the column, where the texture is to go on to the edge";
      found.push_back(std::move(finding));
    }
  }
}

/// Crossings that are kept, and reach into the edge stitches.
void find_crossed_edges(const Grid& grid, const Outline& outline, int edge, std::vector<Finding>& found) {
  if (edge == 0) return;
  const std::vector<CutCrossing> cuts = cut_crossings(grid, outline);
  auto next = cuts.begin();
  for (const Crossing& crossing : grid.crossings()) {
    if (next != cuts.end() && next->crossing == crossing) {
      ++next;
      continue;
    }
    const int last = crossing.column + crossing.width() - 1;
    const int above = std::min(crossing.row + 1, grid.rows());
    const bool reaches = in_edge(outline, crossing.row, crossing.column, edge) ||
                         in_edge(outline, crossing.row, last, edge) || in_edge(outline, above, crossing.column, edge) ||
                         in_edge(outline, above, last, edge);
    if (!reaches) continue;
    Finding finding = seeking::found_at(FindingCode::column_cut, Severity::advice, crossing.row, crossing.column);
    finding.last_column = last;
    finding.value = edge;
    finding.message = fmt::format("the {} after row {}, {}, reaches into the edge stitches, which are crossed there",
                                  crossing_name(crossing), crossing.row, run_of("column", crossing.column, last));
    finding.suggestion = "move the edge out, or take fewer edge stitches";
    found.push_back(std::move(finding));
  }
}

}  // namespace

std::vector<Finding> shape_findings(const Grid& grid, const Outline& outline, const ShapeOptions& options) {
  check(grid, outline, options);
  std::vector<Finding> columns;
  find_columns(grid, outline, options.edge_stitches, columns);
  columns = seeking::merged_findings(std::move(columns));
  find_crossed_edges(grid, outline, options.edge_stitches, columns);
  std::vector<Finding> found;
  for (const CutCrossing& cut : cut_crossings(grid, outline)) {
    if (!cut.outside) found.push_back(crossing_finding(grid, outline, cut));
  }
  for (const CutStack& cut : cut_stacks(grid, outline)) found.push_back(stack_finding(outline, cut));
  std::stable_sort(found.begin(), found.end(), [](const Finding& a, const Finding& b) {
    return std::pair(a.place.row, a.place.column) < std::pair(b.place.row, b.place.column);
  });
  found.insert(found.end(), std::make_move_iterator(columns.begin()), std::make_move_iterator(columns.end()));
  return found;
}

}  // namespace latchwork::inline v0
