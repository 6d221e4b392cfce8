#pragma once

#include "../field.hpp"
#include "latchwork/chart.hpp"

namespace latchwork::python {

template <>
struct Data<Side> {
  static constexpr char name[] = "Side";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<Blank> {
  static constexpr char name[] = "Blank";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

}  // namespace latchwork::python
