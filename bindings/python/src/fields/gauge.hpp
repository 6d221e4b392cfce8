#pragma once

#include "../field.hpp"
#include "latchwork/gauge.hpp"

namespace latchwork::python {

template <>
struct Data<ClothState> {
  static constexpr char name[] = "ClothState";
  static constexpr char argument[] = "state";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<Measurement> {
  static constexpr char name[] = "Measurement";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("texture", &Measurement::texture), field("counted", &Measurement::counted),
                 field("count", &Measurement::count),     field("length_mm", &Measurement::length_mm),
                 field("place", &Measurement::place),     field("swatch", &Measurement::swatch),
                 field("state", &Measurement::state),     field("line", &Measurement::line)};
};

template <>
struct Data<Density> {
  static constexpr char name[] = "Density";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("per_10cm", &Density::per_10cm),
                                            field("spread", &Density::spread),
                                            field("standard_error", &Density::standard_error),
                                            field("places", &Density::places),
                                            field("swatches", &Density::swatches),
                                            field("freedom", &Density::freedom)};
};

template <>
struct Data<Gauge> {
  static constexpr char name[] = "Gauge";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("texture", &Gauge::texture), field("state", &Gauge::state),
                                            field("stitches", &Gauge::stitches), field("rows", &Gauge::rows)};
};

template <>
struct Data<Shrinkage> {
  static constexpr char name[] = "Shrinkage";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("texture", &Shrinkage::texture),           field("from_state", &Shrinkage::from_state),
                 field("to_state", &Shrinkage::to_state),         field("width_percent", &Shrinkage::width_percent),
                 field("width_error", &Shrinkage::width_error),   field("length_percent", &Shrinkage::length_percent),
                 field("length_error", &Shrinkage::length_error), field("error_known", &Shrinkage::error_known)};
};

template <>
struct Data<Substitute> {
  static constexpr char name[] = "Substitute";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("texture", &Substitute::texture), field("use", &Substitute::use)};
};

}  // namespace latchwork::python
