#pragma once

#include "../field.hpp"
#include "latchwork/effort.hpp"

namespace latchwork::python {

template <>
struct Data<EffortTerm> {
  static constexpr char name[] = "EffortTerm";
  static constexpr char argument[] = "term";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 11;
};

template <>
struct Data<Effort> {
  static constexpr char name[] = "Effort";
  static constexpr char module[] = "latchwork._data";
  static constexpr char argument[] = "effort";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("stop", &Effort::stop),
                                            field("batch", &Effort::batch),
                                            field("drop", &Effort::drop),
                                            field("rung_knit", &Effort::rung_knit),
                                            field("rung_purl", &Effort::rung_purl),
                                            field("rung_tuck", &Effort::rung_tuck),
                                            field("rung_slip", &Effort::rung_slip),
                                            field("crossing", &Effort::crossing),
                                            field("crossing_stitch", &Effort::crossing_stitch),
                                            field("hold", &Effort::hold),
                                            field("shaping", &Effort::shaping),
                                            field("row", &Effort::row)};
};

}  // namespace latchwork::python
