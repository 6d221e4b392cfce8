#pragma once

#include "../field.hpp"
#include "latchwork/grading.hpp"

namespace latchwork::python {

template <>
struct Data<GradeSize> {
  static constexpr char name[] = "GradeSize";
  static constexpr char module[] = "latchwork._fit";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("name", &GradeSize::name), field("width_mm", &GradeSize::width_mm),
                 field("width_most_mm", &GradeSize::width_most_mm), field("height_mm", &GradeSize::height_mm),
                 field("height_most_mm", &GradeSize::height_most_mm)};
};

template <>
struct Data<GradeRequest> {
  static constexpr char name[] = "GradeRequest";
  static constexpr char module[] = "latchwork._fit";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("design", &GradeRequest::design), field("sizes", &GradeRequest::sizes)};
};

template <>
struct Data<Grading> {
  static constexpr char name[] = "Grading";
  static constexpr char module[] = "latchwork._fit";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("names", &Grading::names),
                                            field("groups", &Grading::groups),
                                            field("candidates", &Grading::candidates),
                                            field("complete", &Grading::complete),
                                            field("missing", &Grading::missing),
                                            field("nearest", &Grading::nearest),
                                            field("nearest_complete", &Grading::nearest_complete),
                                            field("message", &Grading::message),
                                            field("findings", &Grading::findings)};
};

}  // namespace latchwork::python
