#pragma once

#include <utility>

#include "latchwork/fit.hpp"
#include "watch.hpp"

namespace latchwork::python {

/// A fit, or what is made of several: watched as Watch does, without the GIL. `work` takes FitOptions, and owns what
/// another thread may change meanwhile.
template <class Work>
auto watched_fit(const std::stop_source* stop, std::optional<py::function> progress, Work&& work) {
  Watch watch(stop, std::move(progress));
  const FitOptions options{.stop = watch.token(), .progress = watch.progress()};
  const py::gil_scoped_release free;
  return std::forward<Work>(work)(options);
}

}  // namespace latchwork::python
