#include "latchwork/machine.hpp"

#include <fmt/format.h>

#include <limits>

#include "error/refuse.hpp"
#include "machine/check.hpp"

namespace latchwork::inline v0 {

Machine Machine::generic(MachineClass machine_class) {
  Machine machine;
  switch (machine_class) {
    case MachineClass::fine:  // 250 x 3.6 mm = 900 mm [from memory]
      machine.name = "fine";
      machine.needles = 250;
      machine.pitch_mm = 3.6;
      return machine;
    case MachineClass::standard:  // pitch and count published (tests/reference, NP-01)
      machine.name = "standard";
      machine.needles = 200;
      machine.pitch_mm = 4.5;
      return machine;
    case MachineClass::mid:  // pitch published, 6 to 7 mm by maker; count from memory
      machine.name = "mid";
      machine.needles = 150;
      machine.pitch_mm = 6.5;
      return machine;
    case MachineClass::bulky:  // pitch published; count from memory
      machine.name = "bulky";
      machine.needles = 110;
      machine.pitch_mm = 9.0;
      return machine;
  }
  refuse("machine_class", fmt::format("machine class {} is none; the classes are fine 0, standard 1, mid 2, bulky 3",
                                      static_cast<int>(machine_class)));
}

std::string needle_name(int needle) {
  if (needle == 0) refuse("needle", "needle 0 is none; needles are ... -2, -1, 1, 2 ... from the bed's centre");
  return needle < 0 ? fmt::format("L{}", -static_cast<std::int64_t>(needle)) : fmt::format("R{}", needle);
}

int needle_beside(int needle, int steps) {
  if (needle == 0) refuse("needle", "needle 0 is none; needles are ... -2, -1, 1, 2 ... from the bed's centre");
  // Counted without the gap at 0: L1 is -1, R1 is 0.
  const std::int64_t place = std::int64_t{needle} - (needle > 0 ? 1 : 0) + steps;
  const std::int64_t beside = place < 0 ? place : place + 1;
  if (beside < std::numeric_limits<int>::min() || beside > std::numeric_limits<int>::max()) {
    refuse("steps", fmt::format("{} steps from needle {} pass every number", steps, needle));
  }
  return static_cast<int>(beside);
}

int leftmost_needle(const Machine& machine, int columns) {
  check(machine);
  if (columns < 1) refuse("columns", fmt::format("a panel of {} columns; it has 1 or more", columns));
  return machine.leftmost != 0 ? machine.leftmost : -(columns / 2 + columns % 2);
}

int needle_of(const Machine& machine, int columns, int column) {
  const int leftmost = leftmost_needle(machine, columns);
  if (column < 0 || column >= columns) {
    refuse("column", fmt::format("column {} of a panel of {}; columns are 0 to {}", column, columns, columns - 1));
  }
  return needle_beside(leftmost, columns - 1 - column);
}

}  // namespace latchwork::inline v0
