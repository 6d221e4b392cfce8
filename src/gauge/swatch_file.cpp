#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <system_error>
#include <utility>

#include "gauge/csv.hpp"
#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "latchwork/gauge.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0 {
namespace {

enum Column : std::size_t { texture, counted, count, length, unit, place, columns };
constexpr std::array<std::string_view, columns> column_names = {"texture", "counted", "count",
                                                                "length",  "unit",    "place"};
constexpr std::size_t nowhere = static_cast<std::size_t>(-1);
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

Place at(int line, std::string_view field) {
  Place out;
  out.line = line;
  out.field = field;
  return out;
}

[[noreturn]] void refuse(ErrorCode code, int line, std::string_view field, const std::string& message) {
  throw Error(code, at(line, field), fmt::format("line {}, field {}: {}", line, field, message));
}

// As it stands in a message: short, and never cut inside a character.
std::string shown(std::string_view text) {
  constexpr std::size_t most = 40;
  if (text.size() <= most) return std::string(text);
  std::size_t cut = most;
  while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xC0U) == 0x80U) --cut;
  return std::string(text.substr(0, cut)) + "...";
}

// Which field of a record each column is.
class Header {
 public:
  explicit Header(const CsvRecord& record) : line_(record.line), fields_(record.fields.size()) {
    where_.fill(nowhere);
    for (std::size_t i = 0; i < record.fields.size(); ++i) {
      const std::string& name = record.fields[i];
      const int line = record.lines[i];
      std::size_t column = 0;
      while (column < columns && column_names[column] != name) ++column;
      if (column == columns) {
        const bool other_comma = name.find_first_of(";\t") != std::string::npos;
        refuse(ErrorCode::unknown_field, line, shown(name),
               other_comma ? "fields are told apart by commas, not by semicolons or tabs"
                           : "no such column; the columns are texture, counted, count, length, unit, place");
      }
      if (where_[column] != nowhere) refuse(ErrorCode::duplicate_key, line, name, "the header names this column twice");
      where_[column] = i;
    }
    for (const Column column : {texture, counted, count, length, unit}) {
      if (where_[column] == nowhere) {
        refuse(ErrorCode::missing_field, line_, column_names[column], "the header does not name this column");
      }
    }
  }

  void require_fields(const CsvRecord& record) const {
    if (record.fields.size() == fields_) return;
    const char* hint = record.fields.size() > fields_ ? " (a decimal comma? numbers have a decimal point)" : "";
    throw Error(
        ErrorCode::bad_syntax, at(record.line, ""),
        fmt::format("line {} has {} fields; the header names {}{}", record.line, record.fields.size(), fields_, hint));
  }

  bool has(Column column) const { return where_[column] != nowhere; }
  const std::string& text(const CsvRecord& record, Column column) const { return record.fields[where_[column]]; }
  int line(const CsvRecord& record, Column column) const {
    return has(column) ? record.lines[where_[column]] : record.line;
  }

 private:
  int line_;
  std::size_t fields_;
  std::array<std::size_t, columns> where_{};
};

double number(std::string_view text, int line, std::string_view field) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error == std::errc::result_out_of_range) {
    refuse(ErrorCode::bad_value, line, field, fmt::format("'{}' is out of range", shown(text)));
  }
  // from_chars also takes "inf" and "nan", and stops before what it does not know.
  if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) {
    const bool comma = text.find(',') != std::string_view::npos;
    refuse(ErrorCode::bad_value, line, field,
           fmt::format("'{}' is not a number{}", shown(text), comma ? "; numbers have a decimal point" : ""));
  }
  return value;
}

double mm_in(std::string_view text, int line) {
  if (text == "mm") return 1;
  if (text == "cm") return 10;
  if (text == "in") return 25.4;
  refuse(ErrorCode::bad_unit, line, column_names[unit],
         text.empty() ? std::string("the unit is missing; it must be mm, cm or in")
                      : fmt::format("'{}' is no unit of length here; it must be mm, cm or in", shown(text)));
}

Counted counted_as(std::string_view text, int line) {
  if (text == "stitches") return Counted::stitches;
  if (text == "rows") return Counted::rows;
  refuse(ErrorCode::bad_value, line, column_names[counted],
         fmt::format("'{}' cannot be counted; it must be stitches or rows", shown(text)));
}

Measurement measurement(const Header& header, const CsvRecord& record) {
  Measurement out;
  const auto line = [&](Column column) { return header.line(record, column); };
  out.texture = header.text(record, texture);
  out.counted = counted_as(header.text(record, counted), line(counted));
  out.count = number(header.text(record, count), line(count), column_names[count]);
  const double in_unit = number(header.text(record, length), line(length), column_names[length]);
  out.length_mm = in_unit * mm_in(header.text(record, unit), line(unit));
  if (header.has(place)) out.place = header.text(record, place);
  require_measurement(out, [&](std::string_view field) {
    const std::string_view name = field == "length_mm" ? column_names[length] : field;
    for (std::size_t i = 0; i < columns; ++i) {
      if (column_names[i] == name) return at(line(static_cast<Column>(i)), name);
    }
    return at(record.line, name);
  });
  return out;
}

}  // namespace

Swatch read_swatch(std::string_view csv) {
  if (csv.size() > max_swatch_bytes) {
    throw Error(ErrorCode::too_large, {},
                fmt::format("{} bytes of CSV; the limit is {}", csv.size(), max_swatch_bytes));
  }
  require_utf8(csv);
  if (csv.starts_with(byte_order_mark)) csv.remove_prefix(byte_order_mark.size());
  CsvReader reader(csv);
  CsvRecord record;
  if (!reader.next(record)) {
    refuse(ErrorCode::missing_field, 1, column_names[texture], "the file is empty; its first line names the columns");
  }
  const Header header(record);
  std::vector<Measurement> measurements;
  while (reader.next(record)) {
    header.require_fields(record);
    require_measurements(measurements.size() + 1, at(record.line, ""));
    measurements.push_back(measurement(header, record));
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
