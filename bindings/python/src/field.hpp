#pragma once

#include "convert.hpp"

namespace latchwork::python {

template <class T, class Member>
constexpr Field<T, Member> field(const char* name, Member T::*member) {
  return {name, member};
}

}  // namespace latchwork::python
