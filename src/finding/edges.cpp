#include <fmt/format.h>

#include "finding/kinds.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::seeking {
namespace {

// Whether a stitch is the outermost, or stands beside a ladder: no rung on one side.
struct Edge {
  bool outer = false;
  bool ladder = false;
};

Edge edge_at(const Grid& grid, int row, int column) {
  Edge edge;
  for (const int beside : {column - 1, column + 1}) {
    if (beside < 0 || beside >= grid.columns()) {
      edge.outer = true;
      continue;
    }
    if (grid.at(row, beside) != Cell::none) continue;
    // Bare to the very edge is outside a shaped panel; else it is a ladder.
    const int step = beside < column ? -1 : 1;
    int next = beside;
    while (next >= 0 && next < grid.columns() && grid.at(row, next) == Cell::none) next += step;
    (next < 0 || next >= grid.columns() ? edge.outer : edge.ladder) = true;
  }
  return edge;
}

void find_at_edge(const Grid& grid, int row, int column, std::vector<Finding>& found) {
  const Cell cell = grid.at(row, column);
  const Edge edge = edge_at(grid, row, column);
  if (!edge.outer && !edge.ladder) return;
  const char* where = edge.outer ? "at the edge" : "beside a ladder";
  const char* help = edge.outer ? "add a knit stitch at the edge" : "keep a knit stitch beside the ladder";
  const bool purl = cell == Cell::purl;
  Finding finding = found_at(purl                 ? FindingCode::purl_at_edge
                             : cell == Cell::tuck ? FindingCode::tuck_at_edge
                                                  : FindingCode::slip_at_edge,
                             purl ? Severity::warning : Severity::error, row, column);
  finding.value = 1;
  if (purl) {
    finding.message = fmt::format("the purl in row {}, column {} is {}: re-formed, two rows come as one long loop", row,
                                  column, where);
    finding.suggestion = fmt::format("{}, or even the loop out after re-forming", help);
  } else {
    finding.message = fmt::format("the {} in row {}, column {} is {}: no rung on one side holds it",
                                  cell == Cell::tuck ? "tuck" : "slip", row, column, where);
    finding.suggestion = help;
  }
  found.push_back(std::move(finding));
}

void find_edge_stitch(const Grid& grid, int column, std::vector<Finding>& found) {
  Finding finding = found_at(FindingCode::no_edge_stitch, Severity::advice, 0, column);
  for (int row = 1; row <= grid.rows(); ++row) {
    const Cell cell = grid.at(row, column);
    if (cell == Cell::knit || cell == Cell::none) continue;
    if (finding.place.row == 0) finding.place.row = row;
    finding.last_row = row;
    ++finding.value;
  }
  if (finding.value == 0) return;
  finding.message = fmt::format("column {} is an edge and {} of its stitches, {}, {} not knit", column, finding.value,
                                run_of("row", finding.place.row, finding.last_row), finding.value == 1 ? "is" : "are");
  finding.suggestion = "add one knit stitch at this edge: it seams well and holds the row ends";
  found.push_back(std::move(finding));
}

}  // namespace

void find_at_edges(const Grid& grid, std::vector<Finding>& found) {
  for (int row = 1; row <= grid.rows(); ++row) {
    for (int column = 0; column < grid.columns(); ++column) {
      const Cell cell = grid.at(row, column);
      if (cell != Cell::knit && cell != Cell::none) find_at_edge(grid, row, column, found);
    }
  }
  find_edge_stitch(grid, 0, found);
  if (grid.columns() > 1) find_edge_stitch(grid, grid.columns() - 1, found);
}

}  // namespace latchwork::inline v0::seeking
