#include "convert.hpp"

#include <cstring>
#include <limits>

#include "latchwork/grid.hpp"

namespace latchwork::python {

std::string Path::whole() const {
  if (index >= 0) return (parent ? parent->whole() : std::string()) + "[" + std::to_string(index) + "]";
  const std::string before = parent ? parent->whole() + "." : std::string();
  return before + (name ? name : "");
}

std::string Path::field() const {
  const std::string text = whole();
  const auto dot = text.find('.');
  if (dot == std::string::npos) return text;
  const Path* root = this;
  while (root->parent != nullptr) root = root->parent;
  return root->argument != nullptr ? root->argument + text.substr(std::strlen(root->name)) : text.substr(dot + 1);
}

void wrong_type(const Path& path, const char* wanted, py::handle got) {
  throw py::type_error(path.whole() + " must be " + wanted + ", not " + Py_TYPE(got.ptr())->tp_name);
}

std::string argument_name(const char* type) {
  std::string name;
  for (const char* letter = type; *letter != '\0'; ++letter) {
    const bool capital = *letter >= 'A' && *letter <= 'Z';
    if (capital && !name.empty()) name += '_';
    name += capital ? static_cast<char>(*letter - 'A' + 'a') : *letter;
  }
  return name;
}

void refuse_past_int(py::handle number, const char* name, bool any) {
  if (PyLong_Check(number.ptr()) == 0) return;
  int overflow = 0;
  const long long value = PyLong_AsLongLongAndOverflow(number.ptr(), &overflow);
  if (overflow == 0 && value >= std::numeric_limits<int>::min() && value <= std::numeric_limits<int>::max()) return;
  const bool large = overflow > 0 || (overflow == 0 && value > 0);
  const int most = any ? std::numeric_limits<int>::max() : Grid::max_side;
  const int least = any ? std::numeric_limits<int>::min() : 1;
  throw Error(large ? ErrorCode::too_large : ErrorCode::bad_argument, Place{.field = name},
              std::string(name) + " is " + std::string(py::str(number)) +
                  (large ? "; at most " + std::to_string(most) : "; at least " + std::to_string(least)));
}

void refuse_past_64_bits(py::handle number, const char* name) {
  if (PyLong_Check(number.ptr()) == 0) return;
  int overflow = 0;
  PyLong_AsLongLongAndOverflow(number.ptr(), &overflow);
  if (overflow == 0) return;
  using Limits = std::numeric_limits<std::int64_t>;
  throw Error(overflow > 0 ? ErrorCode::too_large : ErrorCode::bad_argument, Place{.field = name},
              std::string(name) + " is " + std::string(py::str(number)) +
                  (overflow > 0 ? "; at most " + std::to_string(Limits::max())
                                : "; at least " + std::to_string(Limits::min())));
}

void out_of_range(const Path& path, py::handle got, long long least, long long most) {
  throw Error(ErrorCode::bad_argument, Place{.field = path.field()},
              path.whole() + " is " + std::string(py::str(got)) + "; it must be in " + std::to_string(least) + ".." +
                  std::to_string(most));
}

namespace {

/// `value` as a Python int; null, with no exception set, when it is none.
py::object as_index(py::handle value) {
  PyObject* index = PyNumber_Index(value.ptr());
  if (index == nullptr) {
    if (!PyErr_ExceptionMatches(PyExc_TypeError)) throw py::error_already_set();
    PyErr_Clear();
  }
  return py::reinterpret_steal<py::object>(index);
}

}  // namespace

long long to_integer(py::handle value, const Path& path, long long least, long long most) {
  const py::object index = as_index(value);
  if (!index) wrong_type(path, "int", value);
  int overflow = 0;
  const long long number = PyLong_AsLongLongAndOverflow(index.ptr(), &overflow);
  if (number == -1 && PyErr_Occurred() != nullptr) throw py::error_already_set();
  if (overflow != 0 || number < least || number > most) out_of_range(path, index, least, most);
  return number;
}

double to_double(py::handle value, const Path& path) {
  const double number = PyFloat_AsDouble(value.ptr());
  if (number == -1.0 && PyErr_Occurred() != nullptr) {
    if (!PyErr_ExceptionMatches(PyExc_TypeError)) throw py::error_already_set();
    PyErr_Clear();
    wrong_type(path, "float", value);
  }
  return number;
}

bool to_bool(py::handle value, const Path& path) {
  py::detail::make_caster<bool> caster;  // a bool of Python or of NumPy, and nothing that is merely true
  if (!caster.load(value, false)) wrong_type(path, "bool", value);
  return py::detail::cast_op<bool>(caster);
}

std::string to_string(py::handle value, const Path& path) {
  if (!PyUnicode_Check(value.ptr())) wrong_type(path, "str", value);
  py::ssize_t size = 0;
  const char* data = PyUnicode_AsUTF8AndSize(value.ptr(), &size);
  if (data == nullptr) {
    PyErr_Clear();
    throw Error(ErrorCode::bad_encoding, Place{.field = path.field()},
                path.whole() + " holds a lone surrogate, which UTF-8 cannot write");
  }
  if (std::memchr(data, '\0', static_cast<std::size_t>(size)) != nullptr) {
    throw Error(ErrorCode::bad_value, Place{.field = path.field()}, path.whole() + " holds a NUL, which no text may");
  }
  return {data, static_cast<std::size_t>(size)};
}

py::object enum_member(PyObject* type, long long value) {
  PyObject* member = PyObject_CallFunction(type, "L", value);
  if (member == nullptr) throw py::error_already_set();
  return py::reinterpret_steal<py::object>(member);
}

py::object bare_instance(PyObject* type) {
  auto* const made_of = reinterpret_cast<PyTypeObject*>(type);
  const py::tuple nothing(0);
  PyObject* made = made_of->tp_new(made_of, nothing.ptr(), nullptr);
  if (made == nullptr) throw py::error_already_set();
  return py::reinterpret_steal<py::object>(made);
}

void fill_slot(PyObject* descriptor, PyObject* instance, const py::object& value) {
  if (Py_TYPE(descriptor)->tp_descr_set(descriptor, instance, value.ptr()) != 0) throw py::error_already_set();
}

py::object in_slot(PyObject* descriptor, py::handle instance) {
  PyObject* const type = reinterpret_cast<PyObject*>(Py_TYPE(instance.ptr()));
  PyObject* there = Py_TYPE(descriptor)->tp_descr_get(descriptor, instance.ptr(), type);
  if (there == nullptr) {
    if (!PyErr_ExceptionMatches(PyExc_AttributeError)) throw py::error_already_set();
    PyErr_Clear();
  }
  return py::reinterpret_steal<py::object>(there);
}

void clear_slot(PyObject* descriptor, py::handle instance) {
  if (Py_TYPE(descriptor)->tp_descr_set(descriptor, instance.ptr(), nullptr) != 0) throw py::error_already_set();
}

PyObject* slot_of(PyObject* type, const char* name) {
  PyObject* slot = PyObject_GetAttrString(type, name);  // of the class itself: the descriptor
  if (slot == nullptr) throw py::error_already_set();
  if (Py_TYPE(slot)->tp_descr_set == nullptr) {
    Py_DECREF(slot);
    throw py::type_error(std::string(name) + " is no slot of its class");
  }
  return slot;
}

PyObject* interned(const char* name) {
  PyObject* made = PyUnicode_InternFromString(name);
  if (made == nullptr) throw py::error_already_set();
  return made;
}

py::object attribute(py::handle value, PyObject* name) {
  PyObject* found = PyObject_GetAttr(value.ptr(), name);
  if (found == nullptr) throw py::error_already_set();
  return py::reinterpret_steal<py::object>(found);
}

long long enum_value(PyObject* type, const char* name, long long least, long long most, py::handle value,
                     const Path& path) {
  if (Py_TYPE(value.ptr()) == reinterpret_cast<PyTypeObject*>(type)) return to_integer(value, path, least, most);
  static PyObject* base = nullptr;
  if (base == nullptr) base = python_class("enum", "Enum");
  const int own = PyObject_IsInstance(value.ptr(), type);
  const int other = own == 0 ? PyObject_IsInstance(value.ptr(), base) : 0;
  if (own < 0 || other < 0) throw py::error_already_set();
  if (other == 1) wrong_type(path, name, value);  // Lean.left is no Cell, though both are 0
  const py::object index = as_index(value);
  if (!index) wrong_type(path, name, value);
  return to_integer(index, path, least, most);
}

PyObject* python_class(const char* module, const char* name) {
  return py::module_::import(module).attr(name).cast<py::object>().release().ptr();
}

}  // namespace latchwork::python

namespace pybind11::detail {

namespace {

/// The line, from 1, of the first character of a str that UTF-8 cannot write.
int line_of_surrogate(handle text) {
  int line = 1;
  for (ssize_t i = 0; i < PyUnicode_GetLength(text.ptr()); ++i) {
    const Py_UCS4 character = PyUnicode_ReadChar(text.ptr(), i);
    if (character >= 0xD800 && character <= 0xDFFF) break;
    if (character == '\n') ++line;
  }
  return line;
}

}  // namespace

bool type_caster<latchwork::python::Text>::load(handle source, bool) {
  const auto owner = reinterpret_borrow<object>(source);
  if (PyBytes_Check(source.ptr())) {
    value.emplace(latchwork::python::Text{
        owner, {PyBytes_AS_STRING(source.ptr()), static_cast<std::size_t>(PyBytes_GET_SIZE(source.ptr()))}});
    return true;
  }
  if (!PyUnicode_Check(source.ptr())) return false;
  ssize_t size = 0;
  const char* data = PyUnicode_AsUTF8AndSize(source.ptr(), &size);
  if (data == nullptr) {
    PyErr_Clear();
    latchwork::Place place;
    place.line = line_of_surrogate(source);
    throw latchwork::Error(latchwork::ErrorCode::bad_encoding, place,
                           "the text holds a lone surrogate, which UTF-8 cannot write");
  }
  value.emplace(latchwork::python::Text{owner, {data, static_cast<std::size_t>(size)}});
  return true;
}

bool type_caster<latchwork::python::Folder>::load(handle source, bool) {
  PyObject* spelt = PyOS_FSPath(source.ptr());
  if (spelt == nullptr) {
    if (!PyErr_ExceptionMatches(PyExc_TypeError)) throw error_already_set();
    PyErr_Clear();
    return false;
  }
  const auto owner = reinterpret_steal<object>(spelt);
  if (!PyUnicode_Check(spelt)) return false;
  PyObject* encoded = PyUnicode_EncodeFSDefault(spelt);  // as the file system spells it, lone surrogates and all
  if (encoded == nullptr) throw error_already_set();
  const auto bytes_owner = reinterpret_steal<object>(encoded);
  value.emplace(
      latchwork::python::Folder{{PyBytes_AS_STRING(encoded), static_cast<std::size_t>(PyBytes_GET_SIZE(encoded))}});
  return true;
}

}  // namespace pybind11::detail
