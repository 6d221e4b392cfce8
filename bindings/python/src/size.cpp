// Sizes. The Size class is Python's.

#include "latchwork/size.hpp"

#include "bind.hpp"
#include "size_options.hpp"

namespace latchwork::python {

void bind_size(py::module_& m) {
  const auto add = [&](const char* name, auto function, const char* words) {
    def_with_size_options(m, name, function, words);
  };
  add("size", &size,
      "Size of a panel in mm, between its seams, from the swatch's gauges: each texture's in `state`, or in its most "
      "finished one; of a texture without one by its substitute, which a finding tells. Seams take whole or half "
      "stitches (left and right on the RS) and rows. `level` is that of the margins, 0.5..0.999. A ladder is measured "
      "like any texture.\n\nRaises Error no_gauge (field = texture); bad_argument (field \"seam_left\", \"level\", "
      "\"substitutes[1].use\"), also for seams that leave nothing; too_large.");
  add("measuring_findings", &measuring_findings,
      "How far a panel's measure can be trusted before it is sized: no_swatch for each texture that size() would "
      "refuse, borrowed_gauge, mixed_states, unknown_spread, narrow_texture, and what swatch_findings() says of the "
      "gauges that are used.\n"
      "\n"
      "Raises Error bad_argument (field); too_large.");
}

}  // namespace latchwork::python
