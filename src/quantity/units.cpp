#include "quantity/units.hpp"

#include <fmt/format.h>

#include <array>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0 {
namespace {

// 1 in = 25.4 mm and 1 lb = 453.59237 g exactly; the sources are in the header.
constexpr std::array length_units = {
    Unit{Kind::length, 0, "mm", 1, 1, true},     Unit{Kind::length, 1, "cm", 10, 1, true},
    Unit{Kind::length, 2, "m", 1000, 1, true},   Unit{Kind::length, 3, "in", 127, 5, false},
    Unit{Kind::length, 4, "ft", 1524, 5, false}, Unit{Kind::length, 5, "yd", 4572, 5, false},
};
constexpr std::array weight_units = {
    Unit{Kind::weight, 0, "g", 1, 1, true},
    Unit{Kind::weight, 1, "kg", 1000, 1, true},
    Unit{Kind::weight, 2, "oz", 45'359'237, 1'600'000, false},
    Unit{Kind::weight, 3, "lb", 45'359'237, 100'000, false},
    Unit{Kind::weight, 4, "grain", 6'479'891, 100'000'000, false},
};
constexpr std::array duration_units = {
    Unit{Kind::duration, 0, "ms", 1, 1, true},
    Unit{Kind::duration, 1, "s", 1000, 1, true},
    Unit{Kind::duration, 2, "min", 60'000, 1, true},
    Unit{Kind::duration, 3, "h", 3'600'000, 1, true},
};

struct Word {
  std::string_view word;
  const Unit* unit;
};
constexpr std::array words = {
    Word{"mm", &length_units[0]},        Word{"cm", &length_units[1]},        Word{"m", &length_units[2]},
    Word{"in", &length_units[3]},        Word{"inch", &length_units[3]},      Word{"inches", &length_units[3]},
    Word{"\"", &length_units[3]},        Word{"\u2033", &length_units[3]},    Word{"ft", &length_units[4]},
    Word{"foot", &length_units[4]},      Word{"feet", &length_units[4]},      Word{"yd", &length_units[5]},
    Word{"yds", &length_units[5]},       Word{"yard", &length_units[5]},      Word{"yards", &length_units[5]},
    Word{"g", &weight_units[0]},         Word{"gram", &weight_units[0]},      Word{"grams", &weight_units[0]},
    Word{"kg", &weight_units[1]},        Word{"oz", &weight_units[2]},        Word{"ounce", &weight_units[2]},
    Word{"ounces", &weight_units[2]},    Word{"lb", &weight_units[3]},        Word{"lbs", &weight_units[3]},
    Word{"pound", &weight_units[3]},     Word{"pounds", &weight_units[3]},    Word{"grain", &weight_units[4]},
    Word{"grains", &weight_units[4]},    Word{"ms", &duration_units[0]},      Word{"s", &duration_units[1]},
    Word{"sec", &duration_units[1]},     Word{"secs", &duration_units[1]},    Word{"second", &duration_units[1]},
    Word{"seconds", &duration_units[1]}, Word{"min", &duration_units[2]},     Word{"mins", &duration_units[2]},
    Word{"minute", &duration_units[2]},  Word{"minutes", &duration_units[2]}, Word{"h", &duration_units[3]},
    Word{"hr", &duration_units[3]},      Word{"hrs", &duration_units[3]},     Word{"hour", &duration_units[3]},
    Word{"hours", &duration_units[3]},
};

const Unit& checked(Kind kind, int number) {
  const auto all = units(kind);
  if (number >= 0 && static_cast<std::size_t>(number) < all.size()) return all[static_cast<std::size_t>(number)];
  refuse("unit", fmt::format("unit is {}; a unit of {} is 0..{}", number, kind_name(kind), all.size() - 1));
}

}  // namespace

std::span<const Unit> units(Kind kind) noexcept {
  if (kind == Kind::length) return length_units;
  if (kind == Kind::weight) return weight_units;
  return duration_units;
}

const Unit* unit_named(std::string_view word) noexcept {
  for (const Word& each : words) {
    if (each.word == word) return each.unit;
  }
  return nullptr;
}

std::string_view unit_list(Kind kind) noexcept {
  if (kind == Kind::length) return "mm, cm, m, in, ft or yd";
  if (kind == Kind::weight) return "g, kg, oz, lb or grain";
  return "h, min, s or ms";
}

std::string_view kind_name(Kind kind) noexcept {
  if (kind == Kind::length) return "length";
  if (kind == Kind::weight) return "weight";
  return "duration";
}

const Unit& unit_of(LengthUnit unit) {
  return checked(Kind::length, static_cast<int>(unit));
}
const Unit& unit_of(WeightUnit unit) {
  return checked(Kind::weight, static_cast<int>(unit));
}

}  // namespace latchwork::inline v0
