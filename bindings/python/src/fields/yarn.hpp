#pragma once

#include "../field.hpp"
#include "latchwork/yarn.hpp"

namespace latchwork::python {

template <>
struct Data<YarnSystem> {
  static constexpr char name[] = "YarnSystem";
  static constexpr char argument[] = "system";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 15;
};

template <>
struct Data<YarnNumber> {
  static constexpr char name[] = "YarnNumber";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("system", &YarnNumber::system), field("number", &YarnNumber::number),
                                            field("plies", &YarnNumber::plies)};
};

template <>
struct Data<YarnCategory> {
  static constexpr char name[] = "YarnCategory";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("number", &YarnCategory::number),
                                            field("name", &YarnCategory::name),
                                            field("least_stitches", &YarnCategory::least_stitches),
                                            field("most_stitches", &YarnCategory::most_stitches),
                                            field("least_needle_mm", &YarnCategory::least_needle_mm),
                                            field("most_needle_mm", &YarnCategory::most_needle_mm)};
};

}  // namespace latchwork::python
