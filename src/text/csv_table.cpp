#include "text/csv_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <iterator>
#include <system_error>

#include "text/near_name.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

Place at(int line, std::string_view field) {
  Place out;
  out.line = line;
  out.field = field;
  return out;
}

[[noreturn]] void refuse_at(ErrorCode code, int line, std::string_view field, const std::string& message) {
  throw Error(code, at(line, field), fmt::format("line {}, field {}: {}", line, field, message));
}

std::string_view checked(std::string_view text, std::size_t max_bytes) {
  if (text.size() > max_bytes) {
    Place past;
    past.line = line_of(text, max_bytes);
    throw Error(ErrorCode::too_large, past,
                fmt::format("line {}: {} bytes of CSV; the limit is {}", past.line, text.size(), max_bytes));
  }
  require_utf8(text);
  return without_byte_order_mark(text);
}

std::string list_of(std::span<const CsvColumn> columns) {
  std::string out;
  for (const CsvColumn& column : columns) out += (out.empty() ? "" : ", ") + std::string(column.name);
  return out;
}

}  // namespace

CsvTable::CsvTable(std::string_view text, std::span<const CsvColumn> columns, std::size_t max_bytes)
    : columns_(columns), reader_(checked(text, max_bytes)), where_(columns.size(), nowhere) {
  if (!reader_.next(record_)) {
    std::size_t first = 0;
    while (!columns_[first].required) ++first;
    refuse_at(ErrorCode::missing_field, 1, columns_[first].name, "the file is empty; its first line names the columns");
  }
  read_header();
}

void CsvTable::read_header() {
  fields_ = record_.fields.size();
  for (std::size_t i = 0; i < fields_; ++i) {
    const std::string& name = record_.fields[i];
    const int line = record_.lines[i];
    std::size_t column = 0;
    while (column < columns_.size() && columns_[column].name != name) ++column;
    if (column == columns_.size()) {
      if (name.empty()) {
        refuse_at(ErrorCode::unknown_field, line, fmt::format("column {}", i + 1), "the header has no name for it");
      }
      const bool other_comma = name.find_first_of(";\t") != std::string::npos;
      refuse_at(ErrorCode::unknown_field, line, shown(name),
                other_comma
                    ? "fields are told apart by commas, not by semicolons or tabs"
                    : "no such column" + perhaps_meant(name, absent()) + "; the columns are " + list_of(columns_));
    }
    if (has(column)) refuse_at(ErrorCode::duplicate_key, line, name, "the header names this column twice");
    where_[column] = i;
  }
  for (std::size_t column = 0; column < columns_.size(); ++column) {
    if (columns_[column].required && !has(column)) {
      refuse_at(ErrorCode::missing_field, record_.line, columns_[column].name, "the header does not name this column");
    }
  }
}

// Of the columns, those that the header does not name anywhere: the others were not meant a second time.
std::vector<std::string_view> CsvTable::absent() const {
  std::vector<std::string_view> names;
  for (const CsvColumn& column : columns_) {
    const auto& named = record_.fields;
    if (std::find(named.begin(), named.end(), column.name) == named.end()) names.push_back(column.name);
  }
  return names;
}

bool CsvTable::next() {
  if (!reader_.next(record_)) return false;
  if (record_.fields.size() == fields_) return true;
  const char* hint = record_.fields.size() > fields_ ? " (a decimal comma? numbers have a decimal point)" : "";
  throw Error(ErrorCode::bad_syntax, place(),
              fmt::format("line {} has {}; the header names {}{}", record_.line,
                          count_of(std::ssize(record_.fields), "field"), fields_, hint));
}

std::string_view CsvTable::text(std::size_t column) const {
  return has(column) ? std::string_view(record_.fields[where_[column]]) : std::string_view();
}

double CsvTable::number(std::size_t column) const {
  const std::string_view digits = text(column);
  double value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error == std::errc::result_out_of_range) {
    refuse(ErrorCode::bad_value, column, fmt::format("'{}' is out of range", shown(digits)));
  }
  // from_chars also takes "inf" and "nan", and stops before what it does not know.
  if (error != std::errc() || end != digits.data() + digits.size() || !std::isfinite(value)) {
    const bool comma = digits.find(',') != std::string_view::npos;
    refuse(ErrorCode::bad_value, column,
           fmt::format("'{}' is not a number{}", shown(digits), comma ? "; numbers have a decimal point" : ""));
  }
  return value;
}

Place CsvTable::place(std::size_t column) const {
  return at(has(column) ? record_.lines[where_[column]] : record_.line, columns_[column].name);
}

Place CsvTable::place() const {
  return at(record_.line, "");
}

Place CsvTable::place_of(std::string_view field) const {
  for (std::size_t column = 0; column < columns_.size(); ++column) {
    if (columns_[column].name == field) return place(column);
  }
  return at(record_.line, field);
}

void CsvTable::refuse(ErrorCode code, std::size_t column, const std::string& message) const {
  const Place where = place(column);
  refuse_at(code, where.line, where.field, message);
}

void require_field_text(std::string_view text, std::size_t most_bytes, const Place& place) {
  if (text.size() > most_bytes) {
    throw Error(ErrorCode::bad_value, place,
                fmt::format("{} takes {} bytes; the limit is {}", named(place), text.size(), most_bytes));
  }
  if (text.find('\0') != std::string_view::npos) {
    throw Error(ErrorCode::bad_value, place, fmt::format("{} holds a NUL character", named(place)));
  }
  if (const std::size_t bad = utf8_error(text); bad != std::string_view::npos) {
    throw Error(ErrorCode::bad_encoding, place,
                fmt::format("{} holds a byte that is not UTF-8 (offset {})", named(place), bad));
  }
}

std::string named(const Place& place) {
  return place.line > 0 ? fmt::format("line {}, field {}", place.line, place.field) : place.field;
}

}  // namespace latchwork::inline v0
