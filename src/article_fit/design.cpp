#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "article_fit/check.hpp"
#include "fit/request.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/error.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using fitting::refuse;

/// One vertical repeat of a strip of the panel's band.
Strip cut(const Panel& panel, const StripSpan& strip, int columns, const std::string& field) {
  if (strip.repeat_rows > panel.grid().rows()) {
    refuse(field, fmt::format("{}: strip '{}' repeats every {} rows, and the panel has {}", field, shown(strip.name),
                              strip.repeat_rows, panel.grid().rows()));
  }
  try {
    return {strip.name, strip.texture, panel.grid().sliced(1, strip.column, strip.repeat_rows, columns)};
  } catch (const Error& error) {
    Place place = error.place();
    place.field = field;
    throw Error(error.code(), place, field + ": " + error.what());
  }
}

void require_strip(const std::string& field, int index, std::size_t strips) {
  if (static_cast<std::size_t>(index) < strips) return;
  refuse(field, fmt::format("{} is {}; the panel has {}, counted from 0", field, index,
                            count_of(static_cast<std::int64_t>(strips), "strip")));
}

}  // namespace

FitRequest piece_request(const TargetPiece& piece, const FitRequest& design) {
  FitRequest out = design;
  out.width_mm = piece.width_least_mm;
  out.width_most_mm = piece.width_greatest_mm;
  for (const TargetPoint& point : piece.shape) {
    out.width_mm = std::max(out.width_mm, point.width_least_mm);
    out.width_most_mm = std::max(out.width_most_mm, point.width_greatest_mm);
  }
  out.height_mm = piece.length_least_mm;
  out.height_most_mm = piece.length_greatest_mm;
  keep_seams(piece, out);
  return out;
}

FitResult fit_piece(const TargetPiece& piece, const FitRequest& design, const Swatch& swatch,
                    const FitOptions& options) {
  return fit(piece_request(piece, design), swatch, options);
}

FitRequest panel_design(const ArticleRequest& request, const Panel& panel) {
  require_article_request(request);
  if (panel.bands().size() != 1) {
    refuse("panel", fmt::format("the panel has {}, so that no strip runs from its first row to its last",
                                count_of(std::ssize(panel.bands()), "band")));
  }
  const std::vector<StripSpan>& strips = panel.bands().front().strips;
  FitRequest out = request.design;
  out.groups.clear();
  out.edge.reset();
  if (request.edge >= 0) {
    require_strip("edge", request.edge, strips.size());
    out.edge = cut(panel, strips[static_cast<std::size_t>(request.edge)], 1, "edge");
  }
  std::vector<StripRun> runs = request.groups;
  if (runs.empty()) {
    const int taken = request.edge >= 0 ? 1 : 0;
    const int last = static_cast<int>(strips.size()) - 1 - taken;
    if (last < taken) refuse("groups", "groups are none, and the panel has no strip between its outermost two");
    runs.push_back({taken, last, 1, 1});
  }
  for (std::size_t i = 0; i < runs.size(); ++i) {
    require_strip(fmt::format("groups[{}].last", i), runs[i].last, strips.size());
    FitGroup group;
    group.least = runs[i].least;
    group.most = runs[i].most;
    group.as_group = runs[i].as_group;
    for (int at = runs[i].first; at <= runs[i].last; ++at) {
      const StripSpan& strip = strips[static_cast<std::size_t>(at)];
      group.strips.push_back(cut(panel, strip, strip.columns, fmt::format("groups[{}]", i)));
    }
    out.groups.push_back(std::move(group));
  }
  return out;
}

}  // namespace latchwork::inline v0
