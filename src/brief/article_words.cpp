// What an article comes to, in words.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <set>
#include <utility>

#include "brief/article.hpp"
#include "brief/run.hpp"
#include "brief/shape.hpp"
#include "grid/words.hpp"
#include "latchwork/finding.hpp"
#include "text/duration.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::report {
namespace {

std::string range_words(double least_mm, double greatest_mm) {
  const std::string least = centimetres(least_mm);
  const std::string greatest = centimetres(greatest_mm);
  return least == greatest ? least : least + " to " + greatest;
}

std::string extent(const TargetPiece& piece) {
  const std::string length = range_words(piece.length_least_mm, piece.length_greatest_mm);
  if (piece.shape.empty()) {
    return fmt::format("{} x {} cm", range_words(piece.width_least_mm, piece.width_greatest_mm), length);
  }
  const FitRequest widest = piece_request(piece, {});
  return fmt::format("{} x {} cm ({} at the cast-on)", range_words(widest.width_mm, widest.width_most_mm), length,
                     range_words(piece.width_least_mm, piece.width_greatest_mm));
}

/// A plain figure with as many places as one can do with: "286.5", "7.8", "0.13"; below a hundredth "under 0.01".
std::string figure(double value) {
  if (value < 0.005) return "under 0.01";
  return value < 0.995 ? fmt::format("{:.2f}", value) : fmt::format("{:.1f}", value);
}

/// "3.1 cm (7.8 %) too narrow"; nothing within a tenth of a millimetre.
void add_error(std::vector<std::string>& parts, double mm, double percent, const char* less, const char* more) {
  if (std::abs(mm) < 0.1) return;
  parts.push_back(
      fmt::format("{} cm ({} %) too {}", figure(std::abs(mm) / 10), figure(std::abs(percent)), mm < 0 ? less : more));
}

/// What the seams of a piece take of the panels that make it: " between its seams (2 stitches and 2 rows go into
/// them)", so that nobody wonders that the panel itself measures more; nothing where they take nothing.
std::string seams_words(const TargetPiece& piece, const FitRequest& design) {
  const EdgeSeams seams = edge_seams(piece, design);
  std::vector<std::string> taken;
  bool only_one = true;
  const auto add = [&](double count, const char* one, const char* more) {
    if (count <= 0) return;
    only_one = count == 1 && taken.empty();
    taken.push_back(fmt::format("{:g} {}", count, count == 1 ? one : more));
  };
  add(seams.stitches, "stitch", "stitches");
  add(seams.rows, "row", "rows");
  if (taken.empty()) return {};
  return fmt::format(" between its seams ({} of each panel {} into them)", joined(taken, " and "),
                     only_one ? "goes" : "go");
}

/// `seams`: as seams_words(), where they are told.
std::string measured(const FitCandidate& candidate, const std::string& seams = {}) {
  std::vector<std::string> parts;
  add_error(parts, candidate.width_error_mm, candidate.width_error_percent, "narrow", "wide");
  add_error(parts, candidate.height_error_mm, candidate.height_error_percent, "short", "long");
  return fmt::format("{} x {} cm{}: {}", centimetres(candidate.width_mm), centimetres(candidate.height_mm), seams,
                     parts.empty() ? "as wanted" : joined(parts));
}

std::string times_words(int times) {
  if (times == 1) return "once";
  return times == 2 ? "twice" : fmt::format("{} times", times);
}

/// What a candidate is made of: "2 panels of 81 columns x 116 rows each (group 1 once, 5 edge columns a side)".
std::string made_of(const FitCandidate& candidate) {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < candidate.times.size(); ++i) {
    parts.push_back(fmt::format("group {} {}", i + 1, times_words(candidate.times[i])));
  }
  if (candidate.edge_columns > 0) parts.push_back(count_of(candidate.edge_columns, "edge column") + " a side");
  if (candidate.start_row > 1) parts.push_back(fmt::format("from row {} of the repeat", candidate.start_row));
  return fmt::format("{} of {} x {}{} ({})", count_of(candidate.panels, "panel"), count_of(candidate.columns, "column"),
                     count_of(candidate.rows, "row"), candidate.panels > 1 ? " each" : "", joined(parts));
}

/// What a knitter would stumble over at the last row: what nothing closes, and what is no whole repeat.
std::string ends_words(const FitRequest& design, const FitCandidate& candidate) {
  std::vector<std::string> parts;
  if (candidate.open_ends) parts.emplace_back("its last row is open: a tuck or slip in it, or a crossing after it");
  std::set<std::string> told;
  const auto look = [&](const Strip& strip) {
    const int repeat = strip.grid.rows();
    const int over = candidate.rows % repeat;
    if (over == 0 || !told.insert(strip.name).second) return;
    parts.push_back(fmt::format("'{}' is {} and {} of {} rows", one_line(strip.name),
                                count_of(candidate.rows / repeat, "repeat"), over, repeat));
  };
  for (std::size_t i = 0; i < design.groups.size(); ++i) {
    if (candidate.times[i] == 0) continue;
    for (const Strip& strip : design.groups[i].strips) look(strip);
  }
  if (candidate.edge_columns > 0) look(*design.edge);
  return parts.empty() ? "" : "; " + joined(parts, "; ");
}

std::string gives_words(const FitNearest& nearest) {
  std::vector<std::string> gives;
  gives.reserve(nearest.gives.size());
  for (const FitGive& give : nearest.gives) gives.push_back(give.words);
  return joined(gives, "; ");
}

/// That nearer candidates cannot be made, and what bars the nearest; nothing where it is knitted, or none can be made.
std::string passed_over_words(const Brief& brief, const PieceFit& piece) {
  const std::size_t passed = chosen(brief, piece);
  if (passed == 0) return {};
  const FitCandidate& nearest = piece.fit.candidates.front();
  const std::optional<Barrier> bar = barrier(brief, piece, nearest);
  return fmt::format("; {} nearer cannot be made, the nearest, of {} x {}, since {}", passed,
                     count_of(nearest.columns, "column"), count_of(nearest.rows, "row"), bar ? one_line(bar->why) : "");
}

/// " [cannot be made here: open stack]"; nothing where it can.
std::string barrier_words(const Brief& brief, const PieceFit& piece, const FitCandidate& candidate) {
  const std::optional<Barrier> bar = barrier(brief, piece, candidate);
  return bar ? fmt::format(" [cannot be made here: {}]", bar->name) : "";
}

/// Whether anything of a whole panel is left out.
bool is_cut(const Panel& panel) {
  const auto& cells = panel.grid().cells();
  return std::find(cells.begin(), cells.end(), Cell::none) != cells.end();
}

/// "; then cut to its shape: 20.0 cm wide at the cast-on, ..."; nothing for a straight piece, or one of several panels
/// that is as good as straight.
std::string shape_words(const Brief& brief, const PieceFit& piece) {
  if (piece.target.shape.empty()) return {};
  const PiecePanels made = piece_panels(brief, piece);
  if (!made.why.empty()) return "; its shape cannot be cut: " + one_line(made.why);
  if (made.panels() > 1 && std::none_of(made.cloths.begin(), made.cloths.end(), is_cut)) return {};
  if (made.panels() > 2) return "; the outer panels then cut to its shape";
  if (made.panels() > 1) return "; then cut to its shape";
  return "; then cut to its shape: " + shape_size_words(brief, piece.target, made.panel(0));
}

std::string best_words(const Brief& brief, const PieceFit& piece, const std::string& message) {
  const std::string seams = seams_words(piece.target, brief.article->design).empty() ? "" : " between its seams";
  if (!piece.fit.candidates.empty()) {
    const FitCandidate& best = piece.fit.candidates[chosen(brief, piece)];
    return fmt::format("{}: {}{}{}{}", made_of(best), measured(best, seams), shape_words(brief, piece),
                       ends_words(panel_design(*brief.article, brief.panel), best), passed_over_words(brief, piece));
  }
  if (piece.fit.nearest.empty()) {
    return !message.empty() ? "none: see below"
           : piece.fit.nearest_complete
               ? "nothing fits: all is wider or higher than a grid may be, or seams leave nothing"
               : "nothing fits, nor comes near as far as was looked";
  }
  const FitNearest& near = piece.fit.nearest.front();
  return fmt::format("nothing fits; nearest {}: {} (would have to give: {})", made_of(near.candidate),
                     measured(near.candidate, seams), gives_words(near));
}

/// "2 panels, 3 h each: verified"; `which`: what they are called, and whether they stand as they are.
std::string knitted_words(const Brief& brief, const Plan& plan, const Verification& verification,
                          const std::string& which) {
  if (plan.status == PlanStatus::infeasible) {
    const auto& why = plan.findings;
    return which + ", which this machine cannot make" + (why.empty() ? "" : ": " + one_line(why.front().message));
  }
  const HandWork one = hand_work(plan, brief.effort);
  return fmt::format("{}, {} each: {}", which, rounded_duration(one.hand_ms + one.carriage_ms),
                     verification.verified ? "verified" : "NOT verified: " + verification.message);
}

/// Of a piece, or of pieces alike, which take so many panels, and of these so many inner ones.
std::string knitted_words(const Brief& brief, const PieceWork& work, bool fitted, std::int64_t panels,
                          std::int64_t inner) {
  if (!work.fits) return fitted ? "nothing: its shape cannot be cut" : "nothing: no panel fits";
  const std::string as_is = panels == 1 ? " as it stands" : " as they stand";
  const std::string which =
      inner > 0 ? count_of(panels - inner, "outer panel") : count_of(panels, "panel") + (fitted ? "" : as_is);
  std::string out = knitted_words(brief, work.plan, work.verification, which);
  if (inner > 0) {
    out += "; " + knitted_words(brief, work.inner_plan, work.inner_verification, count_of(inner, "inner panel"));
  }
  return out;
}

std::string article_name(const Brief& brief) {
  return one_line(brief.own_article ? brief.own_article->name : brief.article->article);
}

std::int64_t panels_of(const ArticleJob& article) {
  std::int64_t panels = 0;
  for (const PieceWork& work : article.works) panels += work.fits ? work.panels : 0;
  return panels;
}

bool is_whole(const ArticleJob& article) {
  return std::all_of(article.works.begin(), article.works.end(), [](const PieceWork& work) { return work.fits; });
}

/// Of what the hours are: "In all", or "What fits", which may be nothing.
const char* hours_label(const ArticleJob& article) {
  return is_whole(article) ? "In all" : "What fits";
}

std::string hours_words(const ArticleJob& article) {
  if (panels_of(article) == 0) return "nothing: no hours and no yarn are told";
  const bool none_made = std::none_of(article.works.begin(), article.works.end(), [](const PieceWork& work) {
    return work.fits && (work.plan.status != PlanStatus::infeasible ||
                         (work.inner > 0 && work.inner_plan.status != PlanStatus::infeasible));
  });
  if (none_made)
    return count_of(panels_of(article), "panel") +
           ": not known: " + (panels_of(article) == 1 ? "it cannot be made" : "they cannot be made");
  const WorkTimes& times = article.times;
  return fmt::format(
      "{}: {} by hand + {} of carriage{} = {}", count_of(panels_of(article), "panel"),
      rounded_duration(times.total_ms - times.carriage_ms), rounded_duration(times.carriage_ms),
      article.sewing_ms > 0 ? fmt::format(" + {} of sewing up", rounded_duration(article.sewing_ms)) : "",
      rounded_duration(times.total_ms + article.sewing_ms));
}

/// Where the hours go: "stops: 12 min", one kind of work a line, without those that there are none of.
std::vector<std::string> hours_lines(const ArticleJob& article) {
  const WorkTimes& times = article.times;
  std::vector<std::string> out;
  const auto add = [&](const char* kind, std::int64_t ms) {
    if (ms > 0) out.push_back(fmt::format("{}: {}", kind, rounded_duration(ms)));
  };
  add("stops", times.stops_ms);
  add("re-forming", times.reforms_ms);
  add("crossings", times.crossings_ms);
  add("needles in hold", times.holds_ms);
  add("casting on and binding off", times.shapings_ms);
  add("carriage", times.carriage_ms);
  add("sewing up", article.sewing_ms);
  return out;
}

std::string caution_words(const Caution& caution) {
  return one_line(fmt::format("{} ({})", caution.text, caution.source));
}

void add_lines(std::string& out, const std::string& title, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  out += "\n" + title + "\n";
  for (const std::string& line : lines) out += "  " + one_line(line) + "\n";
}

/// The article's own seams, and those between the panels of a piece.
std::vector<std::string> seam_lines(const Brief& brief, const ArticleFit& fit) {
  const Targets& targets = fit.targets;
  std::vector<std::string> out;
  for (const TargetSeam& seam : targets.seams) {
    out.push_back(fmt::format("{}: {} of {} cm", seam.name, seam.count, range_words(seam.least_mm, seam.greatest_mm)));
  }
  double between = 0;
  for (const PanelSeams& seams : panel_seams(brief, fit)) {
    out.push_back(fmt::format("between the panels of '{}': {} of {} cm", fit.pieces[seams.piece].target.name,
                              seams.count, centimetres(seams.mm)));
    between += static_cast<double>(seams.count) * seams.mm;
  }
  if (!out.empty()) {
    out.push_back(
        fmt::format("in all {} cm", range_words(targets.seam_least_mm + between, targets.seam_greatest_mm + between)));
  }
  return out;
}

std::vector<std::string> filling_lines(const Targets& targets) {
  std::vector<std::string> out;
  out.reserve(targets.filling.size());
  for (const NamedMeasure& each : targets.filling) {
    out.push_back(fmt::format("{} {} cm", each.name, range_words(each.least_mm, each.greatest_mm)));
  }
  return out;
}

/// The candidates that are not told as the best, each with what bars it.
std::vector<std::string> other_lines(const Brief& brief, const PieceFit& piece) {
  std::vector<std::string> out;
  const std::vector<FitCandidate>& fits = piece.fit.candidates;
  const std::size_t best = fits.empty() ? 0 : chosen(brief, piece);
  for (std::size_t i = 0; i < fits.size(); ++i) {
    if (i == best) continue;
    out.push_back(fmt::format("{}: {}{}", made_of(fits[i]), measured(fits[i]), barrier_words(brief, piece, fits[i])));
  }
  for (std::size_t i = 1; i < piece.fit.nearest.size(); ++i) {
    const FitNearest& near = piece.fit.nearest[i];
    out.push_back(fmt::format("{}: {} (would have to give: {}){}", made_of(near.candidate), measured(near.candidate),
                              gives_words(near), barrier_words(brief, piece, near.candidate)));
  }
  return out;
}

}  // namespace

std::vector<ArticleRow> article_rows(const Brief& brief, const ArticleJob& article) {
  struct Alike {
    std::size_t first = 0;
    std::vector<std::string> names{};
    std::int64_t panels = 0;
    std::int64_t inner = 0;
  };
  const std::vector<PieceFit>& pieces = article.fit.pieces;
  std::vector<Alike> kinds;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const Alike& each) {
      const PieceFit& other = pieces[each.first];
      return extent(other.target) == extent(pieces[i].target) && other.target.shape == pieces[i].target.shape &&
             other.as_it_stands == pieces[i].as_it_stands && other.fit == pieces[i].fit;
    });
    if (kind == kinds.end()) kind = kinds.insert(kinds.end(), {.first = i});
    const TargetPiece& target = pieces[i].target;
    kind->names.push_back(one_line(target.name) + (target.count > 1 ? fmt::format(" ({})", target.count) : ""));
    kind->panels += article.works[i].panels;
    kind->inner += article.works[i].inner;
  }
  std::vector<ArticleRow> out;
  out.reserve(kinds.size());
  for (const Alike& kind : kinds) {
    const PieceFit& piece = pieces[kind.first];
    out.push_back(
        {joined(kind.names), extent(piece.target),
         measured(piece.as_it_stands, seams_words(piece.target, brief.article->design)),
         best_words(brief, piece, article.fit.message),
         knitted_words(brief, article.works[kind.first], !piece.fit.candidates.empty(), kind.panels, kind.inner),
         kind.first});
  }
  return out;
}

/// They need no gauge: whatever is known of the article, they are told.
void add_cautions(Facts& facts, const Targets& made) {
  for (const Caution& caution : made.cautions) facts.notes.emplace_back("caution", caution_words(caution));
}

void add_article(Facts& facts, const Brief& brief, const Job& job) {
  if (!brief.article) return;
  if (!job.article) {
    facts.article.emplace_back("Article", article_name(brief) + ", not fitted: a gauge is missing, see below");
    add_cautions(facts, targets(article_of(brief), brief.article->choices));
    return;
  }
  const std::string state = state_words(brief, article_measuring(brief));
  const bool as_panel = job.size && state == state_words(brief, measuring_of(brief));
  facts.article.emplace_back("Article", article_name(brief) + (as_panel ? "" : ", sizes of " + state + " cloth"));
  const auto add = [&](const char* label, const std::vector<std::string>& lines) {
    if (!lines.empty()) facts.article.emplace_back(label, one_line(joined(lines, "; ")));
  };
  facts.article.emplace_back(hours_label(*job.article), hours_words(*job.article));
  add("Hours by kind", hours_lines(*job.article));
  add("Seams", seam_lines(brief, job.article->fit));
  add("Filling", filling_lines(job.article->fit.targets));
  if (job.article->yarn) {
    Facts own;
    const bool whole = is_whole(*job.article);
    add_need(own, *brief.yarn, *job.article->yarn,
             {whole ? "Yarn in all" : "Yarn for it", whole ? "To buy in all" : "To buy for it", ""});
    facts.article.insert(facts.article.end(), own.lines.begin(), own.lines.end());
    Noting notes(facts);
    for (auto& [kind, words] : own.notes) notes.add(std::move(kind), std::move(words));
  }
  for (const ArticleRow& row : article_rows(brief, *job.article)) {
    facts.pieces.emplace_back("Piece", fmt::format("{}: {}", row.piece, row.wanted));
    facts.pieces.emplace_back("As it stands", row.stands);
    facts.pieces.emplace_back("Best fit", row.best);
    facts.pieces.emplace_back("To knit", row.knitted);
  }
  if (const std::string words = charts_words(brief, *job.article); !words.empty()) {
    facts.pieces.emplace_back("Charts here", words);
    for (const FittedPanel& each : job.article->panels) {
      facts.pieces.emplace_back("Folder", each.folder + ": " + to_knit_words(each));
    }
  }
  for (const std::string& text : job.article->notes) facts.notes.emplace_back("article", text);
  add_cautions(facts, job.article->fit.targets);
}

std::string charts_words(const Brief& brief, const ArticleJob& article) {
  if (article.panels.empty()) return {};
  return fmt::format("of the panel as it stands, {}, not of the panels that fit: those have {} of their own",
                     extent_words(brief.panel.grid()), article.panels.size() == 1 ? "a folder" : "folders");
}

std::string to_knit_words(const FittedPanel& panel) {
  return fmt::format("{} to knit, for {}", panel.count, panel.pieces);
}

std::string article_text(const Brief& brief, const ArticleJob& article) {
  std::string out = fmt::format("{}: {}\n", article_name(brief), one_line(brief.panel.name()));
  for (const ArticleRow& row : article_rows(brief, article)) {
    out += fmt::format("\n{}: {}\n", row.piece, row.wanted);
    out += fmt::format("  as it stands   {}\n  best fit       {}\n  to knit        {}\n", row.stands, row.best,
                       row.knitted);
    const std::vector<std::string> others = other_lines(brief, article.fit.pieces[row.first]);
    for (std::size_t i = 0; i < others.size(); ++i)
      out += (i == 0 ? "  others         " : "                 ") + others[i] + "\n";
  }
  out += fmt::format("\n{}: {}\n", is_whole(article) ? "in all" : "what fits", hours_words(article));
  add_lines(out, "Where the hours go", hours_lines(article));
  std::vector<std::string> folders;
  folders.reserve(article.panels.size());
  for (const FittedPanel& each : article.panels) folders.push_back(each.folder + ": " + to_knit_words(each));
  add_lines(out, "Charts and instructions of the fitted panels, in folders beside this file", folders);
  add_lines(out, "Seams", seam_lines(brief, article.fit));
  add_lines(out, "Filling", filling_lines(article.fit.targets));
  add_lines(out, "Where the figures come from", article.fit.targets.sources);
  add_lines(out, "Worth knowing", article.notes);
  std::vector<std::string> cautions;
  for (const Caution& caution : article.fit.targets.cautions) cautions.push_back(caution_words(caution));
  add_lines(out, "Cautions", cautions);
  return out;
}

}  // namespace latchwork::inline v0::report
