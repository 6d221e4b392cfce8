// The panels that an article's best fits are knitted of, each as a brief of its own.
#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "brief/article.hpp"
#include "brief/run.hpp"
#include "latchwork/brief.hpp"
#include "latchwork/error.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

[[noreturn]] void refuse(ErrorCode code, const std::string& field, const std::string& message) {
  Place place;
  place.field = field;
  throw Error(code, place, field + " " + message);
}

/// Small letters, digits and hyphens, which every file system takes, and takes for different where they are.
std::string slug(std::string_view name) {
  constexpr std::size_t longest = 40;
  std::string out;
  for (const char each : name) {
    const char small = each >= 'A' && each <= 'Z' ? static_cast<char>(each - 'A' + 'a') : each;
    const bool kept = (small >= 'a' && small <= 'z') || (small >= '0' && small <= '9');
    if (kept) {
      out += small;
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
    if (out.size() == longest) break;
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out.empty() ? "piece" : out;
}

/// Which of a piece's panels are of one cloth, by index from the left, rising.
using Places = std::vector<int>;

/// Whether these are all inner panels, or those of the left or of the right half, of a shaped piece.
bool are_inner(const Places& places, int panels, bool left, bool right) {
  Places inner;
  for (int i = 1; i < panels - 1; ++i) {
    if (2 * i > panels - 1 ? right : left) inner.push_back(i);
  }
  return !inner.empty() && places == inner;
}

/// What of a piece is knitted so, and what its folder's name ends in.
struct PlaceWords {
  std::string words;   ///< "left panels", "right panel, mirrored"; empty for all
  std::string ending;  ///< "", "-mirrored", "-inner", "-inner-mirrored"
};
PlaceWords place_words(const Places& places, int panels, bool shaped) {
  const int last = panels - 1;
  const auto count = static_cast<int>(places.size());
  if (count == panels) return {};
  if (!shaped || panels == 2) {
    const bool mirrored = places.front() > 0;
    const bool middle = !mirrored && panels % 2 == 1;
    return {fmt::format("{}{} panel{}{}", mirrored ? "right" : "left", middle ? " and middle" : "",
                        middle || panels >= 4 ? "s" : "", mirrored ? ", mirrored" : ""),
            mirrored ? "-mirrored" : ""};
  }
  const char* s = count > 1 ? "s" : "";
  if (places == Places{0}) return {"left outer panel", ""};
  if (places == Places{last}) return {"right outer panel, mirrored", "-mirrored"};
  if (are_inner(places, panels, true, true)) return {panels == 3 ? "middle panel" : "inner panels", "-inner"};
  if (are_inner(places, panels, true, false)) {
    return {fmt::format("left inner{} panel{}", panels % 2 == 1 ? " and middle" : "", s), "-inner"};
  }
  if (are_inner(places, panels, false, true))
    return {fmt::format("right inner panel{}, mirrored", s), "-inner-mirrored"};
  std::vector<std::string> numbers;
  for (const int place : places) numbers.push_back(std::to_string(place + 1));
  return {fmt::format("panel{} {} of {}", s, joined(numbers), panels), places.front() == 0 ? "" : "-inner"};
}

class Listing {
 public:
  explicit Listing(const Brief& brief) : brief_(brief) {}

  void add(const PieceFit& piece, int index) {
    const report::PiecePanels made = report::piece_panels(brief_, piece);
    if (!made.fits) return;
    for (std::size_t cloth = 0; cloth < made.cloths.size(); ++cloth) {
      Places places;
      for (int i = 0; i < made.panels(); ++i) {
        if (made.cloth_of[static_cast<std::size_t>(i)] == cloth) places.push_back(i);
      }
      const PlaceWords words = place_words(places, made.panels(), !piece.target.shape.empty());
      const std::string name = one_line(piece.target.name);
      // Of those right of the middle the outermost stands for all.
      const bool mirrored = 2 * places.front() > made.panels() - 1;
      add(made.cloths[cloth], {.folder = "fitted-" + slug(piece.target.name) + words.ending,
                               .pieces = words.words.empty() ? name : name + ", " + words.words,
                               .piece = index,
                               .panel = mirrored ? places.back() : places.front(),
                               .count = std::int64_t{piece.target.count} * std::ssize(places)});
    }
  }

  std::vector<FittedPanel> panels;

 private:
  void add(const Panel& panel, FittedPanel told) {
    if (panel.grid() == brief_.panel.grid()) return;
    const auto alike = std::find_if(cloths_.begin(), cloths_.end(),
                                    [&](const Panel& other) { return report::is_same_cloth(other, panel); });
    if (alike != cloths_.end()) {
      FittedPanel& known = panels[static_cast<std::size_t>(alike - cloths_.begin())];
      known.pieces += ", " + told.pieces;
      known.count += told.count;
      return;
    }
    const std::string folder = told.folder;
    for (int n = 2; is_taken(told.folder); ++n) told.folder = fmt::format("{}-{}", folder, n);
    cloths_.push_back(panel);
    panels.push_back(std::move(told));
  }

  bool is_taken(const std::string& folder) const {
    return std::any_of(panels.begin(), panels.end(), [&](const FittedPanel& each) { return each.folder == folder; });
  }

  const Brief& brief_;
  std::vector<Panel> cloths_;  ///< one of each
};

/// What the yarn of one panel is reckoned by; nothing where the yarns of rows are those of another panel.
std::optional<YarnRequest> yarn_of_one(const Brief& brief, const Panel& panel) {
  std::optional<YarnRequest> out = brief.yarn;
  if (!out) return out;
  if (!out->rows.empty() && panel.grid().rows() != brief.panel.grid().rows()) return std::nullopt;
  out->pieces = 1;
  out->seam_mm = 0;
  return out;
}

}  // namespace

std::vector<FittedPanel> report::fitted_panels(const Brief& brief, const ArticleFit& fit) {
  Listing listing(brief);
  for (std::size_t i = 0; i < fit.pieces.size(); ++i) listing.add(fit.pieces[i], static_cast<int>(i));
  return std::move(listing.panels);
}

Brief fitted_brief(const Brief& brief, const Job& job, std::size_t index) {
  if (!brief.article) refuse(ErrorCode::bad_argument, "brief.article", "is none: there is nothing to be fitted");
  if (!job.article) refuse(ErrorCode::size_mismatch, "job.article", "is missing: the brief names an article");
  if (job.article->fit != report::article_fit_of(brief)) {
    refuse(ErrorCode::bad_argument, "job.article.fit", "is not that of the brief's article by its panel");
  }
  const std::vector<FittedPanel> panels = report::fitted_panels(brief, job.article->fit);
  if (index >= panels.size()) {
    refuse(
        ErrorCode::bad_argument, "index",
        fmt::format("is {}; the article has {}, counted from 0", index, count_of(std::ssize(panels), "fitted panel")));
  }
  const FittedPanel& told = panels[index];
  const report::PiecePanels of =
      report::piece_panels(brief, job.article->fit.pieces[static_cast<std::size_t>(told.piece)]);
  const Panel& made = of.panel(static_cast<std::size_t>(told.panel));
  const TargetPiece& piece = job.article->fit.pieces[static_cast<std::size_t>(told.piece)].target;
  const FitRequest& design = brief.article->design;
  const bool sewn = (of.panels() > 1 && design.seam_stitches > 0) || report::edge_seams(piece, design).any();
  // Its size is that of the whole panel, for nobody reads there what it is for.
  Panel panel(fmt::format("{}: {}{}", brief.panel.name(), told.pieces, sewn ? ", seams included" : ""), made.grid(),
              {made.bands().begin(), made.bands().end()});
  panel.set_axis_half_columns(made.axis_half_columns());
  Brief out = brief;
  out.yarn = yarn_of_one(brief, panel);
  out.panel = std::move(panel);
  out.substitutes = report::article_substitutes(brief);
  out.state = report::article_state(brief);
  out.article.reset();
  out.own_article.reset();
  return out;
}

}  // namespace latchwork::inline v0
