#pragma once

#include "../field.hpp"
#include "latchwork/quantity.hpp"

namespace latchwork::python {

template <>
struct Data<Counted> {
  static constexpr char name[] = "Counted";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<LengthUnit> {
  static constexpr char name[] = "LengthUnit";
  static constexpr char argument[] = "unit";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 5;
};

template <>
struct Data<WeightUnit> {
  static constexpr char name[] = "WeightUnit";
  static constexpr char argument[] = "unit";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 4;
};

template <>
struct Data<Length> {
  static constexpr char name[] = "Length";
  static constexpr char module[] = "latchwork._quantity";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("mm", &Length::mm)};
};

template <>
struct Data<Weight> {
  static constexpr char name[] = "Weight";
  static constexpr char module[] = "latchwork._quantity";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("g", &Weight::g)};
};

template <>
struct Data<Duration> {
  static constexpr char name[] = "Duration";
  static constexpr char module[] = "latchwork._quantity";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("ms", &Duration::ms)};
};

template <>
struct Data<CountPerLength> {
  static constexpr char name[] = "CountPerLength";
  static constexpr char module[] = "latchwork._quantity";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("counted", &CountPerLength::counted), field("count", &CountPerLength::count),
                 field("length_mm", &CountPerLength::length_mm)};
};

}  // namespace latchwork::python
