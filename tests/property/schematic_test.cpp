#include "latchwork/schematic.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/shaping.hpp"
#include "random.hpp"

namespace schematic_test {

using namespace latchwork;
using latchwork_test::Random;

namespace {

struct Point {
  std::int64_t x = 0, y = 0;
};

std::int64_t area(Point a, Point b, Point c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/// Whether c lies on the edge from a to b: the sides of a triangle without area, the longest the sum of the others.
bool on(Point a, Point b, Point c) {
  const std::int64_t inside = (a.x - c.x) * (b.x - c.x) + (a.y - c.y) * (b.y - c.y);
  return area(a, b, c) == 0 && inside <= 0;
}

/// From the meaning, edge by edge: two edges share no point, but for neighbours their one corner.
bool is_simple(const std::vector<Point>& corners) {
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point a = corners[i];
    const Point b = corners[(i + 1) % n];
    for (std::size_t j = i + 1; j < n; ++j) {
      const Point c = corners[j];
      const Point d = corners[(j + 1) % n];
      if (j == i + 1 && on(a, b, d)) return false;
      if (j == i + 1 && on(c, d, a)) return false;
      if (i == 0 && j + 1 == n && (on(c, d, b) || on(a, b, c))) return false;
      if (j == i + 1 || (i == 0 && j + 1 == n)) continue;
      if (on(a, b, c) || on(a, b, d) || on(c, d, a) || on(c, d, b)) return false;
      if ((area(a, b, c) > 0) != (area(a, b, d) > 0) && (area(c, d, a) > 0) != (area(c, d, b) > 0)) return false;
    }
  }
  return true;
}

bool is_drawn(const std::vector<Point>& corners, double mm) {
  Schematic schematic;
  schematic.pieces.resize(1);
  for (const Point& corner : corners) {
    schematic.pieces[0].outline.push_back({static_cast<double>(corner.x) * mm, static_cast<double>(corner.y) * mm});
  }
  try {
    schematic_svg(schematic);
    return true;
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::bad_argument);
    CHECK(error.place().field.rfind("pieces[0].outline[", 0) == 0);
    return false;
  }
}

std::string told(const std::vector<Point>& corners) {
  std::string out;
  for (const Point& corner : corners) out += " (" + std::to_string(corner.x) + ", " + std::to_string(corner.y) + ")";
  return out;
}

}  // namespace

TEST_CASE("an outline is drawn if and only if no two of its edges meet but at their corner", "[schematic][property]") {
  Random random(307);
  int drawn = 0;
  for (int i = 0; i < 20'000; ++i) {
    // Few places and few corners: much of all kinds of touching. The corners of one place in a row are one.
    const int side = random.between(2, 7);
    std::vector<Point> corners;
    const int count = random.between(3, 9);
    for (int j = 0; j < count; ++j) corners.push_back({random.between(0, side), random.between(0, side)});
    const auto alike = [](Point a, Point b) { return a.x == b.x && a.y == b.y; };
    bool apart = true;
    for (int j = 0; j < count; ++j) {
      apart = apart && !alike(corners[static_cast<std::size_t>(j)], corners[static_cast<std::size_t>((j + 1) % count)]);
    }
    std::int64_t width = 0;
    std::int64_t height = 0;
    for (const Point& a : corners) {
      width = std::max(width, a.x - corners[0].x);
      width = std::max(width, corners[0].x - a.x);
      height = std::max(height, std::abs(a.y - corners[0].y));
    }
    if (!apart || width == 0 || height == 0) continue;
    INFO("case " << i << ":" << told(corners));
    const bool simple = is_simple(corners);
    REQUIRE(is_drawn(corners, 1) == simple);
    REQUIRE(is_drawn(corners, 125'000) == simple);
    drawn += simple ? 1 : 0;
  }
  CHECK(drawn > 1000);
}

TEST_CASE("a shaped panel in one piece is always drawn, whatever its bands measure", "[schematic][property]") {
  Random random(308);
  int drawn = 0;
  int parted = 0;
  for (int i = 0; i < 1500; ++i) {
    const int columns = random.between(1, 12);
    const auto plain = [&](const std::string& texture) {
      return Panel(texture, Strip{texture, texture, Grid(random.between(1, 6), columns)});
    };
    Panel panel = plain("t0");
    std::vector<Measurement> measurements;
    const int bands = random.between(1, 3);
    for (int band = 0; band < bands; ++band) {
      const std::string texture = "t" + std::to_string(band);
      if (band > 0) panel = plain(texture).above(panel);
      measurements.push_back({texture, Counted::stitches, static_cast<double>(random.between(3, 400)), 100, ""});
      measurements.push_back({texture, Counted::rows, static_cast<double>(random.between(3, 400)), 100, ""});
    }
    Outline outline;
    bool one_piece = true;
    for (int row = 1; row <= panel.grid().rows(); ++row) {
      RowSpan span{random.between(0, columns - 1), 0};
      span.last = random.between(span.first, columns - 1);
      if (row > 1 && !random.one_in(4)) {  // most often close to the row below
        span = outline.rows.back();
        if (random.one_in(3)) span.first = std::clamp(span.first + random.between(-1, 1), 0, span.last);
        if (random.one_in(3)) span.last = std::clamp(span.last + random.between(-1, 1), span.first, columns - 1);
      }
      if (row > 1) {
        one_piece = one_piece && span.first <= outline.rows.back().last && outline.rows.back().first <= span.last;
      }
      outline.rows.push_back(span);
    }
    if (!one_piece) {
      try {
        static_cast<void>(shaped(panel, outline));
        FAIL("two pieces made as one");
      } catch (const Error& error) {
        REQUIRE(error.code() == ErrorCode::bad_argument);
        REQUIRE(error.place().field == "outline");
        REQUIRE(error.place().row > 1);
      }
      ++parted;
      continue;
    }
    INFO("case " << i << ":\n" << outline_text(outline));
    const Panel made = shaped(panel, outline);
    const Swatch swatch(measurements);
    Schematic schematic;
    schematic.pieces.push_back(schematic_piece(made, swatch));
    try {
      schematic_svg(schematic);
      ++drawn;
    } catch (const Error& error) {  // a stitch or two may be under a millimetre; nothing else may be wrong
      REQUIRE(error.place().field == "pieces[0].outline");
    }
  }
  CHECK(drawn > 500);
  CHECK(parted > 100);
}

}  // namespace schematic_test
