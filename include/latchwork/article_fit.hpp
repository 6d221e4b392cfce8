#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/article.hpp"
#include "latchwork/export.hpp"
#include "latchwork/fit.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/shaping.hpp"
#include "latchwork/size.hpp"

namespace latchwork::inline v0 {

// From an article to panels that make it, without a number copied by hand: fit_piece() by the widest place, then
// fitted_piece() for the panel in its shape.

/// What fits a piece: the design, with the piece for its target. The width is the piece's, where it is shaped that of
/// its widest place, since the shape is cut from it (piece_outline()); the height is its length. `seam_left`,
/// `seam_right`, `seam_bottom` and `seam_top` of the design say what a seam at that edge takes in: they stay where the
/// piece's edge is seamed, and are 0 where it is free or at the opening. Nothing is checked.
LATCHWORK_API FitRequest piece_request(const TargetPiece& piece, const FitRequest& design);

/// fit() of piece_request(). @throws Error as fit().
LATCHWORK_API FitResult fit_piece(const TargetPiece& piece, const FitRequest& design, const Swatch& swatch,
                                  const FitOptions& options = {});

/// The shape of a piece on a panel that is to make it, for shaped(): in mm between the seams at the panel's own gauges,
/// columns by their strips' widths, rows by the heights that size() gives the panel in that shape: where strips of
/// unlike row gauge end at the edge, heights and shape are reckoned in turn until they agree, eight times at most.
/// Ranges are met in their middle. From one point of TargetPiece::shape to the next the width changes evenly, and above
/// the last it stays. In each row it is what it is in the middle of that row's height; half of what the panel has too
/// much lies outside at each side, to the nearest column, halves out. So no edge is more than half a stitch off, and
/// what leaves or joins is spread as evenly as whole rows and stitches allow. A point at the piece's length is at the
/// panel's last row, though the panel be longer or shorter; the length is not looked at otherwise.
///
/// The seams of `options` are read where the piece's edge is seamed, as piece_request() reads those of a design; they
/// take so many stitches of each row, and follow the edge.
///
/// Left and right are those of the right side, and both edges change after the same rows, where the panel is alike at
/// both sides. With `step` 2 (3, ...) that is after even rows only (multiples of step): the carriage, whose yarn is at
/// one edge, then stands each time where it stood at the cast-on, so that it is the same edge. Where a band begins
/// whose width is another, the edge steps there in any case. Decreases of one stitch can be made at both edges; what is
/// bound off several at once at the other edge findings() tells (FindingCode::yarn_away). O(rows * points + columns).
/// @throws Error no_gauge (field = texture); bad_argument (field "piece.width_least_mm",
/// "piece.shape[1].width_least_mm", with the row, where the least of the range is more than the panel has, by more than
/// half a stitch at each side; "piece.shape[1].height_least_mm" for a point above the piece's length, or more than half
/// a row above the panel; "piece.shape[1].height_greatest_mm" and the like for what is no range of 1..1e5 mm, or 0..1e5
/// mm high, or does not rise; "step"; "outline", with the row, where no stitch is left or none that stands on the row
/// below; as size()); too_large (field "substitutes").
LATCHWORK_API Outline piece_outline(const TargetPiece& piece, const Panel& panel, const Swatch& swatch,
                                    const SizeOptions& options = {}, int step = 1);

/// A panel that a piece is knitted of: fitted() of piece_request(), cut to the piece's shape, where it has one, by
/// piece_outline(), measured by the design's state, substitutes and seams. Of a piece sewn of several panels the outer
/// ones have its edges, and what lies between them stays whole: the piece is measured across them all. Where the
/// candidate is narrower or lower than the piece (width_error_mm, height_error_mm below 0) the piece's ranges are that
/// much wider, about the same middle: what was taken as a fit is cut as one. `step` is read as piece_outline() reads
/// it, `options` as shaped() does.
/// O(cells), a few times over.
/// @throws Error as fitted(), piece_outline() ("outline", with the row, also where an outer panel has less than is to
/// be cut off at its edge) and shaped(); bad_argument ("width_error_mm", "height_error_mm") for an error of the
/// candidate that is no number.
LATCHWORK_API Panel fitted_piece(const TargetPiece& piece, const FitRequest& design, const FitCandidate& candidate,
                                 const Swatch& swatch, int panel = 0, int step = 1, const ShapeOptions& options = {});

/// Neighbouring strips of a panel that stand together so many times, as a FitGroup.
struct StripRun {
  int first = 0;      ///< index of the first, from the left on the RS, 0..Grid::max_side
  int last = 0;       ///< index of the last, first..Grid::max_side
  int least = 1;      ///< times, 0..Grid::max_side
  int most = 1;       ///< least..Grid::max_side
  int as_group = -1;  ///< index of an earlier run that this one stands as often as, as in FitGroup; -1: free
  friend bool operator==(const StripRun&, const StripRun&) = default;
};

/// An article to be made of a panel: what is chosen, and what may vary.
struct ArticleRequest {
  static constexpr std::size_t max_pieces = 1000;
  static constexpr std::int64_t max_seam_ms_per_m = 86'400'000;  ///< a day for a metre

  /// A name of article_names(); in a brief's folder also a file of it, "bolster.json". fit_article() does not read it.
  std::string article;
  ArticleChoices choices;
  /// Names of Article::pieces that are made as the panel, none twice; empty: all. Of pieces sewn to each other the name
  /// stands for all: "panel" for "panel, lower left".
  std::vector<std::string> made;
  /// As FitRequest::groups, of the panel's strips, at most FitRequest::max_groups. Empty: all strips once, but for the
  /// outermost two where there is an edge.
  std::vector<StripRun> groups;
  /// The strip whose first column is FitRequest::edge, by its index, 0..Grid::max_side; -1: no edge. Then the design's
  /// edge_least and edge_most count as 0.
  int edge = -1;
  FitRequest design;  ///< what may vary, and seams; its targets, groups and edge are not read
  /// How long a metre of seam takes to sew up, in ms, 0..max_seam_ms_per_m, for an article's hours; 0: not known, and
  /// sewing up is left out of them. Ours to ask and yours to time: no source was found for a figure, so none is built
  /// in. fit_article() does not read it.
  std::int64_t seam_ms_per_m = 0;
  friend bool operator==(const ArticleRequest&, const ArticleRequest&) = default;
};

/// A piece, held against the panel and fitted by it.
struct PieceFit {
  TargetPiece target;
  /// The panel as it is, by size() with the design's state, substitutes and the seams of piece_request(). Of it
  /// `panels` (1), `columns`, `rows`, width, height and their errors are told; the others stay as they are by default.
  FitCandidate as_it_stands;
  /// Of piece_request() and panel_design(). The first candidate is the one that goes with the other pieces, as
  /// fit_article() chooses it; the others follow ranked. No candidates and no nearest where ArticleFit::message tells
  /// why.
  FitResult fit;
  friend bool operator==(const PieceFit&, const PieceFit&) = default;
};

/// An article, and how a panel makes it.
struct ArticleFit {
  Targets targets;               ///< of all pieces
  std::vector<PieceFit> pieces;  ///< those that are made as the panel, in the order of targets
  /// For people: why nothing was fitted, which pieces that fit by themselves do not go together, or that a choice that
  /// is better for all may not have been looked at; empty where there is nothing to tell.
  std::string message;
  friend bool operator==(const ArticleFit&, const ArticleFit&) = default;
};

/// The design of a request, with groups and edge cut from the panel's strips: each one vertical repeat of its strip,
/// from row 1 up. Only of a panel of one band, since no strip of another runs from its first row to its last.
/// @throws Error bad_argument (field "made[1]", "groups[0].last", "edge", "design.rows_step", ...; "panel" for one of
/// several bands; "groups[0]", "edge" for a strip that repeats in more rows than the panel has, for where it repeats is
/// not in it); crossing_cut (field "groups[0]", "edge") for a strip or an edge column that cuts one.
LATCHWORK_API FitRequest panel_design(const ArticleRequest& request, const Panel& panel);

/// Targets of the article, the panel as it stands held against each piece that is made as it is, and the best fits,
/// which fitted() makes panels of. Pieces alike are fitted once. A panel of several bands is held against the pieces
/// and not fitted, and a message says so.
///
/// Pieces are sewn to each other, so those whose lengths are one target get one row count, those whose widths are one
/// target too the same number of panels and the same times of each group; edge columns are each piece's own, since
/// seams are. For a row count the pieces of one width take the panels and times with the least greatest error of all of
/// them, then the least sum of their errors, then the first in the ranking of the first piece; with these the row count
/// is taken with the least greatest error of all pieces of that length, then the least sum, then the fewest rows.
/// Pieces that nothing fits by themselves do not count, pieces alike once. Up to FitRequest::max_candidates of each
/// piece are looked at, whatever `most` is: the choice is the best of all candidates where its greatest error is below
/// that of the last that was looked at of each, or all were; where it is not, and where nothing goes together, the
/// message says so.
/// @throws Error as targets(), panel_design(), size() and fit(); bad_argument (field "made[0]") for a name that is no
/// piece's under these choices.
LATCHWORK_API ArticleFit fit_article(const Article& article, const ArticleRequest& request, const Panel& panel,
                                     const Swatch& swatch, const FitOptions& options = {});

// Files are as file.hpp tells; their schema is article-choices.schema.json.

/// "latchwork-article-choices", version 1: the members of ArticleRequest by their names, of `design` those that are
/// read; what has a default may be left out, but for `article`, the names of measures and counts, and both textures of
/// a substitute: the schema lists what must be there. `least_mm` and `greatest_mm` of a measure are numbers, or texts
/// as read_length() takes them: "45 cm".
/// @throws Error with line and field: too_large, bad_encoding, bad_syntax, wrong_format, newer_version, duplicate_key,
/// missing_field, unknown_field, bad_value; bad_argument for what no panel's design can be; as read_length().
LATCHWORK_API ArticleRequest read_article_request(std::string_view json);

/// The JSON that read_article_request() reads back to an equal request; of the design, targets, groups and edge are not
/// written. What no reader takes is refused as file.hpp tells, with its field.
LATCHWORK_API std::string write(const ArticleRequest& request);

}  // namespace latchwork::inline v0
