#include "latchwork/crossing.hpp"

#include "catch.hpp"

namespace crossing_test {

using namespace latchwork;

TEST_CASE("n/m RC and n/m LC name the front group first: left in a right cross, right in a left cross", "[crossing]") {
  // Craft Yarn Council's terms, as DEVELOPERS.md, crossings, takes them.
  struct Case {
    Crossing crossing;
    const char* name;
  };
  const Case cases[] = {
      {{.left = 3, .right = 3, .lean = Lean::right}, "3/3 RC"},
      {{.left = 3, .right = 3, .lean = Lean::left}, "3/3 LC"},
      {{.left = 2, .right = 1, .lean = Lean::right}, "2/1 RC"},  // the two on the left pass in front
      {{.left = 1, .right = 2, .lean = Lean::left}, "2/1 LC"},   // the two on the right pass in front
      {{.left = 1, .right = 2, .lean = Lean::right}, "1/2 RC"},
      {{.left = 2, .right = 1, .lean = Lean::left}, "1/2 LC"},
      {{.left = 2, .centre = 1, .right = 2, .lean = Lean::right, .place = Centre::behind}, "2/1/2 RC, centre behind"},
      {{.left = 2, .centre = 1, .right = 3, .lean = Lean::left, .place = Centre::front}, "3/1/2 LC, centre front"},
      {{.left = 1, .centre = 2, .right = 1, .lean = Lean::left}, "1/2/1 LC, centre between"},
  };
  for (const Case& c : cases) CHECK(crossing_name(c.crossing) == c.name);
}

TEST_CASE("the longest sideways travel is the wider outer group and the centre", "[crossing]") {
  // DEVELOPERS.md, crossings: travel = max(left, right) + centre.
  CHECK(Crossing{.left = 3, .right = 3}.travel() == 3);
  CHECK(Crossing{.left = 1, .right = 3}.travel() == 3);
  CHECK(Crossing{.left = 3, .right = 1}.travel() == 3);
  CHECK(Crossing{.left = 2, .centre = 2, .right = 1}.travel() == 4);
}

TEST_CASE("a crossing is as wide as its three groups", "[crossing]") {
  CHECK(Crossing{}.width() == 2);
  CHECK(Crossing{.left = 2, .centre = 1, .right = 3}.width() == 6);
}

TEST_CASE("lean and centre have the numbers that files and the C ABI use", "[crossing]") {
  CHECK(static_cast<int>(Lean::left) == 0);
  CHECK(static_cast<int>(Lean::right) == 1);
  CHECK(static_cast<int>(Centre::front) == 0);
  CHECK(static_cast<int>(Centre::between) == 1);
  CHECK(static_cast<int>(Centre::behind) == 2);
}

}  // namespace crossing_test
