#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "latchwork/quantity.hpp"

namespace latchwork::inline v0 {

enum class Kind : std::uint8_t { length, weight, duration };

/// A unit as a fraction of whole numbers of its kind's base (mm, g, ms): an inch is 127/5 mm.
struct Unit {
  Kind kind = Kind::length;
  std::uint8_t number = 0;  ///< LengthUnit or WeightUnit; of a duration, its place in units()
  std::string_view name;    ///< as it is written
  double over = 1;
  double under = 1;
  bool metric = true;
};

/// The units of a kind, by their numbers.
std::span<const Unit> units(Kind kind) noexcept;

/// The unit of this name or sign, of any kind; nullptr when there is none.
const Unit* unit_named(std::string_view word) noexcept;

/// "mm, cm, m, in, ft or yd", for messages.
std::string_view unit_list(Kind kind) noexcept;
std::string_view kind_name(Kind kind) noexcept;  ///< "length"

/// @throws Error bad_argument (field "unit").
const Unit& unit_of(LengthUnit unit);
const Unit& unit_of(WeightUnit unit);

}  // namespace latchwork::inline v0
