#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "latchwork/gauge.hpp"
#include "quantity/reader.hpp"
#include "quantity/units.hpp"
#include "text/csv_table.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0 {
namespace {

enum Column : std::size_t { texture, counted, count, length, unit, place, swatch, state };
constexpr std::array columns = {CsvColumn{"texture", true}, CsvColumn{"counted", true}, CsvColumn{"count", true},
                                CsvColumn{"length", true},  CsvColumn{"unit", false},   CsvColumn{"place", false},
                                CsvColumn{"swatch", false}, CsvColumn{"state", false}};

LengthUnit unit_in(const CsvTable& table) {
  const std::string_view text = table.text(unit);
  // "in." as read_length() takes it: a point may follow letters.
  const bool point = text.size() > 1 && text.back() == '.';
  const Unit* found = unit_named(point ? text.substr(0, text.size() - 1) : text);
  if (point && found != nullptr && (text.front() < 'a' || text.front() > 'z')) found = nullptr;
  if (found != nullptr && found->kind == Kind::length) return static_cast<LengthUnit>(found->number);
  const std::string_view all = unit_list(Kind::length);
  table.refuse(ErrorCode::bad_unit, unit,
               text.empty() ? fmt::format("the unit is missing; it must be {}", all)
                            : fmt::format("'{}' is no unit of length; it must be {}", shown(text), all));
}

/// A decimal number or a fraction, as all quantities are written: "28", "28.5", "28 1/2".
double number_in(const CsvTable& table, Column column) {
  const std::string_view text = table.text(column);
  try {
    QuantityReader reader(text, "");
    reader.pass_over_blanks();
    const double value = reader.number().nearest();
    reader.require_end();
    return value;
  } catch (const Error& error) {
    // Whatever a field holds that is no number is one thing here.
    const Place where = table.place(column);
    throw Error(ErrorCode::bad_value, where, fmt::format("{}: '{}', {}", named(where), shown(text), error.what()));
  }
}

// Of a file without a column for units: each length has its own.
double length_with_unit(const CsvTable& table) {
  try {
    return read_length(table.text(length)).mm;
  } catch (const Error& error) {
    Place where = table.place(length);
    where.character = error.place().character;
    throw Error(error.code(), where,
                fmt::format("{}: '{}', {}", named(where), shown(table.text(length)), error.what()));
  }
}

double length_mm_in(const CsvTable& table) {
  if (!table.has(unit)) return length_with_unit(table);
  const double in_unit = number_in(table, length);
  const LengthUnit of = unit_in(table);
  // What is far out of range, and no length for read_length() either, is refused below.
  if (!(in_unit >= 0.001 && in_unit <= 1e6)) return in_unit * length_of(1, of).mm;
  return read_length(fmt::format("{} {}", table.text(length), table.text(unit))).mm;
}

Counted counted_as(const CsvTable& table) {
  const std::string_view text = table.text(counted);
  if (text == "stitches") return Counted::stitches;
  if (text == "rows") return Counted::rows;
  table.refuse(ErrorCode::bad_value, counted,
               fmt::format("'{}' cannot be counted; it must be stitches or rows", shown(text)));
}

ClothState state_in(const CsvTable& table) {
  const std::string_view text = table.text(state);
  if (text.empty()) return ClothState::rested;
  for (const ClothState each : {ClothState::off_machine, ClothState::rested, ClothState::washed}) {
    if (text == cloth_state_name(each)) return each;
  }
  table.refuse(ErrorCode::bad_value, state,
               fmt::format("'{}' is no state of a cloth; it must be off the machine, rested or washed", shown(text)));
}

Measurement measurement(const CsvTable& table) {
  Measurement out;
  out.texture = table.text(texture);
  out.counted = counted_as(table);
  out.count = number_in(table, count);
  out.length_mm = length_mm_in(table);
  out.place = table.text(place);
  out.swatch = table.text(swatch);
  out.state = state_in(table);
  out.line = table.line();
  require_measurement(
      out, [&](std::string_view field) { return table.place_of(field == "length_mm" ? columns[length].name : field); });
  return out;
}

}  // namespace

Swatch read_swatch(std::string_view csv) {
  CsvTable table(csv, columns, max_swatch_bytes);
  std::vector<Measurement> measurements;
  while (table.next()) {
    require_measurements(measurements.size() + 1, table.place());
    measurements.push_back(measurement(table));
  }
  return Swatch(std::move(measurements));
}

std::string write(const Swatch& swatch) {
  const auto all = swatch.measurements();
  const bool swatches = std::any_of(all.begin(), all.end(), [](const Measurement& m) { return !m.swatch.empty(); });
  const bool states =
      std::any_of(all.begin(), all.end(), [](const Measurement& m) { return m.state != ClothState::rested; });
  std::string out =
      fmt::format("texture,counted,count,length,unit,place{}{}\n", swatches ? ",swatch" : "", states ? ",state" : "");
  for (const Measurement& m : all) {
    out += fmt::format("{},{},{},{},mm,{}", csv_field(m.texture), m.counted == Counted::stitches ? "stitches" : "rows",
                       m.count, m.length_mm, csv_field(m.place));
    if (swatches) out += "," + csv_field(m.swatch);
    if (states) out += fmt::format(",{}", cloth_state_name(m.state));
    out += "\n";
  }
  return out;
}

}  // namespace latchwork::inline v0
