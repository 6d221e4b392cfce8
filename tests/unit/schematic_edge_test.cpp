// How the edges of a shaped piece are drawn.
#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/schematic.hpp"
#include "latchwork/shaping.hpp"

namespace schematic_edge_test {

using namespace latchwork;
using latchwork_test::Approx;

namespace {

/// 40 rows and 25 stitches per 10 cm: a row is 2.5 mm, a stitch 4.
Swatch swatch() {
  return Swatch({{"plain", Counted::stitches, 25, 100, ""},
                 {"plain", Counted::rows, 40, 100, ""},
                 {"other", Counted::stitches, 25, 100, ""},
                 {"other", Counted::rows, 40, 100, ""}});
}
constexpr double stitch = 4;
constexpr double row = 2.5;

Panel plain(int rows, int columns, const char* texture = "plain") {
  return Panel("piece", Strip{texture, texture, Grid(rows, columns)});
}

SchematicPiece drawn(int rows, int columns, const EdgeShape& left, const EdgeShape& right) {
  return schematic_piece(shaped(plain(rows, columns), outlined(rows, columns, left, right)), swatch());
}

/// The left side from the bottom up, as {columns in from the leftmost stitch, rows up}: all that lies left of `middle`.
std::vector<std::pair<double, double>> left_side(const SchematicPiece& piece, double middle) {
  std::vector<std::pair<double, double>> out;
  for (const OutlinePoint& point : piece.outline) {
    if (point.x_mm / stitch < middle) out.emplace_back(point.x_mm / stitch, point.y_mm / row);
  }
  std::reverse(out.begin(), out.end());
  return out;
}

bool are(const std::vector<std::pair<double, double>>& found, const std::vector<std::pair<double, double>>& wanted) {
  return std::equal(found.begin(), found.end(), wanted.begin(), wanted.end(), [](const auto& a, const auto& b) {
    return std::abs(a.first - b.first) < 1e-9 && std::abs(a.second - b.second) < 1e-9;
  });
}

const SchematicMeasure* find(const SchematicPiece& piece, const std::string& label) {
  const auto at = std::find_if(piece.measures.begin(), piece.measures.end(),
                               [&](const SchematicMeasure& each) { return each.label == label; });
  return at == piece.measures.end() ? nullptr : &*at;
}

}  // namespace

TEST_CASE("the corners of an edge are where its stitches leave", "[schematic][shaping]") {
  struct Case {
    const char* what;
    int rows;
    std::vector<EdgeEvent> events;
    std::vector<std::pair<double, double>> corners;
  };
  const std::vector<Case> cases = {
      {"nothing", 60, {}, {{0, 0}, {0, 60}}},
      // The first decrease after 20 rows is 5 cm up, the last after 50: the slope lies between them.
      {"a taper", 76, {{20, 1, 10, 4}}, {{0, 0}, {0, 20}, {4, 50}, {4, 76}}},
      {"a taper to the end", 60, {{20, 1, 10, 4}}, {{0, 0}, {0, 20}, {4, 60}}},
      {"every sixth row all the way", 60, {{6, 1, 6, 9}}, {{0, 0}, {9, 60}}},
      {"as evenly as 60 rows allow", 60, edge_events(spaced_evenly(60, 11, SpacingEnds::flat)), {{0, 0}, {11, 60}}},
      {"on even rows", 62, edge_events(spaced_evenly(62, 9, SpacingEnds::flat, 2)), {{0, 0}, {9, 62}}},
      {"one stitch", 60, {{20, 1, 1, 1}}, {{0, 0}, {0, 20}, {1, 20}, {1, 60}}},
      {"bound off once", 60, {{20, 6, 1, 1}}, {{0, 0}, {0, 20}, {6, 20}, {6, 60}}},
      // A shoulder in four steps, the yarn at this edge every second row.
      {"a shoulder", 48, {{40, 5, 2, 4}}, {{0, 0}, {0, 40}, {20, 48}}},
      {"steps far apart", 60, {{20, 5, 10, 2}}, {{0, 0}, {0, 20}, {5, 20}, {5, 30}, {10, 30}, {10, 60}}},
      {"an armhole", 80, {{40, 5, 1, 1}, {42, 1, 2, 5}}, {{0, 0}, {0, 40}, {5, 40}, {10, 50}, {10, 80}}},
      {"two slopes", 80, {{4, 1, 8, 5}, {40, 1, 2, 10}}, {}},
      {"out and in", 60, {{6, -1, 6, 4}, {36, 1, 6, 4}}, {{4, 0}, {0, 24}, {0, 36}, {4, 60}}},
  };
  for (const Case& each : cases) {
    INFO(each.what);
    const bool out = !each.events.empty() && each.events[0].stitches < 0;
    const EdgeShape edge{.start = out ? 4 : 0, .events = each.events};
    const SchematicPiece piece = drawn(each.rows, 60, edge, edge);
    const auto left = left_side(piece, 30);
    if (!each.corners.empty()) {
      CHECK(are(left, each.corners));
    } else {  // one knee, within half a stitch of both slopes
      REQUIRE(left.size() <= 5);
      CHECK(left.front().second == 0);
    }
    // The right side is its mirror image.
    for (const OutlinePoint& point : piece.outline) {
      CHECK(std::any_of(piece.outline.begin(), piece.outline.end(), [&](const OutlinePoint& other) {
        return std::abs(point.x_mm + other.x_mm - 60 * stitch) < 1e-9 && std::abs(point.y_mm - other.y_mm) < 1e-9;
      }));
    }
  }
}

TEST_CASE("heights of straight parts are told where the edge is drawn straight, side by side where they differ",
          "[schematic][shaping]") {
  const EdgeShape taper{.events = {{20, 1, 10, 4}}};
  const EdgeShape later{.events = {{28, 1, 4, 3}}};
  const SchematicPiece alike = drawn(76, 60, taper, taper);
  REQUIRE(find(alike, "height to the first shaping") != nullptr);
  CHECK(find(alike, "height to the first shaping")->mm == Approx(20 * row));
  REQUIRE(find(alike, "height above the last shaping") != nullptr);
  CHECK(find(alike, "height above the last shaping")->mm == Approx(26 * row));

  const SchematicPiece unlike = drawn(60, 60, taper, later);
  CHECK(find(unlike, "height to the first shaping") == nullptr);
  REQUIRE(find(unlike, "height to the first shaping, left edge") != nullptr);
  REQUIRE(find(unlike, "height to the first shaping, right edge") != nullptr);
  CHECK(find(unlike, "height to the first shaping, left edge")->mm == Approx(20 * row));
  CHECK(find(unlike, "height to the first shaping, right edge")->mm == Approx(28 * row));
  CHECK(find(unlike, "height to the first shaping, right edge")->side == MeasureSide::right);

  const SchematicPiece one = drawn(60, 60, {}, later);
  REQUIRE(find(one, "height to the first shaping") != nullptr);
  CHECK(find(one, "height to the first shaping")->side == MeasureSide::right);
  CHECK(find(one, "height to the first shaping")->end.x_mm == Approx(60 * stitch));

  // From edge to edge there is no straight part.
  const EdgeShape slope{.points = {{0, 0}, {60, 10}}};
  // Of two shaped edges the straight part of one is told as that one's, though the other has none.
  const EdgeShape both{.events = {{20, 1, 4, 3}}};  // to row 28: straight below it and above
  const SchematicPiece sloped_right = drawn(60, 60, both, slope);
  for (const char* label : {"height to the first shaping", "height above the last shaping"}) {
    INFO(label);
    CHECK(find(sloped_right, label) == nullptr);
    CHECK(find(sloped_right, std::string(label) + ", right edge") == nullptr);
    REQUIRE(find(sloped_right, std::string(label) + ", left edge") != nullptr);
    CHECK(find(sloped_right, std::string(label) + ", left edge")->side == MeasureSide::left);
    const SchematicPiece sloped_left = drawn(60, 60, slope, both);
    CHECK(find(sloped_left, label) == nullptr);
    CHECK(find(sloped_left, std::string(label) + ", left edge") == nullptr);
    REQUIRE(find(sloped_left, std::string(label) + ", right edge") != nullptr);
    CHECK(find(sloped_left, std::string(label) + ", right edge")->side == MeasureSide::right);
    CHECK(find(sloped_left, std::string(label) + ", right edge")->mm ==
          Approx(find(sloped_right, std::string(label) + ", left edge")->mm));
  }
  const SchematicPiece all = drawn(60, 60, slope, slope);
  CHECK(all.outline.size() == 4);
  CHECK(find(all, "height to the first shaping") == nullptr);
  CHECK(find(all, "height above the last shaping") == nullptr);
}

TEST_CASE("a curve is drawn without jogs, near the points that it was given by", "[schematic][shaping]") {
  // A quarter of an ellipse, 30 stitches by 60 rows, and an S of two bows.
  std::vector<EdgePoint> ellipse;
  for (int at = 0; at <= 60; at += 5) ellipse.push_back({at, 30 - 30 * std::sqrt(1 - at * at / 3600.0)});
  const std::vector<EdgePoint> bows = {{0, 0}, {15, 2}, {30, 12}, {45, 22}, {60, 24}};
  for (const auto& [points, turns] : {std::pair{ellipse, 0}, std::pair{bows, 1}}) {
    const EdgeShape edge{.points = points, .line = EdgeLine::curve};
    const SchematicPiece piece = drawn(60, 80, edge, {});
    auto corners = left_side(piece, 60);
    CAPTURE(corners.size());
    CHECK(corners.size() <= 14);
    // It turns one way, or one way and then the other: a jog would turn it back.
    int changes = 0;
    double before = 0;
    for (std::size_t i = 2; i < corners.size(); ++i) {
      const auto& [x0, y0] = corners[i - 2];
      const auto& [x1, y1] = corners[i - 1];
      const auto& [x2, y2] = corners[i];
      const double turn = (x1 - x0) * (y2 - y1) - (y1 - y0) * (x2 - x1);
      if (turn * before < 0) ++changes;
      before = turn;
    }
    CHECK(changes <= turns);
    // Each corner lies within half a stitch, or a row, of the points' line; which is straight between these here.
    for (const auto& [x, y] : corners) {
      double nearest = 1e9;
      for (std::size_t i = 1; i < points.size(); ++i) {
        for (int at_share = 0; at_share <= 50; ++at_share) {
          const double share = at_share / 50.0;
          const double columns = points[i - 1].columns + share * (points[i].columns - points[i - 1].columns);
          const double at = points[i - 1].row + share * (points[i].row - points[i - 1].row);
          nearest = std::min(nearest, std::max(std::abs(columns - x) / 0.75, std::abs(at - y) / 1.5));
        }
      }
      INFO("corner " << x << ", " << y);
      CHECK(nearest <= 1);
    }
  }
}

TEST_CASE("bands of one gauge do not break a slope", "[schematic][shaping]") {
  const EdgeShape edge{.events = {{20, 1, 10, 4}}};
  const Outline outline = outlined(60, 60, edge, edge);
  const Panel bands = plain(24, 60, "other").above(plain(36, 60));
  REQUIRE(bands.bands().size() == 2);
  CHECK(schematic_piece(shaped(bands, outline), swatch()).outline ==
        schematic_piece(shaped(plain(60, 60), outline), swatch()).outline);
}

}  // namespace schematic_edge_test
