// The extension module latchwork._core. Its public names are re-exported by latchwork/__init__.py.

#include "bind.hpp"

namespace {

/// `Grid.__new__(Grid)` makes an object that holds nothing: only a constructor or `__setstate__` fills it. Read before
/// that, pybind11 hands out memory that it asks of the class's operator new and that no constructor has seen. So that
/// operator new refuses: no other way asks for it, since all classes here are built by constructors of their own.
void* refuse_unmade(std::size_t /*size*/) {
  throw pybind11::type_error(
      "an object made by __new__ alone holds nothing: call its class, so that __init__ makes it");
}

void refuse_unmade_objects(const pybind11::module_& module) {
  for (const auto& [name, value] : pybind11::dict(module.attr("__dict__")))
    if (PyType_Check(value.ptr()) != 0)
      if (auto* type = pybind11::detail::get_type_info(reinterpret_cast<PyTypeObject*>(value.ptr())); type != nullptr)
        type->operator_new = refuse_unmade;
}

}  // namespace

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
  bind_split(m);
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
  refuse_unmade_objects(m);
}
