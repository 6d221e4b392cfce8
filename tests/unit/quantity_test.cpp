#include "latchwork/quantity.hpp"

#include <limits>
#include <string>

#include "catch.hpp"

namespace quantity_test {

using namespace latchwork;
using latchwork_test::refused_at;
using latchwork_test::refused_field;

TEST_CASE("a length is a number and a unit, as people write it", "[quantity]") {
  struct Case {
    const char* text;
    double mm;  // the decimal number, so the double nearest to it
  };
  const Case cases[] = {{"45 cm", 450},        {"45cm", 450},         {" 45\tcm ", 450},       {"17 3/4 in", 450.85},
                        {"17.75 in", 450.85},  {"17.75\"", 450.85},   {"17\u00BE in", 450.85}, {"17 3/4\u2033", 450.85},
                        {"3/4 in", 19.05},     {"\u00BD inch", 12.7}, {".5 in", 12.7},         {"17 in.", 431.8},
                        {"5 ft 6 in", 1676.4}, {"1 yd 1 ft", 1219.2}, {"1 m 5 cm 3 mm", 1053}, {"2 yards", 1828.8},
                        {"0 mm", 0},           {"007 cm", 70},        {"1/3 yd", 304.8},       {"45\u00A0cm", 450},
                        {"0.1 mm", 0.1},       {"4 in", 101.6},       {"1000000000 m", 1e12}};
  for (const Case& each : cases) {
    INFO(each.text);
    CHECK(read_length(each.text).mm == each.mm);
  }
}

TEST_CASE("what is no length is refused with its field and the character where it goes wrong", "[quantity][error]") {
  struct Case {
    const char* text;
    ErrorCode code;
    int character;
  };
  const Case cases[] = {
      {"", ErrorCode::bad_syntax, 1},
      {"cm", ErrorCode::bad_syntax, 1},
      {"  wide", ErrorCode::bad_syntax, 3},
      {"nan cm", ErrorCode::bad_syntax, 1},
      {"inf cm", ErrorCode::bad_syntax, 1},
      {"-3 cm", ErrorCode::bad_value, 1},
      {"\u2212"
       "3 cm",
       ErrorCode::bad_value, 1},
      {"+3 cm", ErrorCode::bad_syntax, 1},
      {"45", ErrorCode::bad_unit, 3},  // missing: one past the end
      {"45 ", ErrorCode::bad_unit, 4},
      {"45 cmm", ErrorCode::bad_unit, 4},
      {"45 CM", ErrorCode::bad_unit, 4},
      {"45 g", ErrorCode::bad_unit, 4},  // a unit of weight
      {"45 min", ErrorCode::bad_unit, 4},
      {"17'", ErrorCode::bad_unit, 3},             // feet or minutes
      {"\u00BD \u0441m", ErrorCode::bad_unit, 3},  // a Cyrillic letter; characters are counted, not bytes
      {"1,5 cm", ErrorCode::bad_syntax, 2},
      {"1 200 m", ErrorCode::bad_unit, 3},
      {"1e3 mm", ErrorCode::bad_unit, 2},
      {"5. cm", ErrorCode::bad_syntax, 2},
      {"1.2.3 cm", ErrorCode::bad_syntax, 4},
      {"1 3/0 in", ErrorCode::bad_value, 3},
      {"1.5 3/4 in", ErrorCode::bad_syntax, 5},
      {"1 00001/2 in", ErrorCode::bad_value, 3},
      {"6 in 5 ft", ErrorCode::bad_unit, 8},  // the greater unit comes first
      {"1 cm 1 cm", ErrorCode::bad_unit, 8},
      {"1 m 20 in", ErrorCode::bad_unit, 8},  // two systems
      {"1 ft 2 cm", ErrorCode::bad_unit, 8},
      {"45 cm wide", ErrorCode::bad_syntax, 7},
      {"45 cm, 3", ErrorCode::bad_syntax, 6},
      {"1000000000.1 m", ErrorCode::bad_value, 1},
      {"99999999999999999 yd", ErrorCode::bad_value, 1},
      {"0.0000009 mm", ErrorCode::bad_value, 1},
      {"123456789012345678 mm", ErrorCode::bad_value, 1},
      {"0.0000000000000000000000000000001 m", ErrorCode::bad_value, 1},
  };
  for (const Case& each : cases) {
    INFO(each.text);
    CHECK_THROWS_MATCHES(read_length(each.text, "width"), Error, refused_at(each.code, "width", each.character));
  }
  CHECK_THROWS_MATCHES(read_length("4\xFF", "width"), Error, refused_at(ErrorCode::bad_encoding, "width", 2));
  CHECK_THROWS_MATCHES(read_length("4 cm", "\xFF"), Error, refused_field(ErrorCode::bad_encoding, "field"));
  CHECK_THROWS_MATCHES(read_length(std::string(max_quantity_bytes, ' ') + "4 cm", "width"), Error,
                       refused_at(ErrorCode::too_large, "width", 257));
  CHECK(read_length(std::string(max_quantity_bytes - 4, ' ') + "4 cm").mm == 40);
}

TEST_CASE("weights and durations are read like lengths", "[quantity]") {
  CHECK(read_weight("50 g").g == 50);
  CHECK(read_weight("0.05 kg").g == 50);
  CHECK(read_weight("1.75 oz").g == 49.61166546875);
  CHECK(read_weight("1 lb 4 oz").g == 566.9904625);
  CHECK(read_weight("7000 grains").g == read_weight("1 lb").g);
  CHECK_THROWS_MATCHES(read_weight("50 gr", "width"), Error, refused_at(ErrorCode::bad_unit, "width", 4));
  CHECK_THROWS_MATCHES(read_weight("1 kg 2 oz", "width"), Error, refused_at(ErrorCode::bad_unit, "width", 8));
  CHECK_THROWS_MATCHES(read_weight("50 cm", "width"), Error, refused_at(ErrorCode::bad_unit, "width", 4));

  CHECK(read_duration("90 min").ms == 5'400'000);
  CHECK(read_duration("1 h 20 min").ms == 4'800'000);
  CHECK(read_duration("1h20min").ms == 4'800'000);
  CHECK(read_duration("1.5 h").ms == 5'400'000);
  CHECK(read_duration("1/3 min").ms == 20'000);
  CHECK(read_duration("2 1/2 s").ms == 2'500);
  CHECK(read_duration("0 s").ms == 0);
  CHECK(read_duration("1000000000 s").ms == 1'000'000'000'000);
  CHECK_THROWS_MATCHES(read_duration("1/3 s", "width"), Error, refused_at(ErrorCode::bad_value, "width", 1));
  CHECK_THROWS_MATCHES(read_duration("5 min 0.0001 s", "width"), Error, refused_at(ErrorCode::bad_value, "width", 1));
  CHECK_THROWS_MATCHES(read_duration("999999999999.99999 ms", "width"), Error,
                       refused_at(ErrorCode::bad_value, "width", 1));
  CHECK_THROWS_MATCHES(read_duration("1 h 0.0000000000000000000001 ms", "width"), Error,
                       refused_at(ErrorCode::bad_value, "width", 1));
  CHECK_THROWS_MATCHES(read_duration("1:20", "width"), Error, refused_at(ErrorCode::bad_unit, "width", 2));
  CHECK_THROWS_MATCHES(read_duration("20 min 1 h", "width"), Error, refused_at(ErrorCode::bad_unit, "width", 10));
}

TEST_CASE("the words of a refusal name what was written and what is taken", "[quantity][error]") {
  CHECK_THROWS_WITH(read_duration("1e3 h"), Catch::Matchers::EndsWith("a duration is in h, min, s or ms"));
  CHECK_THROWS_WITH(read_duration("999999999999.9 s"),
                    Catch::Matchers::EndsWith("a duration is 0 to 1000000000000 ms"));
  CHECK_THROWS_WITH(read_length("5'"), Catch::Matchers::EndsWith("' may mean feet or minutes; write ft"));
  CHECK_THROWS_WITH(read_length("5\u2032 6\u2033"), Catch::Matchers::EndsWith("' may mean feet or minutes; write ft"));
  CHECK_THROWS_WITH(read_duration("5'"), Catch::Matchers::EndsWith("' may mean feet or minutes; write min"));
}

TEST_CASE("stitches and rows over a length keep the length that was measured", "[quantity]") {
  struct Case {
    const char* text;
    CountPerLength expected;
  };
  const Case cases[] = {
      {"28 sts / 10 cm", {Counted::stitches, 28, 100}},
      {"28sts/10cm", {Counted::stitches, 28, 100}},
      {"28 st per 10 cm", {Counted::stitches, 28, 100}},
      {"28 stitches to 4 in", {Counted::stitches, 28, 101.6}},
      {"7 sts/in", {Counted::stitches, 7, 25.4}},
      {"7 sts/\"", {Counted::stitches, 7, 25.4}},
      {"28 rows / 4 in", {Counted::rows, 28, 101.6}},
      {"40 rows = 10 cm", {Counted::rows, 40, 100}},
      {"5.5 sts over 1 in", {Counted::stitches, 5.5, 25.4}},
      {"22 1/2 sts / 4\"", {Counted::stitches, 22.5, 101.6}},
      {"9 wales / 2 cm", {Counted::stitches, 9, 20}},
      {"12 courses / cm", {Counted::rows, 12, 10}},
  };
  for (const Case& each : cases) {
    INFO(each.text);
    CHECK(read_count_per_length(each.text) == each.expected);
  }
  CHECK(per_10cm(read_count_per_length("28 sts / 10 cm")) == 28);
  CHECK(per_10cm(read_count_per_length("28 sts / 4 in")) == 27.559055118110237);  // 2800 / 101.6
}

TEST_CASE("a count without its length, or with two, is refused", "[quantity][error]") {
  struct Case {
    const char* text;
    ErrorCode code;
    int character;
  };
  const Case cases[] = {
      {"28", ErrorCode::bad_unit, 3},
      {"28 / 10 cm", ErrorCode::bad_unit, 4},
      {"28 cm / 10 sts", ErrorCode::bad_unit, 4},
      {"28 sts", ErrorCode::bad_syntax, 7},
      {"28 sts 10 cm", ErrorCode::bad_syntax, 8},
      {"28 sts in 10 cm", ErrorCode::bad_syntax, 8},
      {"28 sts /", ErrorCode::bad_syntax, 9},
      {"28 sts / 10", ErrorCode::bad_unit, 12},
      {"28 sts / 10 g", ErrorCode::bad_unit, 13},
      {"28 sts / g", ErrorCode::bad_unit, 10},
      {"28 sts / 0 cm", ErrorCode::bad_value, 10},
      {"28 sts / -1 cm", ErrorCode::bad_value, 10},
      {"0 sts / 10 cm", ErrorCode::bad_value, 1},
      {"-1 sts / 10 cm", ErrorCode::bad_value, 1},
      {"10000000000000 sts / cm", ErrorCode::bad_value, 1},
      {"28 sts / 10 cm / 4 in", ErrorCode::bad_unit, 16},
      {"28 sts / 10 cm = 4 in", ErrorCode::bad_unit, 16},
      {"28 sts / 10 cm (4 in)", ErrorCode::bad_unit, 16},
      {"28 sts / 4 in 10 cm", ErrorCode::bad_unit, 18},
      {"28 sts / 10 cm x", ErrorCode::bad_syntax, 16},
  };
  for (const Case& each : cases) {
    INFO(each.text);
    CHECK_THROWS_MATCHES(read_count_per_length(each.text, "width"), Error,
                         refused_at(each.code, "width", each.character));
  }
}

TEST_CASE("what is written is the shortest number that reads back", "[quantity]") {
  CHECK(length_text({450.85}, LengthUnit::mm) == "450.85 mm");
  CHECK(length_text({450.85}, LengthUnit::inch) == "17.75 in");
  CHECK(length_text({914.4}, LengthUnit::yard) == "1 yd");
  CHECK(length_text({0}, LengthUnit::foot) == "0 ft");
  CHECK(length_text({100}, LengthUnit::inch) == "3.937007874015748 in");
  CHECK(length_text({1e12}, LengthUnit::m) == "1000000000 m");
  CHECK(length_text({1e-6}, LengthUnit::mm) == "0.000001 mm");
  CHECK(length_text({0.1 + 0.2}, LengthUnit::mm) == "0.30000000000000004 mm");
  CHECK(weight_text({50}, WeightUnit::gram) == "50 g");
  CHECK(weight_text({28.349523125}, WeightUnit::ounce) == "1 oz");
  CHECK(duration_text({4'800'000}) == "1 h 20 min");
  CHECK(duration_text({2'500}) == "2 s 500 ms");
  CHECK(duration_text({0}) == "0 s");
  CHECK(rounded_duration_text({0}) == "0 s");
  CHECK(rounded_duration_text({5}) == "0.005 s");
  CHECK(rounded_duration_text({500}) == "0.5 s");
  CHECK(rounded_duration_text({1'499}) == "1 s");
  CHECK(rounded_duration_text({59'499}) == "59 s");
  CHECK(rounded_duration_text({59'500}) == "1 min");
  CHECK(rounded_duration_text({200'400}) == "3 min 20 s");
  CHECK(rounded_duration_text({599'499}) == "9 min 59 s");
  CHECK(rounded_duration_text({629'999}) == "11 min");  // 10 min 30 s, to the minute
  CHECK(rounded_duration_text({17'990'000}) == "5 h");
  CHECK(rounded_duration_text({18'720'000}) == "5 h 12 min");
  CHECK(count_per_length_text({Counted::stitches, 28, 100}, LengthUnit::cm) == "28 sts / 10 cm");
  CHECK(count_per_length_text({Counted::rows, 28, 101.6}, LengthUnit::inch) == "28 rows / 4 in");
}

TEST_CASE("values that are no quantity are refused with their field", "[quantity][error]") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinite = std::numeric_limits<double>::infinity();
  for (const double bad : {nan, infinite, -infinite, -1.0, 1e-7, 1e13, std::numeric_limits<double>::max(),
                           std::numeric_limits<double>::denorm_min()}) {
    INFO(bad);
    CHECK_THROWS_MATCHES(length_text({bad}, LengthUnit::mm), Error, refused_field(ErrorCode::bad_argument, "mm"));
    CHECK_THROWS_MATCHES(length_in({bad}, LengthUnit::mm), Error, refused_field(ErrorCode::bad_argument, "mm"));
    CHECK_THROWS_MATCHES(weight_text({bad}, WeightUnit::gram), Error, refused_field(ErrorCode::bad_argument, "g"));
    CHECK_THROWS_MATCHES(weight_in({bad}, WeightUnit::gram), Error, refused_field(ErrorCode::bad_argument, "g"));
    CHECK_THROWS_MATCHES(length_of(bad, LengthUnit::mm), Error, refused_field(ErrorCode::bad_argument, "value"));
    CHECK_THROWS_MATCHES(weight_of(bad, WeightUnit::gram), Error, refused_field(ErrorCode::bad_argument, "value"));
    CHECK_THROWS_MATCHES(per_10cm({Counted::rows, bad, 100}), Error, refused_field(ErrorCode::bad_argument, "count"));
    CHECK_THROWS_MATCHES(per_10cm({Counted::rows, 28, bad}), Error,
                         refused_field(ErrorCode::bad_argument, "length_mm"));
  }
  CHECK_THROWS_MATCHES(per_10cm({Counted::rows, 28, 0}), Error, refused_field(ErrorCode::bad_argument, "length_mm"));
  CHECK_THROWS_MATCHES(per_10cm({Counted::rows, 1e12, 1e-6}), Error, refused_field(ErrorCode::bad_value, "count"));
  CHECK_THROWS_MATCHES(per_10cm({static_cast<Counted>(2), 28, 100}), Error,
                       refused_field(ErrorCode::bad_argument, "counted"));
  CHECK_THROWS_MATCHES(length_of(1, static_cast<LengthUnit>(6)), Error, refused_field(ErrorCode::bad_argument, "unit"));
  CHECK_THROWS_MATCHES(weight_in({1}, static_cast<WeightUnit>(5)), Error,
                       refused_field(ErrorCode::bad_argument, "unit"));
  CHECK_THROWS_MATCHES(duration_text({-1}), Error, refused_field(ErrorCode::bad_argument, "ms"));
  CHECK_THROWS_MATCHES(rounded_duration_text({-1}), Error, refused_field(ErrorCode::bad_argument, "ms"));
  CHECK_THROWS_MATCHES(duration_text({1'000'000'000'001}), Error, refused_field(ErrorCode::bad_argument, "ms"));
}

TEST_CASE("units convert by their definitions", "[quantity]") {
  CHECK(length_of(1, LengthUnit::inch).mm == 25.4);
  CHECK(length_of(3, LengthUnit::foot) == length_of(1, LengthUnit::yard));
  CHECK(length_of(17.1, LengthUnit::cm).mm == 171);  // 17.1 * 10 in doubles is 171.00000000000003
  CHECK(length_in({101.6}, LengthUnit::inch) == 4);
  CHECK(length_in({914.4}, LengthUnit::m) == 0.9144);
  CHECK(weight_of(1, WeightUnit::ounce).g == 28.349523125);
  CHECK(weight_of(1, WeightUnit::pound).g == 453.59237);
  CHECK(weight_in({453.59237}, WeightUnit::grain) == 7000);
  CHECK(Length{1} < Length{2});
}

}  // namespace quantity_test
