#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace latchwork::inline v0 {

/// One record of a CSV text (RFC 4180).
struct CsvRecord {
  int line = 0;                     ///< line on which it begins, from 1
  std::vector<std::string> fields;  ///< unquoted
  std::vector<int> lines;           ///< line on which each field begins
};

/// Reads CSV record by record. Beyond the RFC: blank lines and lines that start with # are passed over, a line may end
/// with LF alone, and blanks (space, tab) round an unquoted field or outside the quotes are dropped.
class CsvReader {
 public:
  explicit CsvReader(std::string_view text) : text_(text) {}
  /// The next record into `record`; false at the end of the text.
  /// @throws Error bad_syntax with the line.
  bool next(CsvRecord& record);

 private:
  void pass_over_lines();
  std::string field();
  std::string quoted();
  std::string unquoted();
  void pass_over_blanks();
  bool at_line_end() const;
  void end_line();

  std::string_view text_;
  std::size_t at_ = 0;
  int line_ = 1;
};

/// The text as one CSV field: in quotes where it would otherwise read back as something else.
std::string csv_field(std::string_view text);

}  // namespace latchwork::inline v0
