// A piece's shape, cut from the panels that fit it.
#include "brief/shape.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "brief/article.hpp"
#include "brief/run.hpp"
#include "fit/request.hpp"
#include "latchwork/finding.hpp"
#include "latchwork/shaping.hpp"
#include "latchwork/size.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::report {
SizeOptions piece_measuring(const Brief& brief, const TargetPiece& piece) {
  FitRequest wanted = piece_request(piece, brief.article->design);
  wanted.state = article_state(brief);
  wanted.substitutes = article_substitutes(brief);
  return fitting::measuring_of(wanted, 0, 1);
}

Barrier shape_barrier(const Brief& brief, const TargetPiece& piece, const FitCandidate& candidate, int index,
                      const Error& error) {
  const FitRequest design = design_of(brief);
  try {
    const Panel cut =
        fitted_piece(piece, design, candidate, brief.swatch, index, 1, {.edge_stitches = 0, .cut = CutWork::knit});
    const Panel straight = fitted(piece_request(piece, design), candidate, index);
    for (const Finding& finding : shape_findings(straight.grid(), outline_of(cut.grid()))) {
      if (finding.severity != Severity::error) continue;
      return {bar_name(finding.code), fmt::format("{} ({})", finding.message, finding.suggestion)};
    }
  } catch (const Error&) {
    // There is no outline to look at: the first error says why.
  }
  return {"shape", error.what()};
}

std::string shape_size_words(const Brief& brief, const TargetPiece& piece, const Panel& panel) {
  const Size size = latchwork::size(panel, brief.swatch, piece_measuring(brief, piece));
  std::vector<std::string> parts{fmt::format("{} cm wide at the cast-on", centimetres(size.cast_on.width_mm))};
  const auto is_wider = [&](const RowWidth& end) { return size.width_mm - end.width_mm >= 0.5; };
  if (is_wider(size.cast_on) && is_wider(size.bind_off)) {
    parts.push_back(fmt::format("{} cm at its widest, in row {}", centimetres(size.width_mm), size.widest_row));
  }
  parts.push_back(fmt::format("{} cm at the last row", centimetres(size.bind_off.width_mm)));
  parts.push_back(fmt::format("{} cm high", centimetres(size.height_mm)));
  return joined(parts);
}

std::vector<std::string> shape_advice(const Panel& straight, const Panel& cut) {
  constexpr std::size_t most = 3;
  std::vector<std::string> out;
  std::size_t more = 0;
  for (const Finding& finding : shape_findings(straight.grid(), outline_of(cut.grid()))) {
    if (finding.code != FindingCode::column_cut) continue;
    if (out.size() < most) {
      out.push_back(finding.message);
    } else {
      ++more;
    }
  }
  if (more > 0)
    out.push_back(fmt::format("so is hand work at {}", count_of(static_cast<std::int64_t>(more), "more place")));
  return out;
}

}  // namespace latchwork::inline v0::report
