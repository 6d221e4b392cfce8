#pragma once

// Size options are keyword arguments of every function that takes them.

#include <optional>
#include <utility>
#include <vector>

#include "bind.hpp"
#include "latchwork/size.hpp"

namespace latchwork::python {

/// A function of panel, swatch and size options, the options as keyword arguments.
template <class Function>
void def_with_size_options(py::module_& m, const char* name, Function function, const char* words) {
  const SizeOptions defaults;
  m.def(
      name,
      [function](const Panel& panel, const Swatch& swatch, std::optional<ClothState> state,
                 std::vector<Substitute> substitutes, double seam_left, double seam_right, double seam_bottom,
                 double seam_top, double level) {
        return function(
            panel, swatch,
            SizeOptions{state, std::move(substitutes), seam_left, seam_right, seam_bottom, seam_top, level});
      },
      "panel"_a, "swatch"_a, py::kw_only(), "state"_a = py::none(), "substitutes"_a = std::vector<Substitute>(),
      "seam_left"_a = defaults.seam_left, "seam_right"_a = defaults.seam_right, "seam_bottom"_a = defaults.seam_bottom,
      "seam_top"_a = defaults.seam_top, "level"_a = defaults.level, words);
}

}  // namespace latchwork::python
