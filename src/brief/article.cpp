#include "brief/article.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "article_fit/outline.hpp"
#include "brief/run.hpp"
#include "brief/shape.hpp"
#include "latchwork/error.hpp"
#include "latchwork/finding.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "yarn_need/balls.hpp"
#include "yarn_need/decide.hpp"

namespace latchwork::inline v0::report {
namespace {

void add_all_once(std::vector<std::string>& texts, const std::vector<std::string>& more) {
  std::set<std::string> told(texts.begin(), texts.end());
  for (const std::string& text : more) {
    if (told.insert(text).second) texts.push_back(text);
  }
}

/// One yarn's part of two kinds of pieces together. What is bought is linear in weight and margin, so that it adds up.
void add_share(YarnShare& share, const YarnShare& more, const Yarn& yarn, const std::string& field) {
  share.weight_g += more.weight_g;
  share.spread_g += more.spread_g;
  share.margin_g += more.margin_g;
  share.length_m += more.length_m;
  share.buy_g += more.buy_g;
  if (!(share.buy_g <= most_need)) refuse_need(field + ".number", share.buy_g, "g");
  share.balls = balls_of(share.buy_g, yarn.ball_g, field + ".ball_g");
}

/// The need of more pieces, by the routes that all can go. All are measured by the same swatches, so that of pieces of
/// the same textures spreads and margins add up; of unlike ones, which are not all off together, it is less.
void add_need(YarnNeed& need, const YarnNeed& more, const std::vector<Yarn>& yarns) {
  std::erase_if(need.estimates, [&](const YarnEstimate& estimate) {
    return std::none_of(more.estimates.begin(), more.estimates.end(),
                        [&](const YarnEstimate& other) { return other.route == estimate.route; });
  });
  for (YarnEstimate& estimate : need.estimates) {
    const YarnEstimate& other = *std::find_if(more.estimates.begin(), more.estimates.end(),
                                              [&](const YarnEstimate& each) { return each.route == estimate.route; });
    estimate.weight_g += other.weight_g;
    estimate.spread_g += other.spread_g;
    estimate.margin_g += other.margin_g;
    estimate.spread_known = estimate.spread_known && other.spread_known;
    estimate.length_m += other.length_m;
    for (std::size_t i = 0; i < estimate.shares.size(); ++i) {
      add_share(estimate.shares[i], other.shares[i], yarns[i], fmt::format("yarns[{}]", i));
    }
    add_all_once(estimate.notes, other.notes);
  }
  add_all_once(need.missing, more.missing);
  add_all_once(need.warnings, more.warnings);
}

/// Seams of the whole article: its own, a range at its middle, and those between the panels of its pieces.
double seams_mm(const Brief& brief, const ArticleFit& fit) {
  double out = (fit.targets.seam_least_mm + fit.targets.seam_greatest_mm) / 2;
  for (const PanelSeams& seams : panel_seams(brief, fit)) out += static_cast<double>(seams.count) * seams.mm;
  return out;
}

/// What bars reckoning the yarn of these pieces; nothing where nothing does.
std::optional<std::string> no_yarn(const Brief& brief, const std::vector<PiecePanel>& pieces, double seam_mm) {
  constexpr int most_pieces = 10'000;
  constexpr double most_seam_mm = 1e6;
  if (seam_mm > most_seam_mm)
    return fmt::format("the seams come to {:.0f} m, which no need of yarn is reckoned for", seam_mm / 1000);
  if (seam_mm > 0 && brief.yarn->yarns[0].number.number == 0)
    return "its seams cannot be weighed: the number of the yarn is not known";
  for (const PiecePanel& piece : pieces) {
    if (!piece.fits) continue;
    if (piece.panels > most_pieces) {
      return fmt::format("{} are more than yarn is reckoned for", count_of(piece.panels, "panel"));
    }
    const int rows = piece.panel.grid().rows();
    if (brief.yarn->rows.empty() || rows == brief.panel.grid().rows()) continue;
    return fmt::format("yarn.json says which yarns knit which of {}, and the best fit has {}",
                       count_of(brief.panel.grid().rows(), "row"), rows);
  }
  return std::nullopt;
}

constexpr std::int64_t most_work_ms = std::int64_t{1} << 60;

[[noreturn]] void too_much(const char* field, const char* what) {
  Place place;
  place.field = field;
  throw Error(ErrorCode::too_large, place, fmt::format("{}: {} past {} ms", field, what, most_work_ms));
}

/// The times of so many panels more. No kind of work is more than the total, so that is all there is to look at.
void add_times(WorkTimes& sum, const WorkTimes& one, int panels) {
  if (one.total_ms > (most_work_ms - sum.total_ms) / panels) too_much("article", "its panels' work is");
  for (const auto kind : {&WorkTimes::stops_ms, &WorkTimes::reforms_ms, &WorkTimes::crossings_ms, &WorkTimes::holds_ms,
                          &WorkTimes::shapings_ms, &WorkTimes::carriage_ms, &WorkTimes::total_ms}) {
    sum.*kind += panels * (one.*kind);
  }
}

std::int64_t sewing_ms(double seam_mm, std::int64_t ms_per_m) {
  const double ms = seam_mm / 1000 * static_cast<double>(ms_per_m);
  if (!(ms <= static_cast<double>(most_work_ms))) too_much("article.seam_ms_per_m", "sewing up comes to");
  return std::llround(ms);
}

/// Of the panels of all pieces that fit, with the seams. @throws Error too_large, as yarn_need().
std::optional<YarnNeed> pieces_yarn(const Brief& brief, const std::vector<PiecePanel>& pieces,
                                    const ArticleJob& article) {
  std::optional<YarnNeed> need;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const PiecePanel& piece = pieces[i];
    if (!piece.fits) continue;
    const auto add = [&](const Panel& panel, int panels) {
      YarnRequest request = *brief.yarn;
      request.pieces = panels;
      request.seam_mm = need ? 0 : article.seam_mm;
      YarnNeed own = yarn_need(panel, brief.swatch, request);
      // Their grams are these panels'.
      const std::string name = one_line(article.fit.pieces[i].target.name);
      for (std::string& warning : own.warnings) {
        warning = fmt::format("of the {} of '{}' {}", count_of(panels, "panel"), name, warning);
      }
      if (need) {
        add_need(*need, own, request.yarns);
      } else {
        need = std::move(own);
      }
    };
    add(piece.panel, piece.panels - piece.inner_panels);
    if (piece.inner) add(*piece.inner, piece.inner_panels);
  }
  if (need) {
    need->apart = apart(need->estimates);
    decide(*need);
  }
  return need;
}

/// Nothing, and a note of why, where it cannot be reckoned: the plans, which are made by then, do without it.
std::optional<YarnNeed> article_yarn(const Brief& brief, const std::vector<PiecePanel>& pieces, ArticleJob& article) {
  std::optional<std::string> barred = no_yarn(brief, pieces, article.seam_mm);
  if (!barred) {
    try {
      return pieces_yarn(brief, pieces, article);
    } catch (const Error& error) {
      if (error.code() != ErrorCode::too_large) throw;
      barred = one_line(error.what());
    }
  }
  article.notes.push_back("the article's yarn is not reckoned: " + *barred);
  return std::nullopt;
}

void add_notes(const Brief& brief, ArticleJob& article) {
  const ArticleFit& fit = article.fit;
  if (!fit.message.empty()) article.notes.push_back(fit.message);
  std::int64_t others = 0;
  for (const TargetPiece& target : fit.targets.pieces) others += target.count;
  std::vector<std::string> without;
  for (std::size_t i = 0; i < fit.pieces.size(); ++i) {
    others -= fit.pieces[i].target.count;
    const bool shaped = !fit.pieces[i].target.shape.empty();
    const std::optional<PiecePanels> made = shaped ? std::optional(piece_panels(brief, fit.pieces[i])) : std::nullopt;
    const std::string name = one_line(fit.pieces[i].target.name);
    if (made) {
      for (const std::string& each : made->advice)
        article.notes.push_back(fmt::format("the shape of '{}': {}", name, each));
    }
    if (made && !made->why.empty()) {
      article.notes.push_back(
          fmt::format("the shape of '{}' cannot be cut, so that it is in none of these figures: {}", name, made->why));
    } else if (!article.works[i].fits) {
      without.push_back(fmt::format("'{}'", name));
    } else if (article.works[i].plan.status == PlanStatus::infeasible) {
      article.notes.push_back(fmt::format("the hours are without {}'{}', whose panel has no plan on this machine",
                                          article.works[i].inner > 0 ? "the outer panels of " : "", name));
    }
    if (article.works[i].inner > 0 && article.works[i].inner_plan.status == PlanStatus::infeasible) {
      article.notes.push_back(
          fmt::format("the hours are without the inner panels of '{}', which have no plan on this machine", name));
    }
  }
  if (!without.empty()) {
    article.notes.push_back(fmt::format("no panel that fits {}: no hours and no yarn are told for {}", joined(without),
                                        without.size() == 1 ? "it" : "them"));
  }
  if (article.seam_mm > 0 && brief.article->seam_ms_per_m == 0) {
    article.notes.push_back(fmt::format(
        "the hours are without sewing up {} cm of seams: no time for a metre of seam (seam_ms_per_m) is given",
        centimetres(article.seam_mm)));
  }
  if (others > 0) {
    article.notes.push_back(fmt::format("{} not made as this panel {} in none of these figures",
                                        count_of(others, "piece"), others == 1 ? "is" : "are"));
  }
  if (!brief.yarn) article.notes.emplace_back("no yarn is reckoned: the brief has no yarn.json");
}

}  // namespace

Article article_of(const Brief& brief) {
  return brief.own_article ? *brief.own_article : built_in_article(brief.article->article);
}

ArticleFit article_fit_of(const Brief& brief, const FitOptions& options) {
  ArticleRequest request = *brief.article;
  if (request.design.needles == 0) request.design.needles = brief.machine.needles;
  request.design.substitutes = article_substitutes(brief);
  request.design.state = article_state(brief);
  return fit_article(article_of(brief), request, brief.panel, brief.swatch, options);
}

FitRequest design_of(const Brief& brief) {
  FitRequest out = panel_design(*brief.article, brief.panel);
  out.substitutes = article_substitutes(brief);
  out.state = article_state(brief);
  return out;
}

bool is_within(const Brief& brief, const FitCandidate& stands) {
  const std::optional<double>& most = brief.article->design.tolerance_percent;
  return !most || (std::abs(stands.width_error_percent) <= *most && std::abs(stands.height_error_percent) <= *most);
}

std::string bar_name(FindingCode code) {
  std::string out(finding_name(code));
  std::replace(out.begin(), out.end(), '_', ' ');
  return out;
}

namespace {

/// The first of a piece's panels that one of them is made as: as of fitted(), those right of the middle are mirrored;
/// of a shaped piece the outer ones have its edges.
int made_as(int panel, int panels, bool shaped) {
  if (panel == 0 || panel == panels - 1) return panel;
  const bool mirrored = 2 * panel > panels - 1;
  if (shaped) return mirrored ? panels - 2 : 1;
  return mirrored ? panels - 1 : 0;
}

}  // namespace

std::optional<Barrier> barrier(const Brief& brief, const PieceFit& piece, const FitCandidate& candidate) {
  const bool shaped = !piece.target.shape.empty();
  const FitRequest design = design_of(brief);
  for (int index = 0; index < candidate.panels; ++index) {
    if (made_as(index, candidate.panels, shaped) != index) continue;
    std::optional<Panel> panel;
    try {
      panel = fitted_piece(piece.target, design, candidate, brief.swatch, index);
    } catch (const Error& error) {
      if (!shaped) throw;
      return shape_barrier(brief, piece.target, candidate, index, error);
    }
    for (const Finding& finding : findings(panel->grid(), brief.machine)) {
      if (finding.severity != Severity::error) continue;
      return Barrier{bar_name(finding.code), finding.message};
    }
  }
  return std::nullopt;
}

std::size_t chosen(const Brief& brief, const PieceFit& piece) {
  const std::vector<FitCandidate>& all = piece.fit.candidates;
  const auto first =
      std::find_if(all.begin(), all.end(), [&](const FitCandidate& each) { return !barrier(brief, piece, each); });
  return first == all.end() ? 0 : static_cast<std::size_t>(first - all.begin());
}

bool is_same_cloth(const Panel& a, const Panel& b) {
  return a.grid() == b.grid() && std::equal(a.bands().begin(), a.bands().end(), b.bands().begin(), b.bands().end());
}

namespace {

bool has_own_shape(const Grid& grid) {
  for (int row = 1; row <= grid.rows(); ++row) {
    if (grid.at(row, 0) == Cell::none || grid.at(row, grid.columns() - 1) == Cell::none) return true;
  }
  return false;
}

/// The brief's panel, where nothing is fitted, in the piece's shape.
Panel cut_as_it_stands(const Brief& brief, const TargetPiece& piece, const FitCandidate& stands) {
  if (piece.shape.empty() || has_own_shape(brief.panel.grid())) return brief.panel;
  return shaped(brief.panel,
                piece_outline(allowed(piece, stands), brief.panel, brief.swatch, piece_measuring(brief, piece)));
}

}  // namespace

PiecePanels piece_panels(const Brief& brief, const PieceFit& piece) {
  const bool stands = piece.fit.candidates.empty();
  const FitRequest design = stands ? FitRequest{} : design_of(brief);
  const FitCandidate best = stands ? FitCandidate{} : piece.fit.candidates[chosen(brief, piece)];
  const int panels = stands ? 1 : best.panels;
  const bool fits = !stands || is_within(brief, piece.as_it_stands);
  const auto cut = [&](const TargetPiece& to, int index) {
    return stands ? cut_as_it_stands(brief, to, piece.as_it_stands)
                  : fitted_piece(to, design, best, brief.swatch, index);
  };
  TargetPiece straight = piece.target;
  straight.shape.clear();
  const auto uncut = [&](std::string why) {
    const std::vector<std::size_t> first(static_cast<std::size_t>(panels), 0);
    return PiecePanels{{cut(straight, 0)}, first, false, std::move(why), {}};
  };
  if (!fits) return uncut("");
  const bool shaped = !piece.target.shape.empty();
  try {
    PiecePanels out{{}, {}, fits, "", {}};
    std::map<int, std::size_t> made;  // which cloth the panels are that others are made as
    for (int i = 0; i < panels; ++i) {
      const int as = made_as(i, panels, shaped);
      if (!made.contains(as)) {
        Panel cloth = cut(piece.target, as);
        const auto same = std::find_if(out.cloths.begin(), out.cloths.end(),
                                       [&](const Panel& other) { return is_same_cloth(other, cloth); });
        made[as] = static_cast<std::size_t>(same - out.cloths.begin());
        if (same == out.cloths.end()) out.cloths.push_back(std::move(cloth));
      }
      out.cloth_of.push_back(made[as]);
    }
    if (shaped) out.advice = shape_advice(cut(straight, 0), out.panel(0));
    return out;
  } catch (const Error& error) {
    if (!shaped) throw;
    return uncut(stands ? error.what() : barrier(brief, piece, best)->why);
  }
}

std::vector<PiecePanel> piece_panels(const Brief& brief, const ArticleFit& fit) {
  std::vector<PiecePanel> out;
  out.reserve(fit.pieces.size());
  for (const PieceFit& piece : fit.pieces) {
    const PiecePanels made = piece_panels(brief, piece);
    PiecePanel& each = out.emplace_back(PiecePanel{made.panel(0), piece.target.count * made.panels(), made.fits});
    const bool differ = made.fits && !piece.target.shape.empty() && made.panels() > 2 && made.cloth_of[1] != 0;
    if (!differ) continue;
    each.inner = made.panel(1);
    each.inner_panels = piece.target.count * (made.panels() - 2);
  }
  return out;
}

std::vector<PanelSeams> panel_seams(const Brief& brief, const ArticleFit& fit) {
  std::vector<PanelSeams> out;
  for (std::size_t i = 0; i < fit.pieces.size(); ++i) {
    const PieceFit& piece = fit.pieces[i];
    if (piece.fit.candidates.empty()) continue;
    const FitCandidate& best = piece.fit.candidates[chosen(brief, piece)];
    if (best.panels < 2 || !piece_panels(brief, piece).fits) continue;
    out.push_back({i, std::int64_t{piece.target.count} * (best.panels - 1), best.height_mm});
  }
  return out;
}

EdgeSeams edge_seams(const TargetPiece& piece, const FitRequest& design) {
  const FitRequest wanted = piece_request(piece, design);
  return {wanted.seam_left + wanted.seam_right, wanted.seam_bottom + wanted.seam_top};
}

void reckon(const Brief& brief, ArticleJob& article) {
  article.panels = fitted_panels(brief, article.fit);
  article.times = {};
  article.notes.clear();
  bool fits = false;
  for (const PieceWork& work : article.works) {
    fits = fits || work.fits;
    if (!work.fits) continue;
    for (const bool inner : {false, true}) {
      const Plan& plan = inner ? work.inner_plan : work.plan;
      const int panels = inner ? work.inner : work.panels - work.inner;
      if (panels == 0 || plan.status == PlanStatus::infeasible) continue;
      add_times(article.times, work_times(plan, brief.effort), panels);
    }
  }
  article.seam_mm = fits ? seams_mm(brief, article.fit) : 0;
  article.sewing_ms = sewing_ms(article.seam_mm, brief.article->seam_ms_per_m);
  add_notes(brief, article);
  article.yarn.reset();
  if (brief.yarn) article.yarn = article_yarn(brief, piece_panels(brief, article.fit), article);
}

ArticleJob article_of(const Brief& brief, const Job& job, ArticleFit fit, const PlanOptions& options) {
  ArticleJob out;
  out.fit = std::move(fit);
  const std::vector<PiecePanel> pieces = piece_panels(brief, out.fit);
  out.works.reserve(pieces.size());
  std::size_t steps = pieces.size();
  for (const PiecePanel& piece : pieces) steps += piece.inner ? 1U : 0U;
  struct Planned {
    const Grid* grid = nullptr;
    Plan plan;
    Verification verification;
  };
  std::vector<Planned> before{{&brief.panel.grid(), job.plan, job.verification}};
  std::size_t step = 0;
  const auto planned = [&](const Grid& grid) -> Planned {
    const std::size_t here = step++;
    const auto alike =
        std::find_if(before.begin(), before.end(), [&](const Planned& each) { return *each.grid == grid; });
    if (alike != before.end()) return *alike;
    PlanOptions planning = options;
    planning.progress = share_of(options.progress, static_cast<double>(here) / static_cast<double>(steps),
                                 1 / static_cast<double>(steps));
    Plan made = plan(grid, brief.machine, brief.effort, planning);
    Verification verification = verify(grid, made, {.stop = options.stop, .progress = {}});
    return before.emplace_back(Planned{&grid, std::move(made), std::move(verification)});
  };
  for (const PiecePanel& piece : pieces) {
    PieceWork work;
    work.panels = piece.panels;
    work.fits = piece.fits;
    Planned outer = planned(piece.panel.grid());
    work.plan = std::move(outer.plan);
    work.verification = std::move(outer.verification);
    if (piece.inner) {
      Planned inner = planned(piece.inner->grid());
      work.inner = piece.inner_panels;
      work.inner_plan = std::move(inner.plan);
      work.inner_verification = std::move(inner.verification);
    }
    out.works.push_back(std::move(work));
  }
  reckon(brief, out);
  return out;
}

}  // namespace latchwork::inline v0::report
