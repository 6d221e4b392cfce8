#pragma once

#include <string>
#include <utility>

#include "latchwork/error.hpp"

namespace latchwork::inline v0 {

/// Throws an Error whose place is a field.
[[noreturn]] inline void refuse(ErrorCode code, std::string field, const std::string& what) {
  Place place;
  place.field = std::move(field);
  throw Error(code, place, what);
}

[[noreturn]] inline void refuse(std::string field, const std::string& what) {
  refuse(ErrorCode::bad_argument, std::move(field), what);
}

}  // namespace latchwork::inline v0
