#include "latchwork/yarn.hpp"

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "catch.hpp"

namespace yarn_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::refused_at;
using latchwork_test::refused_field;

TEST_CASE("a yarn number is read as labels and cones have it", "[yarn]") {
  struct Case {
    const char* text;
    YarnNumber expected;
  };
  const Case cases[] = {
      {"20 tex", {YarnSystem::tex, 20, 1}},
      {"tex 20", {YarnSystem::tex, 20, 1}},
      {"20 tex x 2", {YarnSystem::tex, 20, 2}},
      {"20 tex \u00D7 2", {YarnSystem::tex, 20, 2}},
      {"167 dtex", {YarnSystem::dtex, 167, 1}},
      {"150 den", {YarnSystem::denier, 150, 1}},
      {"Nm 28/2", {YarnSystem::metric, 28, 2}},
      {"2/28 Nm", {YarnSystem::metric, 28, 2}},
      {"NM 28 x 2", {YarnSystem::metric, 28, 2}},
      {"28 x 2 Nm", {YarnSystem::metric, 28, 2}},
      {"3 x 28 Nm", {YarnSystem::metric, 28, 3}},
      {"2 x 20 tex", {YarnSystem::tex, 20, 2}},
      {"2 \u00D7 20 tex", {YarnSystem::tex, 20, 2}},
      {"Nm 3/3", {YarnSystem::metric, 3, 3}},
      {"Ne 30", {YarnSystem::cotton, 30, 1}},
      {"5/2 cotton", {YarnSystem::cotton, 5, 2}},
      {"cotton 2 x 8", {YarnSystem::cotton, 2, 8}},
      {"spun silk 60", {YarnSystem::spun_silk, 60, 1}},
      {"2/10 worsted", {YarnSystem::worsted, 10, 2}},
      {"linen 20/2", {YarnSystem::linen, 20, 2}},
      {"woollen cut 10", {YarnSystem::woollen_cut, 10, 1}},
      {"5 woollen run", {YarnSystem::woollen_run, 5, 1}},
      {"YSW 20", {YarnSystem::yorkshire, 20, 1}},
      {"Galashiels 24", {YarnSystem::galashiels, 24, 1}},
      {"West of England 30", {YarnSystem::west_of_england, 30, 1}},
      {"jute 8", {YarnSystem::jute, 8, 1}},
      {"1000 yd/lb", {YarnSystem::yards_per_pound, 1000, 1}},
      {"250 m / 100 g", {YarnSystem::metres_per_100g, 250, 1}},
      {"50 g = 120 m", {YarnSystem::metres_per_100g, 240, 1}},
      {"120 m per 50 g x 2", {YarnSystem::metres_per_100g, 240, 2}},
      {"197 yd / 100 g", {YarnSystem::metres_per_100g, 180.1368, 1}},
      {"1 lb to 560 yards", {YarnSystem::yards_per_pound, 560, 1}},
      {"12345/2 den", {YarnSystem::denier, 12345, 2}},  // no fraction, which has four digits at most
      {"den 12345/2", {YarnSystem::denier, 12345, 2}},
  };
  for (const Case& each : cases) {
    INFO(each.text);
    const YarnNumber got = read_yarn_number(each.text);
    CHECK(got == each.expected);
    CHECK(read_yarn_number(yarn_number_text(got)) == got);
  }
  CHECK(yarn_number_text({YarnSystem::metric, 28, 2}) == "Nm 28 x 2");
  CHECK(yarn_number_text({YarnSystem::metres_per_100g, 250, 1}) == "250 m/100 g");
}

TEST_CASE("a system that is not known is named as it was written", "[yarn][error]") {
  CHECK_THROWS_WITH(read_yarn_number("NeC 30"), Catch::Matchers::StartsWith("character 1: 'NeC' is no system"));
  CHECK_THROWS_WITH(read_yarn_number("30 Woollen Skein"),
                    Catch::Matchers::StartsWith("character 4: 'Woollen Skein' is no system"));
}

TEST_CASE("a yarn number that may mean two things, or none, is refused with the character", "[yarn][error]") {
  struct Case {
    const char* text;
    ErrorCode code;
    int character;
  };
  const Case cases[] = {
      {"", ErrorCode::bad_syntax, 1},
      {"Nm", ErrorCode::bad_syntax, 3},
      {"28", ErrorCode::bad_unit, 3},
      {"28/2", ErrorCode::bad_unit, 5},
      {"wool 28", ErrorCode::bad_unit, 1},
      {"28 wool", ErrorCode::bad_unit, 4},
      {"Nm 8/3", ErrorCode::bad_syntax, 4},      // either may be the plies
      {"cotton 2/8", ErrorCode::bad_syntax, 8},  // custom says 2 x 8, the size of the numbers 8 x 2
      {"3/2 worsted", ErrorCode::bad_syntax, 1},
      {"2 x 8 tex", ErrorCode::bad_syntax, 1},
      {"30 x 28 Nm", ErrorCode::bad_syntax, 1},
      {"3 x 28", ErrorCode::bad_unit, 7},
      {"Nm 30/28", ErrorCode::bad_syntax, 4},  // neither may
      {"Nm 28/2.5", ErrorCode::bad_syntax, 4},
      {"Nm 28 x 0", ErrorCode::bad_value, 9},
      {"Nm 28 x 2.5", ErrorCode::bad_value, 9},
      {"Nm 28 x 101", ErrorCode::bad_value, 9},
      {"Nm 28 x 1 x 2", ErrorCode::bad_syntax, 11},
      {"0 tex", ErrorCode::bad_value, 1},
      {"-20 tex", ErrorCode::bad_value, 1},
      {"Nm 1e5", ErrorCode::bad_syntax, 5},
      {"20 tex 2", ErrorCode::bad_syntax, 8},
      {"120 m", ErrorCode::bad_syntax, 6},
      {"120 m / 50", ErrorCode::bad_unit, 11},
      {"120 m / 50 gr", ErrorCode::bad_unit, 12},
      {"120 m / 50 m", ErrorCode::bad_unit, 12},
      {"120 m / 0 g", ErrorCode::bad_value, 9},
      {"0 m / 50 g", ErrorCode::bad_value, 1},
      {"120 m / 5 min", ErrorCode::bad_unit, 11},
  };
  for (const Case& each : cases) {
    INFO(each.text);
    CHECK_THROWS_MATCHES(read_yarn_number(each.text, "yarn"), Error, refused_at(each.code, "yarn", each.character));
  }
}

TEST_CASE("a yarn of several plies is as thick as its plies together", "[yarn]") {
  CHECK(yarn_tex({YarnSystem::metric, 28, 2}) == 2000.0 / 28);
  CHECK(yarn_number_in({YarnSystem::metric, 28, 2}, YarnSystem::metric) == YarnNumber{YarnSystem::metric, 14, 1});
  const std::vector<YarnNumber> strands = {{YarnSystem::tex, 20, 1}, {YarnSystem::metric, 25, 2}};
  CHECK(yarns_together(strands) == YarnNumber{YarnSystem::tex, 100, 1});
  CHECK(yarn_number_of({200'000}, {100}, YarnSystem::tex) == YarnNumber{YarnSystem::tex, 500, 1});
  CHECK(yarn_weight({YarnSystem::tex, 500, 1}, {200'000}).g == 100);
  CHECK(yarn_length({YarnSystem::metres_per_100g, 240, 1}, {50}).mm == 120'000);
  CHECK(yarn_weight({YarnSystem::tex, 500, 1}, {0}).g == 0);
}

TEST_CASE("yarn numbers out of range are refused with their field", "[yarn][error]") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const double bad : {nan, 0.0, -1.0, 1e-7, 2e9, std::numeric_limits<double>::infinity()}) {
    INFO(bad);
    const YarnNumber yarn{YarnSystem::tex, bad, 1};
    CHECK_THROWS_MATCHES(yarn_tex(yarn), Error, refused_field(ErrorCode::bad_argument, "number"));
    CHECK_THROWS_MATCHES(yarn_number_text(yarn), Error, refused_field(ErrorCode::bad_argument, "number"));
    CHECK_THROWS_MATCHES(yarns_together(std::vector{YarnNumber{YarnSystem::tex, 1, 1}, yarn}), Error,
                         refused_field(ErrorCode::bad_argument, "yarns[1].number"));
  }
  CHECK_THROWS_MATCHES(yarn_tex({YarnSystem::tex, 1, 0}), Error, refused_field(ErrorCode::bad_argument, "plies"));
  CHECK_THROWS_MATCHES(yarn_tex({YarnSystem::tex, 1, 101}), Error, refused_field(ErrorCode::bad_argument, "plies"));
  CHECK_THROWS_MATCHES(yarn_tex({static_cast<YarnSystem>(16), 1, 1}), Error,
                       refused_field(ErrorCode::bad_argument, "system"));
  CHECK_THROWS_MATCHES(yarn_number_in({YarnSystem::tex, 1, 1}, static_cast<YarnSystem>(16)), Error,
                       refused_field(ErrorCode::bad_argument, "system"));
  CHECK_THROWS_MATCHES(yarns_together({}), Error, refused_field(ErrorCode::bad_argument, "yarns"));
  CHECK_THROWS_MATCHES(yarn_number_of({0}, {50}, YarnSystem::tex), Error, refused_field(ErrorCode::bad_argument, "mm"));
  CHECK_THROWS_MATCHES(yarn_number_of({50}, {0}, YarnSystem::tex), Error, refused_field(ErrorCode::bad_argument, "g"));
  CHECK_THROWS_MATCHES(yarn_number_of({1e12}, {1e-6}, YarnSystem::tex), Error,
                       refused_field(ErrorCode::bad_value, "number"));
  CHECK_THROWS_MATCHES(yarn_number_in({YarnSystem::tex, 1e9, 1}, YarnSystem::denier), Error,
                       refused_field(ErrorCode::bad_value, "number"));
  CHECK_THROWS_MATCHES(yarn_weight({YarnSystem::tex, 1e9, 1}, {1e12}), Error,
                       refused_field(ErrorCode::bad_value, "weight"));
  CHECK_THROWS_MATCHES(yarn_length({YarnSystem::tex, 1e-6, 1}, {1e12}), Error,
                       refused_field(ErrorCode::bad_value, "length"));
  for (const double bad : {nan, 0.0, -1.0, 26.0}) {
    CHECK_THROWS_MATCHES(yarn_diameter_mm({YarnSystem::tex, 20, 1}, bad), Error,
                         refused_field(ErrorCode::bad_argument, "fibre_density"));
  }
  CHECK_THROWS_MATCHES(yarn_categories_at({Counted::rows, 28, 100}), Error,
                       refused_field(ErrorCode::bad_argument, "counted"));
  CHECK_THROWS_MATCHES(yarn_categories_at({Counted::stitches, 28, 0}), Error,
                       refused_field(ErrorCode::bad_argument, "length_mm"));
}

}  // namespace yarn_test
