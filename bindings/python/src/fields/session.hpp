#pragma once

#include "../field.hpp"
#include "latchwork/session.hpp"

namespace latchwork::python {

template <>
struct Data<WorkTimes> {
  static constexpr char name[] = "WorkTimes";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("stops_ms", &WorkTimes::stops_ms),         field("reforms_ms", &WorkTimes::reforms_ms),
                 field("crossings_ms", &WorkTimes::crossings_ms), field("holds_ms", &WorkTimes::holds_ms),
                 field("shapings_ms", &WorkTimes::shapings_ms),   field("carriage_ms", &WorkTimes::carriage_ms),
                 field("total_ms", &WorkTimes::total_ms)};
};

template <>
struct Data<Session> {
  static constexpr char name[] = "Session";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("from_row", &Session::from_row),
                                            field("to_row", &Session::to_row),
                                            field("carriage_right", &Session::carriage_right),
                                            field("clear", &Session::clear),
                                            field("work_ms", &Session::work_ms),
                                            field("hand_ms", &Session::hand_ms)};
};

template <>
struct Data<Rest> {
  static constexpr char name[] = "Rest";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("session", &Rest::session), field("row", &Rest::row), field("hand_ms", &Rest::hand_ms)};
};

}  // namespace latchwork::python
