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
#include "latchwork/session.hpp"
#include "latchwork/simulate.hpp"
#include "latchwork/size.hpp"
#include "latchwork/yarn_need.hpp"

namespace latchwork::inline v0 {

/// What a designer hands over: a folder with panel.json, machine.json (which may hold efforts) and, to be told sizes,
/// swatch.csv (without it the swatch is empty); if yarn is to be reckoned, yarn.json; if an article is to be made,
/// article.json, and the article's own file where it is none of the library's; substitutes.csv, if a texture that was
/// not measured is to have another's gauge; brief.json, if sizes are meant in another state of the cloth than the most
/// finished one, or sessions are not of the usual length.
struct Brief {
  Panel panel;
  Swatch swatch;
  Machine machine;
  Effort effort;
  std::optional<YarnRequest> yarn;
  std::optional<ArticleRequest> article;  ///< what is to be made of the panel
  std::optional<Article> own_article;     ///< what article->article names, where that is none of article_names()
  /// Textures that are measured by another's gauge where they have none of their own: for the panel's size, its drawing
  /// and the article's fits, there after those of the article's own design. The job's size has a finding for each. What
  /// yarn a texture takes YarnRequest::substitutes says.
  std::vector<Substitute> substitutes;
  /// The cloth that sizes are meant in: of the panel, its drawing and the article's fits whose own design names none.
  /// Nothing: each texture's most finished one, as SizeOptions has it. The summary says which it is.
  std::optional<ClothState> state{};
  /// How long one sits at the machine, and how much hand work there is between two rests (0: none), as SessionOptions
  /// has them: what the summary tells of sessions.
  std::int64_t session_ms = 3'600'000;
  std::int64_t rest_ms = 1'200'000;
  friend bool operator==(const Brief&, const Brief&) = default;
};

/// How a piece of the article is knitted: the panel that fits it best, or, where nothing is fitted, the brief's panel.
struct PieceWork {
  int panels = 1;  ///< to knit: the piece's count, times the panels that each is sewn of
  /// The piece can be made: of a candidate, or of the brief's panel as it stands, where that is no further off in width
  /// and height than the design's tolerance.
  bool fits = false;
  /// Of one panel: of fitted_piece() of a candidate, its panel 0, in the piece's shape. The candidate is the first
  /// whose panels have no findings() of severity error on the machine, and whose hand work the shape does not cut
  /// (shape_findings()); where all have, the first of all, and the plan's findings say why it cannot be made; where its
  /// shape cannot be cut `fits` is false, the plan is of the straight panel, and a note says why. What a candidate
  /// lacks of the piece's measures, within the tolerance, bars no shape. The same one is fitted_brief()'s, and is
  /// reckoned.
  Plan plan;
  Verification verification;  ///< of `plan`
  /// Of `panels`, those between the outer two of a shaped piece that is sewn of three or more: they are not cut, so
  /// that they have a plan of their own. 0 where there are none, or the shape cuts nothing of the outer ones.
  int inner = 0;
  Plan inner_plan;  ///< of one of them, panel 1 of the candidate; the others are alike, or its mirror images
  Verification inner_verification;  ///< of `inner_plan`
  friend bool operator==(const PieceWork&, const PieceWork&) = default;
};

/// A panel that best fits are knitted of, other than the brief's own: fitted_brief() makes a brief of it.
struct FittedPanel {
  /// A name for the folder of its files, none twice: "fitted-", then small letters, digits and hyphens of the piece's
  /// name: "fitted-panel-lower-left", "fitted-front-2", "fitted-front-mirrored",
  /// "fitted-front-inner".
  std::string folder;
  /// For people, what it is for: "front, back"; of a piece sewn of several panels "front, left panels", "front, right
  /// panel, mirrored"; of a shaped one of three or more "front, left outer panel", "front, inner panels".
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
  /// At the machine, of all panels of pieces that fit, together; of those without a plan nothing.
  WorkTimes times;
  /// All seams to be sewn, where something fits (else 0): those of the article, of each kind the middle of its range,
  /// and those between the panels that a piece that fits is sewn of, each as long as the piece.
  double seam_mm = 0;
  /// Sewing them up, by ArticleRequest::seam_ms_per_m, to the nearest millisecond; 0 where that is, and then a note
  /// says that the hours are without it. The article's hours are `times.total_ms + sewing_ms`.
  std::int64_t sewing_ms = 0;
  /// For all panels of pieces that fit, together, where the brief names yarn and something fits: each kind of piece by
  /// yarn_need(), with `seam_mm` of seams; spreads and margins add up, since the swatches are the same. What decides is
  /// chosen anew from the sums. Nothing, and a note says why, where it cannot be reckoned: seams in a yarn whose number
  /// is not known, yarns of rows that a best fit has not, or more than yarn_need() reckons.
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
  /// What bars size or article: no_swatch for each texture that size() would refuse by the brief's substitutes, or by
  /// the state and the substitutes of the article's design before these, with place.field = texture. Each once.
  std::vector<Finding> missing;
};

/// Reads a brief's folder. substitutes.csv, if there, has a line of names for its columns, `texture,use`, and a line
/// for each texture that lacks a swatch: itself, and the texture whose gauge is used for it. brief.json, if there, is
/// JSON of format "latchwork-brief", version 1, each field of which may be left out: `state` ("off the machine",
/// "rested", "washed"), `session_ms`, `rest_ms`.
/// @throws Error bad_argument (folder) for an empty name or a NUL in it; io (field = file name), and what the readers
/// throw with the file's name before the field: of article.json also, with its line, what targets() and panel_design()
/// refuse, and an article that is neither the library's nor a file "name.json" of the folder that is no other file of a
/// brief or a job, as "plan.json" is (field "article.json: article"); of substitutes.csv, with its line, bad_syntax,
/// bad_encoding, missing_field, unknown_field ("column 3" for one without a name), bad_value for a texture that is
/// empty, named twice or its own substitute, and too_large; of brief.json, with its line, what readers of JSON throw.
LATCHWORK_API Brief read_brief(const std::string& folder);

/// Finds, plans both ways, verifies both, sizes, reckons the yarn; fits the article and plans the panels that fit. What
/// wants a gauge that the swatch has not is left out and told in Job::missing; all else does without.
/// Conditions bind all plans but `unconditioned`. A time limit is for `plan` and `unconditioned` together, and for each
/// other plan anew; a work limit for each plan.
/// @throws Error as those do; bad_argument (field "brief.state", "brief.session_ms", "brief.rest_ms"); too_large (field
/// "article", "article.seam_ms_per_m") for an article of more than 2^60 ms of work at the machine, or of sewing up.
LATCHWORK_API Job run(const Brief& brief, const PlanOptions& options = {});

/// A brief of its own for a panel of ArticleJob::panels, by its index, on which run() and write_job() go as on any
/// other: panel, machine, efforts, swatch and the substitutes that it was fitted by, no article. Its yarn is that of
/// one panel, without seams; where YarnRequest::rows say which yarns knit which rows, and the panel has other rows, it
/// has none. Its size is told as any brief's, with what the seams take in, in the state that it was fitted in: the
/// article's design's, or, where that names none, the brief's. The panel is called after the brief's and what it is
/// for, "runner: front, left panels, seams included", where a seam takes in any of it, at the piece's edges or between
/// panels; else "runner: front, left panels".
/// @throws Error bad_argument (field "brief.article", "index"; "job.article.fit" for a job of another brief);
/// size_mismatch (field "job.article"); as fit_article().
LATCHWORK_API Brief fitted_brief(const Brief& brief, const Job& job, std::size_t index);

/// For a terminal: size and the state of the cloth that it is of (or which textures of swatch.csv it wants), yarn,
/// article, feasibility, stops, hand work by kind, hours, sessions and rests, bound, price of regularity, "verified" or
/// not, and what is doubtful in the swatch. @throws Error size_mismatch (field "job.plan", "job.size",
/// "job.size.strips[2]", "job.yarn", ...) for a job of another brief; bad_argument (field "job.verification",
/// "job.plan.leftmost", ...) for a plan that is called verified and does not knit the brief's panel, stands on other
/// needles than its machine's, takes other times by its efforts, or breaks the job's conditions (but rhythms, which are
/// not looked at); for findings of another machine; for another size or need of yarn than the brief's panel, swatch and
/// yarns come to (field "job.size", "job.yarn"); for an article that is fitted or reckoned in another way than the
/// brief's (field "job.article.fit", "job.article.works[0].plan", ...); as size(), yarn_need() and
/// fit_article().
LATCHWORK_API std::string summary(const Brief& brief, const Job& job);

/// One HTML5 page to print and take to the machine: summary, schematic, article, instructions, and
/// both charts, cut at the same rows into as many A4 sheets as they take. @throws
/// Error as summary(), chart_svg() and instructions().
LATCHWORK_API std::string page_html(const Brief& brief, const Job& job);

/// Writes chart-rs.svg, chart-operator.svg, chart.txt (of more than 100 stitches in parts, one below the other),
/// instructions.txt, plan.json, summary.txt, page.html and, for a
/// panel with a size and in one piece (a stitch in every row, and a column in common with the row below),
/// schematic.svg, for an article that is fitted article.txt, into `folder`, which is made if it is not there; an older
/// schematic.svg or article.txt of which there is none now is taken away. The schematic is of the brief's panel, or,
/// where an article is fitted, of its pieces as they are made, and of that panel as it stands where no piece is made of
/// it: each piece's panels sewn together, seams dashed, measured between the seams, with the width of a panel and of
/// all together. Pieces alike are drawn once; notes say which edges are sewn, and what is not drawn: a piece that
/// nothing fits, and what would make more than Schematic::max_pieces.
/// @throws Error bad_argument (folder) for an empty name or a NUL; io (field = file name, or folder); crossing_cut
/// where a group of the article cuts a crossing; as page_html(), and as write() of a plan.
LATCHWORK_API void write_job(const Brief& brief, const Job& job, const std::string& folder);

/// Writes the files that read_brief() reads back to an equal brief into `folder`, which is made if it is not there; an
/// older yarn.json, article.json, substitutes.csv or brief.json of which there is none now (all as usual) is taken
/// away. Where anything is refused nothing is written. @throws Error bad_argument (folder) for an empty name or a NUL;
/// bad_argument (field "brief.article.article") for an own article that article.json does not name as a file of the
/// folder, or names as one that a brief or a job has for something else ("yarn.json", "plan.json"), in whatever
/// letters, and for one that is neither the library's nor the brief's own; bad_value, bad_encoding or too_large (field
/// "brief.substitutes[0].use", "brief.substitutes") for what substitutes.csv does not take; bad_argument (field
/// "brief.state", ...) as run(); io (field = file name, or folder); what write() of the parts throws.
LATCHWORK_API void write_brief(const Brief& brief, const std::string& folder);

}  // namespace latchwork::inline v0
