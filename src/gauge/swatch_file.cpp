#include <fmt/format.h>

#include <array>
#include <utility>

#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "latchwork/gauge.hpp"
#include "text/csv_table.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0 {
namespace {

enum Column : std::size_t { texture, counted, count, length, unit, place };
constexpr std::array columns = {CsvColumn{"texture", true}, CsvColumn{"counted", true}, CsvColumn{"count", true},
                                CsvColumn{"length", true},  CsvColumn{"unit", true},    CsvColumn{"place", false}};

LengthUnit unit_in(const CsvTable& table) {
  const std::string_view text = table.text(unit);
  if (text == "mm") return LengthUnit::mm;
  if (text == "cm") return LengthUnit::cm;
  if (text == "in") return LengthUnit::inch;
  table.refuse(ErrorCode::bad_unit, unit,
               text.empty() ? std::string("the unit is missing; it must be mm, cm or in")
                            : fmt::format("'{}' is no unit of length here; it must be mm, cm or in", shown(text)));
}

Counted counted_as(const CsvTable& table) {
  const std::string_view text = table.text(counted);
  if (text == "stitches") return Counted::stitches;
  if (text == "rows") return Counted::rows;
  table.refuse(ErrorCode::bad_value, counted,
               fmt::format("'{}' cannot be counted; it must be stitches or rows", shown(text)));
}

Measurement measurement(const CsvTable& table) {
  Measurement out;
  out.texture = table.text(texture);
  out.counted = counted_as(table);
  out.count = table.number(count);
  const double in_unit = table.number(length);
  const LengthUnit of = unit_in(table);
  // The same length as read_length() makes of it, but for what is far out of range and refused below.
  out.length_mm = in_unit >= 0.001 && in_unit <= 1e6 ? length_of(in_unit, of).mm : in_unit * length_of(1, of).mm;
  out.place = table.text(place);
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
  std::string out = "texture,counted,count,length,unit,place\n";
  for (const Measurement& m : swatch.measurements()) {
    out += fmt::format("{},{},{},{},mm,{}\n", csv_field(m.texture),
                       m.counted == Counted::stitches ? "stitches" : "rows", m.count, m.length_mm, csv_field(m.place));
  }
  return out;
}

}  // namespace latchwork::inline v0
