#pragma once

#include "../field.hpp"
#include "latchwork/finding.hpp"

namespace latchwork::python {

template <>
struct Data<Severity> {
  static constexpr char name[] = "Severity";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<FindingCode> {
  static constexpr char name[] = "FindingCode";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 1, most = 41;
};

template <>
struct Data<Finding> {
  static constexpr char name[] = "Finding";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("code", &Finding::code),
                                            field("severity", &Finding::severity),
                                            field("place", &Finding::place),
                                            field("last_row", &Finding::last_row),
                                            field("last_column", &Finding::last_column),
                                            field("value", &Finding::value),
                                            field("limit", &Finding::limit),
                                            field("message", &Finding::message),
                                            field("suggestion", &Finding::suggestion)};
};

}  // namespace latchwork::python
