#include "latchwork/yarn_need.hpp"

#include <cmath>
#include <functional>
#include <numbers>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "yarn_sample.hpp"

namespace yarn_need_test {

using namespace latchwork;
using namespace latchwork_test::yarn_sample;
using latchwork_test::Approx;

TEST_CASE("measured loops: places times the length of a loop", "[yarn_need]") {
  const YarnNeed need = yarn_need(panel(), swatch(), by_loops());
  REQUIRE(need.estimates.size() == 1);
  const YarnEstimate& got = need.estimates[0];
  CHECK(got.route == YarnRoute::measured_loops);
  CHECK(got.length_m == Approx(cloth_m));
  CHECK(got.weight_g == Approx(cloth_m * 0.2));  // 200 tex: 0.2 g a metre
  CHECK(got.spread_g == 0);
  REQUIRE(got.shares.size() == 1);
  CHECK(got.shares[0].buy_g == Approx(got.weight_g));
  CHECK(got.shares[0].balls == 1);
  REQUIRE(got.notes.size() == 1);  // each texture was measured once
  CHECK(got.notes[0].find("'stockinette', '" + rope_texture() + "'") != std::string::npos);
  CHECK(need.apart == 0);
  CHECK(need.missing.size() == 3);
}

TEST_CASE("a texture without a figure bars the route, unless a substitute is named, which is told", "[yarn_need]") {
  YarnRequest request = by_loops();
  request.loops.pop_back();
  const YarnNeed barred = yarn_need(panel(), swatch(), request);
  CHECK(barred.estimates.empty());
  REQUIRE(barred.missing.size() == 4);
  CHECK(barred.missing[2].find("texture '" + rope_texture() + "' has no measured loops") != std::string::npos);
  CHECK(barred.missing[3].find("is not plain knit") != std::string::npos);

  request.substitutes = {{rope_texture(), "stockinette"}};
  const YarnNeed told = yarn_need(panel(), swatch(), request);
  const YarnEstimate& loops = by(told, YarnRoute::measured_loops);
  CHECK(loops.length_m == Approx((plain_columns + rope_columns) * 0.010 * rows));
  REQUIRE(loops.notes.size() == 2);
  CHECK(loops.notes[0].find("by the figure of 'stockinette', as told") != std::string::npos);
  CHECK(loops.notes[1].find("'stockinette'") != std::string::npos);
  // Told so, the geometry of plain knit goes for the rope too.
  const double loop_mm = 100 * std::sqrt(5.0 * 3.8 / (28 * 40.0));  // of cloth that rested
  CHECK(by(told, YarnRoute::plain_geometry).length_m == Approx((plain_columns + rope_columns) * loop_mm * rows / 1000));
  CHECK(told.estimates.size() == 2);
  CHECK(told.apart == Approx((loop_mm - 10) / ((loop_mm + 10) / 2)));

  request.substitutes = {{rope_texture(), "moss"}};
  CHECK(yarn_need(panel(), swatch(), request).missing[2].find("of its substitute, texture 'moss'") !=
        std::string::npos);
}

TEST_CASE("weighed swatches go by area at the panel's gauge, or by stitches", "[yarn_need]") {
  YarnRequest request = bare();
  // 28 stitches and 40 rows are 100 mm square; 18 of the rope's are 50 mm wide.
  request.weighed = {{"stockinette", 4, 0, 100, 100, 28, 40, 0}, {rope_texture(), 3, 0, 50, 100, 18, 40, 0}};
  const YarnNeed need = yarn_need(panel(), swatch(), request);
  const double grams = plain_columns * rows * 4 / (28 * 40.0) + rope_columns * rows * 3 / (18 * 40.0);
  CHECK(by(need, YarnRoute::weighed_stitches).weight_g == Approx(grams));
  CHECK(by(need, YarnRoute::weighed_area).weight_g == Approx(grams));
  CHECK(by(need, YarnRoute::weighed_area).length_m == Approx(grams / 0.2));
  CHECK(need.apart == Approx(0).margin(1e-12));

  // By stitches no gauge is needed.
  const YarnNeed without = yarn_need(panel(), Swatch(), request);
  REQUIRE(without.estimates.size() == 1);
  CHECK(without.estimates[0].route == YarnRoute::weighed_stitches);
  CHECK(without.missing[0].find("has no gauge") != std::string::npos);

  // A yarn whose number nobody knows can still be weighed.
  request.yarns[0].number.number = 0;
  request.loops = {{"stockinette", 100, 1000}, {rope_texture(), 100, 1200}};
  const YarnNeed unknown = yarn_need(panel(), swatch(), request);
  CHECK(unknown.estimates.size() == 2);
  CHECK(by(unknown, YarnRoute::weighed_stitches).weight_g == Approx(grams));
  CHECK(by(unknown, YarnRoute::weighed_stitches).length_m == 0);
  CHECK(unknown.missing[0].find("number of the yarn is not known") != std::string::npos);
  // Two strands of it weigh what the swatch of two strands weighed.
  request.rows = {{}, {}};
  CHECK(by(yarn_need(panel(), swatch(), request), YarnRoute::weighed_stitches).weight_g == Approx(grams));
}

TEST_CASE("the spread is that of the swatches, and of the scale's step", "[yarn_need]") {
  YarnRequest request = bare();
  const Panel plain("plain", stockinette(10).filled_up(10));
  request.weighed = {{"stockinette", 4, 1, 0, 0, 28, 40, 0}};
  const YarnEstimate one = by(yarn_need(plain, swatch(), request), YarnRoute::weighed_stitches);
  CHECK(one.spread_g / one.weight_g == Approx(1 / 4.0 / std::sqrt(12.0)));  // half a gram either way, evenly

  request.weighed = {{"stockinette", 4, 0, 0, 0, 28, 40, 0}, {"stockinette", 5, 0, 0, 0, 28, 40, 0}};
  const YarnEstimate two = by(yarn_need(plain, swatch(), request), YarnRoute::weighed_stitches);
  CHECK(two.weight_g == Approx(100 * 4.5 / (28 * 40)));
  // The sample standard deviation of 4 and 5, of the article itself and of the mean of two.
  CHECK(two.spread_g / two.weight_g == Approx(std::sqrt(0.5 * (1 + 1 / 2.0)) / 4.5));
  CHECK(two.margin_g == 0);
  CHECK(two.spread_known);
  CHECK_FALSE(one.spread_known);
  CHECK(two.notes.empty());

  request.sureness = 2;
  request.allowance = 0.1;
  const YarnEstimate sure = by(yarn_need(plain, swatch(), request), YarnRoute::weighed_stitches);
  // Student's t of one degree of freedom is Cauchy's distribution (NIST/SEMATECH e-Handbook, 1.3.6.6.3), and a normal
  // error is within two standard deviations in erf(sqrt 2) of all.
  const double times = std::tan(std::numbers::pi / 2 * std::erf(std::numbers::sqrt2));
  CHECK(sure.margin_g == Approx(times * two.spread_g).epsilon(1e-5));
  CHECK(sure.shares[0].margin_g == Approx(sure.margin_g));
  CHECK(sure.shares[0].buy_g == Approx((two.weight_g + sure.margin_g) * 1.1));
  REQUIRE(sure.notes.size() == 1);
  CHECK(sure.notes[0].find("14.0 times the spread: measure more") != std::string::npos);
}

TEST_CASE("what shares weighed swatches is off together by its own part, in whatever order it stands", "[yarn_need]") {
  YarnRequest request = bare();
  request.weighed = {{.texture = "stockinette", .weight_g = 10, .width_mm = 100, .height_mm = 100},
                     {.texture = "stockinette", .weight_g = 10.2, .width_mm = 100, .height_mm = 100}};
  request.weighed[1].state = ClothState::washed;
  request.substitutes = {{"moss", "stockinette"}};
  std::vector<Measurement> measured;
  for (const auto& [texture, state, stitches, per_10_cm] :
       {std::tuple{"stockinette", ClothState::rested, 28, 40}, std::tuple{"stockinette", ClothState::washed, 28, 40},
        std::tuple{"moss", ClothState::rested, 24, 36}, std::tuple{"moss", ClothState::washed, 26, 44}}) {
    measured.push_back({texture, Counted::stitches, double(stitches), 100, "", "", state});
    measured.push_back({texture, Counted::rows, double(per_10_cm), 100, "", "", state});
  }
  const Swatch gauges(measured);
  const auto spread = [&](const std::vector<Strip>& strips) {
    return by(yarn_need(join_strips("a", 8, strips), gauges, request), YarnRoute::weighed_area).spread_g;
  };
  const Strip plain = stockinette(10);
  const Strip other{"moss", "moss", moss(10).grid};
  const double plain_alone = spread({plain});
  const double other_alone = spread({other});
  REQUIRE(other_alone > 2 * plain_alone);
  CHECK(spread({plain, other}) == Approx(plain_alone + other_alone));
  CHECK(spread({other, plain}) == Approx(plain_alone + other_alone));
}

TEST_CASE("a gauge measured in one place leaves the spread by area unknown", "[yarn_need]") {
  YarnRequest request = bare();
  const Panel plain("plain", stockinette(10).filled_up(10));
  request.weighed = {{"stockinette", 4, 0, 100, 100, 28, 40, 0}, {"stockinette", 5, 0, 100, 100, 28, 40, 0}};
  const YarnNeed need = yarn_need(plain, swatch(), request);
  CHECK(by(need, YarnRoute::weighed_stitches).spread_known);
  const YarnEstimate& area = by(need, YarnRoute::weighed_area);
  CHECK_FALSE(area.spread_known);
  REQUIRE(area.notes.size() == 1);
  CHECK(area.notes[0] == "measured once only, so that the spread is not known: the gauge of 'stockinette'");
}

TEST_CASE("a swatch's area goes with the gauge of the state it was weighed in", "[yarn_need]") {
  const Panel plain("plain", stockinette(30).filled_up(40));
  std::vector<Measurement> measurements = {{"stockinette", Counted::stitches, 28, 100},
                                           {"stockinette", Counted::rows, 40, 100}};
  YarnRequest request = bare();
  request.weighed = {{.texture = "stockinette", .weight_g = 5, .width_mm = 100, .height_mm = 100}};
  const double grams = 5 * 30 * 40 / (28 * 40.0);
  const auto area_g = [&] {
    return by(yarn_need(plain, Swatch(measurements), request), YarnRoute::weighed_area).weight_g;
  };
  CHECK(area_g() == Approx(grams));
  // That the cloth was washed and measured again changes nothing of what was weighed before.
  measurements.push_back({"stockinette", Counted::stitches, 30, 100, "", "", ClothState::washed});
  measurements.push_back({"stockinette", Counted::rows, 42, 100, "", "", ClothState::washed});
  CHECK(area_g() == Approx(grams));
  request.state = ClothState::washed;
  CHECK(area_g() == Approx(grams));
  // The same piece, washed: smaller, and as heavy.
  request.weighed[0].state = ClothState::washed;
  request.weighed[0].width_mm = 100 * 28 / 30.0;
  request.weighed[0].height_mm = 100 * 40 / 42.0;
  CHECK(area_g() == Approx(grams));
  request.weighed.push_back({.texture = "stockinette", .weight_g = 5, .width_mm = 100, .height_mm = 100});
  const YarnEstimate both = by(yarn_need(plain, Swatch(measurements), request), YarnRoute::weighed_area);
  CHECK(both.weight_g == Approx(grams));
  CHECK(both.spread_g == Approx(0).margin(1e-12));

  measurements.resize(2);
  const YarnNeed barred = yarn_need(plain, Swatch(measurements), request);
  CHECK(barred.missing.at(0) ==
        "weighed swatches by area: a swatch of texture 'stockinette' was weighed washed, but 'stockinette' has no "
        "gauge of that state, so its area is not known");
}

TEST_CASE("plain geometry takes the constants of the gauge's state, and its spread holds the next", "[yarn_need]") {
  const Panel plain("plain", stockinette(30).filled_up(40));
  // Cloth of loops of 5 mm that has come to rest so far.
  const auto geometry = [&](ClothState told, PlainState is, std::optional<PlainConstants> constants = {}) {
    const PlainConstants of = plain_constants_of(is);
    std::vector<Measurement> measurements;
    for (const Counted counted : {Counted::stitches, Counted::rows}) {
      for (int place = 0; place < 2; ++place) {
        measurements.push_back({"stockinette", counted, plain_per_10cm(counted, 5, of), 100, "", "", told});
      }
    }
    YarnRequest request = bare();
    request.plain = constants;
    return by(yarn_need(plain, Swatch(measurements), request), YarnRoute::plain_geometry);
  };
  const double metres = 30 * 40 * 0.005;
  const YarnEstimate rested = geometry(ClothState::rested, PlainState::dry_relaxed);
  CHECK(rested.length_m == Approx(metres));
  REQUIRE(rested.notes.size() == 1);
  CHECK(rested.notes[0].find("rested, so the constants of dry relaxed cloth of wool are taken, Kc 5 and Kw 3.8") !=
        std::string::npos);
  const YarnEstimate washed = geometry(ClothState::washed, PlainState::fully_relaxed);
  CHECK(washed.length_m == Approx(metres));
  CHECK(washed.notes.at(0).find("only soaked and dried flat") != std::string::npos);
  CHECK(geometry(ClothState::off_machine, PlainState::dry_relaxed).length_m == Approx(metres));

  // Washed by soaking alone: not what was taken, but within what the spread says.
  for (const ClothState told : {ClothState::washed, ClothState::rested}) {
    const YarnEstimate soaked = geometry(told, PlainState::wet_relaxed);
    CHECK(soaked.length_m != Approx(metres).epsilon(0.02));
    CHECK(std::abs(soaked.length_m - metres) * 0.2 < 2 * soaked.spread_g);
  }
  const YarnEstimate as_told =
      geometry(ClothState::washed, PlainState::wet_relaxed, plain_constants_of(PlainState::wet_relaxed));
  CHECK(as_told.length_m == Approx(metres));
  CHECK(as_told.spread_g == Approx(0).margin(1e-12));
  CHECK(as_told.notes.empty());
}

TEST_CASE("the geometry's spread says how far the gauge is from the constants' proportion", "[yarn_need]") {
  const Panel plain("plain", stockinette(10).filled_up(10));
  YarnRequest request = bare();
  request.plain = plain_constants_of(PlainState::fully_relaxed);
  const YarnEstimate got = by(yarn_need(plain, swatch(), request), YarnRoute::plain_geometry);
  const double by_stitches = 420.0 / 28;
  const double by_rows = 550.0 / 40;
  const double loop = std::sqrt(by_stitches * by_rows);
  CHECK(got.length_m == Approx(100 * loop / 1000));
  CHECK(got.spread_g / got.weight_g == Approx((by_stitches - by_rows) / 2 / loop));
}

TEST_CASE("cast-on, bind-off, waste, seams and pieces are added", "[yarn_need]") {
  const double row_m = cloth_m / rows;
  struct Case {
    const char* what;
    std::function<void(YarnRequest&)> change;
    double metres;
  };
  const Case cases[] = {
      {"cast-on", [](YarnRequest& r) { r.cast_on_rows = 2; }, cloth_m + 2 * row_m},
      {"bind-off", [](YarnRequest& r) { r.bind_off_rows = 1.5; }, cloth_m + 1.5 * row_m},
      {"waste", [](YarnRequest& r) { r.waste_rows = 10; }, cloth_m + 10 * row_m},
      {"seam", [](YarnRequest& r) { r.seam_mm = 1000; }, cloth_m + 3},
      {"pieces", [](YarnRequest& r) { r.pieces = 3; }, 3 * cloth_m},
      {"pieces and seam", [](YarnRequest& r) { r.pieces = 3, r.seam_mm = 500, r.seam_ratio = 4; }, 3 * cloth_m + 2},
  };
  for (const Case& each : cases) {
    INFO(each.what);
    YarnRequest request = by_loops();
    each.change(request);
    CHECK(yarn_need(panel(), swatch(), request).estimates.at(0).length_m == Approx(each.metres));
  }
}

TEST_CASE("two yarns: together, in stripes, for waste and for seams", "[yarn_need]") {
  YarnRequest request = by_loops();
  request.yarns.push_back({"contrast", {YarnSystem::tex, 100, 1}, 25});
  const auto shares = [&] { return yarn_need(panel(), swatch(), request).estimates.at(0).shares; };
  CHECK(shares()[0].length_m == Approx(cloth_m));  // together in all rows
  CHECK(shares()[1].length_m == Approx(cloth_m));
  CHECK(shares()[1].weight_g == Approx(cloth_m * 0.1));

  request.rows = {{1, 9, 0}, {10, 0, 1}};  // stripes
  CHECK(shares()[0].length_m == Approx(cloth_m * 9 / rows));
  CHECK(shares()[1].length_m == Approx(cloth_m * 3 / rows));

  request.rows = {{1, 0, 0}};  // the second is for waste and seams
  request.waste_rows = 6;
  request.waste_yarn = 1;
  request.seam_mm = 200;
  request.seam_yarn = 1;
  CHECK(shares()[0].length_m == Approx(cloth_m));
  CHECK(shares()[1].length_m == Approx(cloth_m / 2 + 0.6));

  // A swatch of both strands together weighs what both take; a stripe of one takes its part of it.
  request = bare();
  request.yarns.push_back({"contrast", {YarnSystem::tex, 100, 1}, 25});
  request.weighed = {{"stockinette", 3, 0, 0, 0, 10, 10, 0}, {rope_texture(), 3, 0, 0, 0, 10, 10, 0}};
  const double all_g = (plain_columns + rope_columns) * rows * 0.03;
  CHECK(shares()[0].weight_g == Approx(all_g * 2 / 3));
  CHECK(shares()[1].weight_g == Approx(all_g / 3));
  request.rows = {{1, 0, 0}, {7, 0, 1}};  // the second from row 7 on; row 1 has 200 tex, as the swatch
  const YarnNeed half = yarn_need(panel(), swatch(), request);
  CHECK(half.estimates.at(0).shares[0].weight_g == Approx(all_g));
  CHECK(half.estimates.at(0).shares[1].weight_g == Approx(all_g / 4));
  CHECK(half.estimates.at(0).notes.back().find("unlike thickness") != std::string::npos);
}

TEST_CASE("places outside the cloth take no yarn, a ladder inside it does", "[yarn_need]") {
  Grid grid = Grid::from_text("..kkkk\n.kk.kk\nkkkkk.\n");
  const Strip strip{"shaped", "shaped", grid};
  YarnRequest request = bare();
  request.loops = {{"shaped", 1, 10}};
  CHECK(yarn_need(Panel("p", strip), Swatch(), request).estimates.at(0).length_m == Approx((4 + 5 + 5) * 0.010));
  const Panel bare_panel("nothing", Strip{"none", "none", Grid::from_text("..\n")});
  CHECK(yarn_need(bare_panel, Swatch(), request).estimates.at(0).weight_g == 0);
}

TEST_CASE("a substitute that the panel does not have is plain knit only by that name", "[yarn_need]") {
  const Strip own{"r", "my rope", rope(3, 3, 8, Lean::right).grid};
  const Panel panel("p", own);
  YarnRequest request = bare();
  for (const auto& [use, plain] : {std::pair{"garter 1/1", false}, {"stockinette", true}}) {
    const Swatch measured({{use, Counted::stitches, 20, 100}, {use, Counted::rows, 44, 100}});
    request.substitutes = {{"my rope", use}};
    INFO(use);
    CHECK(yarn_need(panel, measured, request).estimates.size() == (plain ? 1U : 0U));
  }
}

TEST_CASE("a route that was measured too seldom to be as sure as asked is missing, and the others are not",
          "[yarn_need]") {
  YarnRequest request = by_loops();
  request.sureness = 6;
  request.yarns[0].number = {YarnSystem::tex, 1e8, 1};
  request.loops.push_back({"stockinette", 100, 1100});
  request.weighed = {{"stockinette", 5, 0, 0, 0, 10, 10, 0}, {rope_texture(), 5, 0, 0, 0, 10, 10, 0}};
  const YarnNeed need = yarn_need(panel(), swatch(), request);
  REQUIRE(need.estimates.size() == 1);
  CHECK(need.estimates[0].route == YarnRoute::weighed_stitches);
  bool told = false;
  for (const std::string& missing : need.missing) {
    told = told || missing.find("measured loops: measured so seldom") != std::string::npos;
  }
  CHECK(told);
}

TEST_CASE("a texture's name of two lines is one line in what is told", "[yarn_need]") {
  const Panel two("p", Strip{"s", "two\nlines", Grid(4, 4)});
  for (const std::string& missing : yarn_need(two, swatch(), bare()).missing) {
    CHECK(missing.find('\n') == std::string::npos);
  }
}

}  // namespace yarn_need_test
