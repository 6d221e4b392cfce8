#pragma once

#include <cstddef>
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

/// How a piece of the article is knitted: the panel that fits it best, or, where nothing is fitted, the brief's panel.
struct PieceWork {
  int panels = 1;  ///< to knit: the piece's count, times the panels that each is sewn of
  /// The piece can be made: of a candidate, or of the brief's panel as it stands, where that is no further off in width
  /// and height than the design's tolerance.
  bool fits = false;
  Plan plan;  ///< of one panel: of fitted() of the first candidate, its panel 0; a shape is still to be cut from it
  Verification verification;  ///< of `plan`
  friend bool operator==(const PieceWork&, const PieceWork&) = default;
};

/// A panel that best fits are knitted of, other than the brief's own: fitted_brief() makes a brief of it.
struct FittedPanel {
  /// A name for the folder of its files, none twice: "fitted-", then small letters, digits and hyphens of the piece's
  /// name: "fitted-panel-lower-left", "fitted-front-2", "fitted-front-mirrored".
  std::string folder;
  /// For people, what it is for: "front, back"; of a piece sewn of several panels "front, left panels", "front, right
  /// panel, mirrored".
  std::string pieces;
  int piece = 0;           ///< index among ArticleFit::pieces of the first that it is for
  int panel = 0;           ///< which of that piece's panels it is, as of fitted()
  std::int64_t count = 1;  ///< to knit, for all pieces
  friend bool operator==(const FittedPanel&, const FittedPanel&) = default;
};

/// What the brief's article comes to.
struct ArticleJob {
  ArticleFit fit;                ///< fit_article(); a design whose `needles` are 0 has the machine's
  std::vector<PieceWork> works;  ///< one for each of fit.pieces, pieces alike planned once
  /// What the pieces that fit are knitted of, alike ones once: those right of a piece's middle are mirrored. A panel
  /// that is the brief's own is none of them.
  std::vector<FittedPanel> panels;
  /// Of all panels of pieces that fit, together; of those without a plan nothing.
  std::int64_t hand_ms = 0;
  std::int64_t carriage_ms = 0;
  /// For all panels of pieces that fit, together, where the brief names yarn and something fits: each kind of piece by
  /// yarn_need(), with the seams of the article and those between panels, a range at its middle; spreads and margins
  /// add up, since the swatches are the same. What decides is chosen anew from the sums.
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

/// A brief of its own for a panel of ArticleJob::panels, by its index, on which run() and write_job() go as on any
/// other: panel, machine, efforts and swatch, no article. Its yarn is that of one panel, without seams; where
/// YarnRequest::rows say which yarns knit which rows, and the panel has other rows, it has none. Its size is told as
/// any brief's, in the swatch's most finished state and with what the seams take in.
/// @throws Error bad_argument (field "brief.article", "index"; "job.article.fit" for a job of another brief);
/// size_mismatch (field "job.article"); as fit_article().
LATCHWORK_API Brief fitted_brief(const Brief& brief, const Job& job, std::size_t index);

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

/// Writes the files that read_brief() reads back to an equal brief into `folder`, which is made if it is not there; an
/// older yarn.json or article.json of which there is none now is taken away. Where anything is refused nothing is
/// written. @throws Error bad_argument (folder), as read_brief(); bad_argument (field "brief.article.article") for an
/// own article that article.json does not name as a file of the folder; io (field = file name, or folder); what write()
/// of the parts throws.
LATCHWORK_API void write_brief(const Brief& brief, const std::string& folder);

}  // namespace latchwork::inline v0
