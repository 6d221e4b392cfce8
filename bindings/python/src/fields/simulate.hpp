#pragma once

#include "../field.hpp"
#include "latchwork/simulate.hpp"

namespace latchwork::python {

template <>
struct Data<Bed> {
  static constexpr char name[] = "Bed";
  static constexpr char module[] = "latchwork._simulate";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("leftmost", &Bed::leftmost), field("columns", &Bed::columns)};
};

template <>
struct Data<Fault> {
  static constexpr char name[] = "Fault";
  static constexpr char module[] = "latchwork._simulate";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("move", &Fault::move), field("place", &Fault::place), field("message", &Fault::message)};
};

template <>
struct Data<Fabric> {
  static constexpr char name[] = "Fabric";
  static constexpr char module[] = "latchwork._simulate";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("grid", &Fabric::grid), field("faults", &Fabric::faults), field("loops", &Fabric::loops)};
};

template <>
struct Data<Verification> {
  static constexpr char name[] = "Verification";
  static constexpr char module[] = "latchwork._simulate";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("verified", &Verification::verified), field("difference", &Verification::difference),
                 field("message", &Verification::message),   field("loops", &Verification::loops),
                 field("wale", &Verification::wale),         field("expected", &Verification::expected),
                 field("found", &Verification::found),       field("fault", &Verification::fault),
                 field("needless", &Verification::needless), field("first_needless", &Verification::first_needless)};
};

}  // namespace latchwork::python
