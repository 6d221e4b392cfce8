#include "latchwork/gauge.hpp"

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"

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
  CHECK_THROWS_WITH(swatch.gauge("garter"), "the swatch has no gauge for texture 'garter': rows were not measured");
  CHECK(Swatch().textures().empty());
  CHECK_FALSE(Swatch().has(""));
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
