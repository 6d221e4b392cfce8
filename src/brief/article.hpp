#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "brief/facts.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/finding.hpp"

namespace latchwork::inline v0::report {

/// fit_article() of a brief that names one.
Article article_of(const Brief& brief);

ArticleFit article_fit_of(const Brief& brief, const FitOptions& options = {});

/// The design that a brief's article is fitted by: its panel's, with the state and the substitutes that hold for it.
FitRequest design_of(const Brief& brief);

/// What bars a candidate from being made.
struct Barrier {
  std::string name;  ///< in a word or two: "open stack", "shape"
  std::string why;
};

/// "open stack".
std::string bar_name(FindingCode code);

/// What bars this machine from making a candidate's panels, the first that findings() calls an error, or the piece's
/// shape from being cut from them; nothing where nothing does. O(cells).
std::optional<Barrier> barrier(const Brief& brief, const PieceFit& piece, const FitCandidate& candidate);

/// Which of a piece's candidates is knitted: the first that nothing bars; the first of all where something bars each.
/// There is one at least. O(candidates passed over * cells).
std::size_t chosen(const Brief& brief, const PieceFit& piece);

/// Stitches and textures are the same, whatever the panels are called.
bool is_same_cloth(const Panel& a, const Panel& b);

/// What a piece is knitted of: its best fit, or where nothing is fitted the brief's panel, in the piece's shape. A
/// panel that has a shape of its own already stands as it is.
struct PiecePanels {
  std::vector<Panel> cloths;          ///< unlike ones, in the order of the first panel of each, from the left on the RS
  std::vector<std::size_t> cloth_of;  ///< of each panel that one piece is sewn of: index into `cloths`
  bool fits = false;                  ///< as PieceWork::fits
  std::string why;                    ///< for people: what bars the shape from being cut; empty where nothing does
  std::vector<std::string> advice;    ///< for people: what the shape makes of the left panel's hand work

  int panels() const { return static_cast<int>(cloth_of.size()); }
  const Panel& panel(std::size_t index) const { return cloths[cloth_of[index]]; }
};
PiecePanels piece_panels(const Brief& brief, const PieceFit& piece);

/// The panels of each piece that are planned, and how many there are of all that it is sewn of: PieceWork's.
struct PiecePanel {
  Panel panel;
  int panels = 1;
  bool fits = false;
  std::optional<Panel> inner{};  ///< where `inner_panels` are not 0
  int inner_panels = 0;
};
std::vector<PiecePanel> piece_panels(const Brief& brief, const ArticleFit& fit);

/// The seams between the panels that a piece is sewn of, in all of its count.
struct PanelSeams {
  std::size_t piece = 0;   ///< index among ArticleFit::pieces
  std::int64_t count = 0;  ///< 1 or more
  double mm = 0;           ///< of one: the piece's height
};
/// Of each piece that fits and is sewn of two panels or more.
std::vector<PanelSeams> panel_seams(const Brief& brief, const ArticleFit& fit);

/// What the seams at a piece's edges take of the panel, or panels, that it is made of.
struct EdgeSeams {
  double stitches = 0;  ///< left and right together
  double rows = 0;      ///< below and above together
  bool any() const { return stitches > 0 || rows > 0; }
};
EdgeSeams edge_seams(const TargetPiece& piece, const FitRequest& design);

/// ArticleJob::panels.
std::vector<FittedPanel> fitted_panels(const Brief& brief, const ArticleFit& fit);

/// What the works of an article come to: its times, yarn and notes. `article.fit` and `article.works` are read.
void reckon(const Brief& brief, ArticleJob& article);

/// The brief's article, planned and reckoned; of pieces that nothing fits the plan is the job's.
ArticleJob article_of(const Brief& brief, const Job& job, ArticleFit fit, const PlanOptions& options);

/// A row of the table that page and article.txt have: a piece, or pieces alike.
struct ArticleRow {
  std::string piece;
  std::string wanted;
  std::string stands;     ///< the panel as it is: its size and how far off
  std::string best;       ///< the best fit: what to repeat, its size and how far off; or what would have to give
  std::string knitted;    ///< panels, hours each
  std::size_t first = 0;  ///< index among ArticleFit::pieces of the first that it is of
};
std::vector<ArticleRow> article_rows(const Brief& brief, const ArticleJob& article);

/// What the summary tells of the article; its cautions are notes.
void add_article(Facts& facts, const Brief& brief, const Job& job);

/// Where charts and instructions of fitted panels are, for people; empty where there are none.
std::string charts_words(const Brief& brief, const ArticleJob& article);
/// "2 to knit, for front, back".
std::string to_knit_words(const FittedPanel& panel);

/// The whole article for a terminal: article.txt.
std::string article_text(const Brief& brief, const ArticleJob& article);

}  // namespace latchwork::inline v0::report
