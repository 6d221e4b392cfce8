#pragma once

#include "../field.hpp"
#include "latchwork/grid.hpp"

namespace latchwork::python {

template <>
struct Data<Axis> {
  static constexpr char name[] = "Axis";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

}  // namespace latchwork::python
