#pragma once

// How plain C++ data and the dataclasses of latchwork/*.py become each other.
//
// Plain structs are ordinary Python dataclasses, so that a plan's lists are lists and editing `plan.stops[3].row` does
// what it says; pybind11's own classes would hand out copies of every list. What a class must guard (Grid, Panel,
// Swatch, Wales) is a pybind11 class. The fields of each struct are named in fields/.

#include <pybind11/pybind11.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>
#include <vector>

#include "latchwork/error.hpp"

namespace latchwork::python {

namespace py = pybind11;

/// Where a value stands inside an argument: a chain on the stack, spelt out only when something is wrong there.
struct Path {
  const Path* parent = nullptr;
  const char* name = nullptr;      ///< an attribute, or the class at the root
  py::ssize_t index = -1;          ///< else an element
  const char* argument = nullptr;  ///< at the root: what the library puts before its fields, "effort"

  /// "stops[3].row", "effort.drop": the root's class is left out.
  std::string field() const;
  /// "Plan.stops[3].row"
  std::string whole() const;
};

/// What an argument of an enum is called in errors where its Data has no `argument`: "Side" is "side", "MachineClass"
/// "machine_class".
std::string argument_name(const char* type);

/// Refuses a number that no int holds, by its name; `any` when it is no count of rows or stitches. What is no whole
/// number stays for pybind11 to say.
void refuse_past_int(py::handle number, const char* name, bool any);
/// The same of a number that 64 bits do not hold.
void refuse_past_64_bits(py::handle number, const char* name);

/// Raises TypeError: "Plan.stops[3].row must be int, not str".
[[noreturn]] void wrong_type(const Path& path, const char* wanted, py::handle got);
/// Throws Error bad_argument: "Plan.stops[3].row is 5000000000; it must be in -2147483648..2147483647".
[[noreturn]] void out_of_range(const Path& path, py::handle got, long long least, long long most);

/// A whole number between the limits, from anything with __index__.
long long to_integer(py::handle value, const Path& path, long long least, long long most);
double to_double(py::handle value, const Path& path);
bool to_bool(py::handle value, const Path& path);
std::string to_string(py::handle value, const Path& path);

/// The member of a Python IntEnum whose value is `value`.
py::object enum_member(PyObject* type, long long value);
/// An instance of a dataclass with slots, all of them empty: its __init__, which is Python's, is not run.
py::object bare_instance(PyObject* type);
/// Fills the slot of such an instance that `descriptor`, its class's attribute, stands for. A frozen class's too.
void fill_slot(PyObject* descriptor, PyObject* instance, const py::object& value);
/// While it lives Python does not look for garbage: of a large plan's hundred thousand new objects none is, and to look
/// at them again and again takes twice as long as to make them. The GIL is held, so that nobody else goes without.
class Uncollected {
 public:
  Uncollected() : was_on_(PyGC_Disable() != 0) {}
  ~Uncollected() {
    if (was_on_) PyGC_Enable();
  }
  Uncollected(const Uncollected&) = delete;
  Uncollected& operator=(const Uncollected&) = delete;

 private:
  bool was_on_;
};
/// The class's attribute, which stands for a slot, and the name by which instances are asked; each kept for ever.
PyObject* slot_of(PyObject* type, const char* name);
PyObject* interned(const char* name);
py::object attribute(py::handle value, PyObject* name);
/// The value of a member of `type`, or of a whole number that is not a member of another Enum.
long long enum_value(PyObject* type, const char* name, long long least, long long most, py::handle value,
                     const Path& path);

/// The class `name` of the Python module `module`.
PyObject* python_class(const char* module, const char* name);

/// Specialised in fields/. For a struct: `name`, `module`, `frozen` (its lists are tuples) and `fields`, a tuple of
/// Field, in the order of declaration; `late`, a tuple of those of them, each alone of its type, whose lists become
/// objects when they are first asked for (latchwork/_late.py); `argument`, where the library's errors name its fields
/// "effort.drop" and not "drop". For an enum: `name`, `least`, `most`.
template <class T>
struct Data;

template <class T, class Member>
struct Field {
  const char* name;
  Member T::*member;
  using type = Member;
};

template <class T, class = void>
inline constexpr bool is_plain = false;
template <class T>
inline constexpr bool is_plain<T, std::void_t<decltype(Data<T>::fields)>> = true;
template <class T>
concept HasLate = requires {
  Data<T>::late;
};
template <class T, class = void>
inline constexpr bool is_named_enum = false;
template <class T>
inline constexpr bool is_named_enum<T, std::void_t<decltype(Data<T>::least)>> = true;
template <class T, class = void>
inline constexpr const char* argument_of = nullptr;
template <class T>
inline constexpr const char* argument_of<T, std::void_t<decltype(Data<T>::argument)>> = Data<T>::argument;
template <class T>
inline constexpr bool is_vector = false;
template <class T>
inline constexpr bool is_vector<std::vector<T>> = true;
template <class T>
inline constexpr bool is_optional = false;
template <class T>
inline constexpr bool is_optional<std::optional<T>> = true;

/// The Python class of a struct or enum: looked up once, and kept for the life of the process. The GIL guards it.
template <class T>
PyObject* class_of() {
  static PyObject* type = nullptr;  // a constant initialiser: no lock that could meet the GIL
  if (type == nullptr) type = python_class(Data<T>::module, Data<T>::name);
  return type;
}

// A plan of a large panel has thousands of re-forms and hundreds of thousands of rungs, and its making is in the time
// of the call: members of enums are made once, and structs are filled without going through Python.

template <class T>
inline constexpr std::size_t field_count = std::tuple_size_v<std::remove_cv_t<decltype(Data<T>::fields)>>;

/// One thing for each field of a struct, made from its name once and kept for the life of the process.
template <class T, class Make>
const std::array<PyObject*, field_count<T>>& each_field(std::array<PyObject*, field_count<T>>& kept, Make&& make) {
  if (kept[field_count<T> - 1] == nullptr) {  // filled last
    std::size_t next = 0;
    std::apply([&](const auto&... field) { ((kept[next++] = make(field.name)), ...); }, Data<T>::fields);
  }
  return kept;
}
template <class T>
const std::array<PyObject*, field_count<T>>& slots_of() {
  static std::array<PyObject*, field_count<T>> kept{};
  return each_field<T>(kept, [](const char* name) { return slot_of(class_of<T>(), name); });
}
template <class T>
const std::array<PyObject*, field_count<T>>& names_of() {
  static std::array<PyObject*, field_count<T>> kept{};
  return each_field<T>(kept, &interned);
}

template <class T>
py::object enum_to_python(T value) {
  constexpr auto least = Data<T>::least;
  static std::array<PyObject*, static_cast<std::size_t>(Data<T>::most - least) + 1> members{};
  const auto number = static_cast<long long>(value);
  if (number < least || number > Data<T>::most) return enum_member(class_of<T>(), number);  // which refuses it
  PyObject*& member = members[static_cast<std::size_t>(number - least)];
  if (member == nullptr) member = enum_member(class_of<T>(), number).release().ptr();
  return py::reinterpret_borrow<py::object>(member);
}

template <class T>
py::object to_python(const T& value, bool frozen = false);

template <class T>
py::object list_to_python(const std::vector<T>& values, bool frozen) {
  if (frozen) {
    py::tuple out(values.size());
    for (std::size_t i = 0; i < values.size(); ++i) out[i] = to_python(values[i]);
    return out;
  }
  py::list out(values.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    PyList_SET_ITEM(out.ptr(), static_cast<py::ssize_t>(i), to_python(values[i]).release().ptr());
  }
  return out;
}

/// Where an instance has a list that may be put by, and where it is put by. Kept for the life of the process.
struct LateSlots {
  PyObject* list;
  PyObject* holder;
};
template <class T, class List>
const LateSlots& late_slots(const Field<T, List>& field) {
  static LateSlots slots{};
  if (slots.holder == nullptr) {
    slots.list = slot_of(class_of<T>(), field.name);
    slots.holder = slot_of(class_of<T>(), ("_late_" + std::string(field.name)).c_str());
  }
  return slots;
}

/// Puts a list by: late_list() makes its objects.
template <class T, class List>
void keep_late(const py::object& made, const Field<T, List>& field, List values) {
  auto kept = std::make_unique<List>(std::move(values));
  const py::capsule holder(kept.get(), field.name, [](PyObject* capsule) {
    delete static_cast<List*>(PyCapsule_GetPointer(capsule, PyCapsule_GetName(capsule)));
  });
  kept.release();
  fill_slot(late_slots(field).holder, made.ptr(), holder);
}

template <class Of, class... Late>
constexpr bool is_one_of(const std::tuple<Late...>*) {
  return (std::is_same_v<Of, Late> || ...);
}
template <class T, class Of>
constexpr bool is_late() {
  if constexpr (HasLate<T>) {
    return is_one_of<Of>(static_cast<decltype(&Data<T>::late)>(nullptr));
  } else {
    return false;
  }
}

template <class T, class Of>
void fill_field(const T& value, const Of& field, PyObject* slot, const py::object& made) {
  if constexpr (is_late<T, Of>()) {
    keep_late<T>(made, field, value.*(field.member));
  } else {
    fill_slot(slot, made.ptr(), to_python(value.*(field.member), Data<T>::frozen));
  }
}

template <class T>
py::object struct_to_python(const T& value) {
  const auto& slots = slots_of<T>();
  py::object made = bare_instance(class_of<T>());
  std::size_t next = 0;
  std::apply([&](const auto&... field) { (fill_field(value, field, slots[next++], made), ...); }, Data<T>::fields);
  return made;
}

/// What is in an instance's slot; nothing, and no error, where it is empty.
py::object in_slot(PyObject* descriptor, py::handle instance);
/// Empties it.
void clear_slot(PyObject* descriptor, py::handle instance);

/// The list in a holder made for a field of this name. Raises ValueError for another's.
template <class List>
const List* list_in(const py::object& holder, const char* name) {
  const void* list = PyCapsule_GetPointer(holder.ptr(), name);
  if (list == nullptr) throw py::error_already_set();
  return static_cast<const List*>(list);
}

/// The list of an instance that was put by, and from now on its attribute. Nothing of Python's runs meanwhile, so that
/// two threads that ask have one list. Raises AttributeError where there is none.
template <class T, class List>
py::object late_list(const py::object& instance, const Field<T, List>& field) {
  const LateSlots& slots = late_slots(field);
  if (py::object there = in_slot(slots.list, instance)) return there;  // made meanwhile
  const py::object holder = in_slot(slots.holder, instance);
  if (!holder) throw py::attribute_error(field.name);
  const Uncollected meanwhile;
  py::object made = list_to_python(*list_in<List>(holder, field.name), Data<T>::frozen);
  fill_slot(slots.list, instance.ptr(), made);
  clear_slot(slots.holder, instance);
  return made;
}
/// The same of the field of this name.
template <HasLate T>
py::object late_list(const py::object& instance, std::string_view name) {
  py::object made;
  std::apply(
      [&](const auto&... field) { ((field.name == name ? void(made = late_list(instance, field)) : void()), ...); },
      Data<T>::late);
  if (!made) throw py::attribute_error(std::string(name));
  return made;
}

/// The list itself where it is still put by and the attribute not set; else nothing. It lives as long as the instance.
template <class T, class List>
const List* put_by(py::handle instance, const Field<T, List>& field) {
  if (reinterpret_cast<PyObject*>(Py_TYPE(instance.ptr())) != class_of<T>()) return nullptr;
  const LateSlots& slots = late_slots(field);
  if (in_slot(slots.list, instance)) return nullptr;
  const py::object holder = in_slot(slots.holder, instance);
  return holder ? list_in<List>(holder, field.name) : nullptr;
}

template <class T>
py::object to_python(const T& value, bool frozen) {
  if constexpr (is_plain<T>) {
    return struct_to_python(value);
  } else if constexpr (is_named_enum<T>) {
    return enum_to_python(value);
  } else if constexpr (is_vector<T>) {
    return list_to_python(value, frozen);
  } else if constexpr (is_optional<T>) {
    return value ? to_python(*value, frozen) : py::none();
  } else {
    return py::cast(value);
  }
}

template <class T>
T from_python(py::handle value, const Path& path);

template <class T>
std::vector<T> list_from_python(py::handle value, const Path& path) {
  if (PyUnicode_Check(value.ptr()) || PyBytes_Check(value.ptr())) wrong_type(path, "a list", value);
  PyObject* fast = PySequence_Fast(value.ptr(), "");
  if (fast == nullptr) {
    if (!PyErr_ExceptionMatches(PyExc_TypeError)) throw py::error_already_set();
    PyErr_Clear();
    wrong_type(path, "a list", value);
  }
  const auto items = py::reinterpret_steal<py::object>(fast);
  std::vector<T> out;
  out.reserve(static_cast<std::size_t>(PySequence_Fast_GET_SIZE(fast)));
  for (py::ssize_t i = 0; i < PySequence_Fast_GET_SIZE(fast);
       ++i) {  // asked anew: an element's code may shorten the list
    const auto item = py::reinterpret_borrow<py::object>(PySequence_Fast_GET_ITEM(fast, i));
    out.push_back(from_python<T>(item, Path{&path, nullptr, i}));
  }
  return out;
}

template <class T, class Of>
typename Of::type field_from_python(py::handle value, const Of& field, PyObject* name, const Path& path) {
  if constexpr (is_late<T, Of>()) {
    if (const auto* list = put_by(value, field)) return *list;
  }
  return from_python<typename Of::type>(attribute(value, name), Path{&path, field.name});
}

template <class T>
T struct_from_python(py::handle value, const Path& path) {
  const int is_one = PyObject_IsInstance(value.ptr(), class_of<T>());
  if (is_one < 0) throw py::error_already_set();
  if (is_one == 0) wrong_type(path, Data<T>::name, value);
  const auto& names = names_of<T>();
  std::size_t next = 0;
  return std::apply(
      [&](const auto&... field) {  // in braces, so that they are asked in order
        return T{field_from_python<T>(value, field, names[next++], path)...};
      },
      Data<T>::fields);
}

template <class T>
T from_python(py::handle value, const Path& path) {
  if constexpr (is_plain<T>) {
    return struct_from_python<T>(value, path);
  } else if constexpr (is_named_enum<T>) {
    return static_cast<T>(enum_value(class_of<T>(), Data<T>::name, Data<T>::least, Data<T>::most, value, path));
  } else if constexpr (is_vector<T>) {
    return list_from_python<typename T::value_type>(value, path);
  } else if constexpr (is_optional<T>) {
    if (value.is_none()) return std::nullopt;
    return from_python<typename T::value_type>(value, path);
  } else if constexpr (std::is_same_v<T, bool>) {
    return to_bool(value, path);
  } else if constexpr (std::is_integral_v<T>) {
    return static_cast<T>(to_integer(value, path, std::numeric_limits<T>::min(), std::numeric_limits<T>::max()));
  } else if constexpr (std::is_floating_point_v<T>) {
    return to_double(value, path);
  } else if constexpr (std::is_same_v<T, std::string>) {
    return to_string(value, path);
  } else {
    if (!py::isinstance<T>(value)) wrong_type(path, py::type_id<T>().c_str(), value);
    return value.cast<const T&>();
  }
}

/// Text from Python: str, or bytes that are checked to be UTF-8 by whoever reads them. Nothing is copied.
struct Text {
  py::object owner;
  std::string_view view;
};

/// The name of a folder: str or anything with __fspath__.
struct Folder {
  std::string name;
};

}  // namespace latchwork::python

namespace pybind11::detail {

#if PYBIND11_VERSION_MAJOR >= 3
/// pybind11 3 has a caster for every enum; ours are Python's own IntEnum classes.
template <class T>
struct type_caster_enum_type_enabled<T, std::enable_if_t<latchwork::python::is_named_enum<T>>> : std::false_type {};
#endif

/// What the casters below share: a value that need not be default constructible.
template <class T>
struct latchwork_caster {
  std::optional<T> value;

  template <class U>
  using cast_op_type = movable_cast_op_type<U>;
  operator T*() { return &*value; }                // NOLINT(google-explicit-constructor): pybind11 asks for it
  operator T&() { return *value; }                 // NOLINT(google-explicit-constructor)
  operator T&&() && { return std::move(*value); }  // NOLINT(google-explicit-constructor)
};

template <class T>
struct type_caster<T, std::enable_if_t<latchwork::python::is_plain<T>>> : latchwork_caster<T> {
  static constexpr auto name = const_name("latchwork.") + const_name(latchwork::python::Data<T>::name);

  bool load(handle source, bool) { return load(source, latchwork::python::argument_of<T>); }
  /// `argument` as in Path.
  bool load(handle source, const char* argument) {
    const int is_one = PyObject_IsInstance(source.ptr(), latchwork::python::class_of<T>());
    if (is_one < 0) throw error_already_set();
    if (is_one == 0) return false;  // the dispatcher tells which argument
    const latchwork::python::Path root{nullptr, latchwork::python::Data<T>::name, -1, argument};
    this->value.emplace(latchwork::python::from_python<T>(source, root));
    return true;
  }
  static handle cast(const T& source, return_value_policy, handle) {
    const latchwork::python::Uncollected meanwhile;
    return latchwork::python::to_python(source).release();
  }
  static handle cast(T&& source, return_value_policy, handle) {
    const latchwork::python::Uncollected meanwhile;
    if constexpr (latchwork::python::HasLate<T>) {
      return std::apply(
          [&](const auto&... field) {
            auto late = std::tuple{std::exchange(source.*(field.member), {})...};  // moved, for they may be large
            const object made = latchwork::python::to_python(source);
            std::apply([&](auto&... list) { (latchwork::python::keep_late(made, field, std::move(list)), ...); }, late);
            return handle(made).inc_ref();
          },
          latchwork::python::Data<T>::late);
    } else {
      return latchwork::python::to_python(source).release();
    }
  }
};

template <class T>
struct type_caster<T, std::enable_if_t<latchwork::python::is_named_enum<T>>> : latchwork_caster<T> {
  static constexpr auto name = const_name("latchwork.") + const_name(latchwork::python::Data<T>::name);

  bool load(handle source, bool) {
    std::string argument;
    if constexpr (requires { latchwork::python::Data<T>::argument; }) {
      argument = latchwork::python::Data<T>::argument;
    } else {
      argument = latchwork::python::argument_name(latchwork::python::Data<T>::name);
    }
    const latchwork::python::Path path{nullptr, argument.c_str()};
    this->value.emplace(latchwork::python::from_python<T>(source, path));
    return true;
  }
  static handle cast(T source, return_value_policy, handle) { return latchwork::python::to_python(source).release(); }
};

template <>
struct type_caster<latchwork::python::Text> : latchwork_caster<latchwork::python::Text> {
  static constexpr auto name = const_name("str | bytes");
  bool load(handle source, bool);
};

template <>
struct type_caster<latchwork::python::Folder> : latchwork_caster<latchwork::python::Folder> {
  static constexpr auto name = const_name("str | os.PathLike[str]");
  bool load(handle source, bool);
};

}  // namespace pybind11::detail
