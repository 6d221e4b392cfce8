#include "latchwork/machine.hpp"

#include <limits>
#include <string>

#include "catch.hpp"

namespace machine_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::refused_field;

TEST_CASE("five stitches stand centred on L3 to R2, the odd one on the operator's left", "[machine]") {
  const Machine machine;
  CHECK(leftmost_needle(machine, 5) == -3);
  CHECK(needle_name(leftmost_needle(machine, 5)) == "L3");
  CHECK(needle_name(needle_of(machine, 5, 0)) == "R2");
}

TEST_CASE("needles are counted over the bed's centre without a needle 0", "[machine]") {
  CHECK(needle_beside(-1, 1) == 1);
  CHECK(needle_beside(1, -1) == -1);
  CHECK(needle_beside(-3, 2) == -1);
  CHECK(needle_beside(-3, 3) == 1);
  CHECK(needle_beside(2, -4) == -3);
  CHECK(needle_beside(7, 0) == 7);
  for (int needle = -5; needle <= 5; ++needle) {
    if (needle == 0) continue;
    for (int steps = -12; steps <= 12; ++steps) {
      CAPTURE(needle, steps);
      const int there = needle_beside(needle, steps);
      CHECK(there != 0);
      CHECK(needle_beside(there, -steps) == needle);
    }
  }
}

// JIS L 0201:1995, items 1090 and 1100: what is "right" on the knit side the operator moves to the left.
TEST_CASE("the operator sees the right side mirrored: RS column 0 is the rightmost needle", "[machine]") {
  Machine machine;
  const auto [columns, leftmost, first, last] = GENERATE(table<int, int, int, int>({
      {1, 0, -1, -1},   // one stitch, centred: L1
      {2, 0, 1, -1},    // R1 down to L1
      {6, 0, 3, -3},    // as many on each side
      {7, 0, 3, -4},    // the odd one on the left
      {4, 5, 8, 5},     // placed right of the centre
      {4, -2, 2, -2},   // over the centre
      {3, -9, -7, -9},  // left of it
  }));
  machine.leftmost = leftmost;
  CAPTURE(columns, leftmost);
  CHECK(needle_of(machine, columns, 0) == first);
  CHECK(needle_of(machine, columns, columns - 1) == last);
  for (int column = 1; column < columns; ++column) {
    CHECK(needle_of(machine, columns, column) == needle_beside(needle_of(machine, columns, column - 1), -1));
  }
}

TEST_CASE("needle names are outward from the centre", "[machine]") {
  CHECK(needle_name(-1) == "L1");
  CHECK(needle_name(1) == "R1");
  CHECK(needle_name(-100) == "L100");
  CHECK(needle_name(std::numeric_limits<int>::min()) == "L2147483648");
  CHECK_THROWS_MATCHES(needle_name(0), Error, refused_field(ErrorCode::bad_argument, "needle"));
}

TEST_CASE("a needle or column that is none is refused", "[machine][error]") {
  const Machine machine;
  CHECK_THROWS_MATCHES(needle_beside(0, 1), Error, refused_field(ErrorCode::bad_argument, "needle"));
  CHECK_THROWS_MATCHES(needle_beside(std::numeric_limits<int>::max(), 1), Error,
                       refused_field(ErrorCode::bad_argument, "steps"));
  CHECK_THROWS_MATCHES(leftmost_needle(machine, 0), Error, refused_field(ErrorCode::bad_argument, "columns"));
  CHECK_THROWS_MATCHES(needle_of(machine, 4, 4), Error, refused_field(ErrorCode::bad_argument, "column"));
  CHECK_THROWS_MATCHES(needle_of(machine, 4, -1), Error, refused_field(ErrorCode::bad_argument, "column"));
  CHECK_THROWS_MATCHES(Machine::generic(static_cast<MachineClass>(4)), Error,
                       refused_field(ErrorCode::bad_argument, "machine_class"));
}

// Pitches 4.5 and 9 mm and 6 to 7 mm: a needle-pitch table at store.dknits.com; the counts 250, 150 and 110, and 3.6
// mm, are from memory. Needles to the inch and bed lengths are arithmetic (check_values NP-01 to NP-04).
TEST_CASE("the generic classes have the trade's pitches and bed lengths", "[machine][reference]") {
  const auto [machine_class, name, pitch, needles, per_inch, bed] =
      GENERATE(table<MachineClass, std::string, double, int, double, double>({
          {MachineClass::fine, "fine", 3.6, 250, 7.06, 900.0},
          {MachineClass::standard, "standard", 4.5, 200, 5.64, 900.0},
          {MachineClass::mid, "mid", 6.5, 150, 3.91, 975.0},
          {MachineClass::bulky, "bulky", 9.0, 110, 2.82, 990.0},
      }));
  const Machine machine = Machine::generic(machine_class);
  CHECK(machine.name == name);
  CHECK(machine.pitch_mm == Approx(pitch));
  CHECK(machine.needles == needles);
  CHECK(25.4 / machine.pitch_mm == Approx(per_inch).margin(0.006));
  CHECK(machine.needles * machine.pitch_mm == Approx(bed));
}

TEST_CASE("the default machine is the generic standard one", "[machine]") {
  CHECK(Machine{} == Machine::generic(MachineClass::standard));
}

TEST_CASE("needles of a machine out of its ranges are not told", "[machine][error]") {
  Machine machine;
  machine.leftmost = 5000;
  CHECK_THROWS_MATCHES(leftmost_needle(machine, 3), Error, refused_field(ErrorCode::bad_argument, "machine.leftmost"));
  CHECK_THROWS_MATCHES(needle_of(machine, 3, 1), Error, refused_field(ErrorCode::bad_argument, "machine.leftmost"));
}

}  // namespace machine_test
