#pragma once

#include <string>

#include "quantity/twofold.hpp"
#include "quantity/units.hpp"

namespace latchwork::inline v0 {

/// Most digits that a number may have, leading zeros aside: enough for every double.
inline constexpr int most_digits = 17;

/// What a quantity of any kind may be, in its base unit: 0, or `least_quantity` to `most_quantity`. Far inside what
/// doubles hold, so that no sum, product or quotient of the conversions can overflow or lose digits near zero.
inline constexpr double least_quantity = 1e-6;
inline constexpr double most_quantity = 1e12;

/// 0 or in range; false for NaN.
bool in_range(double base) noexcept;

/// Power 0 or more: exact to 10^22, to about 100 bits beyond.
Twofold power_of_ten(int power);

Twofold in_base(const Twofold& value, const Unit& unit);
Twofold in_unit(double base, const Unit& unit);

/// The shortest decimal number that is this double, as people write it: of 0.1 a tenth, which no double is. Finite, 0
/// or more.
Twofold as_written(double value);

/// The shortest decimal number which times the unit is nearest to `base`, in range; without an exponent.
std::string shortest(double base, const Unit& unit);

}  // namespace latchwork::inline v0
