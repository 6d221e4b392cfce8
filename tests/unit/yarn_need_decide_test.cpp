#include "latchwork/yarn_need.hpp"

#include <cmath>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "yarn_sample.hpp"

namespace yarn_need_decide_test {

using namespace latchwork;
using namespace latchwork_test::yarn_sample;
using latchwork_test::Approx;

TEST_CASE("routes further apart than their margins explain are a warning", "[yarn_need]") {
  YarnRequest request = bare();
  const Panel plain("plain", stockinette(10).filled_up(10));
  std::vector<Measurement> measurements;
  for (int place = 0; place < 2; ++place) {
    measurements.push_back({"stockinette", Counted::stitches, 28, 100});
    measurements.push_back({"stockinette", Counted::rows, 40, 100});
  }
  const Swatch twice(measurements);
  request.loops = {{"stockinette", 100, 1000}, {"stockinette", 100, 1005}, {"stockinette", 100, 1010}};
  const YarnNeed need = yarn_need(plain, twice, request);  // the geometry says 13.0 mm, 6 % spread
  REQUIRE(need.warnings.size() == 1);
  CHECK(need.warnings[0].find("measured loops") != std::string::npos);
  // A spread that is not known explains nothing.
  request.loops = {{"stockinette", 100, 1000}};
  REQUIRE(yarn_need(plain, twice, request).warnings.size() == 1);
  CHECK(yarn_need(plain, twice, request).warnings[0].find("(spread not known)") != std::string::npos);
  // Two that are not known are compared by a fifth of the greater.
  CHECK(yarn_need(plain, swatch(), request).warnings.size() == 1);
  request.loops = {{"stockinette", 100, 1150}};
  CHECK(yarn_need(plain, swatch(), request).warnings.empty());
  request.loops = {{"stockinette", 100, 1290}, {"stockinette", 100, 1300}, {"stockinette", 100, 1310}};
  CHECK(yarn_need(plain, twice, request).warnings.empty());
  // Two that differ much tell too little of their mean.
  request.loops = {{"stockinette", 100, 900}, {"stockinette", 100, 1100}};
  CHECK(yarn_need(plain, twice, request).warnings.empty());
}

TEST_CASE("one route decides what to buy, and says by which rule", "[yarn_need]") {
  const Panel plain("plain", stockinette(10).filled_up(10));
  YarnRequest request = bare();
  request.sureness = 2;
  const auto told = [&] { return yarn_need(plain, Swatch(), request); };
  // Nothing to go by.
  CHECK(told().decides == -1);
  CHECK(told().why.empty());
  // 100 places of 10 mm of 200 tex are 0.2 g, measured once.
  request.loops = {{"stockinette", 100, 1000}};
  CHECK(told().decides == 0);
  CHECK(told().why == "measured loops: no other route can be gone");
  // Neither spread is known: the dearer.
  request.weighed = {{"stockinette", 0.22, 0, 0, 0, 10, 10, 0}};
  CHECK(told().decides == 0);
  CHECK(told().why == "weighed swatches by stitches: the dearest, since no route's spread is known");
  // The loops' is now known; one that is not known gives more than their margin explains.
  request.loops = {{"stockinette", 100, 999}, {"stockinette", 100, 1000}, {"stockinette", 100, 1001}};
  CHECK(told().decides == 0);
  CHECK(told().why ==
        "weighed swatches by stitches: the dearest, 0.2 g, its margin not known, since it is 0.2 g with a margin of "
        "0.0 g by measured loops, further below than both explain");
  // Not more.
  request.weighed = {{"stockinette", 0.2005, 0, 0, 0, 10, 10, 0}};
  CHECK(told().decides == 1);
  CHECK(told().why == "measured loops: the only route whose spread is known");
  // Both are: a wide margin makes what to buy dear, and decides nothing. By hand: s = 0.1 %, u = s sqrt(4/3), and
  // Student's t of two degrees of freedom that 2 normal deviations are passed as seldom as is 4.53 (NIST/SEMATECH
  // e-Handbook, 1.3.6.7.2, has 4.303 for 95 %).
  request.weighed = {{"stockinette", 0.19, 0, 0, 0, 10, 10, 0}, {"stockinette", 0.22, 0, 0, 0, 10, 10, 0}};
  const YarnNeed both = told();
  CHECK(both.estimates[0].shares[0].buy_g > both.estimates[1].shares[0].buy_g);
  CHECK(both.estimates[1].margin_g == Approx(0.2 * 0.001 * std::sqrt(4 / 3.0) * 4.53).epsilon(1e-3));
  CHECK(both.decides == 1);
  CHECK(both.why == "measured loops: the narrowest margin, 0.2 g with a margin of 0.0 g");
  // Where the other gives more than both margins explain, one of them is wrong: the dearer.
  request.weighed = {{"stockinette", 0.299, 0, 0, 0, 10, 10, 0},
                     {"stockinette", 0.3, 0, 0, 0, 10, 10, 0},
                     {"stockinette", 0.301, 0, 0, 0, 10, 10, 0}};
  CHECK(told().decides == 0);
  CHECK(told().why ==
        "weighed swatches by stitches: the dearest, 0.3 g with a margin of 0.0 g, since it is 0.2 g with a margin of "
        "0.0 g by measured loops, further below than both explain");
  // Where it gives less, the narrowest is the dearest, too.
  for (WeighedSwatch& each : request.weighed) each.weight_g /= 3;
  for (std::size_t i = 0; i < request.loops.size(); ++i) {
    request.loops[i].length_mm = 1000 + 0.1 * (static_cast<double>(i) - 1);
  }
  CHECK(told().decides == 1);
  CHECK(told().why.find("the narrowest margin") != std::string::npos);
}

// A figure of this yarn goes before constants of wool in general, however narrow their margin (standards.md, 14).
TEST_CASE("geometry decides only where nothing was measured in this yarn", "[yarn_need]") {
  const Panel plain("plain", stockinette(10).filled_up(10));
  const Swatch twice({{"stockinette", Counted::stitches, 28, 100},
                      {"stockinette", Counted::stitches, 28.1, 100},
                      {"stockinette", Counted::rows, 40, 100},
                      {"stockinette", Counted::rows, 40.1, 100}});
  YarnRequest request = bare();
  request.state = ClothState::rested;
  const YarnNeed alone = yarn_need(plain, twice, request);
  REQUIRE(alone.estimates.size() == 1);
  CHECK(alone.estimates[0].route == YarnRoute::plain_geometry);
  CHECK(alone.decides == 0);
  // Weighed once, so that its spread is not known while the geometry's is; far below the geometry, and above it.
  for (const double weight_g : {0.05, 5.0}) {
    request.weighed = {{"stockinette", weight_g, 0, 0, 0, 10, 10, 0}};
    const YarnNeed need = yarn_need(plain, twice, request);
    REQUIRE(need.estimates.size() == 2);
    CHECK_FALSE(need.estimates[0].spread_known);
    CHECK(need.estimates[1].spread_known);
    CHECK(need.decides == 0);
    CHECK(need.why == "weighed swatches by stitches: the only route that was measured in this yarn");
    CHECK(need.warnings.size() == 1);
  }
}

TEST_CASE("a margin that is not whole explains nothing: the dearest decides", "[yarn_need]") {
  // Weighed once, but the gauge was measured in five places: the spread by area is known in part.
  std::vector<Measurement> measured;
  for (const double count : {26.0, 27.0, 28.0, 29.0, 30.0}) {
    measured.push_back({"stockinette", Counted::stitches, count, 100});
    measured.push_back({"stockinette", Counted::rows, count + 12, 100});
  }
  YarnRequest request = bare();
  request.sureness = 2;
  request.loops = {{"stockinette", 100, 999}, {"stockinette", 100, 1000}, {"stockinette", 100, 1001}};
  request.weighed = {{"stockinette", 2.5, 0, 100, 100, 0, 0, 0}};
  const YarnNeed need = yarn_need(Panel("plain", stockinette(10).filled_up(10)), Swatch(measured), request);
  const YarnEstimate& area = by(need, YarnRoute::weighed_area);
  const YarnEstimate& loops = by(need, YarnRoute::measured_loops);
  REQUIRE_FALSE(area.spread_known);
  REQUIRE(area.weight_g > loops.weight_g + loops.margin_g);
  REQUIRE(area.weight_g < loops.weight_g + area.margin_g);
  CHECK(need.estimates[static_cast<std::size_t>(need.decides)] == area);
  CHECK(need.why.find(" g or more, since it is ") != std::string::npos);
}

}  // namespace yarn_need_decide_test
