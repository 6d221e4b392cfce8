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

/// What bars this machine from making a candidate's panels, the first that findings() calls an error; nothing where
/// nothing does. O(cells).
std::optional<Finding> barrier(const Brief& brief, const PieceFit& piece, const FitCandidate& candidate);

/// Which of a piece's candidates is knitted: the first whose panels the machine can make, going by what findings()
/// calls errors; the first of all where none can. There is one at least. O(candidates passed over * cells).
std::size_t chosen(const Brief& brief, const PieceFit& piece);

/// The panel of each piece that is made, the best fit or the brief's own, and how many of them there are.
struct PiecePanel {
  Panel panel;
  int panels = 1;
  bool fits = false;  ///< as PieceWork::fits
};
std::vector<PiecePanel> piece_panels(const Brief& brief, const ArticleFit& fit);

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
  std::string stands;   ///< the panel as it is: its size and how far off
  std::string best;     ///< the best fit: what to repeat, its size and how far off; or what would have to give
  std::string knitted;  ///< panels, hours each
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
