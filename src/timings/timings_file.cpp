#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string>
#include <system_error>
#include <utility>

#include "latchwork/error.hpp"
#include "latchwork/timings.hpp"
#include "text/csv_table.hpp"
#include "text/utf8.hpp"
#include "timings/counts.hpp"

namespace latchwork::inline v0 {
namespace {

using timing::counts;

constexpr std::size_t time = counts.size();
constexpr std::size_t unit = time + 1;
constexpr std::size_t note = time + 2;

constexpr auto columns = [] {
  std::array<CsvColumn, counts.size() + 3> out{};
  for (std::size_t i = 0; i < counts.size(); ++i) out[i].name = counts[i].name;
  out[time] = {"time", true};
  out[unit] = {"unit", true};
  out[note] = {"note", false};
  return out;
}();

// A whole number; nothing is 0. Its range is checked with the spell's other fields, but for what no int holds.
int count_of(const CsvTable& table, std::size_t column) {
  const std::string_view digits = table.text(column);
  if (digits.empty()) return 0;
  int value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error == std::errc::result_out_of_range) {
    table.refuse(ErrorCode::bad_value, column,
                 fmt::format("'{}' is out of range; it must be 0..{}", shown(digits), max_spell_count));
  }
  if (error != std::errc() || end != digits.data() + digits.size()) {
    table.refuse(ErrorCode::bad_value, column, fmt::format("'{}' is not a whole number", shown(digits)));
  }
  return value;
}

double ms_in(const CsvTable& table) {
  const std::string_view text = table.text(unit);
  if (text == "ms") return 1;
  if (text == "s") return 1'000;
  if (text == "min") return 60'000;
  if (text == "h") return 3'600'000;
  table.refuse(ErrorCode::bad_unit, unit,
               text.empty() ? std::string("the unit is missing; it must be ms, s, min or h")
                            : fmt::format("'{}' is no unit of time here; it must be ms, s, min or h", shown(text)));
}

std::int64_t time_ms(const CsvTable& table) {
  const double ms = table.number(time) * ms_in(table);
  const std::string_view digits = table.text(time);
  // Here and not with the other fields, since what is beyond an int64 must not be made one.
  if (!(ms > 0 && ms <= static_cast<double>(max_spell_ms))) {
    const std::string much = std::isfinite(ms) ? fmt::format("{} ms", ms) : std::string("out of range");
    table.refuse(
        ErrorCode::bad_value, time,
        fmt::format("'{}' {} is {}; it must be 1..{} ms", shown(digits), table.text(unit), much, max_spell_ms));
  }
  if (digits.find_first_not_of("0123456789.") != std::string_view::npos) {
    table.refuse(ErrorCode::bad_value, time,
                 fmt::format("'{}' is not digits with or without a decimal point", shown(digits)));
  }
  if (digits.ends_with('.')) {
    table.refuse(ErrorCode::bad_value, time, fmt::format("'{}' has a point without a digit after it", shown(digits)));
  }
  // As read_duration(): what is no whole number is refused, not rounded; digit by digit, since few are whole as
  // doubles.
  const std::size_t point = std::min(digits.find('.'), digits.size());
  std::string_view after = digits.substr(std::min(point + 1, digits.size()));
  while (after.ends_with('0')) after.remove_suffix(1);
  const auto one = static_cast<std::int64_t>(ms_in(table));
  std::int64_t whole = 0;
  for (const char digit : digits.substr(0, point)) whole = 10 * whole + (digit - '0');
  constexpr std::size_t most_places = 7;  // an hour's milliseconds have seven factors 2, and fewer 5
  std::int64_t fraction = 0;
  std::int64_t tens = 1;
  for (const char digit : after.substr(0, most_places)) {
    fraction = 10 * fraction + (digit - '0');
    tens *= 10;
  }
  if (after.size() > most_places || fraction * one % tens != 0) {
    table.refuse(ErrorCode::bad_value, time,
                 fmt::format("'{}' {} is not a whole number of milliseconds", shown(digits), table.text(unit)));
  }
  return whole * one + fraction * one / tens;
}

Spell spell_of(const CsvTable& table) {
  Spell out;
  for (std::size_t i = 0; i < counts.size(); ++i) out.*counts[i].count = count_of(table, i);
  out.time_ms = time_ms(table);
  out.note = table.text(note);
  out.line = table.line();
  timing::require_spell(out,
                        [&](std::string_view field) { return table.place_of(field == "time_ms" ? "time" : field); });
  return out;
}

void require_a_count(const CsvTable& table) {
  for (std::size_t i = 0; i < counts.size(); ++i) {
    if (table.has(i)) return;
  }
  table.refuse(ErrorCode::missing_field, 0, "the header names no column of what was done, such as stops or rows");
}

}  // namespace

Timings read_timings(std::string_view csv) {
  CsvTable table(csv, columns, max_timings_bytes);
  require_a_count(table);
  std::vector<Spell> spells;
  while (table.next()) {
    timing::require_spells(spells.size() + 1, table.place());
    spells.push_back(spell_of(table));
  }
  return Timings(std::move(spells));
}

std::string write(const Timings& timings) {
  std::string out;
  for (const CsvColumn& column : columns) out += std::string(out.empty() ? "" : ",") + std::string(column.name);
  out += '\n';
  for (const Spell& spell : timings.spells()) {
    for (const auto& count : counts) out += fmt::format("{},", spell.*count.count);
    out += fmt::format("{},ms,{}\n", spell.time_ms, csv_field(spell.note));
  }
  return out;
}

}  // namespace latchwork::inline v0
