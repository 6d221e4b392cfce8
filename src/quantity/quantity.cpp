#include "latchwork/quantity.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "quantity/number.hpp"
#include "quantity/reader.hpp"
#include "quantity/units.hpp"
#include "text/duration.hpp"

namespace latchwork::inline v0 {
namespace {

void require_base(std::string_view field, double base) {
  if (in_range(base)) return;
  refuse(ErrorCode::bad_argument, std::string(field),
         fmt::format("{} is {}; it must be 0 or {}..{}", field, base, least_quantity, most_quantity));
}

double base_of(double value, const Unit& unit) {
  // Checked before it is multiplied, so that nothing overflows on the way.
  if (!(value >= 0 && value <= most_quantity * unit.under)) {
    refuse(ErrorCode::bad_argument, "value",
           fmt::format("value is {}; it must be 0 or more, and no {} is over {} {}", value, kind_name(unit.kind),
                       most_quantity, units(unit.kind).front().name));
  }
  const double base = in_base(as_written(value), unit).nearest();
  if (!in_range(base)) {
    refuse(ErrorCode::bad_argument, "value",
           fmt::format("value is {} {}; a {} is 0 or {}..{} {}", value, unit.name, kind_name(unit.kind), least_quantity,
                       most_quantity, units(unit.kind).front().name));
  }
  return base;
}

// The number that is written: of 101.6 mm, which no double is, 4 in.
double number_in(double base, const Unit& unit) {
  const std::string text = shortest(base, unit);
  double value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

struct CountedWord {
  std::string_view word;
  Counted counted;
};
constexpr std::array counted_words = {
    CountedWord{"sts", Counted::stitches},    CountedWord{"st", Counted::stitches},
    CountedWord{"stitch", Counted::stitches}, CountedWord{"stitches", Counted::stitches},
    CountedWord{"wale", Counted::stitches},   CountedWord{"wales", Counted::stitches},
    CountedWord{"row", Counted::rows},        CountedWord{"rows", Counted::rows},
    CountedWord{"course", Counted::rows},     CountedWord{"courses", Counted::rows},
};

Counted counted(QuantityReader& reader) {
  const std::size_t from = reader.at();
  const std::string_view word = reader.word();
  for (const CountedWord& each : counted_words) {
    if (each.word == word) return each.counted;
  }
  reader.refuse(ErrorCode::bad_unit, from,
                word.empty() ? "what was counted is missing; write sts or rows"
                             : fmt::format("'{}' cannot be counted; write sts or rows", word));
}

bool pass_over_per(QuantityReader& reader) {
  if (reader.pass_over("/") || reader.pass_over("=")) return true;
  const std::string_view word = reader.word();
  return word == "per" || word == "to" || word == "over";
}

void require_count(const CountPerLength& density) {
  if (density.counted != Counted::stitches && density.counted != Counted::rows) {
    refuse(ErrorCode::bad_argument, "counted",
           fmt::format("counted is {}; it must be 0 (stitches) or 1 (rows)", static_cast<int>(density.counted)));
  }
  for (const auto& [field, value] : {std::pair<std::string_view, double>{"count", density.count},
                                     std::pair<std::string_view, double>{"length_mm", density.length_mm}}) {
    if (value > 0 && in_range(value)) continue;
    refuse(ErrorCode::bad_argument, std::string(field),
           fmt::format("{} is {}; it must be {}..{}", field, value, least_quantity, most_quantity));
  }
}

void require_duration(const Duration& duration) {
  if (duration.ms < 0 || duration.ms > static_cast<std::int64_t>(most_quantity)) {
    refuse(ErrorCode::bad_argument, "ms", fmt::format("ms is {}; it must be 0..{}", duration.ms, most_quantity));
  }
}

}  // namespace

Length read_length(std::string_view text, std::string_view field) {
  QuantityReader reader(text, field);
  const Twofold out = reader.quantity(Kind::length);
  reader.require_end();
  return {out.nearest()};
}

Weight read_weight(std::string_view text, std::string_view field) {
  QuantityReader reader(text, field);
  const Twofold out = reader.quantity(Kind::weight);
  reader.require_end();
  return {out.nearest()};
}

Duration read_duration(std::string_view text, std::string_view field) {
  QuantityReader reader(text, field);
  reader.pass_over_blanks();
  const std::size_t from = reader.at();
  const Twofold out = reader.quantity(Kind::duration);
  reader.require_end();
  // A Twofold may be off by a little less; what 22 decimals can lack of a whole number is more, up to some hours.
  constexpr double whole_within = 1e-29;
  const double whole = std::round(out.nearest());
  const Twofold apart = out + Twofold(-whole);
  if (std::abs(apart.nearest()) > whole_within * (whole + 1)) {
    reader.refuse(ErrorCode::bad_value, from, "it is not a whole number of milliseconds");
  }
  return {static_cast<std::int64_t>(whole)};
}

CountPerLength read_count_per_length(std::string_view text, std::string_view field) {
  QuantityReader reader(text, field);
  CountPerLength out;
  reader.pass_over_blanks();
  const std::size_t from = reader.at();
  out.count = reader.number().nearest();
  if (!(out.count > 0 && in_range(out.count))) {
    reader.refuse(ErrorCode::bad_value, from, fmt::format("the count must be {} to {}", least_quantity, most_quantity));
  }
  reader.pass_over_blanks();
  out.counted = counted(reader);
  reader.pass_over_blanks();
  const std::size_t per = reader.at();
  if (!pass_over_per(reader)) {
    reader.refuse(ErrorCode::bad_syntax, per, "the length is missing; write as in 28 sts / 10 cm");
  }
  reader.pass_over_blanks();
  const std::size_t length = reader.at();
  QuantityReader ahead = reader;
  const bool unit_alone = !ahead.word().empty();
  out.length_mm =
      (unit_alone ? in_base(Twofold(1.0), reader.unit(Kind::length)) : reader.quantity(Kind::length)).nearest();
  if (out.length_mm == 0) reader.refuse(ErrorCode::bad_value, length, "the length is 0");
  reader.pass_over_blanks();
  const std::size_t second = reader.at();
  if (reader.pass_over("/") || reader.pass_over("=") || reader.pass_over("(")) {
    reader.refuse(ErrorCode::bad_unit, second,
                  "a second length: 10 cm and 4 in (101.6 mm) are not the same; write the one that was measured");
  }
  reader.require_end();
  return out;
}

std::string length_text(const Length& length, LengthUnit unit) {
  const Unit& in = unit_of(unit);
  require_base("mm", length.mm);
  return fmt::format("{} {}", shortest(length.mm, in), in.name);
}

std::string weight_text(const Weight& weight, WeightUnit unit) {
  const Unit& in = unit_of(unit);
  require_base("g", weight.g);
  return fmt::format("{} {}", shortest(weight.g, in), in.name);
}

std::string rounded_duration_text(const Duration& duration) {
  require_duration(duration);
  return rounded_duration(duration.ms);
}

std::string duration_text(const Duration& duration) {
  require_duration(duration);
  std::string text;
  std::int64_t left = duration.ms;
  const auto all = units(Kind::duration);
  for (std::size_t i = all.size(); i-- > 0;) {
    const auto size = static_cast<std::int64_t>(all[i].over);
    if (left >= size) text += fmt::format("{}{} {}", text.empty() ? "" : " ", left / size, all[i].name);
    left %= size;
  }
  return text.empty() ? "0 s" : text;
}

std::string count_per_length_text(const CountPerLength& density, LengthUnit unit) {
  const Unit& in = unit_of(unit);
  require_count(density);
  return fmt::format("{} {} / {} {}", shortest(density.count, units(Kind::length).front()),
                     density.counted == Counted::stitches ? "sts" : "rows", shortest(density.length_mm, in), in.name);
}

Length length_of(double value, LengthUnit unit) {
  return {base_of(value, unit_of(unit))};
}

double length_in(const Length& length, LengthUnit unit) {
  const Unit& in = unit_of(unit);
  require_base("mm", length.mm);
  return number_in(length.mm, in);
}

Weight weight_of(double value, WeightUnit unit) {
  return {base_of(value, unit_of(unit))};
}

double weight_in(const Weight& weight, WeightUnit unit) {
  const Unit& in = unit_of(unit);
  require_base("g", weight.g);
  return number_in(weight.g, in);
}

double per_10cm(const CountPerLength& density) {
  require_count(density);
  const double out = (Twofold(density.count) * Twofold(100.0) / Twofold(density.length_mm)).nearest();
  if (!in_range(out) || out == 0) {
    refuse(ErrorCode::bad_value, "count",
           fmt::format("{} over {} mm are {} per 10 cm; that must be {}..{}", density.count, density.length_mm, out,
                       least_quantity, most_quantity));
  }
  return out;
}

}  // namespace latchwork::inline v0
