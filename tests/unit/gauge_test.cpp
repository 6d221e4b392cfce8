#include "latchwork/gauge.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"

namespace gauge_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::refused_field;

namespace {

// A swatch of one texture in which every value is a count over 10 cm, so that it is its own density.
Swatch counted_over_10cm(const std::vector<double>& values, Counted counted = Counted::stitches) {
  std::vector<Measurement> measurements;
  for (const double value : values) measurements.push_back({"plain", counted, value, 100, ""});
  measurements.push_back({"plain", counted == Counted::stitches ? Counted::rows : Counted::stitches, 30, 100, ""});
  return Swatch(measurements);
}

}  // namespace

TEST_CASE("mean and sample standard deviation of eight values are those worked by hand", "[gauge]") {
  // 2, 4, 4, 4, 5, 5, 7, 9: the sum is 40, the mean 5, the squared deviations sum to 32. Its population deviation is
  // the often printed 2; the sample's, with n - 1 = 7, is the root of 32/7.
  const Gauge gauge = counted_over_10cm({2, 4, 4, 4, 5, 5, 7, 9}).gauge("plain");
  CHECK(gauge.stitches.per_10cm == 5.0);
  CHECK(gauge.stitches.spread == Approx(std::sqrt(32.0 / 7)).epsilon(1e-15));
  CHECK(gauge.stitches.places == 8);
}

TEST_CASE("mean and standard deviation meet the certified values of NIST's reference data set Mavro", "[gauge]") {
  // NIST Statistical Reference Datasets, univariate summary statistics, Mavro.dat (50 observations that share their
  // first three digits): certified mean 2.00185600000000, standard deviation 0.000429123454003053.
  const std::vector<double> values = {2.00180, 2.00170, 2.00180, 2.00190, 2.00180, 2.00170, 2.00150, 2.00140, 2.00150,
                                      2.00150, 2.00170, 2.00180, 2.00180, 2.00190, 2.00190, 2.00210, 2.00200, 2.00160,
                                      2.00140, 2.00130, 2.00130, 2.00150, 2.00150, 2.00160, 2.00150, 2.00140, 2.00130,
                                      2.00140, 2.00150, 2.00140, 2.00150, 2.00160, 2.00150, 2.00160, 2.00190, 2.00200,
                                      2.00200, 2.00210, 2.00220, 2.00230, 2.00240, 2.00250, 2.00270, 2.00260, 2.00260,
                                      2.00260, 2.00270, 2.00260, 2.00250, 2.00240};
  const auto counted = GENERATE(Counted::stitches, Counted::rows);
  const Gauge gauge = counted_over_10cm(values, counted).gauge("plain");
  const Density density = counted == Counted::stitches ? gauge.stitches : gauge.rows;
  CHECK(density.per_10cm == Approx(2.00185600000000).epsilon(1e-15));
  CHECK(density.spread == Approx(0.000429123454003053).epsilon(1e-12));
  CHECK(density.places == 50);
}

TEST_CASE("mean and standard deviation meet NIST's NumAcc4, where the mean hides the differences", "[gauge]") {
  // NIST StRD NumAcc4.dat: 10000000.2, then 500 times the pair 10000000.1, 10000000.3; certified mean 10000000.2,
  // standard deviation 0.1. Here a thousandfold smaller, as counts over 1 cm, because counts end at 10000.
  std::vector<Measurement> measurements = {{"plain", Counted::rows, 1000.00002, 10, ""},
                                           {"plain", Counted::stitches, 28, 100, ""}};
  for (int i = 0; i < 500; ++i) {
    measurements.push_back({"plain", Counted::rows, 1000.00001, 10, ""});
    measurements.push_back({"plain", Counted::rows, 1000.00003, 10, ""});
  }
  const Density density = Swatch(measurements).gauge("plain").rows;
  CHECK(density.places == 1001);
  CHECK(density.per_10cm == Approx(10000.0002).epsilon(1e-15));
  CHECK(density.spread == Approx(1e-4).epsilon(1e-7));  // the numbers themselves are rounded to 2e-12
}

TEST_CASE("equal places have exactly their value and no spread, however many", "[gauge]") {
  const auto places = GENERATE(1, 2, 3, 7, 1000);
  const Density density =
      counted_over_10cm(std::vector<double>(static_cast<std::size_t>(places), 28.1)).gauge("plain").stitches;
  CHECK(density.per_10cm == 28.1);
  CHECK(density.spread == 0.0);
  CHECK(density.places == places);
}

TEST_CASE("a gauge is per 10 cm whatever length was measured, and 4 in are not 10 cm", "[gauge]") {
  const Swatch swatch({{"plain", Counted::stitches, 20, 101.6, ""}, {"plain", Counted::rows, 21, 75, ""}});
  const Gauge gauge = swatch.gauge("plain");
  CHECK(gauge.texture == "plain");
  CHECK(gauge.stitches.per_10cm == Approx(20 / 10.16 * 10));
  CHECK(gauge.rows.per_10cm == Approx(28));
}

TEST_CASE("textures come in the order first measured, and have a gauge once both ways were measured", "[gauge]") {
  const Swatch swatch({{"rope", Counted::rows, 30, 100, ""},
                       {"garter", Counted::stitches, 20, 100, ""},
                       {"rope", Counted::stitches, 24, 100, ""}});
  CHECK(swatch.textures() == std::vector<std::string>{"rope", "garter"});
  CHECK(swatch.has("rope"));
  CHECK_FALSE(swatch.has("garter"));
  CHECK_FALSE(swatch.has("Rope"));
  CHECK(swatch.measurements().size() == 3);
  for (const char* texture : {"garter", "moss", ""}) {
    CHECK_THROWS_MATCHES(swatch.gauge(texture), Error, refused_field(ErrorCode::no_gauge, texture));
  }
  CHECK_THROWS_WITH(swatch.gauge("garter"),
                    "the swatch has no gauge for texture 'garter': rows were not measured; it has 'rope'");
  CHECK(Swatch().textures().empty());
  CHECK_FALSE(Swatch().has(""));
}

namespace {

Measurement in_state(ClothState state, Counted counted, double count, const char* texture = "plain") {
  return {.texture = texture, .counted = counted, .count = count, .length_mm = 100, .state = state};
}

std::vector<FindingCode> codes(const Swatch& swatch) {
  std::vector<FindingCode> out;
  for (const Finding& each : swatch_findings(swatch)) out.push_back(each.code);
  return out;
}

// Whether some place is told not to belong to the others.
bool odd(const std::vector<double>& values) {
  const auto found = swatch_findings(counted_over_10cm(values));
  return std::any_of(found.begin(), found.end(),
                     [](const Finding& each) { return each.code == FindingCode::odd_one_out; });
}

}  // namespace

TEST_CASE("the standard error of the mean is the spread over the root of the places", "[gauge]") {
  const Gauge gauge = counted_over_10cm({2, 4, 4, 4, 5, 5, 7, 9}).gauge("plain");
  CHECK(gauge.stitches.standard_error == Approx(std::sqrt(32.0 / 7 / 8)).epsilon(1e-15));
  CHECK(gauge.rows.standard_error == 0);
}

// USP 29-NF 24, general chapter 1010 (analytical data): five runs of three replicates, their analysis of variance and
// the standard deviation of one replicate of one run. Runs are swatches here.
TEST_CASE("swatches that differ are taken apart as the pharmacopoeia's worked example is", "[gauge][reference]") {
  const double runs[5][3] = {{100.70, 101.05, 101.15},
                             {99.46, 99.37, 99.59},
                             {99.96, 100.17, 101.01},
                             {101.80, 102.16, 102.44},
                             {101.91, 102.00, 101.67}};
  std::vector<Measurement> measurements;
  for (int run = 0; run < 5; ++run) {
    for (const double value : runs[run]) {
      measurements.push_back({"plain", Counted::stitches, value, 100, "", "run " + std::to_string(run + 1)});
    }
  }
  measurements.push_back({"plain", Counted::rows, 30, 100, ""});
  const Swatch swatch(measurements);
  const Density density = swatch.gauge("plain").stitches;
  CHECK(density.places == 15);
  CHECK(density.swatches == 5);
  CHECK(density.per_10cm == Approx((100.97 + 99.47 + 100.38 + 102.13 + 101.86) / 5).epsilon(1e-4));
  CHECK(density.spread == Approx(1.118).epsilon(1e-3));
  CHECK(density.spread * density.spread == Approx(1.251).epsilon(1e-3));
  CHECK(density.standard_error == Approx(std::sqrt(3.550 / 15)).epsilon(1e-3));  // mean square between over all places
  // u^2 = (1 + 1/5)/3 of the one mean square and 1 + 1/15 less that of the other, with 4 and 10 degrees of freedom.
  const double between = 0.4 * 3.550;
  const double within = (1 + 1 / 15.0 - 0.4) * 0.1018;
  CHECK(density.freedom ==
        Approx((between + within) * (between + within) / (between * between / 4 + within * within / 10)).epsilon(2e-3));
  const std::vector<Finding> found = swatch_findings(swatch);
  const auto unlike = std::find_if(found.begin(), found.end(),
                                   [](const Finding& each) { return each.code == FindingCode::unlike_swatches; });
  REQUIRE(unlike != found.end());
  CHECK(unlike->severity == Severity::warning);
  CHECK(unlike->place.field == "measurements[0]");
  CHECK(unlike->message ==
        "stitches of texture 'plain', rested: swatch 'run 2' has 99.47 to 10 cm on average and "
        "swatch 'run 4' 102.13, further apart than their places explain");
}

TEST_CASE("swatches that differ by reading, or of one place each, are as one", "[gauge]") {
  const auto density_of = [](const std::vector<std::pair<const char*, double>>& counted, bool& told) {
    std::vector<Measurement> measurements;
    for (const auto& [piece, count] : counted) {
      measurements.push_back({"plain", Counted::stitches, count, 100, "", piece});
    }
    measurements.push_back({"plain", Counted::rows, 30, 100, ""});
    const Swatch swatch(measurements);
    const std::vector<Finding> found = swatch_findings(swatch);
    told = std::any_of(found.begin(), found.end(),
                       [](const Finding& each) { return each.code == FindingCode::unlike_swatches; });
    return swatch.gauge("plain").stitches;
  };
  bool told = true;
  // 28 and 29 are the means of both.
  const Density alike = density_of({{"a", 28}, {"a", 29}, {"b", 28}, {"b", 29}}, told);
  CHECK(alike.spread == Approx(std::sqrt(1.0 / 3)).epsilon(1e-14));
  CHECK(alike.standard_error == Approx(std::sqrt(1.0 / 12)).epsilon(1e-14));
  CHECK(alike.freedom == 3);
  CHECK(alike.swatches == 2);
  CHECK_FALSE(told);
  // Whether it is the piece or the place that differs nothing tells.
  const Density single = density_of({{"a", 28}, {"b", 30}, {"c", 32}}, told);
  CHECK(single.spread == 2);
  CHECK(single.freedom == 2);
  CHECK_FALSE(told);
  // The places of each agree to the last digit, and a third of a stitch is between the two: beyond chance, but reading.
  const Density near = density_of({{"a", 28}, {"a", 28}, {"b", 28.3}, {"b", 28.3}}, told);
  CHECK(near.spread == Approx(0.3 / std::sqrt(2.0)).epsilon(1e-12));
  CHECK(near.freedom == Approx(1));
  CHECK_FALSE(told);
  density_of({{"a", 28}, {"a", 28}, {"b", 28.5}, {"b", 28.5}}, told);
  CHECK(told);
}

TEST_CASE("states are never put together, and the most finished whole one is a texture's own", "[gauge]") {
  using enum ClothState;
  const Swatch swatch({in_state(washed, Counted::stitches, 32), in_state(rested, Counted::stitches, 30),
                       in_state(rested, Counted::rows, 40), in_state(off_machine, Counted::stitches, 26),
                       in_state(off_machine, Counted::rows, 36)});
  CHECK(swatch.states("plain") == std::vector<ClothState>{off_machine, rested});
  CHECK(swatch.states("moss").empty());
  CHECK(swatch.has("plain"));
  CHECK(swatch.has("plain", off_machine));
  CHECK_FALSE(swatch.has("plain", washed));  // its rows were not measured
  CHECK(swatch.gauge("plain").state == rested);
  CHECK(swatch.gauge("plain").stitches.per_10cm == 30);
  CHECK(swatch.gauge("plain", off_machine).rows.per_10cm == 36);
  CHECK_THROWS_MATCHES(swatch.gauge("plain", washed), Error, refused_field(ErrorCode::no_gauge, "plain"));
  CHECK_THROWS_WITH(swatch.gauge("plain", washed),
                    "the swatch has no gauge for texture 'plain': rows were not measured washed");
  CHECK_THROWS_MATCHES(swatch.gauge("plain", static_cast<ClothState>(9)), Error,
                       refused_field(ErrorCode::bad_argument, "state"));
  const Swatch halves({in_state(washed, Counted::stitches, 32), in_state(rested, Counted::rows, 40)});
  CHECK_FALSE(halves.has("plain"));
  CHECK_THROWS_WITH(halves.gauge("plain"),
                    "the swatch has no gauge for texture 'plain': stitches and rows were not "
                    "measured in one state");
  CHECK(cloth_state_name(off_machine) == "off the machine");
  CHECK(cloth_state_name(static_cast<ClothState>(3)).empty());
}

TEST_CASE("shrinkage is worked by hand, with the standard error of a ratio", "[gauge]") {
  using enum ClothState;
  // Stitches 27 +- 1 and 30 +- 1.5 in two places each: q = 0.9, 10 % narrower; standard errors 1 and 1.5, so 100 * 0.9
  // * sqrt((1/27)^2 + (1.5/30)^2) = 5.60010 %. Rows 40 before, 36 after: 11.1 % longer. ISO 5077 gives both with the
  // other sign.
  std::vector<Measurement> measurements;
  for (const double sign : {-1.0, 1.0}) {
    measurements.push_back(in_state(rested, Counted::stitches, 27 + sign));
    measurements.push_back(in_state(rested, Counted::rows, 40));
    measurements.push_back(in_state(washed, Counted::stitches, 30 + 1.5 * sign));
    measurements.push_back(in_state(washed, Counted::rows, 36));
  }
  measurements.push_back(in_state(washed, Counted::stitches, 30, "moss"));
  const std::vector<Shrinkage> found = shrinkages(Swatch(measurements));
  REQUIRE(found.size() == 1);
  CHECK(found[0].texture == "plain");
  CHECK(found[0].from_state == rested);
  CHECK(found[0].to_state == washed);
  CHECK(found[0].width_percent == Approx(10));
  CHECK(found[0].width_error == Approx(5.60010).epsilon(1e-6));
  CHECK(found[0].length_percent == Approx(-100.0 / 9));
  CHECK(found[0].length_error == 0);
  CHECK(found[0].error_known);
  measurements.push_back(in_state(off_machine, Counted::stitches, 26));
  measurements.push_back(in_state(off_machine, Counted::rows, 41));
  const std::vector<Shrinkage> pairs = shrinkages(Swatch(measurements));
  REQUIRE(pairs.size() == 3);
  CHECK(pairs[0].from_state == off_machine);
  CHECK(pairs[0].to_state == rested);
  CHECK(pairs[0].width_error == 0);
  CHECK_FALSE(pairs[0].error_known);
  CHECK(pairs[1].to_state == washed);
  CHECK(pairs[2] == found[0]);
  CHECK(shrinkages(Swatch()).empty());
}

TEST_CASE("Grubbs's test finds the reading that NIST's handbook finds, and names its place", "[gauge]") {
  // NIST/SEMATECH e-Handbook, 1.3.5.17.1: eight mass spectrometer readings of Tietjen and Moore (1972); the last is
  // the outlier, G = 2.4687.
  const double readings[] = {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
  std::vector<Measurement> measurements;
  for (const double reading : readings)
    measurements.push_back({"plain", Counted::stitches, reading, 100, "p", "second"});
  for (int i = 0; i < 8; ++i) measurements.push_back({"plain", Counted::rows, 30, 100});
  measurements[7].place = "near the edge";
  measurements[7].line = 12;
  const std::vector<Finding> found = swatch_findings(Swatch(measurements));
  REQUIRE(found.size() == 1);
  CHECK(found[0].code == FindingCode::odd_one_out);
  CHECK(found[0].severity == Severity::warning);
  CHECK(found[0].place.field == "measurements[7]");
  CHECK(found[0].place.line == 12);
  CHECK(found[0].message ==
        "stitches of texture 'plain', rested: 245.57 over 100 mm, 'near the edge' of swatch 'second' (line 12) make "
        "245.57 to 10 cm, the 7 others 200.84 on average, from 199.31 to 202.18");
  // It still counts: nothing is dropped.
  CHECK(Swatch(measurements).gauge("plain").stitches.per_10cm == Approx(206.43375));
}

TEST_CASE("the limit of an odd one out is that of the published table, from three places to ten", "[gauge]") {
  // Critical values of Grubbs's test for one outlying reading, 5 %: chem.libretexts.org, Analytic References, appendix
  // 7 (which prints 2.202 for seven, a slip of 2.020); tests/python holds the rule against SciPy's Student
  // distribution.
  const double table[] = {1.155, 1.481, 1.715, 1.887, 2.020, 2.126, 2.215, 2.290};
  for (int n = 3; n <= 10; ++n) {
    CAPTURE(n);
    // n - 1 places evenly about 300, and one that moves away until it is named.
    const auto values = [&](double away) {
      std::vector<double> out;
      for (int i = 0; i < n - 1; ++i) out.push_back(300 + 20.0 * i / (n - 2));
      out.push_back(310 + away);
      return out;
    };
    double low = 0, high = 3000;
    REQUIRE(odd(values(high)));
    for (int i = 0; i < 40; ++i) {
      const double middle = (low + high) / 2;
      (odd(values(middle)) ? high : low) = middle;
    }
    const std::vector<double> at = values(high);
    double mean = 0, squares = 0;
    for (const double value : at) mean += value / n;
    for (const double value : at) squares += (value - mean) * (value - mean);
    CHECK((at.back() - mean) / std::sqrt(squares / (n - 1)) == Approx(table[n - 3]).margin(8e-4));  // printed to 1e-3
  }
}

TEST_CASE("less than a stitch, or than one and a half of whole ones, is reading, and two places have no odd one",
          "[gauge]") {
  CHECK_FALSE(odd({28, 28, 28, 28, 28.5}));  // farther than the test allows, but half a stitch
  CHECK_FALSE(odd({28, 28, 28, 28, 29}));    // rounded: 28.4 and 28.6
  CHECK_FALSE(odd({40, 40, 41}));
  CHECK(odd({28, 28, 28, 28, 30}));
  CHECK(odd({28, 28, 28, 28, 26}));
  CHECK(odd({28, 28, 28.5, 28, 28, 29.5}));  // counted in halves
  CHECK_FALSE(odd({28, 40}));
  CHECK_FALSE(odd({28, 28, 28}));
  CHECK_FALSE(odd({27, 28, 29, 28, 27.5}));
  // Over 5 cm a stitch is 2 to 10 cm: one that is off by 1.6 to 10 cm is off by less than a stitch counted.
  std::vector<Measurement> half;
  for (const double count : {14.0, 14.0, 14.0, 14.0, 14.8}) half.push_back({"plain", Counted::stitches, count, 50});
  const std::vector<FindingCode> found = codes(Swatch(half));
  CHECK(std::count(found.begin(), found.end(), FindingCode::odd_one_out) == 0);
}

TEST_CASE("few places, short lengths and halves of a gauge are told with their places", "[gauge]") {
  std::vector<Measurement> measurements;
  for (int i = 0; i < 5; ++i) measurements.push_back({"plain", Counted::stitches, 28, 100});
  for (int i = 0; i < 5; ++i) measurements.push_back({"plain", Counted::rows, 40, 101.6});
  CHECK(codes(Swatch(measurements)).empty());  // five places over 10 cm or 4 in are what is usual

  measurements.pop_back();
  measurements[7].length_mm = 50.8;
  measurements[7].count = 20;
  measurements[7].line = 9;
  measurements.push_back(in_state(ClothState::washed, Counted::rows, 40));
  const std::vector<Finding> found = swatch_findings(Swatch(measurements));
  REQUIRE(found.size() == 4);
  CHECK(found[0].code == FindingCode::few_places);
  CHECK(found[0].severity == Severity::advice);
  CHECK(found[0].value == 4);
  CHECK(found[0].limit == usual_places);
  CHECK(found[0].place.field == "measurements[5]");
  CHECK(found[0].message == "rows of texture 'plain', rested, were measured in 4 places; 5 are usual");
  CHECK(found[1].code == FindingCode::short_measure);
  CHECK(found[1].value == 50);
  CHECK(found[1].limit == 100);
  CHECK(found[1].place.field == "measurements[7]");
  CHECK(found[1].place.line == 9);
  CHECK(found[1].message == "rows of texture 'plain', rested: 20 over 50.8 mm (line 9); 100 mm or more are usual");
  CHECK(found[2].code == FindingCode::half_measured);
  CHECK(found[2].message == "rows of texture 'plain', washed, were measured, but not its stitches: they make no gauge");
  CHECK(found[3].code == FindingCode::few_places);
  CHECK(found[3].severity == Severity::warning);
  CHECK(found[3].place.field == "measurements[9]");
  for (const Finding& each : found) CHECK_FALSE(each.suggestion.empty());
  CHECK(swatch_findings(Swatch()).empty());
}

TEST_CASE("a measurement out of its range is refused with its index and field", "[gauge][error]") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinity = std::numeric_limits<double>::infinity();
  const Measurement good{"plain", Counted::rows, 30, 100, "left third"};
  struct Case {
    Measurement measurement;
    ErrorCode code;
    const char* field;
  };
  const Case cases[] = {
      {{"", Counted::rows, 30, 100, ""}, ErrorCode::bad_value, "measurements[1].texture"},
      {{std::string(257, 'a'), Counted::rows, 30, 100, ""}, ErrorCode::bad_value, "measurements[1].texture"},
      {{std::string("a\0b", 3), Counted::rows, 30, 100, ""}, ErrorCode::bad_value, "measurements[1].texture"},
      {{"\xFF", Counted::rows, 30, 100, ""}, ErrorCode::bad_encoding, "measurements[1].texture"},
      {{"plain", static_cast<Counted>(2), 30, 100, ""}, ErrorCode::bad_value, "measurements[1].counted"},
      {{"plain", Counted::rows, 0, 100, ""}, ErrorCode::bad_value, "measurements[1].count"},
      {{"plain", Counted::rows, -1, 100, ""}, ErrorCode::bad_value, "measurements[1].count"},
      {{"plain", Counted::rows, 0.09, 100, ""}, ErrorCode::bad_value, "measurements[1].count"},
      {{"plain", Counted::rows, 10000.5, 100, ""}, ErrorCode::bad_value, "measurements[1].count"},
      {{"plain", Counted::rows, nan, 100, ""}, ErrorCode::bad_value, "measurements[1].count"},
      {{"plain", Counted::rows, infinity, 100, ""}, ErrorCode::bad_value, "measurements[1].count"},
      {{"plain", Counted::rows, 30, 0.99, ""}, ErrorCode::bad_value, "measurements[1].length_mm"},
      {{"plain", Counted::rows, 30, 10001, ""}, ErrorCode::bad_value, "measurements[1].length_mm"},
      {{"plain", Counted::rows, 30, nan, ""}, ErrorCode::bad_value, "measurements[1].length_mm"},
      {{"plain", Counted::rows, 30, 100, std::string(257, 'a')}, ErrorCode::bad_value, "measurements[1].place"},
      {{"plain", Counted::rows, 30, 100, "\xC3"}, ErrorCode::bad_encoding, "measurements[1].place"},
      {{"plain", Counted::rows, 30, 100, "", std::string(65, 'a')}, ErrorCode::bad_value, "measurements[1].swatch"},
      {{"plain", Counted::rows, 30, 100, "", "\xC3"}, ErrorCode::bad_encoding, "measurements[1].swatch"},
      {in_state(static_cast<ClothState>(3), Counted::rows, 30), ErrorCode::bad_value, "measurements[1].state"},
      {{"plain", Counted::rows, 30, 100, "", "", ClothState::rested, -1}, ErrorCode::bad_value, "measurements[1].line"},
  };
  for (const Case& each : cases) {
    CHECK_THROWS_MATCHES(Swatch({good, each.measurement}), Error, refused_field(each.code, each.field));
  }
  const Measurement ends[] = {{std::string(256, 'a'), Counted::rows, 0.1, 1, std::string(256, 'b')},
                              {"plain", Counted::stitches, 10000, 10000, ""}};
  CHECK_NOTHROW(Swatch({ends[0], ends[1]}));
}

TEST_CASE("a swatch of more measurements than its limit is refused", "[gauge][error]") {
  const Measurement one{"plain", Counted::rows, 30, 100, ""};
  CHECK_NOTHROW(Swatch(std::vector<Measurement>(Swatch::max_measurements, one)));
  CHECK_THROWS_MATCHES(Swatch(std::vector<Measurement>(Swatch::max_measurements + 1, one)), Error,
                       refused_field(ErrorCode::too_large, "measurements"));
}

}  // namespace gauge_test
