#include "latchwork/size.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/shaping.hpp"
#include "normal.hpp"
#include "random.hpp"
#include "size_swatch.hpp"

namespace size_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::measure;
using latchwork_test::messages;
using latchwork_test::normal;
using latchwork_test::Random;
using latchwork_test::refused_field;
using latchwork_test::strip;

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
  CHECK(got.findings.empty());
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
  REQUIRE(got.findings.size() == 1);
  CHECK(got.findings[0].message ==
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
  CHECK(messages(got) ==
        std::vector<std::string>{"rows 1-40 are 200.0 mm wide and rows 41-65 250.0 mm: the edges will wave, 50.0 mm in "
                                 "all"});
}

TEST_CASE("unlike heights and widths are told from 1 mm up", "[size]") {
  const auto warned = [](double rows_per_10cm) {
    std::vector<Measurement> measurements;
    measure(measurements, "a", 25, 40);
    measure(measurements, "b", 25, rows_per_10cm);
    const Panel panel = join_strips("p", 40, std::vector<Strip>{strip("a", 5), strip("b", 5)});
    return size(panel, Swatch(measurements)).findings.size();
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
  REQUIRE(got.findings.size() == 1);
  CHECK(got.findings[0].message ==
        "rows 1-40: texture 'b' is 100.0 mm high and 'a' 80.0 mm, 20.0 mm apart: 'b' will ripple or 'a' be stretched");
}

TEST_CASE("small differences in many bands are told once they add up", "[size]") {
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40);
  measure(measurements, "b", 25, 4000 / 100.6);  // 0.6 mm more in 40 rows
  const Panel one = join_strips("p", 40, std::vector<Strip>{strip("a", 5), strip("b", 5)});
  const Size got = size(one.above(one), Swatch(measurements));
  REQUIRE(got.findings.size() == 1);
  CHECK(got.findings[0].message ==
        "strips of unlike height add up over 2 bands: the tallest make 201.2 mm, the lowest 200.0 mm, 1.2 mm apart");
}

TEST_CASE("spreads: strips of one texture add up, unlike textures add as squares", "[size]") {
  // Worked by hand. a: 25 +- 1 sts (2 places: sample deviation sqrt(2); with what is not known of the mean sqrt(2 (1 +
  // 1/2)) = sqrt(3)), relative 0.0692820; b: 20 +- 0.5, relative 0.0433013. 50 columns of a are 200 mm, in two strips;
  // 20 of b are 100 mm. a: 200 * 0.0692820 = 13.8564; b: 100 * 0.0433013 = 4.33013; root of the squares 14.5172.
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40, 1, 0);
  measure(measurements, "b", 20, 40, 0.5, 0);
  const Panel panel = join_strips("p", 100, std::vector<Strip>{strip("a", 25), strip("b", 20), strip("a", 25)});
  const Size got = size(panel, Swatch(measurements));
  CHECK(got.width_spread_mm == Approx(14.5172).epsilon(1e-5));
  CHECK(got.height_spread_mm == Approx(0).margin(1e-9));  // equal heights: the weights do not matter

  // Rows: a 40 +- 2, relative 2 sqrt(3) / 40 = 0.0866025, weight 2/3 of 250 mm; b exact: 250 * 2/3 * 0.0866025 =
  // 14.4338.
  std::vector<Measurement> rows;
  measure(rows, "a", 25, 40, 0, 2);
  measure(rows, "b", 20, 40);
  CHECK(size(panel, Swatch(rows)).height_spread_mm == Approx(14.4338).epsilon(1e-5));
  CHECK(size(panel, Swatch(rows)).width_spread_mm == 0);

  // Two bands of one texture share its gauge: their spreads add up. 2 * 250 mm * 0.0866025 = 43.3013.
  const Panel tall = join_strips("t", 100, std::vector<Strip>{strip("a", 25)});
  CHECK(size(tall.above(tall), Swatch(rows)).height_spread_mm == Approx(43.3013).epsilon(1e-5));
}

TEST_CASE("margins: Student's t at the effective degrees of freedom, cut to the whole number below", "[size]") {
  // One texture of three places, 24, 25, 26: s = 1, u = sqrt(4/3) = 1.1547, 2 degrees of freedom. t of the tables: 2
  // at 95 % 4.303, at 90 % 2.920 (NIST/SEMATECH e-Handbook, 1.3.6.7.2). 50 columns are 200 mm: 200 / 25 * 1.1547 =
  // 9.2376 mm.
  std::vector<Measurement> measurements;
  for (const double count : {24, 25, 26}) measurements.push_back({"a", Counted::stitches, count, 100});
  for (const double count : {40, 40, 40}) measurements.push_back({"a", Counted::rows, count, 100});
  const Panel panel = join_strips("p", 100, std::vector<Strip>{strip("a", 50)});
  const Size usual = size(panel, Swatch(measurements));
  CHECK(usual.level == 0.95);
  CHECK(usual.width_spread_mm == Approx(9.2376).epsilon(1e-5));
  CHECK(usual.width_margin_mm == Approx(9.2376 * 4.303).epsilon(1e-4));
  CHECK(usual.height_margin_mm == 0);
  CHECK(size(panel, Swatch(measurements), {.level = 0.9}).width_margin_mm == Approx(9.2376 * 2.920).epsilon(1e-4));

  // A second texture, equally wide and equally unsure, of three places too: equal parts of 2 degrees each have 4
  // together (Welch and Satterthwaite): t = 2.776, and the spread is sqrt(2) times one part's.
  for (const double count : {24, 25, 26}) measurements.push_back({"b", Counted::stitches, count, 100});
  for (const double count : {40, 40, 40}) measurements.push_back({"b", Counted::rows, count, 100});
  const Panel both = join_strips("p", 100, std::vector<Strip>{strip("a", 50), strip("b", 50)});
  CHECK(size(both, Swatch(measurements)).width_margin_mm == Approx(9.2376 * std::sqrt(2.0) * 2.776).epsilon(2e-4));
}

TEST_CASE("the margins hold what they promise: a Monte Carlo run over swatches and panels", "[size][long]") {
  // A knitter's true gauges are drawn on; each swatch is places drawn about them, each panel one more draw: so often as
  // the level says the panel lies within the margin of the size that its swatch gave. Several panels, bands, shared
  // textures, few and many places.
  Random random(0x5EED5);
  struct Texture {
    const char* name;
    double stitches, rows, wander;  // relative
    int places;
  };
  const Texture textures[] = {{"a", 25, 40, 0.012, 5}, {"b", 20, 56, 0.02, 4}, {"c", 30, 44, 0.008, 8}};
  const Panel panels[] = {
      join_strips("p", 100, std::vector<Strip>{strip("a", 25), strip("b", 30), strip("a", 10)})
          .above(join_strips("q", 60, std::vector<Strip>{strip("b", 5), strip("a", 60)})),
      join_strips("r", 80, std::vector<Strip>{strip("c", 12), strip("b", 12), strip("c", 12), strip("a", 30)}),
      join_strips("s", 200, std::vector<Strip>{strip("b", 90)}),
      shaped(join_strips("t", 60, std::vector<Strip>{strip("b", 30), strip("a", 30)}),
             outlined(60, 60, {.points = {{0, 0}, {60, 20}}}, {})),
      // Slopes at both sides that take all of one strip away and a part of another: rows low down and high up are
      // stretched by other textures.
      shaped(join_strips("u", 120, std::vector<Strip>{strip("b", 20), strip("a", 30), strip("c", 20)}),
             outlined(120, 70, {.points = {{20, 0}, {70, 20}, {120, 28}}}, {.points = {{40, 0}, {120, 12}}})),
  };
  const auto swatch_of = [&](int places_of_each) {
    std::vector<Measurement> out;
    for (const Texture& t : textures) {
      for (int i = places_of_each > 0 ? places_of_each : t.places; i > 0; --i) {
        out.push_back({t.name, Counted::stitches, t.stitches * (1 + t.wander * normal(random)), 100});
        out.push_back({t.name, Counted::rows, t.rows * (1 + t.wander * normal(random)), 100});
      }
    }
    return Swatch(std::move(out));
  };
  const int drawings = 3000;
  for (const Panel& panel : panels) {
    CAPTURE(panel.name());
    int width_in = 0, height_in = 0, end_in = 0;
    double squares = 0, spreads = 0, high_squares = 0, high_spreads = 0;
    for (int i = 0; i < drawings; ++i) {
      const Size told = size(panel, swatch_of(0), {.level = 0.9});
      const Size comes = size(panel, swatch_of(1));
      const double off = comes.width_mm - told.width_mm;
      const double high_off = comes.height_mm - told.height_mm;
      width_in += std::abs(off) <= told.width_margin_mm ? 1 : 0;
      height_in += std::abs(high_off) <= told.height_margin_mm ? 1 : 0;
      end_in += std::abs(comes.bind_off.width_mm - told.bind_off.width_mm) <= told.bind_off.margin_mm ? 1 : 0;
      squares += off * off;
      spreads += told.width_spread_mm * told.width_spread_mm;
      high_squares += high_off * high_off;
      high_spreads += told.height_spread_mm * told.height_spread_mm;
    }
    // A share of 0.9 from n drawings is known to sqrt(0.09 / n) = 0.55 %: four of those. Cutting the degrees of freedom
    // makes the margins a little wide, so that more may lie within.
    CHECK(width_in > (0.9 - 0.022) * drawings);
    CHECK(width_in < 0.95 * drawings);
    CHECK(end_in > (0.9 - 0.022) * drawings);
    CHECK(end_in < 0.95 * drawings);
    CHECK(height_in > (0.9 - 0.022) * drawings);
    CHECK(height_in < 0.95 * drawings);
    // And the spread is the root mean square of how far the panels were off. The mean of n squares of a normal error is
    // known to sqrt(2 / n), that of n sample variances of 3 degrees of freedom, the fewest here, to sqrt(2 / (3 n)): of
    // their ratio 3.0 %, of its root half of that, and four of those are 6 %.
    const double root_margin = 4 * std::sqrt(8.0 / (3 * drawings)) / 2;
    CHECK(std::sqrt(squares / spreads) == Approx(1).margin(root_margin));
    CHECK(std::sqrt(high_squares / high_spreads) == Approx(1).margin(root_margin));
  }
}

TEST_CASE("seams take stitches from the strips at that side, at their own gauges", "[size]") {
  // a: 4 mm a stitch, 2.5 mm a row; edge: 5 mm and 2 mm. The left seam takes the edge stitch and half of one of a.
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40);
  measure(measurements, "edge", 20, 50);
  const Panel panel = join_strips("p", 40, std::vector<Strip>{strip("edge", 1), strip("a", 20), strip("edge", 1)});
  const Swatch swatch(measurements);
  const Size whole = size(panel, swatch);
  CHECK(whole.width_mm == Approx(90));
  CHECK(whole.seam_width_mm == 0);
  const Size sewn = size(panel, swatch, {.seam_left = 1.5, .seam_right = 0.5, .seam_bottom = 1, .seam_top = 0.5});
  CHECK(sewn.width_mm == Approx(19.5 * 4 + 0.5 * 5));
  CHECK(sewn.seam_width_mm == Approx(90 - 80.5));
  CHECK(sewn.greatest_height_mm == Approx(38.5 * 2.5));
  CHECK(sewn.least_height_mm == Approx(38.5 * 2));
  CHECK(sewn.height_mm + sewn.seam_height_mm == Approx(whole.height_mm));
  CHECK(sewn.strips == whole.strips);
  // What the seams take wholly is not measured any more: without the edge stitches there is one height.
  CHECK(size(panel, swatch, {.seam_left = 1, .seam_right = 1}).findings.empty());
  // A band within the seam has no width to wave.
  const Panel two = join_strips("top", 1, std::vector<Strip>{strip("edge", 22)}).above(panel);
  CHECK(size(two, swatch).width_mm == Approx(110));
  CHECK(size(two, swatch, {.seam_left = 1, .seam_right = 1, .seam_top = 1}).width_mm == Approx(80));
  CHECK(size(two, swatch, {.seam_left = 1, .seam_right = 1, .seam_top = 1}).findings.empty());
  // Nor do the seams at the sides take anything off it, but of the row that is widest then.
  CHECK(size(two, swatch, {.seam_top = 1}).seam_width_mm == 0);
  CHECK(size(two, swatch, {.seam_left = 1, .seam_right = 1, .seam_top = 1}).seam_width_mm ==
        Approx(size(panel, swatch).width_mm - 80));
}

TEST_CASE("size options out of their ranges are refused by field", "[size][error]") {
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40);
  const Panel panel = join_strips("p", 4, std::vector<Strip>{strip("a", 6)});
  const Swatch swatch(measurements);
  const double nan = std::nan("");
  const auto refused = [&](const char* field, const SizeOptions& options, ErrorCode code = ErrorCode::bad_argument) {
    INFO(field);
    CHECK_THROWS_MATCHES(size(panel, swatch, options), Error, refused_field(code, field));
    CHECK_THROWS_MATCHES(measuring_findings(panel, swatch, options), Error, refused_field(code, field));
  };
  for (const double seam : {-0.5, 0.25, 1000.5, nan}) {
    refused("seam_left", {.seam_left = seam});
    refused("seam_right", {.seam_right = seam});
    refused("seam_bottom", {.seam_bottom = seam});
    refused("seam_top", {.seam_top = seam});
  }
  refused("seam_left", {.seam_left = 5.5, .seam_right = 0.5});  // nothing is left: the greater is told
  refused("seam_right", {.seam_left = 0.5, .seam_right = 5.5});
  refused("seam_top", {.seam_bottom = 2, .seam_top = 2});
  for (const double level : {0.49, 0.9995, nan}) refused("level", {.level = level});
  refused("state", {.state = static_cast<ClothState>(3)});
  refused("substitutes[0].texture", {.substitutes = {{"", "a"}}});
  refused("substitutes[1].use", {.substitutes = {{"b", "a"}, {"c", "\xFF"}}});
  refused("substitutes[1].use", {.substitutes = {{"b", "a"}, {"c", "c"}}});                  // itself
  refused("substitutes[2].texture", {.substitutes = {{"b", "a"}, {"c", "a"}, {"b", "c"}}});  // by which of the two?
  refused("substitutes[1].texture", {.substitutes = {{"b", "a"}, {"b", "a"}}});
  refused("substitutes", {.substitutes = std::vector<Substitute>(50'001, {"b", "a"})}, ErrorCode::too_large);
}

TEST_CASE("a panel is measured in the most finished state, and unlike states are told", "[size]") {
  std::vector<Measurement> measurements;
  for (const char* texture : {"a", "b"}) {
    for (int place = 0; place < 2; ++place) {
      measurements.push_back({texture, Counted::stitches, 25, 100});
      measurements.push_back({texture, Counted::rows, 40, 100});
    }
  }
  for (int place = 0; place < 2; ++place) {
    measurements.push_back(
        {.texture = "a", .counted = Counted::stitches, .count = 26, .length_mm = 100, .state = ClothState::washed});
    measurements.push_back(
        {.texture = "a", .counted = Counted::rows, .count = 40, .length_mm = 100, .state = ClothState::washed});
  }
  const Swatch swatch(measurements);
  const Panel alone = join_strips("p", 40, std::vector<Strip>{strip("a", 26)});
  CHECK(size(alone, swatch).width_mm == Approx(100));
  CHECK(size(alone, swatch).findings.empty());
  CHECK(size(alone, swatch, {.state = ClothState::rested}).width_mm == Approx(104));
  CHECK_THROWS_MATCHES(size(alone, swatch, {.state = ClothState::off_machine}), Error,
                       refused_field(ErrorCode::no_gauge, "a"));
  const Panel both = join_strips("p", 40, std::vector<Strip>{strip("a", 26), strip("b", 25)});
  const Size mixed = size(both, swatch);
  REQUIRE(mixed.findings.size() == 1);
  CHECK(mixed.findings[0].code == FindingCode::mixed_states);
  CHECK(mixed.findings[0].message == "textures were measured in unlike states: 'b' rested; 'a' washed");
  CHECK(size(both, swatch, {.state = ClothState::rested}).findings.empty());
  CHECK_THROWS_MATCHES(size(both, swatch, {.state = ClothState::washed}), Error,
                       refused_field(ErrorCode::no_gauge, "b"));
  CHECK_THROWS_WITH(size(both, swatch, {.state = ClothState::washed}),
                    "the swatch has no gauge for texture 'b': it was not measured washed; it has 'a'");
}

TEST_CASE("another texture's gauge stands in only where it is named, and the answer says so", "[size]") {
  std::vector<Measurement> measurements;
  measure(measurements, "a", 25, 40, 1, 0);
  measurements.push_back({"c", Counted::rows, 40, 100});
  const Swatch swatch(measurements);
  const Panel panel = join_strips("p", 40, std::vector<Strip>{strip("a", 25), strip("b", 25)});
  CHECK_THROWS_MATCHES(size(panel, swatch), Error, refused_field(ErrorCode::no_gauge, "b"));
  const std::vector<Finding> before = measuring_findings(panel, swatch);
  REQUIRE(before.size() == 3);
  CHECK(before[0].code == FindingCode::no_swatch);
  CHECK(before[0].severity == Severity::error);
  CHECK(before[0].place.field == "b");
  CHECK(before[1].code == FindingCode::few_places);  // a's stitches and rows
  CHECK(before[2].code == FindingCode::few_places);

  const Size got = size(panel, swatch, {.substitutes = {{"b", "a"}}});
  CHECK(got.width_mm == Approx(200));
  // Both are off together: their shares are added before they are squared.
  CHECK(got.width_spread_mm == Approx(200 * std::sqrt(3.0) / 25));
  REQUIRE(got.findings.size() == 1);
  CHECK(got.findings[0].code == FindingCode::borrowed_gauge);
  CHECK(got.findings[0].place.field == "b");
  CHECK(got.findings[0].message == "texture 'b' is measured by the gauge of 'a', as told: it was not measured");
  // Never where the texture has its own, and no further than the one that is named.
  CHECK(size(panel, swatch, {.substitutes = {{"b", "a"}, {"a", "nowhere"}}}).width_mm == Approx(200));
  CHECK_THROWS_WITH(size(panel, swatch, {.substitutes = {{"b", "c"}, {"c", "a"}}}),
                    "the swatch has no gauge for texture 'b': it was not measured; nor for 'c', which was to stand in: "
                    "stitches were not measured; it has 'a'");
}

TEST_CASE("a texture that stands as one or two wales only, none at an edge, has no gauge of its own", "[size]") {
  std::vector<Measurement> measurements;
  for (const char* texture : {"plain", "purl", "moss"}) measure(measurements, texture, 25, 40);
  const Swatch swatch(measurements);
  const auto told = [&](const std::vector<Strip>& strips, const SizeOptions& options = {}) {
    const Panel panel = join_strips("p", 8, strips);
    std::vector<Finding> out;
    for (const Finding& each : size(panel, swatch, options).findings) {
      if (each.code == FindingCode::narrow_texture) out.push_back(each);
    }
    const std::vector<Finding> before = measuring_findings(panel, swatch, options);
    for (const Finding& each : out) CHECK(std::count(before.begin(), before.end(), each) == 1);
    CHECK(std::count_if(before.begin(), before.end(), [](const Finding& each) {
            return each.code == FindingCode::narrow_texture;
          }) == std::ssize(out));
    return out;
  };
  // Once a texture, at its first strip.
  const std::vector<Finding> two = told(
      {strip("plain", 5), strip("purl", 1), strip("plain", 4), strip("purl", 2), strip("moss", 2), strip("plain", 3)});
  REQUIRE(two.size() == 2);
  CHECK(two[0].severity == Severity::advice);
  CHECK(two[0].place.field == "purl");
  CHECK((two[0].place.row == 1 && two[0].last_row == 8 && two[0].place.column == 5 && two[0].last_column == 5));
  CHECK((two[0].value == 2 && two[0].limit == 3));
  CHECK(two[0].message ==
        "texture 'purl' is no more than two wales wide wherever it stands, first in column 5: one or two wales have no "
        "gauge of their own");
  CHECK(two[0].suggestion.find("measure the repeat with its neighbours") == 0);
  CHECK(two[1].place.field == "moss");
  CHECK((two[1].place.column == 12 && two[1].last_column == 13));
  // Three are enough, also of strips that touch; so is one strip of them anywhere.
  CHECK(told({strip("plain", 5), strip("purl", 3), strip("plain", 5)}).empty());
  CHECK(told({strip("plain", 5), strip("purl", 1), strip("purl", 2), strip("plain", 5)}).empty());
  CHECK(told({strip("plain", 5), strip("purl", 1), strip("plain", 5), strip("purl", 4), strip("plain", 5)}).empty());
  // Edge stitches are one or two as a rule.
  CHECK(told({strip("purl", 1), strip("plain", 5), strip("purl", 1)}).empty());
  CHECK(told({strip("plain", 5), strip("purl", 1), strip("plain", 5), strip("purl", 2)}).empty());
  // What is measured by another's gauge says so itself; what is not measured at all is told before it is.
  const std::vector<Strip> lent = {strip("plain", 5), strip("wave", 1), strip("plain", 5)};
  CHECK(told(lent, {.substitutes = {{"wave", "plain"}}}).empty());
  const std::vector<Finding> missing = measuring_findings(join_strips("p", 8, lent), swatch);
  CHECK(std::count_if(missing.begin(), missing.end(), [](const Finding& each) {
          return each.code == FindingCode::narrow_texture && each.place.field == "wave";
        }) == 1);
  // Of bands the lowest is first, and each counts.
  const Panel low = join_strips("p", 8, std::vector<Strip>{strip("plain", 5), strip("purl", 1), strip("plain", 5)});
  const Panel high = join_strips("p", 4, std::vector<Strip>{strip("plain", 2), strip("purl", 2), strip("plain", 7)});
  const std::vector<Finding> stacked = measuring_findings(low.above(high), swatch);
  const auto first = std::find_if(stacked.begin(), stacked.end(),
                                  [](const Finding& each) { return each.code == FindingCode::narrow_texture; });
  REQUIRE(first != stacked.end());
  CHECK((first->place.row == 1 && first->last_row == 4 && first->place.column == 2 && first->value == 2));
}

TEST_CASE("findings of a measure have their places, and their index in the swatch that was handed in", "[size]") {
  std::vector<Measurement> measurements = {{"other", Counted::rows, 40, 50}};
  measure(measurements, "plain", 25, 40);
  measure(measurements, "garter", 20, 50);
  const Panel panel = join_strips("p", 100, std::vector<Strip>{strip("plain", 30), strip("garter", 20)});
  const Size got = size(panel, Swatch(measurements));
  REQUIRE(got.findings.size() == 1);
  CHECK(got.findings[0].code == FindingCode::unlike_heights);
  CHECK(got.findings[0].severity == Severity::warning);
  CHECK(got.findings[0].place.row == 1);
  CHECK(got.findings[0].last_row == 100);
  CHECK(got.findings[0].value == 50);
  CHECK(got.findings[0].limit == 1);
  const std::vector<Finding> found = measuring_findings(panel, Swatch(measurements));
  REQUIRE(found.size() == 4);  // stitches and rows of two textures in two places; the other is not the panel's
  CHECK(found[0].place.field == "measurements[1]");
  CHECK(found[2].place.field == "measurements[5]");
}

TEST_CASE("a texture measured in one place has no known spread, and a warning says so", "[size]") {
  const Swatch swatch({{"a", Counted::stitches, 25, 100, ""},
                       {"a", Counted::rows, 40, 100, ""},
                       {"b", Counted::stitches, 25, 100, ""},
                       {"b", Counted::rows, 40, 100, ""},
                       {"b", Counted::rows, 40, 100, ""}});
  const Size got = size(join_strips("p", 8, std::vector<Strip>{strip("b", 5), strip("a", 5), strip("a", 5)}), swatch);
  CHECK(messages(got) ==
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
  CHECK(messages(got) ==
        std::vector<std::string>{
            "rows 1-8, 11-18: texture 'a' is 20.0 mm high and 'c' 16.0 mm, 4.0 mm apart each, 8.0 mm in all: 'a' will "
            "ripple or 'c' be "
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
  CHECK(alone.findings.empty());
  CHECK(alone.greatest_height_mm == Approx(200));  // it is measured like any texture
  const Size mixed = size(join_strips("p", 40, std::vector<Strip>{strip("plain", 5), ladder(2), strip("moss", 5)}),
                          Swatch(measurements));
  CHECK(messages(mixed) == std::vector<std::string>{"rows 1-40: texture 'moss' is 102.6 mm high and 'plain' 100.0 mm, "
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
  // All that are wanting are told at once, and what there is.
  const Panel three =
      join_strips("p", 8, std::vector<Strip>{strip("moss", 5), strip("plain", 5), ladder(2), strip("moss", 2)});
  CHECK_THROWS_MATCHES(size(three, Swatch(measurements)), Error, refused_field(ErrorCode::no_gauge, "moss"));
  CHECK_THROWS_WITH(size(three, Swatch(measurements)),
                    "the swatch has no gauge for 2 textures of the panel: 'moss' (it was not measured), 'ladder' "
                    "(stitches were not measured); it has 'plain'");
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

}  // namespace size_test
