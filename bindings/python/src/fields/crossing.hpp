#pragma once

#include "../field.hpp"
#include "latchwork/crossing.hpp"

namespace latchwork::python {

template <>
struct Data<Lean> {
  static constexpr char name[] = "Lean";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<Centre> {
  static constexpr char name[] = "Centre";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<Crossing> {
  static constexpr char name[] = "Crossing";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("row", &Crossing::row),       field("column", &Crossing::column), field("left", &Crossing::left),
                 field("centre", &Crossing::centre), field("right", &Crossing::right),   field("lean", &Crossing::lean),
                 field("place", &Crossing::place)};
};

}  // namespace latchwork::python
