#pragma once

#include "../field.hpp"
#include "latchwork/file.hpp"

namespace latchwork::python {

template <>
struct Data<MachineFile> {
  static constexpr char name[] = "MachineFile";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("machine", &MachineFile::machine), field("effort", &MachineFile::effort)};
};

}  // namespace latchwork::python
