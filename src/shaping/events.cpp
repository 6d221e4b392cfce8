#include <fmt/format.h>

#include <cstdlib>
#include <limits>
#include <string>

#include "latchwork/error.hpp"
#include "latchwork/grid.hpp"
#include "latchwork/shaping.hpp"
#include "shaping/check.hpp"

namespace latchwork::inline v0 {

std::vector<EdgeEvent> edge_events(const Spacing& spacing, int stitches, int above) {
  using shaping::refuse;
  if (stitches == 0 || std::abs(std::int64_t{stitches}) > Grid::max_side) {
    refuse("stitches", fmt::format("stitches is {0}; it must be -{1}..{1} and not 0", stitches, Grid::max_side));
  }
  if (above < 0 || above > Grid::max_side) {
    refuse("above", fmt::format("above is {}; it must be 0..{}", above, Grid::max_side));
  }
  if (spacing.positions.size() > max_edge_items) {
    Place place;
    place.field = "spacing";
    throw Error(ErrorCode::too_large, place,
                fmt::format("spacing has {} events; the limit is {}", spacing.positions.size(), max_edge_items));
  }
  std::vector<EdgeEvent> out;
  int before = 0;
  for (std::size_t i = 0; i < spacing.positions.size(); ++i) {
    const int position = spacing.positions[i];
    if (position <= before || position > max_spacing) {
      const std::string field = fmt::format("spacing.positions[{}]", i);
      refuse(field, fmt::format("{} is {}; it must be {}..{}", field, position, before + 1, max_spacing));
    }
    // What begins a run has no gap of its own yet: the next one gives it.
    if (!out.empty() && (out.back().times == 1 || out.back().every == position - before)) {
      out.back().every = position - before;
      ++out.back().times;
    } else {
      out.push_back({above + position, stitches, 1, 1});
    }
    before = position;
  }
  return out;
}

}  // namespace latchwork::inline v0
