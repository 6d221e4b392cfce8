#pragma once

#include "../field.hpp"
#include "latchwork/shaping.hpp"

namespace latchwork::python {

template <>
struct Data<EdgeLine> {
  static constexpr char name[] = "EdgeLine";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<CutWork> {
  static constexpr char name[] = "CutWork";
  static constexpr char argument[] = "cut";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<EdgePoint> {
  static constexpr char name[] = "EdgePoint";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("row", &EdgePoint::row), field("columns", &EdgePoint::columns)};
};

template <>
struct Data<EdgeEvent> {
  static constexpr char name[] = "EdgeEvent";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("row", &EdgeEvent::row), field("stitches", &EdgeEvent::stitches),
                                            field("every", &EdgeEvent::every), field("times", &EdgeEvent::times)};
};

template <>
struct Data<EdgeShape> {
  static constexpr char name[] = "EdgeShape";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("points", &EdgeShape::points), field("line", &EdgeShape::line),
                                            field("start", &EdgeShape::start), field("events", &EdgeShape::events)};
};

template <>
struct Data<RowSpan> {
  static constexpr char name[] = "RowSpan";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("first", &RowSpan::first), field("last", &RowSpan::last)};
};

template <>
struct Data<Outline> {
  static constexpr char name[] = "Outline";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("rows", &Outline::rows)};
};

template <>
struct Data<ShapingStep> {
  static constexpr char name[] = "ShapingStep";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("row", &ShapingStep::row), field("left", &ShapingStep::left),
                                            field("right", &ShapingStep::right)};
};

}  // namespace latchwork::python
