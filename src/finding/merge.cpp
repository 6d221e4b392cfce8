#include "finding/merge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <tuple>

#include "text/words.hpp"

namespace latchwork::inline v0::seeking {
namespace {

// How many rows on a like finding may start and still be the same matter: a rope crosses, an edge purls or slopes,
// again and again; most textures repeat within four rows.
int reach_up(FindingCode code) {
  switch (code) {
    case FindingCode::no_tool:
    case FindingCode::tight_crossing:
    case FindingCode::short_interval:
    case FindingCode::tuck_at_edge:
    case FindingCode::slip_at_edge:
    case FindingCode::purl_at_edge:
    case FindingCode::column_cut:
    case FindingCode::wale_begins:
    case FindingCode::wale_ends:
      return 1 << 20;
    case FindingCode::off_bed:
    case FindingCode::open_crossing:
    case FindingCode::open_stack:
    case FindingCode::no_held_loop:
    case FindingCode::high_stack:
    case FindingCode::long_float:
    case FindingCode::tucks_side_by_side:
    case FindingCode::out_of_reach:
    case FindingCode::no_edge_stitch:
    case FindingCode::carriage_side:
    case FindingCode::stops_too_near:
    case FindingCode::too_deep:
    case FindingCode::off_rhythm:
    case FindingCode::too_many_kinds:
    case FindingCode::row_closed:
    case FindingCode::few_places:
    case FindingCode::short_measure:
    case FindingCode::odd_one_out:
    case FindingCode::half_measured:
    case FindingCode::no_swatch:
    case FindingCode::borrowed_gauge:
    case FindingCode::mixed_states:
    case FindingCode::unknown_spread:
    case FindingCode::unlike_heights:
    case FindingCode::unlike_widths:
    case FindingCode::crossing_cut:
    case FindingCode::stack_cut:
    case FindingCode::no_stitch:
    case FindingCode::two_pieces:
    case FindingCode::yarn_away:
    case FindingCode::unlike_swatches:
    case FindingCode::narrow_texture:
      break;
  }
  return 4;
}

/// A cell that the cast-on gives no loop and one that is too far down are out of reach for reasons of their own.
bool is_like(const Finding& a, const Finding& b) {
  return a.code == b.code && a.severity == b.severity && (a.code != FindingCode::out_of_reach || a.limit == b.limit);
}

std::size_t root_of(std::vector<std::size_t>& parent, std::size_t i) {
  while (parent[i] != i) i = parent[i] = parent[parent[i]];
  return i;
}

}  // namespace

std::vector<Finding> merged_findings(std::vector<Finding> findings) {
  std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
    return std::tuple(a.code, a.severity, a.place.row, a.place.column) <
           std::tuple(b.code, b.severity, b.place.row, b.place.column);
  });
  // Findings of one kind come by row: per column, the last one seen there is the only one that a new one can touch.
  constexpr std::size_t none = static_cast<std::size_t>(-1);
  int columns = 0;
  for (const Finding& finding : findings) columns = std::max(columns, finding.last_column + 1);
  std::vector<std::size_t> last(static_cast<std::size_t>(columns) + 2, none);  // column c at c + 1
  std::vector<std::size_t> parent(findings.size());
  std::iota(parent.begin(), parent.end(), std::size_t{0});
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const Finding& mine = findings[i];
    const auto begin = static_cast<std::size_t>(mine.place.column);  // the column beside it, at + 1
    const auto end = static_cast<std::size_t>(mine.last_column) + 2;
    for (std::size_t c = begin; c <= end; ++c) {
      if (last[c] == none) continue;
      const Finding& other = findings[last[c]];
      if (!is_like(other, mine)) continue;
      if (mine.place.row - reach_up(mine.code) > other.last_row) continue;
      const std::size_t a = root_of(parent, last[c]);
      const std::size_t b = root_of(parent, i);
      parent[std::max(a, b)] = std::min(a, b);
    }
    for (std::size_t c = begin + 1; c < end; ++c) {
      if (last[c] == none || !is_like(findings[last[c]], mine) || findings[last[c]].last_row <= mine.last_row) {
        last[c] = i;
      }
    }
  }
  std::vector<Finding> merged;
  std::vector<std::size_t> place(findings.size(), none);
  std::vector<int> parts;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const std::size_t root = root_of(parent, i);
    if (place[root] == none) {  // the root is the first of its kind: lowest, then leftmost
      place[root] = merged.size();
      merged.push_back(findings[i]);
      parts.push_back(1);
      continue;
    }
    Finding& whole = merged[place[root]];
    const Finding& part = findings[i];
    ++parts[place[root]];
    whole.place.column = std::min(whole.place.column, part.place.column);
    whole.last_column = std::max(whole.last_column, part.last_column);
    whole.last_row = std::max(whole.last_row, part.last_row);
    const bool less_is_worse = part.code == FindingCode::short_interval;
    const bool worse = less_is_worse ? part.value < whole.value : part.value > whole.value;
    if (!worse) continue;
    whole.value = part.value;
    whole.limit = part.limit;
    whole.suggestion = part.suggestion;  // what helps the worst of them
  }
  for (std::size_t i = 0; i < merged.size(); ++i) {
    if (parts[i] == 1) continue;
    Finding& whole = merged[i];
    whole.message += fmt::format(" ({} such in {}, {})", parts[i], run_of("row", whole.place.row, whole.last_row),
                                 run_of("column", whole.place.column, whole.last_column));
  }
  std::stable_sort(merged.begin(), merged.end(), [](const Finding& a, const Finding& b) {
    return std::tuple(a.place.row, a.place.column) < std::tuple(b.place.row, b.place.column);
  });
  return merged;
}

}  // namespace latchwork::inline v0::seeking
