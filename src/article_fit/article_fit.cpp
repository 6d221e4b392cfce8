#include "latchwork/article_fit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "article_fit/check.hpp"
#include "article_fit/together.hpp"
#include "fit/ranking.hpp"
#include "fit/request.hpp"
#include "latchwork/size.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

/// A piece's name, or that of the piece that it is a part of: "panel" of "panel, lower left".
bool is_called(const TargetPiece& piece, const std::string& name) {
  return piece.name == name || piece.name.starts_with(name + ", ");
}

FitCandidate as_it_stands(const FitRequest& wanted, const Panel& panel, const Swatch& swatch) {
  const Size measured = size(panel, swatch, fitting::measuring_of(wanted, 0, 1));
  const fitting::Target wide = fitting::width_target(wanted);
  const fitting::Target high = fitting::height_target(wanted);
  FitCandidate out;
  out.columns = panel.grid().columns();
  out.rows = panel.grid().rows();
  out.width_mm = measured.width_mm;
  out.height_mm = measured.height_mm;
  out.width_error_mm = wide.error_mm(out.width_mm);
  out.height_error_mm = high.error_mm(out.height_mm);
  out.width_error_percent = wide.percent(out.width_mm);
  out.height_error_percent = high.percent(out.height_mm);
  out.error = fitting::rank_error(wide.relative(out.width_mm), high.relative(out.height_mm));
  return out;
}

/// Progress of one fit as progress of the whole: from `done` of it on, and `each` of it in all.
FitOptions part_of(const FitOptions& whole, double done, double each) {
  FitOptions out;
  out.stop = whole.stop;
  if (whole.progress) {
    out.progress = [&whole, done, each](const Progress& part) {
      Progress told = part;
      told.share = done + each * part.share;
      whole.progress(told);
    };
  }
  return out;
}

}  // namespace

std::vector<TargetPiece> made_pieces(const Targets& targets, const std::vector<std::string>& made) {
  if (made.empty()) return targets.pieces;
  for (std::size_t i = 0; i < made.size(); ++i) {
    const auto named = [&](const TargetPiece& piece) { return is_called(piece, made[i]); };
    if (std::any_of(targets.pieces.begin(), targets.pieces.end(), named)) continue;
    std::string there;
    for (const TargetPiece& piece : targets.pieces) there += (there.empty() ? "'" : ", '") + piece.name + "'";
    fitting::refuse(fmt::format("made[{}]", i),
                    fmt::format("'{}' is no piece here; there are {}", shown(made[i]), there));
  }
  std::vector<TargetPiece> out;
  std::copy_if(targets.pieces.begin(), targets.pieces.end(), std::back_inserter(out), [&](const TargetPiece& piece) {
    return std::any_of(made.begin(), made.end(), [&](const std::string& name) { return is_called(piece, name); });
  });
  return out;
}

ArticleFit fit_article(const Article& article, const ArticleRequest& request, const Panel& panel, const Swatch& swatch,
                       const FitOptions& options) {
  require_article_request(request);
  ArticleFit out;
  out.targets = targets(article, request.choices);
  const std::vector<TargetPiece> pieces = made_pieces(out.targets, request.made);
  const bool one_band = panel.bands().size() == 1;
  if (!one_band) {
    out.message = fmt::format(
        "nothing was fitted: the panel has {}; no strip runs from its first row to its last, so none can be repeated",
        count_of(std::ssize(panel.bands()), "band"));
  }
  const FitRequest design = one_band ? panel_design(request, panel) : request.design;
  std::vector<FitRequest> wanted;
  wanted.reserve(pieces.size());
  out.pieces.reserve(pieces.size());
  const double each = 1.0 / static_cast<double>(pieces.size() + 1);  // the last is for choosing together
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    PieceFit piece;
    piece.target = pieces[i];
    FitRequest own = piece_request(pieces[i], design);
    const auto alike = std::find(wanted.begin(), wanted.end(), own);
    if (alike != wanted.end()) {
      const PieceFit& before = out.pieces[static_cast<std::size_t>(alike - wanted.begin())];
      piece.as_it_stands = before.as_it_stands;
      piece.fit = before.fit;
    } else {
      piece.as_it_stands = as_it_stands(own, panel, swatch);
      if (one_band) piece.fit = fit(own, swatch, part_of(options, static_cast<double>(i) * each, each));
    }
    wanted.push_back(std::move(own));
    out.pieces.push_back(std::move(piece));
  }
  if (one_band) {
    out.message = choose_together(wanted, out.pieces, swatch, part_of(options, 1 - each, 0));
    if (options.progress) options.progress({.bound_ms = 0, .best_ms = 0, .share = 1});
  }
  return out;
}

}  // namespace latchwork::inline v0
