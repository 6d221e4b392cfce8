#include "watch.hpp"

namespace latchwork::python {

Watch::Watch(const std::stop_source* stop, std::optional<py::function> callback) : callback_(std::move(callback)) {
  if (stop != nullptr) outer_.emplace(stop->get_token(), Request{&own_});
}

void Watch::tell(const Progress& now) {
  const py::gil_scoped_acquire gil;
  if (PyErr_CheckSignals() != 0) throw py::error_already_set();
  if (callback_ && (*callback_)(now).ptr() == Py_False) own_.request_stop();
}

}  // namespace latchwork::python
