#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/schematic.hpp"
#include "latchwork/shaping.hpp"
#include "latchwork/size.hpp"
#include "size_swatch.hpp"

namespace size_shaped_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::measure;
using latchwork_test::messages;
using latchwork_test::refused;
using latchwork_test::refused_field;
using latchwork_test::strip;

TEST_CASE("a shaped panel has the widths of its rows, each with its own spread", "[size][shaping]") {
  // edge: 5 mm a stitch, 1 place less sure; a: 4 mm a stitch. 5 + 30 + 5 columns: 25 + 120 + 25 = 170 mm.
  std::vector<Measurement> measurements;
  measure(measurements, "edge", 20, 40, 0.5, 0);  // u / g = 0.0433013, as above
  measure(measurements, "a", 25, 40, 1, 0);       // u / g = 0.0692820
  const Swatch swatch(measurements);
  const Panel straight = join_strips("p", 30, std::vector<Strip>{strip("edge", 5), strip("a", 30), strip("edge", 5)});
  // 5 columns in at the left up to row 6, then out a column every other row; 3 leave at either side after row 20.
  const Outline outline = outlined(30, 40, {.start = 5, .events = {{6, -1, 2, 5}, {20, 3}}}, {.events = {{20, 3}}});
  const Panel panel = shaped(straight, outline);
  const Size got = size(panel, swatch);
  CHECK(got.cast_on.row == 1);
  CHECK(got.cast_on.columns == 35);
  CHECK(got.cast_on.width_mm == Approx(145));
  CHECK(got.cast_on.spread_mm == Approx(std::hypot(120 * 0.0692820, 25 * 0.0433013)).epsilon(1e-5));
  CHECK(got.widest_row == 15);
  CHECK(got.widest_columns == 40);
  CHECK(got.width_mm == Approx(170));
  CHECK(got.width_spread_mm == Approx(std::hypot(120 * 0.0692820, 50 * 0.0433013)).epsilon(1e-5));
  CHECK(got.bind_off.row == 30);
  CHECK(got.bind_off.columns == 34);
  CHECK(got.bind_off.width_mm == Approx(140));
  CHECK(got.bind_off.spread_mm == Approx(std::hypot(120 * 0.0692820, 20 * 0.0433013)).epsilon(1e-5));
  CHECK(got.bind_off.margin_mm > got.bind_off.spread_mm);
  CHECK(got.least_width_mm == got.width_mm);  // one band: nothing waves
  CHECK(got.height_mm == size(straight, swatch).height_mm);
  // Of a straight panel all are one width.
  const Size whole = size(straight, swatch);
  CHECK(whole.width_mm == Approx(170));
  for (const RowWidth& each : {whole.cast_on, whole.bind_off}) {
    CHECK(each.width_mm == whole.width_mm);
    CHECK(each.spread_mm == whole.width_spread_mm);
    CHECK(each.margin_mm == whole.width_margin_mm);
    CHECK(each.columns == 40);
  }
  CHECK(whole.widest_row == 1);
  CHECK(whole.bind_off.row == 30);
  // The drawing has the same measures.
  for (const SchematicMeasure& each : schematic_piece(panel, swatch).measures) {
    CAPTURE(each.label);
    if (each.label == "width at the cast-on") CHECK(each.mm == Approx(got.cast_on.width_mm).epsilon(1e-12));
    if (each.label == "width at the widest row") CHECK(each.mm == Approx(got.width_mm).epsilon(1e-12));
    if (each.label == "width at the last row") CHECK(each.mm == Approx(got.bind_off.width_mm).epsilon(1e-12));
  }
}

TEST_CASE("a seam follows the edge of a shaped panel", "[size][shaping]") {
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40);
  const Swatch swatch(measurements);
  // A triangle: 21 columns, one less at each side every row, one stitch at the top.
  const EdgeShape edge{.events = {{1, 1, 1, 10}}};
  const Panel panel = shaped(join_strips("p", 11, std::vector<Strip>{strip("a", 21)}), outlined(11, 21, edge, edge));
  CHECK(size(panel, swatch).bind_off.width_mm == Approx(4));
  const Size sewn = size(panel, swatch, {.seam_left = 1, .seam_right = 0.5, .seam_bottom = 1.5});
  CHECK(sewn.cast_on.row == 2);  // half of it is left
  CHECK(sewn.cast_on.columns == 19);
  CHECK(sewn.width_mm == Approx(17.5 * 4));
  CHECK(sewn.seam_width_mm == Approx(1.5 * 4));  // of that row; the row below it is in the other seam
  CHECK(sewn.bind_off.width_mm == 0);            // the seams take more than it has
  CHECK(sewn.bind_off.spread_mm == 0);
  CHECK_THROWS_MATCHES(size(panel, swatch, {.seam_left = 10, .seam_right = 10, .seam_bottom = 1}), Error,
                       refused_field(ErrorCode::bad_argument, "seam_right"));
  // The seam that takes more is named, of the panel as of a row.
  CHECK_THROWS_MATCHES(size(panel, swatch, {.seam_left = 11, .seam_right = 8, .seam_bottom = 1}), Error,
                       refused_field(ErrorCode::bad_argument, "seam_left"));
  Place top;
  top.row = 11;
  top.field = "seam_left";
  CHECK_THROWS_MATCHES(schematic_piece(panel, swatch, {.seam_left = 2}), Error, refused(ErrorCode::bad_argument, top));
}

TEST_CASE("bands of a shaped panel are held against each other over the columns that every row has",
          "[size][shaping]") {
  std::vector<Measurement> measurements;
  measure(measurements, "plain", 25, 40);   // 4 mm a stitch
  measure(measurements, "garter", 20, 50);  // 5 mm
  const Panel both = join_strips("top", 20, std::vector<Strip>{strip("garter", 50)})
                         .above(join_strips("low", 20, std::vector<Strip>{strip("plain", 50)}));
  const EdgeShape edge{.events = {{20, 10}}};  // ten columns less at each side where the other band begins
  const Size got = size(shaped(both, outlined(40, 50, edge, edge)), Swatch(measurements));
  CHECK(got.width_mm == Approx(200));
  CHECK(got.bind_off.width_mm == Approx(150));
  CHECK(got.least_width_mm == Approx(200 - 30));  // 30 columns: 150 mm and 120
  CHECK(messages(got) == std::vector<std::string>{"columns 10 to 39, which every row has: rows 1-20 are 120.0 mm wide "
                                                  "and rows 21-40 150.0 mm: the edges will wave, 30.0 mm in all"});
  // Where no column goes all the way, nothing can be said.
  const EdgeShape in{.events = {{19, 15}, {21, 15}}};
  const EdgeShape out{.start = 25, .events = {{20, -25}}};
  CHECK(size(shaped(both, outlined(40, 50, in, out)), Swatch(measurements)).findings.empty());
}

TEST_CASE("a shaped panel is as high as the stitches that stand, row by row", "[size][shaping]") {
  // 20 rows: b | a | b, 6 columns each, of which the b are bound off after row 10. 30 stitches are 100 mm in both; 40
  // rows are 100 mm in a and 60 in b. Rows 1 to 10 are 25 mm high in a and 16.667 in b, by width (25 + 2 16.667) / 3;
  // above, a stands alone, 25 mm.
  std::vector<Measurement> measurements;
  measure(measurements, "a", 30, 40, 0.5, 1);
  measure(measurements, "b", 30, 60, 0.5, 2);
  const Panel straight = join_strips("t", 20, std::vector<Strip>{strip("b", 6), strip("a", 6), strip("b", 6)});
  const EdgeShape edge{{{10, 0}, {10, 6}}};
  const Panel cut = shaped(straight, outlined(20, 18, edge, edge));
  const Size got = size(cut, Swatch(measurements));
  CHECK(got.height_mm == Approx((25 + 2 * 50 / 3.0) / 3 + 25).epsilon(1e-12));
  CHECK(got.least_height_mm == Approx(50 / 3.0 + 25).epsilon(1e-12));
  CHECK(got.greatest_height_mm == Approx(50).epsilon(1e-12));
  // By hand: of a's rows 25/3 + 25 mm change in proportion, of b's 2/3 16.667, and of the weights, a third of what a is
  // above the mean there; u = s sqrt(3/2), s = half sqrt(2), so half sqrt(3), over the gauge.
  const double root = std::sqrt(3.0);
  const double lower = (25 + 2 * 50 / 3.0) / 3;
  const double by_stitches = (25 - lower) / 3 * 0.5 / 30;
  const double by_a = (25 / 3.0 + 25) * 1 / 40;
  const double by_b = 2 / 3.0 * 50 / 3 * 2 / 60;
  CHECK(got.height_spread_mm ==
        Approx(root * std::sqrt(by_a * by_a + by_b * by_b + 2 * by_stitches * by_stitches)).epsilon(1e-12));
  REQUIRE(got.findings.size() == 1);
  CHECK(got.findings[0].message ==
        "rows 1-10: texture 'a' is 25.0 mm high and 'b' 16.7 mm, 8.3 mm apart: 'a' will ripple or 'b' be stretched");
  // Stretches with the same two textures are told as one: a slope at one side.
  const EdgeShape slope{{{10, 0}, {14, 4}}};
  const Size sloped = size(shaped(straight, outlined(20, 18, slope, EdgeShape{})), Swatch(measurements));
  REQUIRE(sloped.findings.size() == 1);
  CHECK(sloped.findings[0].message.substr(0, 10) == "rows 1-20:");
  CHECK(sloped.height_mm > size(straight, Swatch(measurements)).height_mm);
  // The parts of the drawing add up to the same.
  const SchematicPiece piece = schematic_piece(cut, Swatch(measurements));
  double highest = 0;
  for (const SchematicMeasure& each : piece.measures) highest = std::max(highest, each.mm);
  CHECK(highest == Approx(std::max(got.height_mm, got.width_mm)).epsilon(1e-9));
}

TEST_CASE("a strip that is cut off wholly needs no gauge and measures nothing", "[size][shaping]") {
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40);  // 4 mm a stitch, 2.5 mm a row
  const Swatch swatch(measurements);
  const Panel straight = join_strips("p", 20, std::vector<Strip>{strip("b", 6), strip("a", 10), strip("c", 6)});
  const auto refused_for = [&](const Panel& panel, const char* texture) {
    CHECK_THROWS_MATCHES(size(panel, swatch), Error, refused_field(ErrorCode::no_gauge, texture));
    CHECK_THROWS_MATCHES(schematic_piece(panel, swatch), Error, refused_field(ErrorCode::no_gauge, texture));
    CHECK(measuring_findings(panel, swatch).front().code == FindingCode::no_swatch);
  };
  const Panel cut = shaped(straight, outlined(20, 22, {.start = 6}, {.start = 6}));
  const Size got = size(cut, swatch);
  CHECK(got.width_mm == Approx(40));
  CHECK(got.height_mm == Approx(50));
  REQUIRE(got.strips.size() == 3);
  CHECK(got.strips[0].texture == "b");
  CHECK(got.strips[0].columns == 6);
  CHECK(got.strips[0].width_mm == 0);
  CHECK(got.strips[2].height_mm == 0);
  CHECK(got.strips[1].width_mm == Approx(40));
  for (const Finding& each : measuring_findings(cut, swatch)) CHECK(each.code == FindingCode::few_places);
  CHECK(size(cut, swatch, {.seam_left = 1}).width_mm == Approx(36));
  const SchematicPiece drawn = schematic_piece(cut, swatch);
  REQUIRE(drawn.measures.size() == 2);
  CHECK(drawn.measures[0].mm == Approx(40));
  CHECK(drawn.notes.empty());
  // A substitute for what is not there is not told either.
  CHECK(size(cut, swatch, {.substitutes = {{"b", "a"}}}).findings.empty());
  // With a gauge it measures nothing likewise.
  measure(measurements, "b", 20, 30);
  CHECK(size(cut, Swatch(measurements)).strips[0].width_mm == 0);
  // One stitch in one row is enough; so is a ladder between stitches, and a row without a stitch, which is as wide as
  // the panel.
  refused_for(shaped(straight, outlined(20, 22, {.start = 6, .events = {{18, -1}, {19, 1}}}, {.start = 6})), "b");
  const auto ladder = [](int columns) {
    Grid bare(1, columns);
    for (int column = 0; column < columns; ++column) bare.set(1, column, Cell::none);
    return Strip{"", "d", bare};
  };
  const std::vector<Strip> beside{strip("a", 3), ladder(2), strip("a", 3)};
  refused_for(join_strips("p", 4, beside), "d");
  CHECK(size(join_strips("p", 4, std::vector<Strip>{ladder(2), strip("a", 3)}), swatch).width_mm == Approx(12));
  // A shape is drawn over the whole panel, so that all its strips count.
  TargetPiece piece;
  piece.name = "sleeve";
  piece.width_least_mm = piece.width_greatest_mm = 30;
  piece.length_least_mm = piece.length_greatest_mm = 50;
  CHECK_THROWS_MATCHES(piece_outline(piece, cut, swatch), Error, refused_field(ErrorCode::no_gauge, "b"));
}

TEST_CASE("stretches of a shaped band that add up are counted as stretches", "[size][shaping]") {
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40);
  measure(measurements, "b", 25, 4000 / 100.6);  // 0.6 mm more in 40 rows
  measure(measurements, "c", 25, 4000 / 100.3);
  // c stands beside both above, and alone with a below.
  const Panel panel = join_strips("p", 80, std::vector<Strip>{strip("a", 5), strip("c", 5), strip("b", 5)});
  const Size got = size(shaped(panel, outlined(80, 15, {}, {.start = 5, .events = {{40, -5}}})), Swatch(measurements));
  REQUIRE(got.findings.size() == 0);
  const Panel tall = join_strips("p", 160, std::vector<Strip>{strip("a", 5), strip("c", 5), strip("b", 5)});
  const Size more =
      size(shaped(tall, outlined(160, 15, {}, {.start = 5, .events = {{120, -5}}})), Swatch(measurements));
  REQUIRE(more.findings.size() == 1);
  CHECK(
      more.findings[0].message ==
      "strips of unlike height add up over 2 stretches of rows: the tallest make 401.5 mm, the lowest 400.0 mm, 1.5 mm "
      "apart");
}

}  // namespace size_shaped_test
