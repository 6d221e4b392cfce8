#include "latchwork/finding.hpp"

#include <algorithm>
#include <tuple>

#include "finding/bed.hpp"
#include "finding/kinds.hpp"
#include "finding/merge.hpp"
#include "machine/check.hpp"

namespace latchwork::inline v0 {

std::string_view finding_name(FindingCode code) noexcept {
  switch (code) {
    case FindingCode::off_bed:
      return "off_bed";
    case FindingCode::no_tool:
      return "no_tool";
    case FindingCode::tight_crossing:
      return "tight_crossing";
    case FindingCode::short_interval:
      return "short_interval";
    case FindingCode::open_crossing:
      return "open_crossing";
    case FindingCode::open_stack:
      return "open_stack";
    case FindingCode::no_held_loop:
      return "no_held_loop";
    case FindingCode::high_stack:
      return "high_stack";
    case FindingCode::tuck_at_edge:
      return "tuck_at_edge";
    case FindingCode::slip_at_edge:
      return "slip_at_edge";
    case FindingCode::purl_at_edge:
      return "purl_at_edge";
    case FindingCode::long_float:
      return "long_float";
    case FindingCode::tucks_side_by_side:
      return "tucks_side_by_side";
    case FindingCode::wale_begins:
      return "wale_begins";
    case FindingCode::wale_ends:
      return "wale_ends";
    case FindingCode::out_of_reach:
      return "out_of_reach";
    case FindingCode::no_edge_stitch:
      return "no_edge_stitch";
    case FindingCode::carriage_side:
      return "carriage_side";
    case FindingCode::stops_too_near:
      return "stops_too_near";
    case FindingCode::too_deep:
      return "too_deep";
    case FindingCode::off_rhythm:
      return "off_rhythm";
    case FindingCode::too_many_kinds:
      return "too_many_kinds";
    case FindingCode::row_closed:
      return "row_closed";
    case FindingCode::few_places:
      return "few_places";
    case FindingCode::short_measure:
      return "short_measure";
    case FindingCode::odd_one_out:
      return "odd_one_out";
    case FindingCode::half_measured:
      return "half_measured";
    case FindingCode::no_swatch:
      return "no_swatch";
    case FindingCode::borrowed_gauge:
      return "borrowed_gauge";
    case FindingCode::mixed_states:
      return "mixed_states";
    case FindingCode::unknown_spread:
      return "unknown_spread";
    case FindingCode::unlike_heights:
      return "unlike_heights";
    case FindingCode::unlike_widths:
      return "unlike_widths";
    case FindingCode::crossing_cut:
      return "crossing_cut";
    case FindingCode::stack_cut:
      return "stack_cut";
    case FindingCode::column_cut:
      return "column_cut";
    case FindingCode::no_stitch:
      return "no_stitch";
    case FindingCode::two_pieces:
      return "two_pieces";
    case FindingCode::yarn_away:
      return "yarn_away";
    case FindingCode::unlike_swatches:
      return "unlike_swatches";
    case FindingCode::narrow_texture:
      return "narrow_texture";
  }
  return {};
}

Finding seeking::found_at(FindingCode code, Severity severity, int row, int column) {
  Finding finding;
  finding.code = code;
  finding.severity = severity;
  finding.place.row = finding.last_row = row;
  finding.place.column = finding.last_column = column;
  return finding;
}

std::vector<Finding> findings(const Grid& grid, const Machine& machine) {
  using namespace seeking;
  check(machine);
  const Wales wales(grid);
  std::vector<Finding> found;
  if (auto off = off_bed(grid, machine)) found.push_back(std::move(*off));
  if (wales.all().empty()) {
    Finding bare = found_at(FindingCode::no_stitch, Severity::error, 1, 0);
    bare.last_row = grid.rows();
    bare.last_column = grid.columns() - 1;
    bare.message = "no cell of the panel has a stitch: there is nothing to knit";
    bare.suggestion = "give at least one wale its stitches";
    found.push_back(std::move(bare));
  }
  find_in_crossings(grid, wales, machine, found);
  find_in_wales(grid, wales, machine, found);
  find_at_edges(grid, found);
  find_in_runs(grid, machine, found);
  found = merged_findings(std::move(found));
  find_pieces(grid, found);  // unmerged, as the next: each is a place of its own
  find_yarn_away(grid, machine, found);
  std::stable_sort(found.begin(), found.end(), [](const Finding& a, const Finding& b) {
    return std::tuple(b.severity, a.place.row, a.place.column, a.code) <
           std::tuple(a.severity, b.place.row, b.place.column, b.code);
  });
  return found;
}

}  // namespace latchwork::inline v0
