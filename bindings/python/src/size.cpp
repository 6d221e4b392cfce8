// Sizes. The Size class is Python's.

#include "latchwork/size.hpp"

#include <utility>

#include "bind.hpp"

namespace latchwork::python {

namespace {

/// A function of panel, swatch and size options, the options as keyword arguments.
template <class Function>
auto with_options(Function function) {
  return [function](const Panel& panel, const Swatch& swatch, std::optional<ClothState> state,
                    std::vector<Substitute> substitutes, double seam_left, double seam_right, double seam_bottom,
                    double seam_top, double level) {
    return function(panel, swatch,
                    SizeOptions{state, std::move(substitutes), seam_left, seam_right, seam_bottom, seam_top, level});
  };
}

}  // namespace

void bind_size(py::module_& m) {
  const SizeOptions defaults;
  const auto add = [&](const char* name, auto function, const char* words) {
    m.def(name, with_options(function), "panel"_a, "swatch"_a, py::kw_only(), "state"_a = py::none(),
          "substitutes"_a = std::vector<Substitute>(), "seam_left"_a = defaults.seam_left,
          "seam_right"_a = defaults.seam_right, "seam_bottom"_a = defaults.seam_bottom,
          "seam_top"_a = defaults.seam_top, "level"_a = defaults.level, words);
  };
  add("size", &size,
      "Size of a panel in mm, between its seams, from the swatch's gauges: each texture's in `state`, or in its most "
      "finished one; of a texture without one by its substitute, which a finding tells. Seams take whole or half "
      "stitches (left and right on the RS) and rows. `level` is that of the margins, 0.5..0.999. A ladder is measured "
      "like any texture.\n\nRaises Error no_gauge (field = texture); bad_argument (field \"seam_left\", \"level\", "
      "\"substitutes[1].use\"), also for seams that leave nothing; too_large.");
  add("measuring_findings", &measuring_findings,
      "How far a panel's measure can be trusted before it is sized: no_swatch for each texture that size() would "
      "refuse, "
      "borrowed_gauge, mixed_states, unknown_spread, and what swatch_findings() says of the gauges that are "
      "used.\n\nRaises Error bad_argument (field); too_large.");
}

}  // namespace latchwork::python
