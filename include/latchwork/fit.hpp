#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "latchwork/export.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/strip.hpp"

namespace latchwork::inline v0 {

/// Strips that stand beside each other, all together so many times: a motif with its ground, or what closes a panel
/// (1 to 1 times) so that its other side balances.
struct FitGroup {
  std::vector<Strip> strips;  ///< from the left on the RS, one or more; Grid::max_side columns at most, together
  int least = 1;              ///< times, 0..Grid::max_side
  int most = 1;               ///< least..Grid::max_side
  /// Index of an earlier group that this one stands as often as, so that the halves of a symmetric design grow alike;
  /// its own `least` and `most` are then not what counts, but those of that group (of the first, where that one is tied
  /// itself). -1: as often as it likes.
  int as_group = -1;
  friend bool operator==(const FitGroup&, const FitGroup&) = default;
};

/// What an article shall measure, and what may vary. It is made of panels sewn side by side, all alike in their counts.
/// A panel is, from the left on the RS: edge columns, each group so many times in order, the same number of edge
/// columns. Panels right of the middle are mirrored, so that the halves mirror each other; a panel in the middle stands
/// as it is. Each panel is whole, so a seam cuts no motif and no crossing. Rows are rows_extra + m * rows_step, m from
/// 0.
///
/// The measure is that of size() with the same state, substitutes and seams: those at left and right are the article's
/// two sides, and each seam between two panels takes in `seam_stitches` of either edge.
struct FitRequest {
  static constexpr int max_groups = 8;
  static constexpr int max_panels = 100;
  static constexpr int max_candidates = 10'000;

  double width_mm = 0;        ///< between the seams: the target, or the least of a range; 1..1000000
  double width_most_mm = 0;   ///< the greatest of the range, width_mm..1000000; 0: width_mm, a value
  double height_mm = 0;       ///< likewise
  double height_most_mm = 0;  ///< likewise
  /// Candidates further off than this, in either direction, are none; 0..100. Without it nothing is ever too far off:
  /// the best of what the other bounds allow is a candidate, be it a third of the width that was asked for.
  std::optional<double> tolerance_percent{};
  std::vector<FitGroup> groups;           ///< from the left on the RS, 1..max_groups
  std::optional<Strip> edge{};            ///< one column wide; without it edge_least and edge_most count as 0
  int edge_least = 1, edge_most = 1;      ///< columns of it at each side of each panel, 0..Grid::max_side
  int panels_least = 1, panels_most = 1;  ///< 1..max_panels
  double seam_stitches = 1;  ///< of each edge, that a seam between panels takes in: 0, 0.5 or 1; edge columns only
  int rows_step = 1;         ///< the vertical repeat, 1..Grid::max_side
  int rows_extra = 0;        ///< rows beyond whole repeats, so that both ends balance; 0..Grid::max_side
  bool vary_start = false;   ///< look for the row of the vertical repeat to begin with; see FitCandidate::start_row
  int needles = 0;           ///< bed: panels of more columns are left out; 0: no limit
  int most = 10;             ///< candidates returned, 1..max_candidates
  std::optional<ClothState> state{};      ///< of all gauges, as of SizeOptions
  std::vector<Substitute> substitutes{};  ///< as of SizeOptions
  double seam_left = 0, seam_right = 0;  ///< stitches that seams at the article's sides take in: 0..1000, whole or half
  double seam_bottom = 0, seam_top = 0;  ///< rows, likewise
  friend bool operator==(const FitRequest&, const FitRequest&) = default;
};

/// One way to meet the target. An error is the signed distance to the nearer end of the range, 0 inside, in mm and in
/// percent of that end. The measures are what the swatch's means come to. How sure they are, and strips whose heights
/// differ, size() tells of the panel: `size(fitted(request, candidate), swatch, options)` with the request's state,
/// substitutes and seams (`seam_stitches` where another panel is sewn to it).
struct FitCandidate {
  int panels = 1;
  std::vector<int> times;  ///< of each group, in order
  int edge_columns = 0;    ///< at each side of each panel
  int columns = 0;         ///< of one panel
  int rows = 0;
  /// The row of each strip's own vertical repeat that row 1 is made as: 1 without `vary_start`, else the one whose ends
  /// balance best, of all up to where all strips stand as they do from row 1 (Grid::max_side at most). First come
  /// starts whose ends are not open, then those of the least imbalance, then the lowest.
  int start_row = 1;
  /// Summed over the strips of a panel: how far the rows below a strip's first crossing differ from those above its
  /// last. In a strip that has no crossings its first and last row with a cell that is not knit count instead, rows
  /// below the one and above the other; a strip of knit cells only counts nothing. All rows count where what is looked
  /// for falls outside them.
  std::int64_t imbalance_rows = 0;
  /// A tuck or slip in the last row, which nothing closes, or a crossing after it. One in row 1 is held with the
  /// cast-on's loop, so that the first row is never open.
  bool open_ends = false;
  double width_mm = 0;   ///< of the outer left panel, plus (panels - 2) times an inner one's, plus the outer right's
  double height_mm = 0;  ///< the width-weighted mean of the same
  double width_error_mm = 0;
  double height_error_mm = 0;
  double width_error_percent = 0;
  double height_error_percent = 0;
  double error = 0;  ///< the rank: root of the sum of the squared relative errors, rounded to 1e-12 so that ties tie
  friend bool operator==(const FitCandidate&, const FitCandidate&) = default;
};

/// What a request holds to, and what would have to give. The values are in the C ABI.
enum class FitBound : std::uint8_t {
  width = 0,         ///< tolerance_percent of the width
  height = 1,        ///< tolerance_percent of the height
  times = 2,         ///< least and most of a group
  edge_columns = 3,  ///< edge_least, edge_most
  rows = 4,          ///< rows_step, rows_extra
  panels = 5,        ///< panels_least, panels_most
  needles = 6
};

/// One bound that a candidate does not keep.
struct FitGive {
  FitBound bound = FitBound::width;
  int group = -1;    ///< index, where the bound is a group's (the first of tied ones); else -1
  double value = 0;  ///< the candidate's: mm off the range (signed), or a count
  double limit = 0;  ///< the nearest that is allowed, likewise
  /// "21 repeats of group 1; at most 20 are allowed"; where groups are tied, "21 repeats of groups 1 and 3; ...".
  std::string words;
  friend bool operator==(const FitGive&, const FitGive&) = default;
};

/// A candidate that would do if some bounds gave.
struct FitNearest {
  FitCandidate candidate;
  std::vector<FitGive> gives;  ///< in the order of FitBound, groups in theirs
  friend bool operator==(const FitNearest&, const FitNearest&) = default;
};

/// What fit() finds.
struct FitResult {
  std::vector<FitCandidate> candidates;  ///< ranked; empty when nothing fits
  /// Only when nothing fits: three, or all. One bound is loosened, or more together, and of all that is then allowed
  /// the candidate taken for which the bound that must give most gives least. The tolerance of the width, that of the
  /// height, each free group's times, edge columns, rows, panels and needles are bounds. How far one gives is in
  /// proportion to what is allowed: a count by |value - limit| / limit (a limit of 0 taken as 1), width and height by
  /// what is beyond the tolerance, as a share of the tolerance (one below 1 % taken as 1 %; without one, all that they
  /// are off, though it is no bound then), rows that are no whole repeats by 1; rounded up to a millionth. Of more
  /// bounds, each is taken to give as far as the one that gives most. At most: 1000 % each; 1 (0 where it was allowed)
  /// to Grid::max_side; 0 to Grid::max_side; any number; 1 to max_panels; no limit. Of candidates for which it is the
  /// same the first in the ranking is taken. Each bound is tried alone and with each other one; where these come to
  /// fewer than three, three together, and so on up. Bounds are left out where some of them by themselves give no
  /// further in all. They are ranked by how far they give in all, then fewer bounds, then as candidates. If fewer than
  /// three, so ranked follow the best three each that any bound without end lets in, then any two, and so on; at last
  /// those of no bound at all, above 1000 % too.
  std::vector<FitNearest> nearest;
  bool nearest_complete = true;  ///< false when the search for the nearest was cut short: there may be nearer ones
  /// What measuring_findings() says of the request's strips, as a panel of them all: borrowed_gauge for each texture
  /// that is measured by another's gauge, as told, mixed_states, unknown_spread, and the swatch's odd ones. Then of the
  /// best candidate, where its ends are open: open_crossing, open_stack (place: its last row). What else is to be said
  /// of one (its margins, strips of unlike heights, narrow_texture) size() says of its fitted() panel.
  std::vector<Finding> findings{};
  friend bool operator==(const FitResult&, const FitResult&) = default;
};

/// How to watch a fit, and end it.
struct FitOptions {
  std::stop_token stop;                           ///< @throws Error cancelled
  std::function<void(const Progress&)> progress;  ///< share only; what it throws ends the call and reaches the caller
};

/// Every combination of panels, times, edge columns and rows that makes a grid (Grid::max_side, Grid::max_cells), fits
/// the needles, leaves something between the seams and, where panels are sewn together, has the edge columns that
/// their seam takes in is considered. The best `most` come ranked by `error`, then fewer panels, fewer columns, fewer
/// rows, fewer edge columns, then fewer times of the first group, the second, and so on.
///
/// Width and height are those that size() gives for one panel, to the last bit. Combinations that cannot rank any
/// more are passed over: whatever has the most values is searched from the target outward, so the time goes with the
/// product of the others and with `most`. Starts take time linear in the rows after which all strips repeat, once
/// for candidates of the same rows and times.
///
/// So that no call goes on for ever, its work is counted: a width takes 16 and one for each strip of the groups and
/// each texture in each group, a height 16 and one for each texture, a start two for each strip. Candidates may take
/// 400 million, a second or so; the nearest, where nothing fits, as many again, then they are as far as they were
/// found.
/// @throws Error bad_argument (field "width_mm", "groups[1].least"; "edge" where two panels or more are asked for and a
/// seam has no edge columns to take in; "edge", "groups[0].strips" where a panel's outermost column could have no
/// stitch in some row), no_gauge (field = texture), too_large (field "substitutes"; "groups" when the combinations take
/// more work than that, "vary_start" when the starts do); cancelled.
LATCHWORK_API FitResult fit(const FitRequest& request, const Swatch& swatch, const FitOptions& options = {});

/// One panel of a candidate, named after its numbers: the one at index `panel`, 0..panels-1, from the left on the RS.
/// Of the candidate `panels`, `times`, `edge_columns`, `columns`, `rows` and `start_row` are read; it may break the
/// request's bounds, as those of FitResult::nearest do. Of the request all but the targets is, so that a GradeRequest's
/// design will do.
/// @throws Error bad_argument (field) when they are no candidate's of this request with whatever bounds loosened; what
/// join_strips() throws.
LATCHWORK_API Panel fitted(const FitRequest& request, const FitCandidate& candidate, int panel = 0);

}  // namespace latchwork::inline v0
