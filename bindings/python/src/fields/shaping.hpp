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

template <>
struct Data<OutlineSize> {
  static constexpr char name[] = "OutlineSize";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{
      field("bottom_width_mm", &OutlineSize::bottom_width_mm), field("widest_width_mm", &OutlineSize::widest_width_mm),
      field("top_width_mm", &OutlineSize::top_width_mm),       field("height_mm", &OutlineSize::height_mm),
      field("bottom_columns", &OutlineSize::bottom_columns),   field("widest_columns", &OutlineSize::widest_columns),
      field("widest_row", &OutlineSize::widest_row),           field("top_columns", &OutlineSize::top_columns)};
};

}  // namespace latchwork::python
