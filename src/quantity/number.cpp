#include "quantity/number.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "latchwork/error.hpp"

namespace latchwork::inline v0 {
namespace {

// The whole number digits, times 10^power.
struct Decimal {
  std::uint64_t digits = 0;
  int power = 0;
};

// "1.25e+02"
Decimal decimal_of(std::string_view scientific) {
  const std::size_t e = scientific.find('e');
  Decimal out;
  out.power = std::atoi(std::string(scientific.substr(e + 1)).c_str());
  bool after_point = false;
  for (const char c : scientific.substr(0, e)) {
    if (c == '.') {
      after_point = true;
      continue;
    }
    out.digits = out.digits * 10 + static_cast<std::uint64_t>(c - '0');
    if (after_point) --out.power;
  }
  return out;
}

Twofold value_of(std::uint64_t digits, int power) {
  const Twofold value(digits);
  return power >= 0 ? value * power_of_ten(power) : value / power_of_ten(-power);
}

// In the unit, as a reader takes it.
double read_back(std::uint64_t digits, int power, const Unit& unit) {
  return in_base(value_of(digits, power), unit).nearest();
}

std::string decimal(std::uint64_t digits, int power) {
  for (; digits % 10 == 0 && digits != 0; ++power) digits /= 10;
  std::string text = fmt::format("{}", digits);
  if (power >= 0) return text.append(static_cast<std::size_t>(power), '0');
  const auto decimals = static_cast<std::size_t>(-power);
  if (text.size() <= decimals) text.insert(0, decimals + 1 - text.size(), '0');
  return text.insert(text.size() - decimals, 1, '.');
}

}  // namespace

Twofold power_of_ten(int power) {
  Twofold out(1.0);
  for (; power > 0; --power) out = out * Twofold(10.0);
  return out;
}

bool in_range(double base) noexcept {
  return base == 0 || (base >= least_quantity && base <= most_quantity);
}

Twofold in_base(const Twofold& value, const Unit& unit) {
  return value * Twofold(unit.over) / Twofold(unit.under);
}

Twofold in_unit(double base, const Unit& unit) {
  return Twofold(base) * Twofold(unit.under) / Twofold(unit.over);
}

Twofold as_written(double value) {
  std::array<char, 32> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::scientific).ptr;
  const auto [digits, power] = decimal_of({text.data(), static_cast<std::size_t>(end - text.data())});
  return value_of(digits, power);
}

std::string shortest(double base, const Unit& unit) {
  if (base == 0) return "0";
  const double value = in_unit(base, unit).nearest();
  // The value is known to a double, so of `n` digits the last may be off by what a double is off: by up to 12 in the
  // seventeenth, and by no more than 1 before the sixteenth.
  for (int n = 1; n <= most_digits; ++n) {
    const auto [digits, power] = decimal_of(fmt::format("{:.{}e}", value, n - 1));
    const std::uint64_t off = n == most_digits ? 12 : n == most_digits - 1 ? 2 : 0;
    for (std::uint64_t i = 0; i <= off; ++i) {
      if (read_back(digits + i, power, unit) == base) return decimal(digits + i, power);
      if (i > 0 && read_back(digits - i, power, unit) == base) return decimal(digits - i, power);
    }
  }
  throw Error(ErrorCode::internal, {},
              "no decimal number of 17 digits is nearest, though they lie closer than doubles");
}

}  // namespace latchwork::inline v0
