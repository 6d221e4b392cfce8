// Textures that stand in a panel only as one or two wales.
#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <map>
#include <string_view>
#include <utility>
#include <vector>

#include "panel/standing.hpp"
#include "size/bands.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr int least_wales = 3;  // fewer have no gauge of their own: common practice, no source

/// What stands of one texture, strips that touch as one.
struct Standing {
  int row = 1;  ///< the first of them, in the lowest band
  int last_row = 1;
  int column = 0;
  int last_column = 0;
  int widest = 0;        ///< wales
  bool at_edge = false;  ///< one is the panel's first or last: edge stitches have no neighbour beyond
};

/// A ladder has no wale to be measured.
bool has_stitch(const Grid& grid, const Band& band, const StripSpan& strip) {
  for (int row = band.row; row < band.row + band.rows; ++row) {
    for (int column = strip.column; column < strip.column + strip.columns; ++column) {
      if (grid.at(row, column) != Cell::none) return true;
    }
  }
  return false;
}

class Narrow {
 public:
  void add(const Panel& panel, const Band& band) {
    const std::vector<bool> stands = standing_strips(panel.grid(), band);
    for (std::size_t i = 0; i < band.strips.size();) {
      std::size_t end = i;
      bool worked = false;
      for (; end < band.strips.size() && band.strips[end].texture == band.strips[i].texture; ++end) {
        worked = worked || (stands[end] && has_stitch(panel.grid(), band, band.strips[end]));
      }
      if (worked) add(panel, band, band.strips[i], band.strips[end - 1]);
      i = end;
    }
  }

  void tell(const Gauges& gauges, std::vector<Finding>& found) const {
    for (const std::string_view texture : order_) {
      const Standing& of = all_.at(texture);
      if (of.widest >= least_wales || of.at_edge) continue;
      const Gauge* gauge = gauges.find(texture);
      if (gauge != nullptr && gauge->texture != texture) continue;  // that it is borrowed is told
      Finding finding;
      finding.code = FindingCode::narrow_texture;
      finding.severity = Severity::advice;
      finding.place.field = texture;
      finding.place.row = of.row;
      finding.place.column = of.column;
      finding.last_row = of.last_row;
      finding.last_column = of.last_column;
      finding.value = of.widest;
      finding.limit = least_wales;
      finding.message = fmt::format(
          "texture '{}' is {} wide wherever it stands, first in {}: one or two wales have no gauge of their own",
          one_line(texture), of.widest == 1 ? "one wale" : "no more than two wales",
          run_of("column", of.column, of.last_column));
      finding.suggestion = "measure the repeat with its neighbours, and name the strips of that repeat as one texture";
      found.push_back(std::move(finding));
    }
  }

 private:
  void add(const Panel& panel, const Band& band, const StripSpan& first, const StripSpan& last) {
    const int end = last.column + last.columns;
    const auto [known, fresh] = all_.try_emplace(first.texture);
    Standing& of = known->second;
    if (fresh) {
      order_.push_back(first.texture);
      of = {band.row, band.row + band.rows - 1, first.column, end - 1};
    }
    of.widest = std::max(of.widest, end - first.column);
    of.at_edge = of.at_edge || first.column == 0 || end == panel.grid().columns();
  }

  std::map<std::string_view, Standing> all_;
  std::vector<std::string_view> order_;  ///< as they come first: from below, from the left
};

}  // namespace

void find_narrow(const Panel& panel, const Gauges& gauges, std::vector<Finding>& found) {
  Narrow narrow;
  for (const Band& band : panel.bands()) narrow.add(panel, band);
  narrow.tell(gauges, found);
}

}  // namespace latchwork::inline v0
