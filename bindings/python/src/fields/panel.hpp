#pragma once

#include "../field.hpp"
#include "latchwork/panel.hpp"

namespace latchwork::python {

template <>
struct Data<StripSpan> {
  static constexpr char name[] = "StripSpan";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("name", &StripSpan::name), field("texture", &StripSpan::texture),
                                            field("column", &StripSpan::column), field("columns", &StripSpan::columns),
                                            field("repeat_rows", &StripSpan::repeat_rows)};
};

template <>
struct Data<Band> {
  static constexpr char name[] = "Band";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("row", &Band::row), field("rows", &Band::rows), field("strips", &Band::strips)};
};

}  // namespace latchwork::python
