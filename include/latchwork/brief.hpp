#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "latchwork/article.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/effort.hpp"
#include "latchwork/export.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/gauge.hpp"
#include "latchwork/machine.hpp"
#include "latchwork/panel.hpp"
#include "latchwork/plan.hpp"
#include "latchwork/simulate.hpp"
#include "latchwork/size.hpp"
#include "latchwork/yarn_need.hpp"

namespace latchwork::inline v0 {

/// What a designer hands over: a folder with panel.json, swatch.csv, machine.json (which may hold efforts) and, if yarn
/// is to be reckoned, yarn.json; if an article is to be made, article.json, and the article's own file where it is none
/// of the library's.
struct Brief {
  Panel panel;
  Swatch swatch;
  Machine machine;
  Effort effort;
  std::optional<YarnRequest> yarn;
  std::optional<ArticleRequest> article;  ///< what is to be made of the panel
  std::optional<Article> own_article;     ///< what article->article names, where that is none of article_names()
  friend bool operator==(const Brief&, const Brief&) = default;
};

/// How a piece of the article is knitted: the panel that fits it best, or, where nothing fits, the brief's panel.
struct PieceWork {
  int panels = 1;             ///< to knit: the piece's count, times the panels that each is sewn of
  bool fits = false;          ///< something fits: `plan` is of fitted() of the best candidate, its panel 0
  Plan plan;                  ///< of one panel; a shape is still to be cut from it
  Verification verification;  ///< of `plan`
  friend bool operator==(const PieceWork&, const PieceWork&) = default;
};

/// What the brief's article comes to.
struct ArticleJob {
  ArticleFit fit;                ///< fit_article(); a design whose `needles` are 0 has the machine's
  std::vector<PieceWork> works;  ///< one for each of fit.pieces, pieces alike planned once
  std::int64_t hand_ms = 0;      ///< of all panels together; of those without a plan nothing
  std::int64_t carriage_ms = 0;
  /// For all panels together, where the brief names yarn: each kind of piece by yarn_need(), with the seams of the
  /// article and those between panels, a range at its middle; spreads and margins add up, since the swatches are the
  /// same. What decides is chosen anew from the sums.
  std::optional<YarnNeed> yarn;
  std::vector<std::string> notes;  ///< for people: what is not in these figures
  friend bool operator==(const ArticleJob&, const ArticleJob&) = default;
};

/// What comes back.
struct Job {
  std::vector<Finding> findings;
  Plan plan;
  Conditions conditions;  ///< that were asked of both plans
  Plan regular;
  /// The least plan when nothing is asked of it: what the conditions cost is told against it; where none are asked, the
  /// same as `plan`. It has what `plan` left of a time limit, 1 ms at the least, and a work limit of its own.
  Plan unconditioned;
  Verification verification;          ///< of `plan`
  Verification regular_verification;  ///< of `regular`; not verified when there is none
  std::optional<Size> size;           ///< where each texture has a gauge; no other figure but the article's needs one
  std::optional<YarnNeed> yarn;       ///< where the brief asks for it
  std::optional<ArticleJob> article;  ///< where the brief names one, and has the gauges that it is fitted by
  /// What bars size or article: no_swatch for each texture that size() would refuse, by default or by the state and the
  /// substitutes of the article's design, with place.field = texture. Each once.
  std::vector<Finding> missing;
};

/// @throws Error bad_argument (folder) for an empty name or a NUL in it; io (field = file name), and what the readers
/// throw with the file's name before the field: of article.json also, with its line, what targets() and panel_design()
/// refuse, and an article that is neither the library's nor a file "name.json" of the folder (field "article.json:
/// article").
LATCHWORK_API Brief read_brief(const std::string& folder);

/// Finds, plans both ways, verifies both, sizes, reckons the yarn; fits the article and plans the panels that fit. What
/// wants a gauge that the swatch has not is left out and told in Job::missing; all else does without.
/// Conditions bind all plans but `unconditioned`. A time limit is for `plan` and `unconditioned` together, and for each
/// other plan anew; a work limit for each plan.
/// @throws Error as those do.
LATCHWORK_API Job run(const Brief& brief, const PlanOptions& options = {});

/// For a terminal: size (or which textures of swatch.csv it wants), yarn, article, feasibility, stops, hand work by
/// kind, hours, bound, price of regularity, "verified" or not. @throws Error size_mismatch (field "job.plan",
/// "job.size", "job.size.strips[2]", "job.yarn", ...) for a job of another brief; bad_argument (field
/// "job.verification", "job.plan.leftmost", ...) for a plan that is called verified and does not knit the brief's
/// panel, stands on other needles than its machine's, takes other times by its efforts, or breaks the job's conditions
/// (but rhythms, which are not looked at); for findings of another machine; for an article that is fitted or reckoned
/// in another way than the brief's (field "job.article.fit", "job.article.works[0].plan", ...).
LATCHWORK_API std::string summary(const Brief& brief, const Job& job);

/// One HTML5 page to print and take to the machine: summary, schematic, article, instructions, and
/// both charts, cut at the same rows into as many A4 sheets as they take. @throws
/// Error as summary(), chart_svg() and instructions().
LATCHWORK_API std::string page_html(const Brief& brief, const Job& job);

/// Writes chart-rs.svg, chart-operator.svg, chart.txt, instructions.txt, plan.json, summary.txt, page.html and, for a
/// panel with a size and in one piece (a stitch in every row, and a column in common with the row below),
/// schematic.svg, for a brief with an article article.txt, into `folder`, which is made if it is not there; an older
/// schematic.svg or article.txt of which there is none now is taken away. The schematic is of the brief's panel.
/// @throws Error bad_argument (folder), as read_brief(); io (field = file name, or folder); as page_html(), and as
/// write() of a plan.
LATCHWORK_API void write_job(const Brief& brief, const Job& job, const std::string& folder);

}  // namespace latchwork::inline v0
