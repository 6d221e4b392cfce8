#include <cmath>
#include <string>

#include "catch.hpp"
#include "latchwork/quantity.hpp"
#include "random.hpp"

namespace quantity_round_trip_test {

// Quantities over their whole range: some with many digits, some as people measure.

using namespace latchwork;
using latchwork_test::Random;

namespace {

double any_base(Random& random) {
  const double share = static_cast<double>(random.next() >> 11) / 9007199254740992.0;  // 0..1
  const double wide = 1e-6 * std::pow(10.0, 18 * share);
  const double value = random.one_in(3) ? std::round(wide * 4) / 4 : wide;
  return value >= 1e-6 && value <= 1e12 ? value : 0;
}

}  // namespace

TEST_CASE("every quantity reads back equal from its text, in every unit", "[quantity][property]") {
  Random random(41);
  for (int i = 0; i < 20'000; ++i) {
    const double base = any_base(random);
    INFO(base);
    const auto length_unit = static_cast<LengthUnit>(random.between(0, 5));
    const auto weight_unit = static_cast<WeightUnit>(random.between(0, 4));
    REQUIRE(read_length(length_text({base}, length_unit)) == Length{base});
    REQUIRE(read_weight(weight_text({base}, weight_unit)) == Weight{base});
    const Duration duration{static_cast<std::int64_t>(base)};
    REQUIRE(read_duration(duration_text(duration)) == duration);
    if (base == 0) continue;
    const double length = any_base(random);
    const CountPerLength density{random.one_in(2) ? Counted::rows : Counted::stitches, base, length == 0 ? 1 : length};
    REQUIRE(read_count_per_length(count_per_length_text(density, length_unit)) == density);
  }
}

TEST_CASE("a length in one unit, taken over another, is the same length", "[quantity][property]") {
  // To within the rounding of each step, 2^-53: the number of units, its shortest decimal, and the length.
  constexpr double three_roundings = 3 * 1.12e-16;
  Random random(42);
  for (int i = 0; i < 20'000; ++i) {
    const double base = any_base(random);
    const auto a = static_cast<LengthUnit>(random.between(0, 5));
    const auto b = static_cast<LengthUnit>(random.between(0, 5));
    INFO(base << " from " << int(a) << " to " << int(b));
    const Length over = length_of(length_in({base}, a), a);
    REQUIRE(std::abs(over.mm - base) <= three_roundings * base);
    const double written = random.between(1, 1'000'000) / 1000.0;  // as people measure
    REQUIRE(length_in(length_of(written, a), a) == written);
    REQUIRE(std::abs(length_in(over, b) - length_in({base}, b)) <= 2 * three_roundings * length_in({base}, b));
  }
}

}  // namespace quantity_round_trip_test
