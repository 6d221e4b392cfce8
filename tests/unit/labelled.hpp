#pragma once

#include <string>

#include "latchwork/instructions.hpp"
#include "latchwork/wale.hpp"

namespace latchwork_test {

/// The words of a plan written by hand on a standard machine. What its rows and needles say of themselves is filled in:
/// the side of the carriage, and the columns and wales of what is re-formed.
inline std::string told_of(const latchwork::Panel& panel, latchwork::Plan plan) {
  const latchwork::Wales wales(panel.grid());
  for (latchwork::Stop& stop : plan.stops) {
    stop.carriage_right = plan.carriage_starts_right == (stop.row % 2 == 0);
    for (latchwork::Reform& reform : stop.reforms) {
      reform.column = 0;
      while (reform.column + 1 < plan.columns &&
             latchwork::needle_beside(plan.leftmost, plan.columns - 1 - reform.column) != reform.needle) {
        ++reform.column;
      }
      reform.wale = wales.at(stop.row, reform.column);
    }
  }
  return latchwork::instructions(panel, plan, latchwork::Machine{});
}

}  // namespace latchwork_test
