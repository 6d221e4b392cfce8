#pragma once

#include <string>
#include <utility>
#include <vector>

#include "latchwork/brief.hpp"
#include "latchwork/motif.hpp"

namespace latchwork_test {

/// An edge, a rope that leans, ground, an edge, so that its mirror image is another panel; with its gauges: 4 mm a
/// stitch, a rope's 3; 2.5 mm a row.
inline latchwork::Brief rope_brief(std::string name, int rows) {
  using namespace latchwork;
  const Strip edge{"edge", "stockinette", Grid(1, 1)};
  const std::vector<Strip> strips{edge, rope(2, 2, 4, Lean::right), stockinette(5), edge};
  const Swatch swatch({{"stockinette", Counted::stitches, 25, 100, ""},
                       {"stockinette", Counted::rows, 40, 100, ""},
                       {"rope 2/2 every 4", Counted::stitches, 100, 300, ""},
                       {"rope 2/2 every 4", Counted::rows, 40, 100, ""}});
  return {join_strips(std::move(name), rows, strips), swatch, {}, {}, {}, {}, {}, {}};
}

/// The same for a blanket of one such piece, sewn of so many panels, 100 mm high.
inline latchwork::Brief runner(double width_mm, int panels) {
  latchwork::Brief out = rope_brief("runner", 20);
  latchwork::ArticleRequest request;
  request.article = "blanket of panels";
  request.choices.measures = {{"width", width_mm, width_mm, ""}, {"height", 100, 100, ""}};
  request.choices.counts = {{"across", 1}, {"up", 1}};
  request.groups = {{1, 2, 1, 20}};
  request.edge = 0;
  request.design.edge_least = request.design.edge_most = 1;
  request.design.panels_least = request.design.panels_most = panels;
  request.design.rows_step = 4;
  out.article = request;
  return out;
}

}  // namespace latchwork_test
