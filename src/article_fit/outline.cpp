#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "article_fit/check.hpp"
#include "article_fit/outline.hpp"
#include "fit/request.hpp"
#include "gauge/gauges.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/error.hpp"
#include "shaping/check.hpp"
#include "shaping/strips.hpp"
#include "size/bands.hpp"

namespace latchwork::inline v0 {
namespace {

using fitting::refuse;

constexpr double greatest_mm = 1e5;  // of a piece, as in article.hpp

/// How wide a piece is to be at one height.
struct Width {
  double height_mm = 0;
  double mm = 0;
  double least_mm = 0;  ///< a panel that is narrower than `mm`, but not than this, is taken whole
  std::string field;
};

void require_range(const std::string& field, double least, double greatest, double from) {
  if (!std::isfinite(least) || least < from || least > greatest_mm) {
    refuse(field + "_least_mm", fmt::format("{}_least_mm is {}; it must be {}..{}", field, least, from, greatest_mm));
  }
  if (!std::isfinite(greatest) || greatest < least || greatest > greatest_mm) {
    refuse(field + "_greatest_mm",
           fmt::format("{}_greatest_mm is {}; it must be {}..{}", field, greatest, least, greatest_mm));
  }
}

/// The widths of a piece from its lower edge up, on a panel of that height.
std::vector<Width> widths_of(const TargetPiece& piece, double panel_mm, double last_row_mm) {
  require_range("piece.width", piece.width_least_mm, piece.width_greatest_mm, 1);
  require_range("piece.length", piece.length_least_mm, piece.length_greatest_mm, 1);
  std::vector<Width> out;
  out.reserve(piece.shape.size() + 1);
  out.push_back(
      {0, (piece.width_least_mm + piece.width_greatest_mm) / 2, piece.width_least_mm, "piece.width_least_mm"});
  double below = 0;
  for (std::size_t i = 0; i < piece.shape.size(); ++i) {
    const TargetPoint& point = piece.shape[i];
    const std::string at = fmt::format("piece.shape[{}]", i);
    require_range(at + ".height", point.height_least_mm, point.height_greatest_mm, 0);
    require_range(at + ".width", point.width_least_mm, point.width_greatest_mm, 1);
    const double middle = (point.height_least_mm + point.height_greatest_mm) / 2;
    if (middle < below) {
      refuse(at + ".height_least_mm",
             fmt::format("{} is {:.1f} mm up, below the point before it, {:.1f} mm", at, middle, below));
    }
    below = middle;
    const bool at_upper_edge =
        point.height_least_mm == piece.length_least_mm && point.height_greatest_mm == piece.length_greatest_mm;
    if (!at_upper_edge && point.height_least_mm > piece.length_greatest_mm) {
      refuse(at + ".height_least_mm", fmt::format("{} is {:.1f} mm up; the piece is {:.1f} mm long", at,
                                                  point.height_least_mm, piece.length_greatest_mm));
    }
    if (!at_upper_edge && point.height_least_mm > panel_mm + last_row_mm / 2) {
      refuse(at + ".height_least_mm",
             fmt::format("{} is {:.1f} mm up; the panel is {:.1f} mm high", at, point.height_least_mm, panel_mm));
    }
    out.push_back({at_upper_edge ? panel_mm : std::min(middle, panel_mm),
                   (point.width_least_mm + point.width_greatest_mm) / 2, point.width_least_mm, at + ".width_least_mm"});
  }
  return out;
}

/// The width at a height, between the widths below and above it.
Width width_at(const std::vector<Width>& widths, double height_mm) {
  const auto above =
      std::find_if(widths.begin(), widths.end(), [&](const Width& width) { return width.height_mm >= height_mm; });
  if (above == widths.begin()) return widths.front();
  if (above == widths.end()) return widths.back();
  const Width& from = *(above - 1);
  const double share = (height_mm - from.height_mm) / (above->height_mm - from.height_mm);
  return {height_mm, from.mm + share * (above->mm - from.mm), from.least_mm + share * (above->least_mm - from.least_mm),
          from.least_mm > above->least_mm ? from.field : above->field};
}

/// A panel's columns in one band, between its seams, and what is sewn beside them.
class Across {
 public:
  Across(const shaping::BandLay& lay, const SizeOptions& options, const PanelEdges& edges)
      : lay_(lay),
        edges_(edges),
        columns_(static_cast<int>(lay.column_mm.size()) - 1),
        left_(options.seam_left),
        right_(columns_ - options.seam_right) {}

  /// Of the whole piece.
  double width_mm() const { return lay_.mm_at(right_) - lay_.mm_at(left_) + edges_.beside_mm; }
  /// What rounding to whole columns can make up for: half the outermost one at each side.
  double slack_mm() const { return (lay_.mm_at(1) + lay_.mm_at(columns_) - lay_.mm_at(columns_ - 1)) / 2; }

  /// The columns in work that leave so much of the width: half of what is missing at each side, to the nearest column.
  RowSpan kept(double mm) const {
    const double missing = std::max(width_mm() - mm, 0.0) / 2;
    // Of several panels an outer one cannot make up for more than it has, nor be nothing but seams.
    const bool outer = edges_.left != edges_.right;
    if (outer && missing > lay_.mm_at(right_) - lay_.mm_at(left_) - slack_mm() / 2) return {0, -1};
    const double left = lay_.column_at(lay_.mm_at(left_) + missing) - left_;
    const double right = right_ - lay_.column_at(lay_.mm_at(right_) - missing);
    return {edges_.left ? nearest(left) : 0, columns_ - 1 - (edges_.right ? nearest(right) : 0)};
  }

 private:
  // Halves go in, also where binary fractions come out a trace below them: both edges are to be alike.
  static int nearest(double columns) { return static_cast<int>(std::floor(columns + 0.5 + 1e-9)); }

  const shaping::BandLay& lay_;
  PanelEdges edges_;
  int columns_;
  double left_;
  double right_;
};

void require_room(const Width& width, const Across& across, int row) {
  if (width.least_mm <= across.width_mm() + across.slack_mm()) return;
  Place place;
  place.row = row;
  place.field = width.field;
  throw Error(ErrorCode::bad_argument, place,
              fmt::format("the piece is {:.1f} mm wide at row {}; the panel is {:.1f} mm there, between its seams",
                          width.least_mm, row, across.width_mm()));
}

/// The shape on a panel whose rows lie at the heights of `cut`, the panel itself or cut to some shape.
Outline outline_at(const TargetPiece& piece, const Panel& cut, const Gauges& gauges, const SizeOptions& sewn, int step,
                   const PanelEdges& edges) {
  const int rows = cut.grid().rows();
  const std::vector<shaping::BandLay> lays = shaping::lay_of(cut, gauges, sewn);
  const std::vector<shaping::RowLay> lay = shaping::rows_of(cut, lays);
  const auto row_lay = [&](int row) -> const shaping::RowLay& { return lay[static_cast<std::size_t>(row) - 1]; };
  const double top = lay.back().top_mm;
  // The last row may lie in the seam; what a row there measures, the one below the seam tells.
  double last_row = 0;
  for (int row = rows; row >= 1 && last_row <= 0; --row) {
    last_row = row_lay(row).top_mm - (row > 1 ? row_lay(row - 1).top_mm : 0);
  }
  const std::vector<Width> widths = widths_of(piece, top, last_row);
  std::vector<Across> bands;
  bands.reserve(lays.size());
  for (const shaping::BandLay& each : lays) bands.emplace_back(each, sewn, edges);

  for (const Width& width : widths) {
    const auto at = std::find_if(lay.begin(), lay.end() - 1,
                                 [&](const shaping::RowLay& row) { return row.top_mm >= width.height_mm; });
    require_room(width, bands[at->band], static_cast<int>(at - lay.begin()) + 1);
  }
  Outline out;
  out.rows.reserve(lay.size());
  for (int low = 0; low < rows;) {
    const int high = low + std::min(step, rows - low);
    const double middle = ((low > 0 ? row_lay(low).top_mm : 0) + row_lay(high).top_mm) / 2;
    const Width width = width_at(widths, middle);
    for (int row = low + 1; row <= high; ++row) {
      const Across& across = bands[row_lay(row).band];
      require_room(width, across, row);
      const RowSpan span = across.kept(width.mm);
      if (span.first > span.last) {
        shaping::refuse("outline",
                        fmt::format("no stitch is left in row {}: the piece is {:.1f} mm wide there{}", row, width.mm,
                                    edges.beside_mm > 0 ? ", which an outer panel is too narrow to be cut to" : ""),
                        row);
      }
      out.rows.push_back(span);
    }
    low = high;
  }
  shaping::check(out);
  return out;
}

/// What is measured of a panel in that shape. Its hand work does not matter, so that nothing is refused.
Panel cut_to(const Outline& outline, const Panel& panel) {
  return shaped(panel, outline, {.edge_stitches = 0, .cut = CutWork::knit});
}

bool is_whole(const Outline& outline, int columns) {
  return std::ranges::all_of(outline.rows,
                             [&](const RowSpan& row) { return row.first == 0 && row.last == columns - 1; });
}

void widen(double& least, double& greatest, double by_mm, double from_mm) {
  const double out = std::min(by_mm, least - from_mm);
  if (out <= 0) return;
  least -= out;
  greatest += out;
}

}  // namespace

TargetPiece allowed(const TargetPiece& piece, const FitCandidate& candidate) {
  const double narrow = std::max(-candidate.width_error_mm, 0.0);
  const double low = std::max(-candidate.height_error_mm, 0.0);
  TargetPiece out = piece;
  widen(out.width_least_mm, out.width_greatest_mm, narrow, 1);
  widen(out.length_least_mm, out.length_greatest_mm, low, 1);
  for (TargetPoint& point : out.shape) {
    // A point at the piece's length stays there: it is at the panel's last row.
    const bool at_upper_edge =
        point.height_least_mm == piece.length_least_mm && point.height_greatest_mm == piece.length_greatest_mm;
    widen(point.height_least_mm, point.height_greatest_mm, low, at_upper_edge ? 1 : 0);
    widen(point.width_least_mm, point.width_greatest_mm, narrow, 1);
  }
  return out;
}

Outline outline_between(const TargetPiece& piece, const Panel& panel, const Swatch& swatch, const SizeOptions& options,
                        int step, const PanelEdges& edges) {
  constexpr int most_rounds = 8;
  fitting::require("step", step, 1, Grid::max_side);
  require_size_options(options, panel);
  const Gauges gauges(swatch, options.state, options.substitutes);
  Outline out = outline_at(piece, panel, gauges, options, step, edges);
  // Where a strip that stretches its rows ends at the edge, the rows above lie lower, and so does what is cut there.
  for (int round = 0; round < most_rounds && !is_whole(out, panel.grid().columns()); ++round) {
    Outline next = outline_at(piece, cut_to(out, panel), gauges, options, step, edges);
    const bool same = next == out;
    out = std::move(next);
    if (same) break;
  }
  return out;
}

Outline piece_outline(const TargetPiece& piece, const Panel& panel, const Swatch& swatch, const SizeOptions& options,
                      int step) {
  SizeOptions sewn = options;
  keep_seams(piece, sewn);
  return outline_between(piece, panel, swatch, sewn, step, {});
}

}  // namespace latchwork::inline v0
