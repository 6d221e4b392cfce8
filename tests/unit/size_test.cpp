#include "latchwork/size.hpp"

#include <cmath>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "random.hpp"

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::Random;
using latchwork_test::refused_field;

namespace {

Strip strip(const std::string& texture, int columns) {
  return {texture + " strip", texture, Grid(1, columns)};
}

// Two places of each, so that the spread is known: mean +- half gives a sample standard deviation of half * sqrt(2).
void measure(std::vector<Measurement>& out, const std::string& texture, double stitches, double rows,
             double stitches_half = 0, double rows_half = 0) {
  for (const int sign : {-1, 1}) {
    out.push_back({texture, Counted::stitches, stitches + sign * stitches_half, 100, ""});
    out.push_back({texture, Counted::rows, rows + sign * rows_half, 100, ""});
  }
}

}  // namespace

TEST_CASE("a panel of one texture is columns and rows over its gauge", "[size]") {
  // 28 stitches and 40 rows per 10 cm: 70 stitches are 250 mm, 60 rows are 150 mm.
  std::vector<Measurement> measurements;
  measure(measurements, "plain", 28, 40);
  const Size got = size(join_strips("p", 60, std::vector<Strip>{strip("plain", 70)}), Swatch(measurements));
  CHECK(got.width_mm == Approx(250));
  CHECK(got.least_width_mm == got.width_mm);
  CHECK(got.height_mm == Approx(150));
  CHECK(got.least_height_mm == got.height_mm);
  CHECK(got.greatest_height_mm == got.height_mm);
  CHECK(got.width_spread_mm == 0);
  CHECK(got.height_spread_mm == 0);
  CHECK(got.warnings.empty());
  CHECK(got.strips == std::vector<StripSize>{{"plain strip", "plain", 0, 70, 60, got.width_mm, got.height_mm}});
}

TEST_CASE("strips measure at their own gauges, heights as least, greatest and width-weighted mean", "[size]") {
  // plain: 25 sts, 40 rows; garter: 20 sts, 50 rows. 50 columns of plain are 200 mm wide, 20 of garter 100 mm. 100 rows
  // are 250 mm of plain and 200 mm of garter: the mean is (200 * 250 + 100 * 200) / 300 = 233.3 mm.
  std::vector<Measurement> measurements;
  measure(measurements, "plain", 25, 40);
  measure(measurements, "garter", 20, 50);
  const Panel panel =
      join_strips("p", 100, std::vector<Strip>{strip("plain", 30), strip("garter", 20), strip("plain", 20)});
  const Size got = size(panel, Swatch(measurements));
  CHECK(got.width_mm == Approx(300));
  CHECK(got.height_mm == Approx(700.0 / 3));
  CHECK(got.least_height_mm == Approx(200));
  CHECK(got.greatest_height_mm == Approx(250));
  REQUIRE(got.strips.size() == 3);
  CHECK(got.strips[0].width_mm == Approx(120));
  CHECK(got.strips[1].width_mm == Approx(100));
  CHECK(got.strips[1].height_mm == Approx(200));
  CHECK(got.strips[2].width_mm == Approx(80));
  CHECK(got.strips[2].texture == "plain");
  REQUIRE(got.warnings.size() == 1);
  CHECK(got.warnings[0] ==
        "rows 1-100: texture 'plain' is 250.0 mm high and 'garter' 200.0 mm, 50.0 mm apart: 'plain' will ripple or "
        "'garter' be stretched");
}

TEST_CASE("bands add up in height, and unlike widths are told", "[size]") {
  std::vector<Measurement> measurements;
  measure(measurements, "plain", 25, 40);   // 50 columns: 200 mm; 40 rows: 100 mm
  measure(measurements, "garter", 20, 50);  // 50 columns: 250 mm; 25 rows: 50 mm
  const Panel panel = join_strips("top", 25, std::vector<Strip>{strip("garter", 50)})
                          .above(join_strips("low", 40, std::vector<Strip>{strip("plain", 50)}));
  const Size got = size(panel, Swatch(measurements));
  CHECK(got.width_mm == Approx(250));
  CHECK(got.least_width_mm == Approx(200));
  CHECK(got.height_mm == Approx(150));
  CHECK(got.least_height_mm == Approx(150));
  CHECK(got.greatest_height_mm == Approx(150));
  REQUIRE(got.strips.size() == 2);
  CHECK(got.strips[0].texture == "plain");
  CHECK(got.strips[0].band == 0);
  CHECK(got.strips[1].band == 1);
  CHECK(got.strips[1].rows == 25);
  CHECK(got.warnings ==
        std::vector<std::string>{"rows 1-40 are 200.0 mm wide and rows 41-65 250.0 mm: the edges will wave, 50.0 mm in "
                                 "all"});
}

TEST_CASE("unlike heights and widths are told from 1 mm up", "[size]") {
  const auto warned = [](double rows_per_10cm) {
    std::vector<Measurement> measurements;
    measure(measurements, "a", 25, 40);
    measure(measurements, "b", 25, rows_per_10cm);
    const Panel panel = join_strips("p", 40, std::vector<Strip>{strip("a", 5), strip("b", 5)});
    return size(panel, Swatch(measurements)).warnings.size();
  };
  CHECK(warned(40) == 0);
  CHECK(warned(4000 / 100.9) == 0);   // 100.9 mm against 100 mm
  CHECK(warned(4000 / 101.01) == 1);  // 101.01 mm
}

TEST_CASE("of textures equally high, or equally low, the first by name is told", "[size]") {
  std::vector<Measurement> measurements;
  for (const char* high : {"b", "d"}) measure(measurements, high, 25, 40);
  for (const char* low : {"c", "a"}) measure(measurements, low, 25, 50);
  const Panel panel =
      join_strips("p", 40, std::vector<Strip>{strip("d", 5), strip("c", 5), strip("b", 5), strip("a", 5)});
  const Size got = size(panel, Swatch(measurements));
  REQUIRE(got.warnings.size() == 1);
  CHECK(got.warnings[0] ==
        "rows 1-40: texture 'b' is 100.0 mm high and 'a' 80.0 mm, 20.0 mm apart: 'b' will ripple or 'a' be stretched");
}

TEST_CASE("small differences in many bands are told once they add up", "[size]") {
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40);
  measure(measurements, "b", 25, 4000 / 100.6);  // 0.6 mm more in 40 rows
  const Panel one = join_strips("p", 40, std::vector<Strip>{strip("a", 5), strip("b", 5)});
  const Size got = size(one.above(one), Swatch(measurements));
  REQUIRE(got.warnings.size() == 1);
  CHECK(got.warnings[0] ==
        "strips of unlike height add up over 2 bands: the tallest make 201.2 mm, the lowest 200.0 mm, 1.2 mm apart");
}

TEST_CASE("spreads: strips of one texture add up, unlike textures add as squares", "[size]") {
  // Worked by hand. a: 25 +- 1 sts (2 places: sample deviation sqrt(2)), relative 0.0565685; b: 20 +- 0.5, relative
  // 0.0353553. 50 columns of a are 200 mm, in two strips; 20 of b are 100 mm.
  // a: 200 * 0.0565685 = 11.3137; b: 100 * 0.0353553 = 3.53553; root of the squares 11.8533.
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40, 1, 0);
  measure(measurements, "b", 20, 40, 0.5, 0);
  const Panel panel = join_strips("p", 100, std::vector<Strip>{strip("a", 25), strip("b", 20), strip("a", 25)});
  const Size got = size(panel, Swatch(measurements));
  CHECK(got.width_spread_mm == Approx(11.8533).epsilon(1e-5));
  CHECK(got.height_spread_mm == Approx(0).margin(1e-9));  // equal heights: the weights do not matter

  // Rows: a 40 +- 2, relative 0.0707107, weight 2/3 of 250 mm; b exact: 250 * 2/3 * 0.0707107 = 11.7851.
  std::vector<Measurement> rows;
  measure(rows, "a", 25, 40, 0, 2);
  measure(rows, "b", 20, 40);
  CHECK(size(panel, Swatch(rows)).height_spread_mm == Approx(11.7851).epsilon(1e-5));
  CHECK(size(panel, Swatch(rows)).width_spread_mm == 0);

  // Two bands of one texture share its gauge: their spreads add up. 2 * 250 mm * 0.0707107 = 35.3553.
  const Panel tall = join_strips("t", 100, std::vector<Strip>{strip("a", 25)});
  CHECK(size(tall.above(tall), Swatch(rows)).height_spread_mm == Approx(35.3553).epsilon(1e-5));
}

TEST_CASE("the spreads are those of panels whose gauges are drawn at random", "[size]") {
  // A Monte Carlo run against the first-order formula. Gauges are drawn with the swatch's deviations (sums of twelve
  // uniform numbers less six: deviation 1), the panel is sized by each drawing, and the sizes' deviation is taken.
  Random random(0x5EED5);
  const auto normal = [&] {
    double sum = 0;
    for (int i = 0; i < 12; ++i) sum += static_cast<double>(random.next() >> 11) * 0x1p-53;
    return sum - 6;
  };
  const double half = 0.4 / std::sqrt(2.0);  // so that the sample deviation is 0.4
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40, half, half);
  measure(measurements, "b", 20, 56, half, 2 * half);
  const Panel panel = join_strips("p", 100, std::vector<Strip>{strip("a", 25), strip("b", 30), strip("a", 10)})
                          .above(join_strips("q", 60, std::vector<Strip>{strip("b", 5), strip("a", 60)}));
  const Size predicted = size(panel, Swatch(measurements));

  double width_sum = 0, width_squares = 0, height_sum = 0, height_squares = 0;
  const int drawings = 20'000;
  for (int i = 0; i < drawings; ++i) {
    const Size drawn = size(panel, Swatch({{"a", Counted::stitches, 25 + 0.4 * normal(), 100, ""},
                                           {"a", Counted::rows, 40 + 0.4 * normal(), 100, ""},
                                           {"b", Counted::stitches, 20 + 0.4 * normal(), 100, ""},
                                           {"b", Counted::rows, 56 + 0.8 * normal(), 100, ""}}));
    width_sum += drawn.width_mm - predicted.width_mm;
    width_squares += (drawn.width_mm - predicted.width_mm) * (drawn.width_mm - predicted.width_mm);
    height_sum += drawn.height_mm - predicted.height_mm;
    height_squares += (drawn.height_mm - predicted.height_mm) * (drawn.height_mm - predicted.height_mm);
  }
  const double width_sd = std::sqrt((width_squares - width_sum * width_sum / drawings) / (drawings - 1));
  const double height_sd = std::sqrt((height_squares - height_sum * height_sum / drawings) / (drawings - 1));
  // A deviation from n drawings is itself known to 1 / sqrt(2n) = 0.5 %: four of those.
  CHECK(width_sd == Approx(predicted.width_spread_mm).epsilon(0.02));
  CHECK(height_sd == Approx(predicted.height_spread_mm).epsilon(0.02));
}

TEST_CASE("a texture measured in one place has no known spread, and a warning says so", "[size]") {
  const Swatch swatch({{"a", Counted::stitches, 25, 100, ""},
                       {"a", Counted::rows, 40, 100, ""},
                       {"b", Counted::stitches, 25, 100, ""},
                       {"b", Counted::rows, 40, 100, ""},
                       {"b", Counted::rows, 40, 100, ""}});
  const Size got = size(join_strips("p", 8, std::vector<Strip>{strip("b", 5), strip("a", 5), strip("a", 5)}), swatch);
  CHECK(got.warnings ==
        std::vector<std::string>{
            "stitches and rows of texture 'a' were measured in one place only: their spread is not known and counts as "
            "0",
            "stitches of texture 'b' were measured in one place only: their spread is not known and counts as 0"});
  CHECK_FALSE(got.spread_known);
  std::vector<Measurement> twice;
  measure(twice, "a", 25, 40, 0.5, 0.5);
  CHECK(size(join_strips("p", 8, std::vector<Strip>{strip("a", 5)}), Swatch(twice)).spread_known);
}

TEST_CASE("what is true of several textures or bands is said once", "[size]") {
  std::vector<Measurement> once;
  for (const char* texture : {"b", "a", "c"}) {
    const double rows = texture[0] == 'c' ? 50 : 40;
    once.push_back({texture, Counted::stitches, 25, 100, ""});
    once.push_back({texture, Counted::rows, rows, 100, ""});
  }
  const Panel band = join_strips("p", 8, std::vector<Strip>{strip("a", 5), strip("c", 5)});
  const Panel wide = join_strips("p", 2, std::vector<Strip>{strip("b", 10)});
  const Size got = size(band.above(wide.above(band)), Swatch(once));
  CHECK(got.warnings ==
        std::vector<std::string>{
            "rows 1-8, 11-18: texture 'a' is 20.0 mm high and 'c' 16.0 mm, 4.0 mm apart: 'a' will ripple or 'c' be "
            "stretched",
            "stitches and rows of textures 'a', 'b', 'c' were measured in one place only: their spread is not known "
            "and counts as 0"});
}

TEST_CASE("a ladder gives way: no warning says that it ripples or is stretched", "[size]") {
  std::vector<Measurement> measurements;
  measure(measurements, "plain", 25, 40);
  measure(measurements, "ladder", 25, 20);
  measure(measurements, "moss", 25, 39);
  const Size alone = size(join_strips("p", 40, std::vector<Strip>{strip("plain", 5), ladder(2), strip("plain", 5)}),
                          Swatch(measurements));
  CHECK(alone.warnings.empty());
  CHECK(alone.greatest_height_mm == Approx(200));  // it is measured like any texture
  const Size mixed = size(join_strips("p", 40, std::vector<Strip>{strip("plain", 5), ladder(2), strip("moss", 5)}),
                          Swatch(measurements));
  CHECK(mixed.warnings == std::vector<std::string>{"rows 1-40: texture 'moss' is 102.6 mm high and 'plain' 100.0 mm, "
                                                   "2.6 mm apart: 'moss' will ripple or 'plain' be stretched"});
}

TEST_CASE("a texture that the swatch does not have is refused by name", "[size][error]") {
  std::vector<Measurement> measurements;
  measure(measurements, "plain", 25, 40);
  measurements.push_back({"ladder", Counted::rows, 40, 100, ""});
  const Panel moss_panel = join_strips("p", 8, std::vector<Strip>{strip("plain", 5), strip("moss", 5)});
  CHECK_THROWS_MATCHES(size(moss_panel, Swatch(measurements)), Error, refused_field(ErrorCode::no_gauge, "moss"));
  const Panel ladder_panel = join_strips("p", 8, std::vector<Strip>{strip("plain", 5), ladder(2), strip("plain", 5)});
  CHECK_THROWS_MATCHES(size(ladder_panel, Swatch(measurements)), Error, refused_field(ErrorCode::no_gauge, "ladder"));
}

TEST_CASE("a mirrored panel has the same size to the last bit, its strips in the other order", "[size]") {
  std::vector<Measurement> measurements;
  measure(measurements, "stockinette", 27.3, 41.1, 0.3, 0.7);
  measure(measurements, "moss", 23.9, 44.7, 0.2, 0.1);
  measure(measurements, "garter 1/1", 22.1, 57.7, 0.4, 0.9);
  const Panel panel =
      join_strips("p", 46, std::vector<Strip>{stockinette(7), moss(6), garter(1, 1, 3), stockinette(11)});
  const Swatch swatch(measurements);
  Size mirrored = size(panel.mirrored(), swatch);
  const Size straight = size(panel, swatch);
  CHECK(mirrored.strips.front().columns == 11);
  CHECK(mirrored.strips.back().columns == 7);
  mirrored.strips = straight.strips;
  CHECK(mirrored == straight);
}
