#pragma once

#include "../field.hpp"
#include "latchwork/yarn_need.hpp"

namespace latchwork::python {

template <>
struct Data<YarnRoute> {
  static constexpr char name[] = "YarnRoute";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 3;
};

template <>
struct Data<WeighedSwatch> {
  static constexpr char name[] = "WeighedSwatch";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("texture", &WeighedSwatch::texture),     field("weight_g", &WeighedSwatch::weight_g),
                 field("scale_g", &WeighedSwatch::scale_g),     field("width_mm", &WeighedSwatch::width_mm),
                 field("height_mm", &WeighedSwatch::height_mm), field("stitches", &WeighedSwatch::stitches),
                 field("rows", &WeighedSwatch::rows),           field("tex", &WeighedSwatch::tex),
                 field("state", &WeighedSwatch::state)};
};

template <>
struct Data<MeasuredLoops> {
  static constexpr char name[] = "MeasuredLoops";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("texture", &MeasuredLoops::texture), field("stitches", &MeasuredLoops::stitches),
                 field("length_mm", &MeasuredLoops::length_mm)};
};

template <>
struct Data<Yarn> {
  static constexpr char name[] = "Yarn";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("name", &Yarn::name), field("number", &Yarn::number), field("ball_g", &Yarn::ball_g)};
};

template <>
struct Data<YarnRows> {
  static constexpr char name[] = "YarnRows";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("first", &YarnRows::first), field("last", &YarnRows::last), field("yarn", &YarnRows::yarn)};
};

template <>
struct Data<YarnRequest> {
  static constexpr char name[] = "YarnRequest";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("yarns", &YarnRequest::yarns),
                                            field("rows", &YarnRequest::rows),
                                            field("weighed", &YarnRequest::weighed),
                                            field("loops", &YarnRequest::loops),
                                            field("substitutes", &YarnRequest::substitutes),
                                            field("state", &YarnRequest::state),
                                            field("plain", &YarnRequest::plain),
                                            field("pieces", &YarnRequest::pieces),
                                            field("cast_on_rows", &YarnRequest::cast_on_rows),
                                            field("bind_off_rows", &YarnRequest::bind_off_rows),
                                            field("waste_rows", &YarnRequest::waste_rows),
                                            field("waste_yarn", &YarnRequest::waste_yarn),
                                            field("seam_mm", &YarnRequest::seam_mm),
                                            field("seam_ratio", &YarnRequest::seam_ratio),
                                            field("seam_yarn", &YarnRequest::seam_yarn),
                                            field("sureness", &YarnRequest::sureness),
                                            field("allowance", &YarnRequest::allowance)};
};

template <>
struct Data<YarnShare> {
  static constexpr char name[] = "YarnShare";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("yarn", &YarnShare::yarn),         field("weight_g", &YarnShare::weight_g),
                 field("spread_g", &YarnShare::spread_g), field("margin_g", &YarnShare::margin_g),
                 field("length_m", &YarnShare::length_m), field("buy_g", &YarnShare::buy_g),
                 field("balls", &YarnShare::balls)};
};

template <>
struct Data<YarnEstimate> {
  static constexpr char name[] = "YarnEstimate";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("route", &YarnEstimate::route),
                                            field("weight_g", &YarnEstimate::weight_g),
                                            field("spread_g", &YarnEstimate::spread_g),
                                            field("margin_g", &YarnEstimate::margin_g),
                                            field("spread_known", &YarnEstimate::spread_known),
                                            field("length_m", &YarnEstimate::length_m),
                                            field("shares", &YarnEstimate::shares),
                                            field("notes", &YarnEstimate::notes)};
};

template <>
struct Data<YarnNeed> {
  static constexpr char name[] = "YarnNeed";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("estimates", &YarnNeed::estimates), field("apart", &YarnNeed::apart),
                 field("missing", &YarnNeed::missing),     field("warnings", &YarnNeed::warnings),
                 field("decides", &YarnNeed::decides),     field("why", &YarnNeed::why)};
};

}  // namespace latchwork::python
