#include <cmath>
#include <vector>

#include "catch.hpp"
#include "latchwork/yarn.hpp"
#include "random.hpp"

namespace yarn_laws_test {

// Yarn numbers as the trade has them: 1 to 10 000 tex.

using namespace latchwork;
using latchwork_test::Random;

namespace {

constexpr int systems = 16;
constexpr double rounding = 2.3e-16;  // one step of a double is 2^-52 at most

YarnNumber any_yarn(Random& random) {
  const double tex = std::pow(10.0, random.between(0, 4000) / 1000.0);
  YarnNumber out = yarn_number_in({YarnSystem::tex, tex, 1}, static_cast<YarnSystem>(random.between(0, systems - 1)));
  if (random.one_in(2)) out.plies = random.between(1, 12);
  return out;
}

bool near(double a, double b, double steps) {
  return std::abs(a - b) <= steps * rounding * b;
}

}  // namespace

TEST_CASE("a yarn number taken to another system and back is the same yarn", "[yarn][property]") {
  Random random(51);
  for (int i = 0; i < 20'000; ++i) {
    const YarnNumber yarn = any_yarn(random);
    const auto other = static_cast<YarnSystem>(random.between(0, systems - 1));
    const auto third = static_cast<YarnSystem>(random.between(0, systems - 1));
    INFO(yarn_number_text(yarn) << " to " << int(other) << " and " << int(third));
    REQUIRE(read_yarn_number(yarn_number_text(yarn)) == yarn);
    const YarnNumber over = yarn_number_in(yarn, other);
    REQUIRE(over.plies == 1);
    REQUIRE(near(yarn_tex(over), yarn_tex(yarn), 2));
    // Transitive: by way of another system, or straight.
    REQUIRE(near(yarn_number_in(over, third).number, yarn_number_in(yarn, third).number, 2));
  }
}

TEST_CASE("lengths and weights of a yarn agree with its number", "[yarn][property]") {
  Random random(52);
  for (int i = 0; i < 5'000; ++i) {
    const YarnNumber yarn = any_yarn(random);
    INFO(yarn_number_text(yarn));
    const Weight weight{random.between(1, 100'000) / 10.0};
    const Length length = yarn_length(yarn, weight);
    REQUIRE(near(yarn_weight(yarn, length).g, weight.g, 2));
    REQUIRE(near(yarn_number_of(length, weight, yarn.system).number, yarn_number_in(yarn, yarn.system).number, 2));
    // Strands together weigh what they weigh apart, in any order.
    const YarnNumber other = any_yarn(random);
    const YarnNumber together = yarns_together(std::vector{yarn, other});
    REQUIRE(together == yarns_together(std::vector{other, yarn}));
    REQUIRE(near(yarn_tex(together), yarn_tex(yarn) + yarn_tex(other), 2));
    REQUIRE(near(yarn_tex(yarns_together(std::vector<YarnNumber>(3, yarn))), 3 * yarn_tex(yarn), 2));
  }
}

}  // namespace yarn_laws_test
