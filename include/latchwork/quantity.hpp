#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

// Quantities have a type each, so that no length is taken for a weight, and one unit inside, which is the member's
// name.
//
// Text, as people write it: a number and a unit, "45 cm", "17 3/4 in". A number has a decimal point and at most 17
// digits, or is a fraction with or without a whole number ("3/4", "17 3/4", "17¾"); no sign, no exponent, no thousands
// separator, no decimal comma. Several units of one system may follow each other, the greater first: "5 ft 6 in", "1 h
// 20 min"; metric and inch units in one length or weight are refused. Blanks between are free; one full stop may follow
// a unit ("17 in."). Units are written in small letters:
//   length    mm, cm, m, in, ft, yd; also inch, inches, foot, feet, yds, yard, yards, and " or ″ for inches. ' is
//             refused: it stands for feet in some places and for minutes in others
//   weight    g, kg, oz, lb, grain; also gram, grams, ounce, ounces, lbs, pound, pounds, grains. "gr" is refused: some
//             mean grams by it, some grains
//   duration  h, min, s, ms; also hr, hrs, hour, hours, mins, minute, minutes, sec, secs, second, seconds
//
// What is read is the double nearest to what is written: "17.75 in" is 450.85 mm, and equal to "45.085 cm". Inch 25.4
// mm, foot 0.3048 m, yard 0.9144 m and pound 453.59237 g are exact (agreement of the national standards laboratories,
// Federal Register 24 FR 5348, 1959; NIST SP 811, appendix B.8); the ounce is a sixteenth of the pound, 28.349523125 g
// (avoirdupois), the grain a seven-thousandth, 64.79891 mg.
//
// Every reader throws Error with `field`, as the caller named it, and the character where it went wrong (Place):
// bad_syntax for what is no quantity; bad_unit for a unit that is missing, unknown, ambiguous, of another kind than
// asked for, or of another system than the unit before; bad_value for a value out of range, a minus sign, a fraction of
// nothing; bad_encoding; too_large for more than max_quantity_bytes. No value is rounded silently to one out of range,
// none is ever NaN or infinite. Linear in the text.

inline constexpr std::size_t max_quantity_bytes = 256;

/// Units of length. The values are in the C ABI.
enum class LengthUnit : std::uint8_t {
  mm = 0,
  cm = 1,
  m = 2,
  inch = 3,  ///< 25.4 mm
  foot = 4,  ///< 12 in
  yard = 5,  ///< 36 in
};

/// Units of weight (textile: mass).
enum class WeightUnit : std::uint8_t {
  gram = 0,
  kilogram = 1,
  ounce = 2,  ///< 28.349523125 g, avoirdupois
  pound = 3,  ///< 16 oz
  grain = 4,  ///< 1/7000 lb
};

/// A length of cloth or yarn.
struct Length {
  double mm = 0;  ///< 0, or 1e-6..1e12
  friend auto operator<=>(const Length&, const Length&) = default;
};

/// A weight of cloth or yarn.
struct Weight {
  double g = 0;  ///< 0, or 1e-6..1e12
  friend auto operator<=>(const Weight&, const Weight&) = default;
};

/// A time that work takes.
struct Duration {
  std::int64_t ms = 0;  ///< 0..1e12
  friend auto operator<=>(const Duration&, const Duration&) = default;
};

/// What is counted on cloth.
enum class Counted : std::uint8_t { stitches = 0, rows = 1 };

/// Stitches or rows over a length, as they were counted: 28 over 10 cm and 28 over 4 in stay two things.
struct CountPerLength {
  Counted counted = Counted::stitches;
  double count = 0;      ///< 1e-6..1e12; parts of a stitch count
  double length_mm = 0;  ///< 1e-6..1e12: 10 cm is 100 mm, 4 in is 101.6 mm
  friend bool operator==(const CountPerLength&, const CountPerLength&) = default;
};

/// Length, "45 cm". `field` is what the caller calls it, for errors. Wants a unit even for 0.
/// @throws Error bad_syntax, bad_unit, bad_value, bad_encoding, too_large.
LATCHWORK_API Length read_length(std::string_view text, std::string_view field = {});
/// Weight, "50 g", "1.75 oz", "1 lb 4 oz". @throws Error bad_syntax, bad_unit, bad_value, bad_encoding, too_large.
LATCHWORK_API Weight read_weight(std::string_view text, std::string_view field = {});
/// Duration, "90 min", "1 h 20 min". What is not a whole number of milliseconds is bad_value, never rounded.
/// @throws Error bad_syntax, bad_unit, bad_value, bad_encoding, too_large.
LATCHWORK_API Duration read_duration(std::string_view text, std::string_view field = {});
/// Stitches or rows over a length: "28 sts / 10 cm", "7 sts/in", "28 rows per 4 in". Before the length stands /, per,
/// to, over or =; a length without a number is one of its unit. Words: st, sts, stitch, stitches, wale, wales; row,
/// rows, course, courses. The labels' "28 sts / 10 cm / 4 in" is refused (bad_unit): those are two lengths, 1.6 %
/// apart. A length of 0 is bad_value. @throws Error bad_syntax, bad_unit, bad_value, bad_encoding, too_large.
LATCHWORK_API CountPerLength read_count_per_length(std::string_view text, std::string_view field = {});

/// "450.85 mm": the shortest decimal number of that unit that reads back to an equal length. @throws Error bad_argument
/// (field "mm", "unit") for a length that is out of its range, a unit that is none.
LATCHWORK_API std::string length_text(const Length& length, LengthUnit unit);
/// "50 g", likewise. @throws Error bad_argument (field "g", "unit").
LATCHWORK_API std::string weight_text(const Weight& weight, WeightUnit unit);
/// "1 h 20 min", "2.5 s" as "2 s 500 ms", "0 s": reads back to an equal duration. @throws Error bad_argument (field
/// "ms").
LATCHWORK_API std::string duration_text(const Duration& duration);
/// For people, rounded: "40 s", "3 min 20 s", "12 min", "5 h 12 min"; from ten minutes on to the minute, and below a
/// second as it is ("0.5 s"). As summaries and instructions have it. @throws Error bad_argument (field "ms").
LATCHWORK_API std::string rounded_duration_text(const Duration& duration);
/// "28 sts / 10 cm", "7 sts / 1 in": reads back to an equal value. @throws Error bad_argument (field "counted",
/// "count", "length_mm", "unit").
LATCHWORK_API std::string count_per_length_text(const CountPerLength& density, LengthUnit unit);

/// The length of a number of units: of 0.1 it is that of the decimal 0.1, as if its text was read. @throws Error
/// bad_argument (field "value", "unit") for a value that is negative, not finite or makes a length out of range.
LATCHWORK_API Length length_of(double value, LengthUnit unit);
/// How many units a length is: the number that length_text() writes, so that 4 in are 4 in. @throws Error bad_argument
/// (field "mm", "unit").
LATCHWORK_API double length_in(const Length& length, LengthUnit unit);
/// The weight of a number of units, likewise. @throws Error bad_argument (field "value", "unit").
LATCHWORK_API Weight weight_of(double value, WeightUnit unit);
/// How many units a weight is, likewise. @throws Error bad_argument (field "g", "unit").
LATCHWORK_API double weight_in(const Weight& weight, WeightUnit unit);
/// Stitches or rows per 10 cm: count * 100 / length_mm, the nearest double. 28 over 4 in are 27.56 over 10 cm.
/// @throws Error bad_argument (field "counted", "count", "length_mm"); bad_value when the result is out of 1e-6..1e12.
LATCHWORK_API double per_10cm(const CountPerLength& density);

}  // namespace latchwork::inline v0
