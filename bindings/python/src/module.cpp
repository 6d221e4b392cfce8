// The extension module latchwork._core. Its public names are re-exported by latchwork/__init__.py.

#include "bind.hpp"

PYBIND11_MODULE(_core, m) {
  using namespace latchwork::python;
  m.doc() = "The extension module of latchwork. Use the package: its names are the same.";
  bind_error(m);
  bind_grid(m);
  bind_wale(m);
  bind_strip(m);
  bind_panel(m);
  bind_machine(m);
  bind_quantity(m);
  bind_yarn(m);
  bind_plain_knit(m);
  bind_gauge(m);
  bind_spacing(m);
  bind_shaping(m);
  bind_schematic(m);
  bind_size(m);
  bind_fit(m);
  bind_grading(m);
  bind_yarn_need(m);
  bind_timings(m);
  bind_plan(m);
  bind_certificate(m);
  bind_simulate(m);
  bind_file(m);
  bind_article(m);
  bind_article_fit(m);
  bind_chart(m);
  bind_choice(m);
  bind_session(m);
  bind_brief(m);
}
