#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "latchwork/error.hpp"
#include "text/csv.hpp"

namespace latchwork::inline v0 {

/// A column that a CSV file may have.
struct CsvColumn {
  std::string_view name;
  bool required = false;
};

/// A CSV file (UTF-8, a byte order mark passed over) whose first record names its columns, in any order. The columns
/// are asked for by their index in the list that the table is made with. Every refusal names line and field.
class CsvTable {
 public:
  /// Reads the header. `columns` must outlive the table.
  /// @throws Error too_large, bad_encoding, bad_syntax, missing_field, unknown_field, duplicate_key.
  CsvTable(std::string_view text, std::span<const CsvColumn> columns, std::size_t max_bytes);

  bool has(std::size_t column) const { return where_[column] != nowhere; }
  /// Goes on to the next record; false at the end. @throws Error bad_syntax, also for a record with more or fewer
  /// fields than the header names.
  bool next();

  // Of the record that next() came to. A column that the header does not name is empty.
  int line() const { return record_.line; }         ///< where the record begins
  std::string_view text(std::size_t column) const;  ///< the field
  double number(std::size_t column) const;          ///< @throws Error bad_value for what is no finite number
  Place place(std::size_t column) const;            ///< line and field
  Place place() const;                              ///< the record's line alone
  Place place_of(std::string_view field) const;     ///< place() of the column of that name
  [[noreturn]] void refuse(ErrorCode code, std::size_t column, const std::string& message) const;

 private:
  static constexpr std::size_t nowhere = static_cast<std::size_t>(-1);
  void read_header();
  std::vector<std::string_view> absent() const;

  std::span<const CsvColumn> columns_;
  CsvReader reader_;
  CsvRecord record_;
  std::vector<std::size_t> where_;  ///< index of each column's field in a record
  std::size_t fields_ = 0;
};

/// @throws Error with this place: bad_value for a text that is too long or holds NUL, bad_encoding.
void require_field_text(std::string_view text, std::size_t most_bytes, const Place& place);

/// "line 3, field count", or the field alone for what was read from no file.
std::string named(const Place& place);

}  // namespace latchwork::inline v0
