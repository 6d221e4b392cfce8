#pragma once

// What every file of the extension module shares: the casters, and one function for each subject.

#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <type_traits>
#include <utility>

#include "convert.hpp"
#include "fields.hpp"

namespace latchwork::python {

using namespace pybind11::literals;

void bind_error(py::module_& m);
void bind_grid(py::module_& m);
void bind_wale(py::module_& m);
void bind_strip(py::module_& m);
void bind_panel(py::module_& m);
void bind_machine(py::module_& m);
void bind_quantity(py::module_& m);
void bind_gauge(py::module_& m);
void bind_size(py::module_& m);
void bind_fit(py::module_& m);
void bind_grading(py::module_& m);
void bind_certificate(py::module_& m);
void bind_timings(py::module_& m);
void bind_schematic(py::module_& m);
void bind_shaping(py::module_& m);
void bind_spacing(py::module_& m);
void bind_split(py::module_& m);
void bind_yarn(py::module_& m);
void bind_plain_knit(py::module_& m);
void bind_yarn_need(py::module_& m);
void bind_plan(py::module_& m);
void bind_simulate(py::module_& m);
void bind_file(py::module_& m);
void bind_article(py::module_& m);
void bind_article_fit(py::module_& m);
void bind_choice(py::module_& m);
void bind_session(py::module_& m);
void bind_chart(py::module_& m);
void bind_brief(py::module_& m);

/// The function as it is bound: other threads run while it does. For what takes over a millisecond on a blanket (960
/// rows of 168 stitches); a shorter call may wait longer for the GIL than it lasts. It works on its own copies, since
/// another thread may change the caller's grid or panel meanwhile.
template <class Result, class... Arguments>
auto without_gil(Result (*function)(Arguments...)) {
  return [function](std::remove_cvref_t<Arguments>... own) {
    const py::gil_scoped_release free;
    return function(own...);
  };
}

/// Text as an argument of a template.
template <std::size_t size>
struct Literal {
  char text[size] = {};
  constexpr Literal(const char (&from)[size]) { std::copy_n(from, size, text); }  // NOLINT: "rows" is one
};

/// Python's numbers have no end; one past C's is refused by its name, and not as an argument of another type.
template <Literal name, bool any>
struct Number {
  int value = 0;
  operator int() const { return value; }  // NOLINT: it is one
};

/// A number of rows or stitches: one past an int's is refused as any that is too large for a grid.
template <Literal name>
using Count = Number<name, false>;

/// A row, column, needle or shift: what an int holds is for the library to judge.
template <Literal name>
using Whole = Number<name, true>;

/// Milliseconds, steps or bytes: what 64 bits hold is for the library to judge.
template <Literal name>
struct Wide {
  std::int64_t value = 0;
  operator std::int64_t() const { return value; }  // NOLINT: it is one
};

/// A text for people: one that UTF-8 cannot write, or C tell whole, is refused by its name.
template <Literal name>
struct Words {
  std::string value;
};

/// A struct, or a list of them, whose fields the library's errors name after the argument: "left.start",
/// "measurements[0].counted".
template <Literal name, class T>
struct Named {
  T value;
  operator const T&() const { return value; }  // NOLINT: it is one
};

/// A function of counts alone, each with its name.
template <Literal... names, class Result, class... Arguments>
auto counted(Result (*function)(Arguments...)) {
  return [function](Count<names>... counts) { return function(counts...); };
}

/// Beside py::pickle: protocols 0 and 1 would make the object from Python's own base, which ends the process.
inline py::object reduced(const py::object& self, int protocol) {
  return py::module_::import("builtins").attr("object").attr("__reduce_ex__")(self, std::max(protocol, 2));
}

/// A count with its noun: "1 row", "3 rows", "0 stitches" (ending "es").
inline std::string count_of(std::size_t count, const char* thing, const char* ending = "s") {
  return std::to_string(count) + " " + thing + (count == 1 ? "" : ending);
}

/// A grid's extent in a __repr__: "2 columns x 1 row"; a column need not hold a stitch.
inline std::string extent_of(const Grid& grid) {
  return count_of(static_cast<std::size_t>(grid.columns()), "column") + " x " +
         count_of(static_cast<std::size_t>(grid.rows()), "row");
}

/// A grid's chart for a notebook, on the right side; nothing when it would be too big to show.
std::optional<std::string> notebook_svg(Panel panel);

}  // namespace latchwork::python

namespace pybind11::detail {

template <latchwork::python::Literal name_of, bool any>
struct type_caster<latchwork::python::Number<name_of, any>> {
  using Type = latchwork::python::Number<name_of, any>;
  PYBIND11_TYPE_CASTER(Type, const_name("int"));
  bool load(handle source, bool convert) {
    latchwork::python::refuse_past_int(source, name_of.text, any);
    make_caster<int> number;
    if (!number.load(source, convert)) return false;
    value.value = cast_op<int>(number);
    return true;
  }
};

template <latchwork::python::Literal name_of>
struct type_caster<latchwork::python::Wide<name_of>> {
  using Type = latchwork::python::Wide<name_of>;
  PYBIND11_TYPE_CASTER(Type, const_name("int"));
  bool load(handle source, bool convert) {
    latchwork::python::refuse_past_64_bits(source, name_of.text);
    make_caster<std::int64_t> number;
    if (!number.load(source, convert)) return false;
    value.value = cast_op<std::int64_t>(number);
    return true;
  }
};

template <latchwork::python::Literal name_of>
struct type_caster<latchwork::python::Words<name_of>> {
  using Type = latchwork::python::Words<name_of>;
  PYBIND11_TYPE_CASTER(Type, const_name("str"));
  bool load(handle source, bool) {
    if (!PyUnicode_Check(source.ptr())) return false;  // the dispatcher tells which argument
    value.value = latchwork::python::to_string(source, latchwork::python::Path{nullptr, name_of.text});
    return true;
  }
};

template <latchwork::python::Literal name_of, class T>
struct type_caster<latchwork::python::Named<name_of, T>> : latchwork_caster<latchwork::python::Named<name_of, T>> {
  static constexpr auto name = make_caster<T>::name;
  bool load(handle source, bool) {
    if constexpr (latchwork::python::is_vector<T>) {
      const latchwork::python::Path root{nullptr, name_of.text, -1, name_of.text};
      this->value.emplace(latchwork::python::Named<name_of, T>{latchwork::python::from_python<T>(source, root)});
    } else {
      make_caster<T> plain;
      if (!plain.load(source, name_of.text)) return false;
      this->value.emplace(latchwork::python::Named<name_of, T>{cast_op<T&&>(std::move(plain))});
    }
    return true;
  }
};

}  // namespace pybind11::detail
