#pragma once

#include "../field.hpp"
#include "latchwork/plan.hpp"

namespace latchwork::python {

template <>
struct Data<GroupName> {
  static constexpr char name[] = "GroupName";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<PlanStatus> {
  static constexpr char name[] = "PlanStatus";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<GroupReturn> {
  static constexpr char name[] = "GroupReturn";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("group", &GroupReturn::group), field("stitches", &GroupReturn::stitches),
                 field("from_needle", &GroupReturn::from_needle), field("to_needle", &GroupReturn::to_needle),
                 field("prongs", &GroupReturn::prongs)};
};

template <>
struct Data<CrossingStep> {
  static constexpr char name[] = "CrossingStep";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("crossing", &CrossingStep::crossing), field("returns", &CrossingStep::returns),
                 field("ease", &CrossingStep::ease)};
};

template <>
struct Data<Reform> {
  static constexpr char name[] = "Reform";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("needle", &Reform::needle), field("column", &Reform::column), field("wale", &Reform::wale),
                 field("from_row", &Reform::from_row), field("rungs", &Reform::rungs)};
};

template <>
struct Data<Shaping> {
  static constexpr char name[] = "Shaping";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("needle", &Shaping::needle), field("column", &Shaping::column), field("on", &Shaping::on)};
};

template <>
struct Data<Stop> {
  static constexpr char name[] = "Stop";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("row", &Stop::row),
                                            field("carriage_right", &Stop::carriage_right),
                                            field("releases", &Stop::releases),
                                            field("reforms", &Stop::reforms),
                                            field("crossings", &Stop::crossings),
                                            field("shapings", &Stop::shapings),
                                            field("holds", &Stop::holds),
                                            field("effort_ms", &Stop::effort_ms)};
};

template <>
struct Data<Plan> {
  static constexpr char name[] = "Plan";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("rows", &Plan::rows),
                                            field("columns", &Plan::columns),
                                            field("leftmost", &Plan::leftmost),
                                            field("carriage_starts_right", &Plan::carriage_starts_right),
                                            field("columns_on", &Plan::columns_on),
                                            field("stops", &Plan::stops),
                                            field("total_ms", &Plan::total_ms),
                                            field("bound_ms", &Plan::bound_ms),
                                            field("status", &Plan::status),
                                            field("rhythm", &Plan::rhythm),
                                            field("findings", &Plan::findings)};
  static constexpr auto late = std::tuple{field("stops", &Plan::stops)};
};

template <>
struct Data<TwoRhythms> {
  static constexpr char name[] = "TwoRhythms";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("crossings", &TwoRhythms::crossings),
                                            field("reforms", &TwoRhythms::reforms), field("plan", &TwoRhythms::plan)};
};

template <>
struct Data<HandWork> {
  static constexpr char name[] = "HandWork";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("stops", &HandWork::stops),           field("batches", &HandWork::batches),
                 field("crossings", &HandWork::crossings),   field("holds", &HandWork::holds),
                 field("shapings", &HandWork::shapings),     field("rungs_knit", &HandWork::rungs_knit),
                 field("rungs_purl", &HandWork::rungs_purl), field("rungs_tuck", &HandWork::rungs_tuck),
                 field("rungs_slip", &HandWork::rungs_slip), field("stitches_crossed", &HandWork::stitches_crossed),
                 field("hand_ms", &HandWork::hand_ms),       field("carriage_ms", &HandWork::carriage_ms)};
};

template <>
struct Data<Progress> {
  static constexpr char name[] = "Progress";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("bound_ms", &Progress::bound_ms),
                                            field("best_ms", &Progress::best_ms), field("share", &Progress::share)};
};

}  // namespace latchwork::python
