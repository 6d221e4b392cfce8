#include <cmath>
#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/size.hpp"
#include "latchwork/strip.hpp"
#include "latchwork/yarn.hpp"
#include "reference.hpp"

namespace textbook_test {

// Worked examples of textbooks, correspondence schools and handbooks, at the rounding in which they are printed. Every
// value is read from check_values.json by its id; what it is compared with comes from the library.

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::meets_reference;
using latchwork_test::reference;
using latchwork_test::reference_input;
using latchwork_test::reference_inputs;
using latchwork_test::reference_source;

namespace {

double in(const YarnNumber& yarn, YarnSystem system) {
  return yarn_number_in(yarn, system).number;
}

YarnSystem system_of(const std::string& name) {
  if (name == "cotton") return YarnSystem::cotton;
  if (name == "worsted") return YarnSystem::worsted;
  if (name == "linen") return YarnSystem::linen;
  REQUIRE(name == "woollen run");
  return YarnSystem::woollen_run;
}

Weight weighed(const nlohmann::json& given) {
  if (given.contains("grains")) return weight_of(given.at("grains").get<double>(), WeightUnit::grain);
  if (given.contains("ounces")) return weight_of(given.at("ounces").get<double>(), WeightUnit::ounce);
  return weight_of(given.at("pounds").get<double>(), WeightUnit::pound);
}

/// The yarns of an example, "cotton": [40, 20], together, in their own system.
double together(const std::string& id) {
  const auto& given = reference_inputs(id).items().begin();
  const YarnSystem system = system_of(given.key());
  std::vector<YarnNumber> yarns;
  for (const nlohmann::json& count : given.value()) yarns.push_back({system, count.get<double>(), 1});
  return in(yarns_together(yarns), system);
}

Swatch plain_swatch(double stitches, double length_mm) {
  return Swatch(
      {{"stockinette", Counted::stitches, stitches, length_mm, ""}, {"stockinette", Counted::rows, 30, 100, ""}});
}

/// Inches that so many stitches are wide.
double inches_wide(int stitches, const Swatch& swatch) {
  return size(Panel("plain", stockinette(stitches)), swatch).width_mm / 25.4;
}

}  // namespace

TEST_CASE("TB-01, TB-15, TB-16, TB-17: the count of a yarn from a length that was weighed", "[reference][yarn]") {
  // C. P. Brooks, Cotton Manufacturing; American Correspondence School of Textiles, 1898; Shawl Weaving Artisan.
  for (const char* id : {"TB-01", "TB-15", "TB-16", "TB-17"}) {
    INFO(reference_source(id));
    const nlohmann::json& given = reference_inputs(id);
    const Length length = length_of(given.at("yards").get<double>(), LengthUnit::yard);
    CHECK(meets_reference(id, yarn_number_of(length, weighed(given), system_of(given.at("system"))).number));
  }
}

TEST_CASE("TB-02, TB-13, TB-14: what a length of yarn weighs", "[reference][yarn]") {
  // C. P. Brooks, Cotton Manufacturing; American Correspondence School of Textiles, 1898.
  for (const char* id : {"TB-02", "TB-13", "TB-14"}) {
    INFO(reference_source(id));
    const nlohmann::json& given = reference_inputs(id);
    const Weight weight = yarn_weight(read_yarn_number(given.at("yarn").get<std::string>()),
                                      length_of(given.at("yards").get<double>(), LengthUnit::yard));
    const WeightUnit unit = given.at("unit") == "lb" ? WeightUnit::pound : WeightUnit::ounce;
    CHECK(meets_reference(id, weight_in(weight, unit)));
  }
}

TEST_CASE("TB-03, TB-10: a count in other systems", "[reference][yarn]") {
  // C. P. Brooks, Cotton Manufacturing; W. Davis, Hosiery Manufacture, example 37.
  for (const char* id : {"TB-03", "TB-10"}) {
    INFO(reference_source(id));
    const YarnNumber yarn = read_yarn_number(reference_input<std::string>(id, "yarn"));
    for (const auto& expected : reference(id).at("expected").items()) {
      CHECK(meets_reference(id, in(yarn, system_of(expected.key())), expected.value().get<double>()));
    }
  }
}

TEST_CASE("TB-04, TB-06, TB-07, TB-09, TB-11, TB-12: yarns folded together", "[reference][yarn]") {
  // C. P. Brooks, Cotton Manufacturing; J. T. Taylor, Cotton Weaving and Designing; W. Davis, Hosiery Manufacture,
  // examples 30, 38 and 39.
  for (const char* id : {"TB-04", "TB-06", "TB-07", "TB-09", "TB-11", "TB-12"}) {
    INFO(reference_source(id));
    CHECK(meets_reference(id, together(id)));
  }
}

TEST_CASE("TB-05, TB-08: plies of one count", "[reference][yarn]") {
  // C. P. Brooks, Cotton Manufacturing; J. T. Taylor, Cotton Weaving and Designing.
  for (const char* id : {"TB-05", "TB-08"}) {
    INFO(reference_source(id));
    const nlohmann::json& given = reference_inputs(id);
    CHECK(meets_reference(id, in({YarnSystem::cotton, given.at("cotton").get<double>(), given.at("plies").get<int>()},
                                 YarnSystem::cotton)));
  }
}

TEST_CASE("TB-18: yards to the pound of yarns as weavers write them", "[reference][yarn]") {
  INFO(reference_source("TB-18"));  // newsletter of a weavers' guild, quoted 2008
  const auto& expected = reference("TB-18").at("expected");
  for (std::size_t i = 0; i < expected.size(); ++i) {
    const auto text = reference_inputs("TB-18").at("yarns").at(i).get<std::string>();
    CAPTURE(text);
    CHECK(meets_reference("TB-18", in(read_yarn_number(text), YarnSystem::yards_per_pound), expected[i].get<double>()));
  }
}

TEST_CASE("TB-20: stitches for a width, and the two that the seam takes", "[reference][size]") {
  INFO(reference_source("TB-20"));  // studioknits.com, book page 22
  const nlohmann::json& given = reference_inputs("TB-20");
  const Swatch swatch = plain_swatch(given.at("stitches").get<double>(), 10 * given.at("cm").get<double>());
  const double wanted_mm = 10 * given.at("width_cm").get<double>();
  const int stitches = reference("TB-20").at("expected").get<int>();
  CHECK(size(Panel("plain", stockinette(stitches)), swatch).width_mm == Approx(wanted_mm).epsilon(1e-12));
  const int sewn = stitches + given.at("seam_stitches").get<int>();
  const Size between = size(Panel("plain", stockinette(sewn)), swatch, {.seam_left = 1, .seam_right = 1});
  CHECK(between.width_mm == Approx(wanted_mm).epsilon(1e-12));
  CHECK(between.cast_on.columns == sewn);
}

TEST_CASE("TB-21, TB-22, TB-23: what a number of stitches measures at one gauge and at another", "[reference][size]") {
  {
    INFO(reference_source("TB-21"));
    const nlohmann::json& given = reference_inputs("TB-21");
    const auto& expected = reference("TB-21").at("expected");
    for (std::size_t i = 0; i < expected.size(); ++i) {
      const Swatch swatch = plain_swatch(given.at("per_in").at(i).get<double>(), 25.4);
      CHECK(meets_reference("TB-21", inches_wide(given.at("stitches").at(i).get<int>(), swatch),
                            expected[i].get<double>()));
    }
  }
  {
    INFO(reference_source("TB-22"));
    const nlohmann::json& given = reference_inputs("TB-22");
    const auto stitches = given.at("stitches").get<double>();
    const Swatch knitted = plain_swatch(stitches, 25.4 * given.at("knitted_over_in").get<double>());
    const double per_in = stitches / given.at("pattern_over_in").get<double>();
    const auto cast_on = static_cast<int>(std::lround(given.at("pattern_in").get<double>() * per_in));
    CHECK(meets_reference("TB-22", inches_wide(cast_on, knitted)));
  }
  INFO(reference_source("TB-23"));  // two of its three figures are not what its own sum comes to
  const nlohmann::json& given = reference_inputs("TB-23");
  const auto& expected = reference("TB-23").at("expected");
  for (std::size_t i = 0; i < expected.size(); ++i) {
    const Swatch swatch = plain_swatch(given.at("per_in").at(i).get<double>(), 25.4);
    CHECK(meets_reference("TB-23", inches_wide(given.at("stitches").get<int>(), swatch), expected[i].get<double>()));
  }
}

TEST_CASE("TB-24: three independent parts, their spread, and the margin by Welch and Satterthwaite",
          "[reference][size]") {
  // JCGM 100:2008, G.4.1: parts of 0.25, 0.57 and 0.82 % from 10, 5 and 15 readings make 1.03 % with 19.0 degrees of
  // freedom, and 2.2 % at 95 %. Here they are parts of a width of three strips, each 100 mm at 40 stitches, in mm: the
  // swatch's counts stand about 40 so that each strip's own part comes to that.
  INFO(reference_source("TB-24"));
  const nlohmann::json& given = reference_inputs("TB-24");
  std::vector<Measurement> measurements;
  std::vector<Strip> strips;
  for (std::size_t i = 0; i < 3; ++i) {
    const std::string texture = "t" + std::to_string(i);
    const int places = given.at("places").at(i).get<int>();
    const double part_mm = given.at("parts").at(i).get<double>();
    const double deviation = part_mm / 100 * 40 / std::sqrt(1 + 1.0 / places);  // of the sample
    // Half the places above and half below, the odd one in the middle: sum of squares 2 (n / 2) off^2 = (n - 1) s^2.
    const int pairs = places / 2;
    const double off = deviation * std::sqrt((places - 1) / (2.0 * pairs));
    for (int k = 0; k < places; ++k) {
      const double side = k < pairs ? -off : (k < 2 * pairs ? off : 0);
      measurements.push_back({texture, Counted::stitches, 40 + side, 100, ""});
      measurements.push_back({texture, Counted::rows, 40, 100, ""});
    }
    strips.push_back({texture, texture, Grid(1, 40)});
  }
  const Size got = size(join_strips("p", 1, strips), Swatch(measurements), {.level = given.at("level").get<double>()});
  const nlohmann::json& expected = reference("TB-24").at("expected");
  CHECK(got.width_mm == Approx(300).epsilon(1e-12));
  CHECK(got.width_spread_mm == Approx(expected.at("spread").get<double>()).margin(0.005));
  CHECK(got.width_margin_mm == Approx(expected.at("margin").get<double>()).margin(0.05));
  // The example rounds 18.999 degrees to 19.0, t 2.093; a size cuts them, as G.4.1 allows: t of 18 degrees is 2.101
  // (NIST/SEMATECH e-Handbook, 1.3.6.7.2).
  CHECK(got.width_margin_mm / got.width_spread_mm == Approx(2.101).margin(0.0005));
}

}  // namespace textbook_test
