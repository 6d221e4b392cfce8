#include "watch.hpp"

#include <string_view>

namespace latchwork::python {

Watch::Watch(const std::stop_source* stop, std::optional<py::function> callback) : callback_(std::move(callback)) {
  if (stop != nullptr) outer_.emplace(stop->get_token(), Request{&own_});
}

namespace {

// A comparison with a number of NumPy's gives a truth value of NumPy's.
bool is_false(const py::object& answer) {
  if (answer.ptr() == Py_False) return true;
  const std::string_view type = Py_TYPE(answer.ptr())->tp_name;
  return (type == "numpy.bool_" || type == "numpy.bool") && PyObject_Not(answer.ptr()) == 1;
}

}  // namespace

void Watch::tell(const Progress& now) {
  const py::gil_scoped_acquire gil;
  if (PyErr_CheckSignals() != 0) throw py::error_already_set();
  if (callback_ && is_false((*callback_)(now))) own_.request_stop();
}

}  // namespace latchwork::python
