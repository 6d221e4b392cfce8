#pragma once

#include "../field.hpp"
#include "latchwork/machine.hpp"

namespace latchwork::python {

template <>
struct Data<MachineClass> {
  static constexpr char name[] = "MachineClass";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 3;
};

template <>
struct Data<Machine> {
  static constexpr char name[] = "Machine";
  static constexpr char module[] = "latchwork._data";
  static constexpr char argument[] = "machine";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("name", &Machine::name),
                                            field("needles", &Machine::needles),
                                            field("pitch_mm", &Machine::pitch_mm),
                                            field("leftmost", &Machine::leftmost),
                                            field("prongs", &Machine::prongs),
                                            field("comfortable_crossing", &Machine::comfortable_crossing),
                                            field("tuck_limit", &Machine::tuck_limit),
                                            field("float_limit", &Machine::float_limit),
                                            field("max_ladder", &Machine::max_ladder),
                                            field("cast_on_loops", &Machine::cast_on_loops),
                                            field("carriage_starts_right", &Machine::carriage_starts_right)};
};

}  // namespace latchwork::python
