#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

#include "latchwork/error.hpp"
#include "latchwork/split.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

void require(const char* field, int value, int least, int most) {
  if (value >= least && value <= most) return;
  Place place;
  place.field = field;
  throw Error(ErrorCode::bad_argument, place, fmt::format("{} is {}; it must be {}..{}", field, value, least, most));
}

/// Columns of knit beside that column, in each row in which it has a stitch.
Grid seam_beside(const Grid& grid, int column, int stitches) {
  Grid out(grid.rows(), stitches);
  for (int row = 1; row <= grid.rows(); ++row) {
    if (grid.at(row, column) != Cell::none) continue;
    for (int at = 0; at < stitches; ++at) out.set(row, at, Cell::none);
  }
  return out;
}

/// The strips of a band that stand in those columns, and beside them the seams' stitches.
std::vector<StripSpan> strips_of(const Band& band, const SplitPart& part) {
  const int end = part.column + part.columns;
  std::vector<StripSpan> out;
  const auto seam = [&](int at, int stitches) {
    if (stitches == 0) return;
    const auto beside = std::find_if(band.strips.begin(), band.strips.end(), [&](const StripSpan& strip) {
      return at >= strip.column && at < strip.column + strip.columns;
    });
    out.push_back({"seam", beside->texture, 0, stitches, 1});
  };
  seam(part.column, part.seam_left);
  for (const StripSpan& strip : band.strips) {
    const int first = std::max(strip.column, part.column);
    const int last = std::min(strip.column + strip.columns, end);
    if (first >= last) continue;
    out.push_back(strip);
    out.back().columns = last - first;
  }
  seam(end - 1, part.seam_right);
  int column = 0;
  for (StripSpan& strip : out) {
    strip.column = column;
    column += strip.columns;
  }
  return out;
}

}  // namespace

Panel split_part(const Panel& panel, const SplitPart& part) {
  const Grid& whole = panel.grid();
  require("part.column", part.column, 0, whole.columns() - 1);
  require("part.columns", part.columns, 1, whole.columns() - part.column);
  require("part.seam_left", part.seam_left, 0, max_seam_stitches);
  require("part.seam_right", part.seam_right, 0, max_seam_stitches);
  Grid grid = whole.sliced(1, part.column, whole.rows(), part.columns);
  if (part.seam_left > 0) grid = seam_beside(whole, part.column, part.seam_left).beside(grid);
  if (part.seam_right > 0) {
    grid = grid.beside(seam_beside(whole, part.column + part.columns - 1, part.seam_right));
  }
  std::vector<Band> bands;
  bands.reserve(panel.bands().size());
  for (const Band& band : panel.bands()) bands.push_back({band.row, band.rows, strips_of(band, part)});
  const std::string name =
      fmt::format("{}, {}", panel.name(), run_of("column", part.column, part.column + part.columns - 1));
  return {name, std::move(grid), std::move(bands)};
}

}  // namespace latchwork::inline v0
