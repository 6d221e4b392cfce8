#pragma once

#include "../field.hpp"
#include "latchwork/size.hpp"

namespace latchwork::python {

template <>
struct Data<StripSize> {
  static constexpr char name[] = "StripSize";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("name", &StripSize::name),          field("texture", &StripSize::texture),
                 field("band", &StripSize::band),          field("columns", &StripSize::columns),
                 field("rows", &StripSize::rows),          field("width_mm", &StripSize::width_mm),
                 field("height_mm", &StripSize::height_mm)};
};

template <>
struct Data<RowWidth> {
  static constexpr char name[] = "RowWidth";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{
      field("row", &RowWidth::row), field("columns", &RowWidth::columns), field("width_mm", &RowWidth::width_mm),
      field("spread_mm", &RowWidth::spread_mm), field("margin_mm", &RowWidth::margin_mm)};
};

template <>
struct Data<Size> {
  static constexpr char name[] = "Size";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("width_mm", &Size::width_mm),
                                            field("least_width_mm", &Size::least_width_mm),
                                            field("height_mm", &Size::height_mm),
                                            field("least_height_mm", &Size::least_height_mm),
                                            field("greatest_height_mm", &Size::greatest_height_mm),
                                            field("seam_width_mm", &Size::seam_width_mm),
                                            field("seam_height_mm", &Size::seam_height_mm),
                                            field("width_spread_mm", &Size::width_spread_mm),
                                            field("height_spread_mm", &Size::height_spread_mm),
                                            field("level", &Size::level),
                                            field("width_margin_mm", &Size::width_margin_mm),
                                            field("height_margin_mm", &Size::height_margin_mm),
                                            field("spread_known", &Size::spread_known),
                                            field("widest_row", &Size::widest_row),
                                            field("widest_columns", &Size::widest_columns),
                                            field("cast_on", &Size::cast_on),
                                            field("bind_off", &Size::bind_off),
                                            field("strips", &Size::strips),
                                            field("findings", &Size::findings)};
};

}  // namespace latchwork::python
