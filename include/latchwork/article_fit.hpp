#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/article.hpp"
#include "latchwork/export.hpp"
#include "latchwork/fit.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/panel.hpp"

namespace latchwork::inline v0 {

// From an article to panels that make it, without a number copied by hand. But for a shape: a piece is fitted by its
// widest place, and the points of TargetPiece::shape, in mm, become rows and columns of outlined() by the caller's
// hand.

/// What fits a piece: the design, with the piece for its target. The width is the piece's, where it is shaped that of
/// its widest place, since the shape is cut from it (shaping.hpp); the height is its length. `seam_left`, `seam_right`,
/// `seam_bottom` and `seam_top` of the design say what a seam at that edge takes in: they stay where the piece's edge
/// is seamed, and are 0 where it is free or at the opening. Nothing is checked.
LATCHWORK_API FitRequest piece_request(const TargetPiece& piece, const FitRequest& design);

/// fit() of piece_request(). @throws Error as fit().
LATCHWORK_API FitResult fit_piece(const TargetPiece& piece, const FitRequest& design, const Swatch& swatch,
                                  const FitOptions& options = {});

/// Neighbouring strips of a panel that stand together so many times, as a FitGroup.
struct StripRun {
  int first = 0;  ///< index of the first, from the left on the RS, 0..Grid::max_side
  int last = 0;   ///< index of the last, first..Grid::max_side
  int least = 1;  ///< times, 0..Grid::max_side
  int most = 1;   ///< least..Grid::max_side
  friend bool operator==(const StripRun&, const StripRun&) = default;
};

/// An article to be made of a panel: what is chosen, and what may vary.
struct ArticleRequest {
  static constexpr std::size_t max_pieces = 1000;

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
/// several bands); crossing_cut (field "groups[0]", "edge") for a strip or an edge column that cuts one.
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
