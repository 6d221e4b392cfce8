#pragma once

#include "../field.hpp"
#include "latchwork/certificate.hpp"

namespace latchwork::python {

template <>
struct Data<BranchEnd> {
  static constexpr char name[] = "BranchEnd";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<StopPrice> {
  static constexpr char name[] = "StopPrice";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("row", &StopPrice::row), field("price", &StopPrice::price)};
};

template <>
struct Data<WaleClass> {
  static constexpr char name[] = "WaleClass";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("wales", &WaleClass::wales), field("prices", &WaleClass::prices),
                                            field("least", &WaleClass::least)};
};

template <>
struct Data<Branch> {
  static constexpr char name[] = "Branch";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("row", &Branch::row), field("below", &Branch::below), field("stop", &Branch::stop),
                 field("end", &Branch::end), field("by", &Branch::by)};
};

template <>
struct Data<Stretch> {
  static constexpr char name[] = "Stretch";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("row", &Stretch::row), field("gain", &Stretch::gain), field("branches", &Stretch::branches)};
};

template <>
struct Data<Certificate> {
  static constexpr char name[] = "Certificate";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("rows", &Certificate::rows),           field("columns", &Certificate::columns),
                 field("bound_ms", &Certificate::bound_ms),   field("unit", &Certificate::unit),
                 field("forced", &Certificate::forced),       field("classes", &Certificate::classes),
                 field("stretches", &Certificate::stretches), field("branches", &Certificate::branches)};
  static constexpr auto late =
      std::tuple{field("classes", &Certificate::classes), field("stretches", &Certificate::stretches),
                 field("branches", &Certificate::branches)};
};

template <>
struct Data<CertificateCheck> {
  static constexpr char name[] = "CertificateCheck";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("holds", &CertificateCheck::holds), field("bound_ms", &CertificateCheck::bound_ms),
                 field("place", &CertificateCheck::place), field("message", &CertificateCheck::message)};
};

}  // namespace latchwork::python
