#pragma once

#include "../field.hpp"
#include "latchwork/move.hpp"

namespace latchwork::python {

template <>
struct Data<MoveKind> {
  static constexpr char name[] = "MoveKind";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 14;
};

template <>
struct Data<Move> {
  static constexpr char name[] = "Move";
  static constexpr char module[] = "latchwork._simulate";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("kind", &Move::kind), field("needle", &Move::needle), field("last_needle", &Move::last_needle),
                 field("row", &Move::row), field("tool", &Move::tool)};
};

}  // namespace latchwork::python
