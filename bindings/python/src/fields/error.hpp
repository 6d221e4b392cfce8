#pragma once

#include "../field.hpp"
#include "latchwork/error.hpp"

namespace latchwork::python {

template <>
struct Data<ErrorCode> {
  static constexpr char name[] = "ErrorCode";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 1, most = 23;
};

template <>
struct Data<Place> {
  static constexpr char name[] = "Place";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("row", &Place::row), field("column", &Place::column), field("line", &Place::line),
                 field("field", &Place::field), field("character", &Place::character)};
};

}  // namespace latchwork::python
