// The drawing of a job: the article's pieces as they are made, and the brief's panel.
#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "brief/article.hpp"
#include "brief/facts.hpp"
#include "brief/run.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/error.hpp"
#include "latchwork/schematic.hpp"
#include "schematic/layout.hpp"
#include "schematic/sewn.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

/// What is under a millimetre, or larger than a field, has no scale; and some outlines have too many corners.
bool has_scale(const SchematicPiece& piece) {
  constexpr double most_mm = 1e6;
  const schematics::Box box = schematics::box_of(piece.outline);
  const double width = box.right - box.left;
  const double height = box.high - box.low;
  return std::min(width, height) >= 1 && std::max(width, height) <= most_mm &&
         piece.outline.size() <= Schematic::max_points;
}

/// Nothing where a row has no stitch or the cloth falls in two: there is no one outline then; nor without a gauge.
std::optional<SchematicPiece> panel_as_it_stands(const Brief& brief) {
  try {
    SchematicPiece piece = schematic_piece(brief.panel, brief.swatch, report::measuring_of(brief));
    if (has_scale(piece)) return piece;
  } catch (const Error& error) {
    const bool has_no_outline = error.code() == ErrorCode::bad_argument && error.place().field == "grid";
    if (!has_no_outline && error.code() != ErrorCode::no_gauge) throw;
  }
  return std::nullopt;
}

/// "left and lower".
std::string sewn_edges(const TargetPiece& piece) {
  std::vector<std::string> edges;
  for (const auto& [use, name] : {std::pair{piece.left, "left"}, std::pair{piece.right, "right"},
                                  std::pair{piece.lower, "lower"}, std::pair{piece.upper, "upper"}}) {
    if (use == EdgeUse::seamed) edges.emplace_back(name);
  }
  if (edges.size() < 2) return joined(edges);
  const std::string last = edges.back();
  edges.pop_back();
  return fmt::format("{} and {}", joined(edges), last);
}

/// One kind of piece, and which pieces are made so.
struct Kind {
  std::vector<SchematicPiece> drawn;
  std::vector<std::string> names;
  std::vector<std::string> sewn;  ///< of each: what sewn_edges() says
};

class PiecesDrawn {
 public:
  PiecesDrawn(const Brief& brief, const ArticleFit& fit) : brief_(brief), fit_(fit) {
    for (const PieceFit& piece : fit.pieces) add(piece);
  }

  /// Adds them, and what is to be said of them.
  void put_into(Schematic& schematic, bool panel_too) {
    const std::size_t room = Schematic::max_pieces - (panel_too ? 1 : 0);
    for (Kind& kind : kinds_) {
      const std::string name = joined(kind.names);
      if (schematic.pieces.size() + kind.drawn.size() > room) {
        left_out_.push_back(fmt::format("'{}' ({})", name, count_of(std::ssize(kind.drawn), "panel")));
        continue;
      }
      const std::string first = kind.names.size() > 2
                                    ? fmt::format("{} and {} more", kind.names.front(), kind.names.size() - 1)
                                    : joined(kind.names, " and ");
      if (kind.names.size() > 2) notes_.push_back(fmt::format("Drawn as '{}': {}.", first, name));
      for (std::size_t i = 0; i < kind.drawn.size(); ++i) {
        SchematicPiece& piece = kind.drawn[i];
        piece.name =
            kind.drawn.size() == 1 ? first : fmt::format("{}: panel {} of {}", first, i + 1, kind.drawn.size());
        if (kinds_.size() > 1 || panel_too) {
          for (SchematicMeasure& measure : piece.measures) {
            if (schematics::reaches_over(kind.drawn, i, measure)) measure.label = first + ", " + measure.label;
          }
        }
      }
      tell_edges(kind);
      std::move(kind.drawn.begin(), kind.drawn.end(), std::back_inserter(schematic.pieces));
    }
    tell_seams();
    if (!left_out_.empty()) notes_.push_back(fmt::format("Not drawn: {}.", joined(left_out_)));
    constexpr std::size_t most = Schematic::max_pieces - 1;  // one more is added
    if (notes_.size() > most) notes_.resize(most);
    schematic.notes = std::move(notes_);
  }

  bool empty() const { return kinds_.empty(); }
  bool has(const Panel& panel) const {
    return std::any_of(cloths_.begin(), cloths_.end(),
                       [&](const Panel& each) { return report::is_same_cloth(each, panel); });
  }

 private:
  void add(const PieceFit& piece) {
    const std::string name = one_line(piece.target.name);
    const report::PiecePanels made = report::piece_panels(brief_, piece);
    if (!made.fits) {
      left_out_.push_back(
          fmt::format("'{}' ({})", name, made.why.empty() ? "nothing fits" : "its shape cannot be cut"));
      return;
    }
    FitRequest wanted = piece_request(piece.target, brief_.article->design);
    wanted.state = report::article_state(brief_);
    wanted.substitutes = report::article_substitutes(brief_);
    std::vector<Panel> panels;
    panels.reserve(made.cloth_of.size());
    for (std::size_t i = 0; i < made.cloth_of.size(); ++i) panels.push_back(made.panel(i));
    std::vector<SchematicPiece> drawn;
    try {
      drawn = schematics::sewn_pieces("", panels, wanted, brief_.swatch);
    } catch (const Error& error) {
      if (error.code() != ErrorCode::bad_argument) throw;
      left_out_.push_back(fmt::format("'{}' ({})", name, error.what()));  // a row that its seams take wholly
      return;
    }
    if (!std::all_of(drawn.begin(), drawn.end(), has_scale)) {
      left_out_.push_back(fmt::format("'{}' (too small or too large)", name));
      return;
    }
    schematics::leave_told(drawn);
    auto kind = std::find_if(kinds_.begin(), kinds_.end(), [&](const Kind& each) { return each.drawn == drawn; });
    if (kind == kinds_.end()) kind = kinds_.insert(kinds_.end(), Kind{std::move(drawn), {}, {}});
    kind->names.push_back(name);
    kind->sewn.push_back(sewn_edges(piece.target));
    cloths_.insert(cloths_.end(), made.cloths.begin(), made.cloths.end());
  }

  /// Which of their edges are sewn, so that what is measured is not all there is to knit; pieces alike in that
  /// together.
  void tell_edges(const Kind& kind) {
    for (std::size_t i = 0; i < kind.names.size(); ++i) {
      if (kind.sewn[i].empty()) continue;
      const auto alike =
          std::find_if(edges_.begin(), edges_.end(), [&](const auto& each) { return each.first == kind.sewn[i]; });
      const std::string name = fmt::format("'{}'", kind.names[i]);
      if (alike == edges_.end()) {
        edges_.emplace_back(kind.sewn[i], name);
      } else {
        alike->second += ", " + name;
      }
    }
  }

  void tell_seams() {
    std::vector<std::string> told;
    for (const auto& [edges, names] : edges_) told.push_back(fmt::format("of {} {}", names, edges));
    if (!told.empty()) notes_.push_back(fmt::format("Edges that are sewn: {}.", joined(told, "; ")));
    told.clear();
    for (const report::PanelSeams& seams : report::panel_seams(brief_, fit_)) {
      told.push_back(fmt::format("of '{}' {} of {} cm", one_line(fit_.pieces[seams.piece].target.name), seams.count,
                                 report::centimetres(seams.mm)));
    }
    if (!told.empty()) notes_.push_back(fmt::format("Seams between panels: {}.", joined(told, "; ")));
    const FitRequest& design = brief_.article->design;
    const bool taken = (!told.empty() && design.seam_stitches > 0) ||
                       std::any_of(fit_.pieces.begin(), fit_.pieces.end(), [&](const PieceFit& piece) {
                         return report::edge_seams(piece.target, design).any();
                       });
    if (taken) notes_.emplace_back("Measured between the seams: what they take in is knitted besides.");
  }

  const Brief& brief_;
  const ArticleFit& fit_;
  std::vector<Kind> kinds_;
  std::vector<Panel> cloths_;                               ///< of all panels that are drawn
  std::vector<std::pair<std::string, std::string>> edges_;  ///< that are sewn, of which pieces
  std::vector<std::string> left_out_;
  std::vector<std::string> notes_;
};

}  // namespace

std::optional<schematics::DrawnSchematic> report::schematic_of(const Brief& brief, const Job& job) {
  Schematic schematic;
  schematic.title = brief.panel.name();
  std::optional<SchematicPiece> panel = panel_as_it_stands(brief);
  if (brief.article && job.article) {
    PiecesDrawn pieces(brief, job.article->fit);
    if (!pieces.empty()) {
      if (pieces.has(brief.panel)) panel.reset();
      pieces.put_into(schematic, panel.has_value());
      if (panel) {
        panel->name = "the panel as it stands";
        schematic.notes.emplace_back("The panel as it stands is drawn with all its stitches and rows.");
      }
    }
  }
  if (panel) schematic.pieces.push_back(std::move(*panel));
  if (schematic.pieces.empty()) return std::nullopt;
  return schematics::drawn_schematic(schematic);
}

}  // namespace latchwork::inline v0
