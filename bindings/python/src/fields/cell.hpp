#pragma once

#include "../field.hpp"
#include "latchwork/cell.hpp"

namespace latchwork::python {

template <>
struct Data<Cell> {
  static constexpr char name[] = "Cell";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 4;
};

}  // namespace latchwork::python
