#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/schematic.hpp"
#include "latchwork/shaping.hpp"
#include "random.hpp"
#include "schematic_lines.hpp"

namespace schematic_scale_test {

using namespace latchwork;
using namespace latchwork_test;

namespace {

EdgeShape any_edge(Random& random, int rows, int columns) {
  EdgeShape edge;
  if (random.one_in(5)) return edge;
  if (random.one_in(2)) {
    edge.points.resize(static_cast<std::size_t>(random.between(2, 5)));
    for (EdgePoint& point : edge.points) point = {random.between(0, rows), random.between(0, 2 * columns / 5) * 1.0};
    std::sort(edge.points.begin(), edge.points.end(),
              [](const EdgePoint& a, const EdgePoint& b) { return a.row < b.row; });
    edge.line = random.one_in(2) ? EdgeLine::curve : EdgeLine::straight;
    return edge;
  }
  edge.start = random.between(0, columns / 6);
  for (int i = random.between(1, 3); i > 0; --i) {
    EdgeEvent event;
    event.row = random.between(1, rows - 1);
    event.every = random.between(1, 8);
    event.times = random.between(1, std::min(10, 1 + (rows - 1 - event.row) / event.every));
    event.stitches = random.one_in(3) ? random.between(2, 4) : 1;
    if (random.one_in(3)) event.stitches = -event.stitches;
    edge.events.push_back(event);
  }
  return edge;
}

std::optional<Outline> any_outline(Random& random, int rows, int columns) {
  try {
    const EdgeShape left = any_edge(random, rows, columns);
    return outlined(rows, columns, left, random.one_in(3) ? left : any_edge(random, rows, columns));
  } catch (const Error&) {
    return std::nullopt;  // off the panel, or in two pieces
  }
}

/// How far the stitches of so many rows about a row are from a place: 0 within.
double from_edge(const Outline& outline, int row, bool left, double columns) {
  double least = 1e9;
  double most = -1e9;
  for (int at = row - 2; at <= row + 2; ++at) {
    const int here = std::clamp(at, 1, static_cast<int>(outline.rows.size()));
    const RowSpan& span = outline.rows[static_cast<std::size_t>(here) - 1];
    const double edge = left ? span.first : span.last + 1;
    least = std::min(least, edge);
    most = std::max(most, edge);
  }
  return std::max({0.0, least - columns, columns - most});
}

}  // namespace

TEST_CASE("a shaped piece is drawn to scale: extents, every measure, and the cloth within", "[schematic][property]") {
  Random random(311);
  int drawn = 0;
  int told = 0;
  for (int i = 0; i < 700; ++i) {
    const int rows = random.between(12, 120);
    const int columns = random.between(12, 80);
    const std::optional<Outline> outline = any_outline(random, rows, columns);
    if (!outline) continue;
    const double stitch = 100.0 / random.between(16, 40);
    const double row = 100.0 / random.between(24, 60);
    const Swatch swatch({{"t", Counted::stitches, 100 / stitch, 100, ""}, {"t", Counted::rows, 100 / row, 100, ""}});
    const Panel panel = shaped(Panel("any", Strip{"t", "t", Grid(rows, columns)}), *outline);
    Schematic schematic;
    schematic.pieces.push_back(schematic_piece(panel, swatch));
    const SchematicPiece& piece = schematic.pieces[0];
    const std::string svg = schematic_svg(schematic);
    INFO("case " << i << ", " << stitch << " x " << row << " mm:\n" << outline_text(*outline));
    const std::vector<DrawnPoint> corners = lines_of(svg, "lw-outline").at(0);

    // The scale is that of the height, which is all rows'.
    const auto by_x = [](const DrawnPoint& a, const DrawnPoint& b) { return a.x < b.x; };
    const auto by_y = [](const DrawnPoint& a, const DrawnPoint& b) { return a.y < b.y; };
    const auto [leftmost, rightmost] = std::minmax_element(corners.begin(), corners.end(), by_x);
    const auto [highest, lowest] = std::minmax_element(corners.begin(), corners.end(), by_y);
    const double scale = (lowest->y - highest->y) / (rows * row);  // page units to the mm
    const double reading = 0.03 / scale;                           // numbers of the page have two decimals
    int first = columns;
    int last = 0;
    int stitches = 0;
    int moved = 0;
    for (std::size_t at = 0; at < outline->rows.size(); ++at) {
      const RowSpan& span = outline->rows[at];
      first = std::min(first, span.first);
      last = std::max(last, span.last);
      stitches += span.last + 1 - span.first;
      if (at > 0) {
        moved += std::abs(span.first - outline->rows[at - 1].first) + std::abs(span.last - outline->rows[at - 1].last);
      }
    }
    CHECK(std::abs((rightmost->x - leftmost->x) / scale - (last + 1 - first) * stitch) <= stitch / 2 + reading);
    const double cloth = stitches * stitch * row;
    CHECK(std::abs(area_of(corners) / (scale * scale) - cloth) <=
          (rows + moved) * stitch * row + reading * (rows * row + columns * stitch));

    for (int at = 1; at <= rows; ++at) {
      const auto [left, right] = reach_at(corners, lowest->y - (at - 0.5) * row * scale);
      const double in = (left - leftmost->x) / scale / stitch + first;
      const double out = (right - leftmost->x) / scale / stitch + first;
      const double slack = reading / stitch + 1e-6;
      CHECK(from_edge(*outline, at, true, in) <= 1 + slack);
      CHECK(from_edge(*outline, at, false, out) <= 1 + slack);
    }

    const std::vector<DrawnMeasure> measures = measures_on(svg);
    REQUIRE(measures.size() == piece.measures.size());
    for (const DrawnMeasure& each : measures) {
      const SchematicMeasure& of = piece.measures[static_cast<std::size_t>(each.letter[0] - 'a')];
      INFO(of.label << ", " << each.cm << " cm");
      CHECK(std::abs(std::abs(each.to - each.from) / scale - 10 * each.cm) <=
            0.5 + reading);  // written to a millimetre
      if (each.flat) {
        // A hair inside the cloth, so that it is not a step's two ends that are seen.
        const bool below = of.label.starts_with("width below") ||
                           (of.side == MeasureSide::top && of.label.find("above") == std::string::npos);
        const double up = of.start.y_mm + (below ? -1 : 1) * std::max(0.02, reading);
        const auto [left, right] = reach_at(corners, lowest->y - up * scale);
        // Opposite a step there may be a slope, which is no further than a stitch from the cloth.
        const double off = (of.label.find(" step") != std::string::npos ? stitch : stitch / 2) + reading;
        CHECK(std::abs(left - std::min(each.from, each.to)) / scale <= off);
        CHECK(std::abs(right - std::max(each.from, each.to)) / scale <= off);
      } else {
        for (const double end : {each.from, each.to}) {
          CHECK(std::any_of(corners.begin(), corners.end(), [&](const DrawnPoint& corner) {
            return std::abs(corner.y - end) / scale <= row / 2 + reading;
          }));
        }
      }
      ++told;
    }
    ++drawn;
  }
  CHECK(drawn > 250);
  CHECK(told > 3 * drawn);
}

}  // namespace schematic_scale_test
