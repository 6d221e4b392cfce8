#pragma once

#include "../field.hpp"
#include "latchwork/wale.hpp"

namespace latchwork::python {

template <>
struct Data<Wale> {
  static constexpr char name[] = "Wale";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("column", &Wale::column), field("row", &Wale::row), field("columns", &Wale::columns)};
};

}  // namespace latchwork::python
