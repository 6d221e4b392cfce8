// The shape of an article's piece on the panel that makes it.
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/shaping.hpp"
#include "latchwork/size.hpp"

namespace piece_outline_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::refused;
using latchwork_test::refused_field;

namespace {

// A stitch of stockinette is 4 mm wide and 2.5 mm high, one of the rib 8 mm and 5 mm.
Swatch swatch() {
  return Swatch({{"stockinette", Counted::stitches, 25, 100, ""},
                 {"stockinette", Counted::rows, 40, 100, ""},
                 {"rib", Counted::stitches, 25, 200, ""},
                 {"rib", Counted::rows, 40, 200, ""}});
}

Panel plain(int rows, int columns, const char* texture = "stockinette") {
  return Panel("plain", Strip{"plain", texture, Grid(rows, columns)});
}

TargetPiece piece(double width, double length, std::vector<TargetPoint> shape = {}) {
  TargetPiece out;
  out.name = "sleeve";
  out.width_least_mm = out.width_greatest_mm = width;
  out.length_least_mm = out.length_greatest_mm = length;
  out.shape = std::move(shape);
  return out;
}
TargetPoint at(double height, double width) {
  return {height, height, width, width};
}

RowSpan row_of(const Outline& outline, int row) {
  return outline.rows.at(static_cast<std::size_t>(row) - 1);
}

}  // namespace

TEST_CASE("a straight piece stands in the middle of its panel, halves out", "[article][shaping]") {
  // 40 stitches are 160 mm.
  const auto span = [](double width) { return row_of(piece_outline(piece(width, 50), plain(20, 40), swatch()), 7); };
  CHECK(span(160) == RowSpan{0, 39});
  CHECK(span(120) == RowSpan{5, 34});
  CHECK(span(157) == RowSpan{0, 39});    // 1.5 mm a side, under half a stitch
  CHECK(span(156) == RowSpan{1, 38});    // 2 mm a side
  CHECK(span(163.9) == RowSpan{0, 39});  // not more than half a stitch a side too wide
  const Outline outline = piece_outline(piece(120, 50), plain(20, 40), swatch());
  CHECK(outline.rows == std::vector<RowSpan>(20, RowSpan{5, 34}));
}

TEST_CASE("ranges are met in their middle, and a panel within one is taken whole", "[article][shaping]") {
  TargetPiece wanted = piece(100, 50);
  wanted.width_greatest_mm = 140;
  CHECK(row_of(piece_outline(wanted, plain(20, 40), swatch()), 1) == RowSpan{5, 34});  // 120 mm
  CHECK(row_of(piece_outline(wanted, plain(20, 27), swatch()), 1) == RowSpan{0, 26});  // 108 mm
  wanted.shape = {{20, 30, 140, 180}};                                                 // 160 mm at 25 mm, after row 10
  const Outline outline = piece_outline(wanted, plain(20, 40), swatch());
  CHECK(row_of(outline, 10) == RowSpan{0, 39});
  CHECK(row_of(outline, 1) == RowSpan{5, 34});
}

TEST_CASE("a sleeve is shaped row by row, worked by hand", "[article][shaping]") {
  // From 80 to 160 mm over 50 mm: 10 stitches a side over 20 rows, one every second row. Row r's middle is 2.5 r - 1.25
  // mm up: 80 + 4 r - 2 mm wide there, so 82 - 4 r mm are missing, (41 - 2 r) / 4 stitches a side: in row 1 9.75, in
  // row 2 9.25, in row 3 8.75, ...
  const Outline outline = piece_outline(piece(80, 100, {at(50, 160)}), plain(40, 40), swatch());
  CHECK(row_of(outline, 1) == RowSpan{10, 29});
  CHECK(row_of(outline, 2) == RowSpan{9, 30});
  CHECK(row_of(outline, 3) == RowSpan{9, 30});
  CHECK(row_of(outline, 4) == RowSpan{8, 31});
  CHECK(row_of(outline, 20) == RowSpan{0, 39});
  CHECK(row_of(outline, 40) == RowSpan{0, 39});
  const std::vector<ShapingStep> steps = shaping_steps(outline);
  REQUIRE(steps.size() == 10);
  for (std::size_t i = 0; i < steps.size(); ++i) CHECK(steps[i] == ShapingStep{static_cast<int>(2 * i + 1), -1, -1});

  // After even rows only: rows 1 and 2 change together, read where row 1 ends: 80 + 4 mm.
  const Outline even = piece_outline(piece(80, 100, {at(50, 160)}), plain(40, 40), swatch(), {}, 2);
  CHECK(row_of(even, 1) == RowSpan{10, 29});  // 9.5 stitches a side
  for (const ShapingStep& step : shaping_steps(even)) CHECK(step.row % 2 == 0);
}

TEST_CASE("two points at one height are a step, and one at the length is at the last row", "[article][shaping]") {
  const Outline outline =
      piece_outline(piece(160, 100, {at(50, 160), at(50, 120), at(100, 80)}), plain(40, 40), swatch());
  CHECK(row_of(outline, 20) == RowSpan{0, 39});
  CHECK(row_of(outline, 21) == RowSpan{5, 34});
  CHECK(row_of(outline, 40) == RowSpan{10, 29});
  // A panel of 44 rows is 110 mm high: the slope goes on to its end; one of 36 rows ends it sooner.
  for (const int rows : {36, 44}) {
    const Outline other = piece_outline(piece(160, 100, {at(50, 120), at(100, 80)}), plain(rows, 40), swatch());
    CHECK(row_of(other, rows) == RowSpan{10, 29});
    CHECK(row_of(other, 20) == RowSpan{5, 34});
  }
}

TEST_CASE("columns count by their strips, rows by their bands", "[article][shaping]") {
  // 4 stitches of rib, 32 mm, at each side of 10 of stockinette, 40 mm; a band twice as high above one of stockinette.
  const std::vector<Strip> strips{{"rib", "rib", Grid(10, 4)}, stockinette(10), {"rib", "rib", Grid(10, 4)}};
  const Panel wide = join_strips("wide", 10, strips);
  CHECK(row_of(piece_outline(piece(72, 20), wide, swatch()), 1) == RowSpan{2, 15});  // 16 mm a side: two of rib
  CHECK(row_of(piece_outline(piece(32, 20), wide, swatch()), 1) == RowSpan{5, 12});  // 36 mm: four of rib and one

  // 10 rows of rib, 50 mm high and 80 mm wide, under 10 of stockinette, 25 mm and 40 mm: both keep 20 mm.
  const Panel tall = plain(10, 10).above(plain(10, 10, "rib"));
  const Outline outline = piece_outline(piece(20, 75), tall, swatch());
  CHECK(row_of(outline, 1) == RowSpan{4, 5});
  CHECK(row_of(outline, 10) == RowSpan{4, 5});
  CHECK(row_of(outline, 11) == RowSpan{3, 6});
  // From 80 mm at the cast-on to 16 mm at 80 mm, which is above the panel but at the piece's length: at 75 mm.
  const Outline slope = piece_outline(piece(80, 80, {at(50, 40), at(80, 16)}), tall, swatch());
  CHECK(row_of(slope, 10) == RowSpan{2, 7});  // 42 mm in its middle: 19 mm a side
  CHECK(row_of(slope, 11) == RowSpan{0, 9});  // 38.8 mm of 40
  CHECK(row_of(slope, 20) == RowSpan{3, 6});  // 17.2 mm: 11.4 a side
}

TEST_CASE("a shape lies at the heights that the panel has in it, not at those of the whole one", "[shaping][article]") {
  // Rib, 80 mm at each side, stretches the rows of the stockinette between: 4.17 mm a row as long as it is there, then
  // 2.5 mm. So 50 mm are 12 rows, and the 50 mm above them 20: by heights of the whole panel they would be 12.
  const Panel wide = join_strips(
      "wide", 40,
      std::vector<Strip>{
          {"rib", "rib", Grid(1, 10)}, {"ground", "stockinette", Grid(1, 20)}, {"rib", "rib", Grid(1, 10)}});
  const TargetPiece wanted = piece(240, 120, {at(50, 240), at(50, 80), at(100, 80), at(100, 40)});
  const Outline outline = piece_outline(wanted, wide, swatch());
  CHECK(row_of(outline, 12) == RowSpan{0, 39});
  CHECK(row_of(outline, 13) == RowSpan{10, 29});
  CHECK(row_of(outline, 32) == RowSpan{10, 29});
  CHECK(row_of(outline, 33) == RowSpan{15, 24});
  CHECK(size(shaped(wide, outline), swatch()).height_mm == Approx(120));
}

TEST_CASE("what is shaped measures what the piece does, to a stitch, between its seams", "[article][shaping][size]") {
  TargetPiece wanted = piece(200, 250, {at(150, 280), at(200, 280), at(250, 100)});
  wanted.left = wanted.right = EdgeUse::seamed;
  wanted.upper = EdgeUse::free;
  const Panel whole = plain(100, 75);
  SizeOptions sewn;
  sewn.seam_left = sewn.seam_right = 1;
  sewn.seam_top = 2;  // not read: the upper edge is free
  const Outline outline = piece_outline(wanted, whole, swatch(), sewn);
  sewn.seam_top = 0;
  const Size made = size(shaped(whole, outline), swatch(), sewn);
  CHECK(std::abs(made.cast_on.width_mm - 200) <= 4);
  CHECK(std::abs(made.width_mm - 280) <= 4);
  CHECK(std::abs(made.bind_off.width_mm - 100) <= 4 + 180.0 / 20);  // the last row is a row's half below the edge
  // Without seams the panel keeps two stitches less.
  wanted.left = wanted.right = EdgeUse::free;
  const Outline bare = piece_outline(wanted, whole, swatch(), sewn);
  for (std::size_t i = 0; i < bare.rows.size(); ++i) {
    CHECK(bare.rows[i].first == outline.rows[i].first + 1);
    CHECK(bare.rows[i].last == outline.rows[i].last - 1);
  }
}

TEST_CASE("a piece that the panel cannot hold is refused with its field", "[article][shaping][error]") {
  const Panel panel = plain(40, 40);
  const auto refused_at = [&](const std::string& field, const TargetPiece& wanted, int row = 0, int step = 1) {
    INFO(field);
    Place place;
    place.field = field;
    place.row = row;
    CHECK_THROWS_MATCHES(piece_outline(wanted, panel, swatch(), {}, step), Error,
                         refused(ErrorCode::bad_argument, place));
  };
  refused_at("piece.width_least_mm", piece(165, 100), 1);
  refused_at("piece.shape[0].width_least_mm", piece(100, 100, {at(40, 200), at(80, 90)}), 16);
  refused_at("piece.shape[1].height_least_mm", piece(100, 300, {at(40, 120), at(102, 90)}));
  refused_at("piece.shape[1].height_least_mm", piece(100, 100, {at(40, 120), at(30, 90)}));
  refused_at("piece.shape[0].width_greatest_mm", piece(100, 100, {{40, 40, 120, 110}}));
  refused_at("piece.shape[0].height_greatest_mm", piece(100, 100, {{40, 30, 120, 120}}));
  refused_at("piece.width_least_mm", piece(std::numeric_limits<double>::quiet_NaN(), 100));
  refused_at("piece.length_least_mm", piece(100, 0));
  refused_at("step", piece(100, 100), 0, 0);
  refused_at("outline", piece(100, 100, {at(100, 1)}), 40);
  CHECK_THROWS_MATCHES(piece_outline(piece(100, 100), plain(40, 40, "moss"), swatch()), Error,
                       refused_field(ErrorCode::no_gauge, "moss"));
  SizeOptions borrowed;
  borrowed.substitutes = {{"moss", "stockinette"}};
  CHECK(piece_outline(piece(100, 100), plain(40, 40, "moss"), swatch(), borrowed) ==
        piece_outline(piece(100, 100), panel, swatch()));
}

TEST_CASE("a point above the piece's length is refused, though the panel is that high", "[article][shaping][error]") {
  TargetPiece piece;
  piece.name = "x";
  piece.width_least_mm = piece.width_greatest_mm = 160;
  piece.length_least_mm = piece.length_greatest_mm = 100;
  piece.shape = {{100, 100, 120, 120}, {105, 105, 40, 40}};
  CHECK_THROWS_MATCHES(piece_outline(piece, plain(48, 40), swatch()), Error,
                       refused_field(ErrorCode::bad_argument, "piece.shape[1].height_least_mm"));
}

}  // namespace piece_outline_test
