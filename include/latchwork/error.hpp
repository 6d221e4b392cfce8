#pragma once

#include <cstdint>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>

#include "latchwork/export.hpp"

namespace latchwork::inline v0 {

/// What went wrong. The numbers are the C ABI's status codes and never change; the list only grows.
enum class ErrorCode : std::int32_t {
  internal = 1,             ///< an invariant of ours was broken: a bug in latchwork
  no_memory = 2,            ///< memory ran out
  bad_argument = 3,         ///< an argument is missing or out of its range; `field` names it
  off_grid = 4,             ///< a cell, crossing or slice reaches outside the grid
  stitch_taken = 5,         ///< two crossings after one row share a column
  crossing_cut = 6,         ///< the operation would cut a crossing in two, or put an axis through it
  crossing_over_stack = 7,  ///< a tuck or slip in row r of a crossing's span
  crossing_over_none = 8,   ///< no stitch in rows r or r+1 of a crossing's span (the whole centre may be bare)
  size_mismatch = 9,        ///< pieces of unequal size are put together
  too_large = 10,           ///< a size, count or cost beyond the documented limit
  bad_letter = 11,          ///< a letter that stands for no cell
  bad_syntax = 12,          ///< text that is not well-formed (JSON, CSV, crossing line)
  bad_encoding = 13,        ///< text that is not UTF-8
  newer_version = 14,       ///< a file of a newer format version than this library reads
  wrong_format = 15,        ///< a file of another kind than asked for
  duplicate_key = 16,       ///< a key that stands twice in one object
  missing_field = 17,       ///< a field that must be there is not
  unknown_field = 18,       ///< a field that the format does not know
  bad_value = 19,           ///< a field's value has the wrong type or is out of range
  bad_unit = 20,            ///< a unit that is missing, unknown, or not of the kind asked for
  io = 21,                  ///< a file cannot be read or written
  no_gauge = 22,            ///< a texture has no measurements in the swatch
  cancelled = 23,           ///< the caller asked to stop
};

/// Where it went wrong. What does not apply is left at its default.
struct Place {
  int row = 0;        ///< grid row 1..R, counted up from the cast-on; 0: none
  int column = -1;    ///< grid column 0..W-1 from the left on the RS; -1: none
  int line = 0;       ///< line of a text or file, from 1; 0: none
  std::string field;  ///< argument, or path of a field in a file ("crossings[2].left"); empty: none
  int character = 0;  ///< character (Unicode code point) of the text of a field, from 1; 0: none
  friend bool operator==(const Place&, const Place&) = default;
};

/// The one exception latchwork throws for bad input. what() names place, value and limit.
/// Const calls may run at once on one object; any other call needs it alone.
class LATCHWORK_API Error : public std::runtime_error {
 public:
  Error(ErrorCode code, Place place, const std::string& message);
  ~Error() override;
  Error(const Error&) = default;
  Error& operator=(const Error&) = default;

  ErrorCode code() const noexcept { return code_; }
  const Place& place() const noexcept { return place_; }

 private:
  ErrorCode code_;
  Place place_;
};

/// The code's name as in ErrorCode ("off_grid"); empty for a number that is no code.
LATCHWORK_API std::string_view error_name(ErrorCode code) noexcept;

/// Every code, in order of its number.
LATCHWORK_API std::span<const ErrorCode> error_codes() noexcept;

}  // namespace latchwork::inline v0
