#pragma once

#include "../field.hpp"
#include "latchwork/plain_knit.hpp"

namespace latchwork::python {

template <>
struct Data<PlainState> {
  static constexpr char name[] = "PlainState";
  static constexpr char argument[] = "state";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<PlainConstants> {
  static constexpr char name[] = "PlainConstants";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("courses", &PlainConstants::courses), field("wales", &PlainConstants::wales)};
};

}  // namespace latchwork::python
