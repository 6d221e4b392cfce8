#include "bind.hpp"

namespace latchwork::python {

#define LATCHWORK_DEFINE(T)                          \
  template py::object struct_to_python<T>(const T&); \
  template T struct_from_python<T>(py::handle, const Path&);
LATCHWORK_PLAIN_STRUCTS(LATCHWORK_DEFINE)
#undef LATCHWORK_DEFINE

}  // namespace latchwork::python
