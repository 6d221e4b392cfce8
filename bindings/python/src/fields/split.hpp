#pragma once

#include "../field.hpp"
#include "latchwork/split.hpp"

namespace latchwork::python {

template <>
struct Data<SplitPart> {
  static constexpr char name[] = "SplitPart";
  static constexpr char module[] = "latchwork._shape";
  static constexpr char argument[] = "part";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("column", &SplitPart::column), field("columns", &SplitPart::columns),
                 field("seam_left", &SplitPart::seam_left), field("seam_right", &SplitPart::seam_right)};
};

}  // namespace latchwork::python
