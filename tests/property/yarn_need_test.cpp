#include <cmath>
#include <map>
#include <numbers>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/yarn_need.hpp"
#include "normal.hpp"
#include "random.hpp"

namespace yarn_need_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::normal;
using latchwork_test::Random;

namespace {

constexpr int runs = 8'000;

Panel panel() {
  const Strip strips[] = {stockinette(10), garter(1, 1, 6), stockinette(4)};
  return join_strips("sample", 8, strips);
}
std::string garter_texture() {
  return garter(1, 1, 6).texture;
}

YarnRequest bare() {
  YarnRequest out;
  out.yarns = {{"main", {YarnSystem::tex, 300, 1}, 0}};
  return out;
}

// Two values whose mean and sample standard deviation these are.
std::vector<double> pair_of(double mean, double deviation) {
  return {mean - deviation / std::numbers::sqrt2, mean + deviation / std::numbers::sqrt2};
}

// Four sampling errors: one in 16,000 normal ones is past them, whatever the seed.
constexpr double sampling_errors = 4;

struct Spread {
  double mean = 0;
  double deviation = 0;
  double mean_error = 0;       // standard error of `mean`
  double deviation_error = 0;  // of `deviation`, from the fourth moment: right for errors that are not normal too
};
Spread spread_of(const std::vector<double>& values) {
  const auto n = static_cast<double>(values.size());
  Spread out;
  for (const double value : values) out.mean += value / n;
  double squares = 0;
  double fourths = 0;
  for (const double value : values) {
    const double square = (value - out.mean) * (value - out.mean);
    squares += square;
    fourths += square * square;
  }
  out.deviation = std::sqrt(squares / (n - 1));
  out.mean_error = out.deviation / std::sqrt(n);
  // The variance of a sample variance is (m4 - s^4) / n, and of its root the error over 2 s.
  out.deviation_error = std::sqrt((fourths / n - std::pow(out.deviation, 4)) / n) / (2 * out.deviation);
  return out;
}

const YarnEstimate& by(const YarnNeed& need, YarnRoute route) {
  for (const YarnEstimate& each : need.estimates) {
    if (each.route == route) return each;
  }
  throw std::runtime_error("no estimate by this route");
}

Swatch gauges(double plain_stitches, double plain_rows, double garter_stitches, double garter_rows, double s) {
  std::vector<Measurement> out;
  const auto add = [&](const std::string& texture, Counted counted, double mean) {
    if (s == 0) {
      out.push_back({texture, counted, mean, 100, ""});
      return;
    }
    for (const double value : pair_of(mean, s * mean)) out.push_back({texture, counted, value, 100, ""});
  };
  add("stockinette", Counted::stitches, plain_stitches);
  add("stockinette", Counted::rows, plain_rows);
  add(garter_texture(), Counted::stitches, garter_stitches);
  add(garter_texture(), Counted::rows, garter_rows);
  return Swatch(out);
}

}  // namespace

TEST_CASE("the spread is what comes of drawing gauges and swatches again and again", "[yarn_need][property][long]") {
  constexpr double loop_spread = 0.05;
  constexpr double gauge_spread = 0.03;
  YarnRequest request = bare();
  for (const double mm : pair_of(1000, 1000 * loop_spread)) request.loops.push_back({"stockinette", 100, mm});
  for (const double mm : pair_of(1300, 1300 * loop_spread)) request.loops.push_back({garter_texture(), 100, mm});
  for (const double g : pair_of(5, 5 * loop_spread)) {
    request.weighed.push_back({"stockinette", g, 0, 100, 100, 0, 0, 0});
    request.weighed.push_back({garter_texture(), g * 1.2, 0, 100, 100, 0, 0, 0});
  }
  for (const double g : pair_of(3, 3 * loop_spread)) {
    request.weighed.push_back({"stockinette", g, 0, 0, 0, 20, 30, 0});
    request.weighed.push_back({garter_texture(), g * 1.2, 0, 0, 0, 20, 30, 0});
  }
  const YarnNeed told = yarn_need(panel(), gauges(28, 40, 26, 52, gauge_spread), request);
  // Plain knit whose gauge is in the proportion of its constants.
  const Panel plain("plain", stockinette(20).filled_up(8));
  const PlainConstants constants{4.0, 2.8};
  YarnRequest by_constants = bare();
  by_constants.plain = constants;
  const YarnNeed plain_told = yarn_need(plain, gauges(28, 40, 26, 52, gauge_spread), by_constants);

  // Each draw is off by the article's own wandering, and by what is not known of the mean of two.
  Random random(61);
  const auto drawn = [&](double mean, double s) { return mean * (1 + s * std::sqrt(1 + 1 / 2.0) * normal(random)); };
  std::map<YarnRoute, std::vector<double>> weights;
  for (int i = 0; i < runs; ++i) {
    YarnRequest one = bare();
    one.loops = {{"stockinette", 100, drawn(1000, loop_spread)}, {garter_texture(), 100, drawn(1300, loop_spread)}};
    const double plain_g = drawn(5, loop_spread);
    const double garter_g = drawn(6, loop_spread);
    one.weighed = {{"stockinette", plain_g, 0, 100, 100, 0, 0, 0},
                   {garter_texture(), garter_g, 0, 100, 100, 0, 0, 0},
                   {"stockinette", plain_g * 0.6, 0, 0, 0, 20, 30, 0},
                   {garter_texture(), garter_g * 0.6, 0, 0, 0, 20, 30, 0}};
    const Swatch swatch =
        gauges(drawn(28, gauge_spread), drawn(40, gauge_spread), drawn(26, gauge_spread), drawn(52, gauge_spread), 0);
    for (const YarnEstimate& each : yarn_need(panel(), swatch, one).estimates) {
      weights[each.route].push_back(each.weight_g);
    }
    weights[YarnRoute::plain_geometry].push_back(yarn_need(plain, swatch, by_constants).estimates.at(0).weight_g);
  }
  // As near as so many runs tell, and to first order: of 1 / g a spread u of g, here 0.037, makes the mean u^2 too
  // large and the deviation 4 u^2, so that two of them and their product are within 2 u^2 and 8 u^2 of it.
  const double second_order = gauge_spread * gauge_spread * (1 + 1 / 2.0);
  REQUIRE(weights.size() == 4);
  for (const auto& [route, drawn_g] : weights) {
    INFO(static_cast<int>(route));
    const YarnEstimate& estimate = by(route == YarnRoute::plain_geometry ? plain_told : told, route);
    const Spread came = spread_of(drawn_g);
    const double mean_margin = sampling_errors * came.mean_error + 2 * second_order * came.mean;
    const double deviation_margin = sampling_errors * came.deviation_error + 8 * second_order * came.deviation;
    CHECK(estimate.weight_g == Approx(came.mean).margin(mean_margin));
    CHECK(estimate.spread_g == Approx(came.deviation).margin(deviation_margin));
    CHECK(deviation_margin < 0.05 * came.deviation);  // or the run is too small to tell
  }
}

TEST_CASE("what is bought is enough as often as was asked for, of however few swatches",
          "[yarn_need][property][long]") {
  constexpr int articles = 4000;
  constexpr double wander = 0.04;
  constexpr double true_g = 5;
  const Panel plain("plain", stockinette(20).filled_up(30));
  Random random(63);
  const auto drawn = [&](double mean) { return mean * (1 + wander * normal(random)); };
  for (const int swatches : {2, 3, 5, 10}) {
    INFO(swatches);
    int by_stitches = 0;
    int by_area = 0;
    for (int i = 0; i < articles; ++i) {
      YarnRequest request = bare();
      request.cast_on_rows = request.bind_off_rows = request.allowance = 0;
      std::vector<Measurement> measurements;
      for (int k = 0; k < swatches; ++k) {
        request.weighed.push_back({"stockinette", drawn(true_g), 0, 100, 100, 20, 30, 0});
        measurements.push_back({"stockinette", Counted::stitches, drawn(20), 100});
        measurements.push_back({"stockinette", Counted::rows, drawn(30), 100});
      }
      const YarnNeed need = yarn_need(plain, Swatch(measurements), request);
      // As many places as the swatch has, and an area that wanders as its gauge does.
      const double taken_g = drawn(true_g);
      if (taken_g <= by(need, YarnRoute::weighed_stitches).shares[0].buy_g) ++by_stitches;
      if (taken_g * (drawn(1) * drawn(1)) <= by(need, YarnRoute::weighed_area).shares[0].buy_g) ++by_area;
    }
    // 2 standard deviations are passed by 2.3 of 100 normal errors (any table of the normal distribution); a share p of
    // n articles is known to sqrt(p (1 - p) / n), 0.24 %. By area the degrees of freedom are an approximation, cut to
    // the safe side.
    const double enough = 1 - std::erfc(std::numbers::sqrt2) / 2;
    const double margin = sampling_errors * std::sqrt(enough * (1 - enough) / articles);
    CHECK(by_stitches / static_cast<double>(articles) == Approx(enough).margin(margin));
    CHECK(by_area / static_cast<double>(articles) > enough - margin);
    CHECK(by_area < articles);  // nor is it more yarn than is ever needed
  }
}

TEST_CASE("mirrored, cut into stripes or made twice, a panel needs what it should", "[yarn_need][property]") {
  Random random(62);
  for (int i = 0; i < 200; ++i) {
    YarnRequest request = bare();
    request.loops = {{"stockinette", 100, 10.0 * random.between(50, 200)},
                     {garter_texture(), 100, 10.0 * random.between(50, 200)}};
    request.waste_rows = random.between(0, 5);
    request.pieces = random.between(1, 4);
    const double all = yarn_need(panel(), Swatch(), request).estimates.at(0).weight_g;
    CHECK(yarn_need(panel().mirrored(), Swatch(), request).estimates.at(0).weight_g == Approx(all));

    const int cut = random.between(1, 7);
    YarnRequest stripes = request;
    stripes.rows = {{1, cut, 0}, {cut + 1, 0, 0}};
    CHECK(yarn_need(panel(), Swatch(), stripes).estimates.at(0).weight_g == Approx(all));

    YarnRequest twice = request;
    twice.pieces *= 2;
    CHECK(yarn_need(panel(), Swatch(), twice).estimates.at(0).weight_g == Approx(2 * all));

    YarnRequest in_ounces = request;  // the same yarn by another number
    in_ounces.yarns[0].number = yarn_number_in(request.yarns[0].number, YarnSystem::worsted);
    CHECK(yarn_need(panel(), Swatch(), in_ounces).estimates.at(0).weight_g == Approx(all));
  }
}

}  // namespace yarn_need_test
