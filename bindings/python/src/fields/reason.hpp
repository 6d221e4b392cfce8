#pragma once

#include "../field.hpp"
#include "latchwork/reason.hpp"

namespace latchwork::python {

template <>
struct Data<StopCause> {
  static constexpr char name[] = "StopCause";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 4;
};

template <>
struct Data<StopReason> {
  static constexpr char name[] = "StopReason";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("row", &StopReason::row),
                                            field("cause", &StopReason::cause),
                                            field("place", &StopReason::place),
                                            field("saves_ms", &StopReason::saves_ms),
                                            field("least_saves_ms", &StopReason::least_saves_ms),
                                            field("beside_ms", &StopReason::beside_ms),
                                            field("message", &StopReason::message)};
};

template <>
struct Data<Period> {
  static constexpr char name[] = "Period";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("from_row", &Period::from_row), field("last_row", &Period::last_row),
                 field("rows", &Period::rows), field("times", &Period::times), field("stops", &Period::stops)};
};

template <>
struct Data<Tolerance> {
  static constexpr char name[] = "Tolerance";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("term", &Tolerance::term),
                                            field("value_ms", &Tolerance::value_ms),
                                            field("least_ms", &Tolerance::least_ms),
                                            field("most_ms", &Tolerance::most_ms),
                                            field("least_exact", &Tolerance::least_exact),
                                            field("most_exact", &Tolerance::most_exact),
                                            field("proven", &Tolerance::proven)};
};

}  // namespace latchwork::python
