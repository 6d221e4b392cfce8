#pragma once

#include <vector>

#include "latchwork/finding.hpp"
#include "latchwork/wale.hpp"

// One file a subject: each adds what it finds, a finding a place, unmerged.

namespace latchwork::inline v0::seeking {

/// A finding at one place, its extent not yet grown.
Finding found_at(FindingCode code, Severity severity, int row, int column);

/// no_tool, tight_crossing, short_interval, open_crossing.
void find_in_crossings(const Grid& grid, const Wales& wales, const Machine& machine, std::vector<Finding>& found);

/// high_stack, open_stack, no_held_loop, out_of_reach, wale_begins, wale_ends.
void find_in_wales(const Grid& grid, const Wales& wales, const Machine& machine, std::vector<Finding>& found);

/// two_pieces: neighbouring rows, or rows with none but bare strands between, that no wale joins.
void find_pieces(const Grid& grid, std::vector<Finding>& found);

/// yarn_away: edges that change by two stitches or more where the carriage is at the other edge.
void find_yarn_away(const Grid& grid, const Machine& machine, std::vector<Finding>& found);

/// tuck_at_edge, slip_at_edge, purl_at_edge, no_edge_stitch.
void find_at_edges(const Grid& grid, std::vector<Finding>& found);

/// long_float, tucks_side_by_side: like cells side by side in a row.
void find_in_runs(const Grid& grid, const Machine& machine, std::vector<Finding>& found);

}  // namespace latchwork::inline v0::seeking
