#pragma once

#include "../field.hpp"
#include "latchwork/conditions.hpp"

namespace latchwork::python {

template <>
struct Data<Rhythm> {
  static constexpr char name[] = "Rhythm";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("every", &Rhythm::every), field("first", &Rhythm::first)};
};

template <>
struct Data<KeptRhythm> {
  static constexpr char name[] = "KeptRhythm";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("row", &KeptRhythm::row), field("first_column", &KeptRhythm::first_column),
                 field("last_column", &KeptRhythm::last_column), field("rhythm", &KeptRhythm::rhythm)};
};

template <>
struct Data<Conditions> {
  static constexpr char name[] = "Conditions";
  static constexpr char module[] = "latchwork._plan";
  static constexpr char argument[] = "options.conditions";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("carriage_right_only", &Conditions::carriage_right_only),
                                            field("rows_apart", &Conditions::rows_apart),
                                            field("max_depth", &Conditions::max_depth),
                                            field("max_kinds", &Conditions::max_kinds),
                                            field("rhythms", &Conditions::rhythms),
                                            field("closed_rows", &Conditions::closed_rows),
                                            field("forced_exempt", &Conditions::forced_exempt)};
};

}  // namespace latchwork::python
