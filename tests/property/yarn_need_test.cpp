#include <cmath>
#include <numbers>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/yarn_need.hpp"
#include "random.hpp"

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::Random;

namespace {

constexpr int runs = 20'000;

// A normal deviate (Box and Muller, Ann. Math. Statist. 29, 1958).
double normal(Random& random) {
  const auto uniform = [&] { return (static_cast<double>(random.next() >> 11) + 0.5) / 9007199254740992.0; };
  return std::sqrt(-2 * std::log(uniform())) * std::cos(2 * std::numbers::pi * uniform());
}

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

struct Spread {
  double mean = 0;
  double deviation = 0;
};
Spread spread_of(const std::vector<double>& values) {
  Spread out;
  for (const double value : values) out.mean += value / static_cast<double>(values.size());
  double squares = 0;
  for (const double value : values) squares += (value - out.mean) * (value - out.mean);
  out.deviation = std::sqrt(squares / static_cast<double>(values.size() - 1));
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

TEST_CASE("the spread is what comes of drawing gauges and swatches again and again", "[yarn_need][property]") {
  constexpr double loop_spread = 0.05;
  constexpr double gauge_spread = 0.03;
  YarnRequest request = bare();
  for (const double mm : pair_of(1000, 1000 * loop_spread)) request.loops.push_back({"stockinette", 100, mm});
  for (const double mm : pair_of(1300, 1300 * loop_spread)) request.loops.push_back({garter_texture(), 100, mm});
  for (const double g : pair_of(5, 5 * loop_spread)) {
    request.weighed.push_back({"stockinette", g, 0, 100, 100, 0, 0, 0});
    request.weighed.push_back({garter_texture(), g * 1.2, 0, 100, 100, 0, 0, 0});
  }
  const YarnNeed told = yarn_need(panel(), gauges(28, 40, 26, 52, gauge_spread), request);

  Random random(61);
  const auto drawn = [&](double mean, double s) { return mean * (1 + s * normal(random)); };
  std::vector<double> loops;
  std::vector<double> areas;
  for (int i = 0; i < runs; ++i) {
    YarnRequest one = bare();
    one.loops = {{"stockinette", 100, drawn(1000, loop_spread)}, {garter_texture(), 100, drawn(1300, loop_spread)}};
    one.weighed = {{"stockinette", drawn(5, loop_spread), 0, 100, 100, 0, 0, 0},
                   {garter_texture(), drawn(6, loop_spread), 0, 100, 100, 0, 0, 0}};
    const Swatch swatch =
        gauges(drawn(28, gauge_spread), drawn(40, gauge_spread), drawn(26, gauge_spread), drawn(52, gauge_spread), 0);
    const YarnNeed need = yarn_need(panel(), swatch, one);
    loops.push_back(by(need, YarnRoute::measured_loops).weight_g);
    areas.push_back(by(need, YarnRoute::weighed_area).weight_g);
  }
  // To first order, and as near as so many runs tell.
  const YarnEstimate& by_loops = by(told, YarnRoute::measured_loops);
  CHECK(by_loops.weight_g == Approx(spread_of(loops).mean).epsilon(0.005));
  CHECK(by_loops.spread_g == Approx(spread_of(loops).deviation).epsilon(0.03));
  const YarnEstimate& by_area = by(told, YarnRoute::weighed_area);
  CHECK(by_area.weight_g == Approx(spread_of(areas).mean).epsilon(0.005));
  CHECK(by_area.spread_g == Approx(spread_of(areas).deviation).epsilon(0.03));
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
