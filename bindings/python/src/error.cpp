// Errors, cells' letters and the version.

#include "bind.hpp"
#include "latchwork/version.hpp"

namespace latchwork::python {

namespace {

void raise(const Error& error) {
  const Place& place = error.place();
  static PyObject* kept = nullptr;  // for the life of the process; the GIL guards it
  if (kept == nullptr) kept = python_class("latchwork._error", "Error");
  const py::handle type = kept;
  const py::object made = type(py::str(error.what()), to_python(error.code()), place.row, place.column, place.line,
                               py::str(place.field), place.character);
  PyErr_SetObject(type.ptr(), made.ptr());
}

}  // namespace

void bind_error(py::module_& m) {
  py::register_local_exception_translator([](std::exception_ptr thrown) {
    try {
      if (thrown) std::rethrow_exception(thrown);
    } catch (const Error& error) {
      raise(error);
    }
  });

  m.def("version", &version, "The library's version, \"0.1.0\" (semantic versioning).");
  m.def("error_name", &error_name, "code"_a, "The code's name (\"off_grid\").");
  m.def(
      "error_codes",
      [] {
        const auto codes = error_codes();
        return std::vector<ErrorCode>(codes.begin(), codes.end());
      },
      "Every code, in order of its number.");
  m.def("cell_letter", &cell_letter, "cell"_a, "The letter of a cell: k, p, t, s or . (none).");
  m.def(
      "cell_of", [](const std::string& letter) { return letter.size() == 1 ? cell_of(letter[0]) : std::nullopt; },
      "letter"_a, "The cell of a letter; None for text that is no letter of a cell (capitals are not).");
}

}  // namespace latchwork::python
