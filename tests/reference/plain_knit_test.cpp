#include "latchwork/plain_knit.hpp"

#include <cmath>
#include <string>

#include "catch.hpp"
#include "reference.hpp"

namespace plain_knit_test {

// Geometry of plain knit and weight of cloth. Every value is read from check_values.json by its id.

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::meets_reference;
using latchwork_test::reference;
using latchwork_test::reference_input;
using latchwork_test::reference_inputs;
using latchwork_test::reference_source;

namespace {

CountPerLength stitches(double count, double length_mm) {
  return {Counted::stitches, count, length_mm};
}
CountPerLength rows(double count, double length_mm) {
  return {Counted::rows, count, length_mm};
}
YarnNumber tex(double number) {
  return {YarnSystem::tex, number, 1};
}
// Loops of plain knit per cm2.
double loops_per_cm2(double loop_mm, const PlainConstants& constants) {
  return plain_per_10cm(Counted::stitches, loop_mm, constants) * plain_per_10cm(Counted::rows, loop_mm, constants) /
         100;
}

}  // namespace

TEST_CASE("KG-01, KG-30: counts go by the loop length", "[reference][plain_knit]") {
  // KG-01: GATE Textile Engineering 2015, Q54 (key 92). Published. KG-30: Munden's relations, derived.
  INFO(reference_source("KG-01"));
  const PlainConstants constants{reference_input("KG-01", "Kc"), reference_input("KG-01", "Kw")};
  CHECK(constants == plain_constants_of(PlainState::fully_relaxed));
  CHECK(meets_reference("KG-01", loops_per_cm2(10 * reference_input("KG-01", "loop_cm"), constants)));
  INFO(reference_source("KG-30"));
  const nlohmann::json& loops = reference_inputs("KG-30").at("loop_cm");
  const nlohmann::json& expected = reference("KG-30").at("expected");
  for (std::size_t i = 0; i < loops.size(); ++i) {
    const double loop_mm = 10 * loops[i].get<double>();
    const double courses = plain_per_10cm(Counted::rows, loop_mm, constants) / 10;
    const double wales = plain_per_10cm(Counted::stitches, loop_mm, constants) / 10;
    CHECK(meets_reference("KG-30", courses, expected[i][0].get<double>()));
    CHECK(meets_reference("KG-30", wales, expected[i][1].get<double>()));
  }
}

TEST_CASE("KG-03, KG-04, KG-05: constants of cloths and what follows from them", "[reference][plain_knit]") {
  // KG-03: Roy, Varshney & Kothari, Indian J. Fibre & Textile Research. Published. KG-04, KG-05: Munden 1959 and
  // Knapton 1968, from memory.
  INFO(reference_source("KG-03"));
  const PlainConstants interlock{reference_input("KG-03", "kc"), reference_input("KG-03", "kw")};
  const auto ratio = [](const PlainConstants& constants) {
    return plain_per_10cm(Counted::rows, 5, constants) / plain_per_10cm(Counted::stitches, 5, constants);
  };
  CHECK(meets_reference("KG-03", ratio(interlock)));
  struct Case {
    const char* id;
    PlainState state;
  };
  for (const Case& each : {Case{"KG-04", PlainState::dry_relaxed}, Case{"KG-05", PlainState::wet_relaxed}}) {
    INFO(reference_source(each.id));
    const PlainConstants constants = plain_constants_of(each.state);
    CHECK(constants == PlainConstants{reference_input(each.id, "Kc"), reference_input(each.id, "Kw")});
    const nlohmann::json& expected = reference(each.id).at("expected");
    CHECK(meets_reference(each.id, loops_per_cm2(10, constants), expected[0].get<double>()));
    CHECK(meets_reference(each.id, ratio(constants), expected[1].get<double>()));
  }
}

TEST_CASE("KG-18, KG-19: tightness, in both of its customs", "[reference][plain_knit]") {
  // Textile Technical Handbook (2023), p. 147, formula (g); study note, scribd 469140556. Derived from them.
  INFO(reference_source("KG-18"));
  const double per_mm =
      tightness_factor(tex(reference_input("KG-18", "tex")), 10 * reference_input("KG-18", "loop_cm"));
  CHECK(meets_reference("KG-18", per_mm * 10, reference("KG-18").at("expected")[0].get<double>()));
  CHECK(meets_reference("KG-18", per_mm, reference("KG-18").at("expected")[1].get<double>()));
  const double loop = reference("KG-19").at("expected").get<double>();
  CHECK(tightness_factor(tex(reference_input("KG-19", "tex")), loop) ==
        Approx(reference_input("KG-19", "K_per_mm")).epsilon(1e-4));
}

TEST_CASE("KG-20, KG-21, KG-22: loops at hand gauge", "[reference][plain_knit]") {
  // KG-20, KG-22: Munden's relation, derived. KG-21: a rule of thumb, bmom-funstuff.blogspot.com, December 2012.
  INFO(reference_source("KG-20"));
  const double count = reference_input("KG-20", "sts_per_10cm");
  const PlainConstants constants{5.5, reference_input("KG-20", "Kw")};
  const double loop = plain_loop_mm(stitches(count, 100), constants);
  CHECK(meets_reference("KG-20", loop));
  CHECK(reference("KG-21").at("expected").get<double>() == Approx(loop).epsilon(0.01));
  // A row of n stitches takes n loops and is n / gauge wide: the gauge drops out.
  const double width_cm = reference_input("KG-22", "width_cm");
  for (const double gauge : {18.0, 28.0, 40.0}) {
    const double yarn_mm =
        width_cm / 10 * gauge * plain_loop_mm(stitches(gauge, 100), {5.5, reference_input("KG-22", "Kw")});
    CHECK(meets_reference("KG-22", yarn_mm / 10));
  }
}

TEST_CASE("KG-09, KG-10, KG-12, KG-13, KG-31: weight of a square metre", "[reference][plain_knit]") {
  // KG-09: textilecalculation.blogspot.com, February 2015. KG-10, KG-12, KG-13: Textile Technical Handbook (2023), p.
  // 147 (prints 0.9155). KG-31: textilecalculation.blogspot.com, August 2015.
  INFO(reference_source("KG-10"));
  const YarnNumber cotton{YarnSystem::cotton, 1, 1};
  CHECK(meets_reference("KG-10", area_density_g_m2(stitches(1, 25.4), rows(1, 25.4), 1, cotton)));
  INFO(reference_source("KG-09"));  // loops/cm2 = Ks / l^2, so at l = 1 mm Ks * 100; the constant printed is at Ne 1
  const double ks = reference("KG-09").at("expected").get<double>();
  const double printed = area_density_g_m2(stitches(10 * ks, 10), rows(10, 10), 1, cotton);
  CHECK(printed == Approx(reference_input("KG-09", "printed_constant")).epsilon(1e-4));
  INFO(reference_source("KG-12"));
  CHECK(meets_reference("KG-12",
                        area_density_g_m2(stitches(reference_input("KG-12", "loops_per_cm2"), 10), rows(1, 10),
                                          reference_input("KG-12", "SL_mm"), tex(reference_input("KG-12", "tex")))));
  INFO(reference_source("KG-13"));
  CHECK(meets_reference(
      "KG-13",
      area_density_g_m2(stitches(reference_input("KG-13", "WPI"), 25.4), rows(reference_input("KG-13", "CPI"), 25.4),
                        reference_input("KG-13", "SL_mm"), tex(reference_input("KG-13", "tex"))),
      reference("KG-13").at("expected")[0].get<double>()));
  INFO(reference_source("KG-31"));
  const double loop_mm = reference_input("KG-31", "loop_mm");
  const PlainConstants constants = plain_constants_of(PlainState::fully_relaxed);
  CHECK(constants.courses * constants.wales == Approx(reference_input("KG-31", "Ks")));
  CHECK(meets_reference("KG-31", area_density_g_m2(stitches(plain_per_10cm(Counted::stitches, loop_mm, constants), 100),
                                                   rows(plain_per_10cm(Counted::rows, loop_mm, constants), 100),
                                                   loop_mm, tex(reference_input("KG-31", "tex")))));
}

TEST_CASE("KG-28: yarn in a square metre of plain knit", "[reference][plain_knit]") {
  // 100 Ks / l metres. Derived. A yarn of 1000 tex weighs a gram a metre.
  INFO(reference_source("KG-28"));
  const double loop_mm = 10 * reference_input("KG-28", "loop_cm");
  const PlainConstants constants = plain_constants_of(PlainState::fully_relaxed);
  CHECK(constants.courses * constants.wales == Approx(reference_input("KG-28", "Ks")));
  CHECK(meets_reference(
      "KG-28", area_density_g_m2(stitches(plain_per_10cm(Counted::stitches, loop_mm, constants), 100),
                                 rows(plain_per_10cm(Counted::rows, loop_mm, constants), 100), loop_mm, tex(1000))));
}

TEST_CASE("KG-15, KG-16: what a shift of a mill's machines takes", "[reference][yarn]") {
  // Production calculation of knitted fabric, textileclothinginfo.blogspot.com, February 2015. Published, with pi
  // = 3.14 and 2.2046 lb to the kg; KG-16 counts one of the two needle sets of a rib machine.
  for (const char* id : {"KG-15", "KG-16"}) {
    INFO(reference_source(id));
    constexpr double printed_pi = 3.14;
    constexpr double printed_lb_per_kg = 2.2046;
    const double needles = printed_pi * reference_input(id, "dia_in") * reference_input(id, "gauge");
    const double rows_a_day =
        reference_input(id, "feeders") * reference_input(id, "rpm") * 60 * 24 * reference_input(id, "eff");
    const Length a_machine = length_of(needles * rows_a_day * reference_input(id, "SL_mm"), LengthUnit::mm);
    const Weight weight = yarn_weight({YarnSystem::cotton, reference_input(id, "Ne"), 1}, a_machine);
    CHECK(meets_reference(id,
                          weight_in(weight, WeightUnit::pound) / printed_lb_per_kg * reference_input(id, "machines")));
  }
}

}  // namespace plain_knit_test
