#pragma once

#include "../field.hpp"
#include "latchwork/strip.hpp"

namespace latchwork::python {

template <>
struct Data<Strip> {
  static constexpr char name[] = "Strip";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("name", &Strip::name), field("texture", &Strip::texture), field("grid", &Strip::grid)};
};

}  // namespace latchwork::python
