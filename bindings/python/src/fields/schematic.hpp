#pragma once

#include "../field.hpp"
#include "latchwork/schematic.hpp"

namespace latchwork::python {

template <>
struct Data<MeasureSide> {
  static constexpr char name[] = "MeasureSide";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 3;
};

template <>
struct Data<OutlinePoint> {
  static constexpr char name[] = "OutlinePoint";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("x_mm", &OutlinePoint::x_mm), field("y_mm", &OutlinePoint::y_mm)};
};

template <>
struct Data<SchematicMeasure> {
  static constexpr char name[] = "SchematicMeasure";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("label", &SchematicMeasure::label), field("side", &SchematicMeasure::side),
                 field("start", &SchematicMeasure::start), field("end", &SchematicMeasure::end),
                 field("mm", &SchematicMeasure::mm),       field("others_mm", &SchematicMeasure::others_mm)};
};

template <>
struct Data<SchematicPiece> {
  static constexpr char name[] = "SchematicPiece";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("name", &SchematicPiece::name),
                                            field("outline", &SchematicPiece::outline),
                                            field("measures", &SchematicPiece::measures),
                                            field("seam_left", &SchematicPiece::seam_left),
                                            field("seam_right", &SchematicPiece::seam_right),
                                            field("others", &SchematicPiece::others),
                                            field("notes", &SchematicPiece::notes)};
};

template <>
struct Data<Schematic> {
  static constexpr char name[] = "Schematic";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("title", &Schematic::title), field("sizes", &Schematic::sizes),
                                            field("pieces", &Schematic::pieces), field("notes", &Schematic::notes),
                                            field("unit", &Schematic::unit)};
};

}  // namespace latchwork::python
