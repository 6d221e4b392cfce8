#pragma once

#include "../field.hpp"
#include "latchwork/spacing.hpp"

namespace latchwork::python {

template <>
struct Data<SpacingEnds> {
  static constexpr char name[] = "SpacingEnds";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<Spacing> {
  static constexpr char name[] = "Spacing";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("length", &Spacing::length),
                                            field("events", &Spacing::events),
                                            field("ends", &Spacing::ends),
                                            field("step", &Spacing::step),
                                            field("every", &Spacing::every),
                                            field("times", &Spacing::times),
                                            field("longer_times", &Spacing::longer_times),
                                            field("rest", &Spacing::rest),
                                            field("gaps", &Spacing::gaps),
                                            field("positions", &Spacing::positions)};
};

}  // namespace latchwork::python
