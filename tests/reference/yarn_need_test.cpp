#include "latchwork/yarn_need.hpp"

#include <string>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "reference.hpp"

namespace yarn_need_test {

// Yarn from weighed swatches. Every value is read from check_values.json by its id.

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::meets_reference;
using latchwork_test::reference;
using latchwork_test::reference_input;
using latchwork_test::reference_inputs;
using latchwork_test::reference_source;

namespace {

// 4 stitches and 5 rows to the inch.
Swatch inches() {
  return Swatch({{"stockinette", Counted::stitches, 16, 101.6, ""}, {"stockinette", Counted::rows, 20, 101.6, ""}});
}
Panel panel_of_inches(int width, int height) {
  return Panel("plain", stockinette(4 * width).filled_up(5 * height));
}

// Nothing but the cloth.
YarnRequest bare() {
  YarnRequest out;
  out.yarns = {{"yarn", {}, 0}};
  out.cast_on_rows = out.bind_off_rows = 0;
  out.sureness = out.allowance = 0;
  return out;
}

}  // namespace

TEST_CASE("SZ-03, SZ-04: balls from a swatch that was weighed", "[reference][yarn_need]") {
  // Knitting Math (1), knittingwithkarma.blogspot.com, May 2011. Published: 24 square inches weigh a gram, so 50 g make
  // 1200 square inches. SZ-04 is derived from it.
  INFO(reference_source("SZ-03"));
  const nlohmann::json& swatch_in = reference_inputs("SZ-03").at("swatch_in");
  YarnRequest request = bare();
  request.yarns[0].ball_g = reference_input("SZ-03", "ball_g");
  request.weighed = {{.texture = "stockinette",
                      .weight_g = reference_input("SZ-03", "swatch_g"),
                      .width_mm = 25.4 * swatch_in[0].get<double>(),
                      .height_mm = 25.4 * swatch_in[1].get<double>()}};
  REQUIRE(reference("SZ-03").at("expected").get<int>() == 40 * 30);
  const YarnNeed ball = yarn_need(panel_of_inches(40, 30), inches(), request);
  REQUIRE(ball.estimates.size() == 1);
  CHECK(ball.estimates[0].route == YarnRoute::weighed_area);
  CHECK(ball.estimates[0].weight_g == Approx(reference_input("SZ-03", "ball_g")));
  CHECK(ball.estimates[0].shares[0].balls == 1);

  INFO(reference_source("SZ-04"));
  const nlohmann::json& panel_in = reference_inputs("SZ-04").at("panel_in");
  const YarnNeed panel = yarn_need(panel_of_inches(panel_in[0], panel_in[1]), inches(), request);
  REQUIRE(panel.estimates.size() == 1);
  CHECK(meets_reference("SZ-04", panel.estimates[0].weight_g, reference("SZ-04").at("expected")[0].get<double>()));
  CHECK(panel.estimates[0].shares[0].balls == reference("SZ-04").at("expected")[1].get<int>());
}

TEST_CASE("KG-24, KG-25: weight of a square metre of cloth that was weighed", "[reference][yarn_need]") {
  // ehow.com and ehow.co.uk, how to calculate the weight of a knitted fabric. Published; KG-25 prints 180.1.
  for (const char* id : {"KG-24", "KG-25"}) {
    INFO(reference_source(id));
    YarnRequest request = bare();
    request.weighed = {{.texture = "stockinette",
                        .weight_g = reference_input(id, "mass_g"),
                        .width_mm = 1000 * reference_input(id, "area_m2"),
                        .height_mm = 1000}};
    const Swatch metric({{"stockinette", Counted::stitches, 20, 100, ""}, {"stockinette", Counted::rows, 30, 100, ""}});
    const YarnNeed need = yarn_need(Panel("a square metre", stockinette(200).filled_up(300)), metric, request);
    REQUIRE(need.estimates.size() == 1);
    CHECK(meets_reference(id, need.estimates[0].weight_g));
  }
}

TEST_CASE("KG-22: the geometry gives a plain row its width times Kw, at any gauge", "[reference][yarn_need]") {
  // Derived, with the loops by area, where the gauge is in the proportion of the constants.
  INFO(reference_source("KG-22"));
  const double kw = reference_input("KG-22", "Kw");
  for (const int gauge : {20, 40}) {
    const Swatch swatch({{"stockinette", Counted::stitches, static_cast<double>(gauge), 100, ""},
                         {"stockinette", Counted::rows, gauge * 5.5 / kw, 100, ""}});
    YarnRequest request = bare();
    request.yarns[0].number = {YarnSystem::tex, 100, 1};
    request.plain = {5.5, kw};
    const int columns = static_cast<int>(reference_input("KG-22", "width_cm")) * gauge / 10;
    const YarnNeed need = yarn_need(Panel("a row", stockinette(columns)), swatch, request);
    REQUIRE(need.estimates.size() == 1);
    CHECK(need.estimates[0].route == YarnRoute::plain_geometry);
    CHECK(meets_reference("KG-22", need.estimates[0].length_m * 100));
    CHECK(need.estimates[0].spread_g == Approx(0).margin(1e-9));
  }
}

}  // namespace yarn_need_test
