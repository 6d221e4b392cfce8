#pragma once

#include "../field.hpp"
#include "latchwork/choice.hpp"

namespace latchwork::python {

template <>
struct Data<Condition> {
  static constexpr char name[] = "Condition";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 6;
};

template <>
struct Data<ConditionPrice> {
  static constexpr char name[] = "ConditionPrice";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("condition", &ConditionPrice::condition),
                                            field("status", &ConditionPrice::status),
                                            field("total_ms", &ConditionPrice::total_ms),
                                            field("price_ms", &ConditionPrice::price_ms),
                                            field("least_price_ms", &ConditionPrice::least_price_ms),
                                            field("most_price_ms", &ConditionPrice::most_price_ms)};
};

template <>
struct Data<FrontPoint> {
  static constexpr char name[] = "FrontPoint";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("kinds", &FrontPoint::kinds), field("plan", &FrontPoint::plan)};
};

template <>
struct Data<Front> {
  static constexpr char name[] = "Front";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("points", &Front::points), field("fewest_proven", &Front::fewest_proven),
                 field("findings", &Front::findings)};
};

}  // namespace latchwork::python
