#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "latchwork/error.hpp"
#include "quantity/twofold.hpp"
#include "quantity/units.hpp"

namespace latchwork::inline v0 {

/// Reads quantities from a text, piece by piece. Whatever is refused is refused with the field and the character.
class QuantityReader {
 public:
  /// @throws Error bad_encoding, too_large.
  QuantityReader(std::string_view text, std::string_view field);

  void pass_over_blanks();
  bool at_end() const { return at_ == text_.size(); }
  /// Offset in bytes, to be handed to refuse().
  std::size_t at() const { return at_; }
  bool at_number() const;  ///< a digit, a decimal point before a digit, or a fraction such as ½
  /// A decimal number or fraction, not negative. @throws Error bad_syntax, bad_value.
  Twofold number();
  /// A decimal number, not negative: "28" of "28/2". @throws Error bad_syntax, bad_value.
  Twofold decimal();
  /// Letters up to the next other character, or one sign of inches; empty when there are none.
  std::string_view word();
  /// Passes over `sign`, if it is next.
  bool pass_over(std::string_view sign);

  /// A unit of the kind. @throws Error bad_unit.
  const Unit& unit(Kind kind);
  /// Numbers with units of one system, the greater first, in the base unit and in range. @throws Error.
  Twofold quantity(Kind kind);
  /// Throws unless the value is 0 or in range, with the offset where it was written.
  double in_range_or_refuse(const Twofold& base, Kind kind, std::size_t from) const;
  /// Throws unless the text ends here, but for blanks.
  void require_end();

  [[noreturn]] void refuse(ErrorCode code, std::size_t offset, const std::string& why) const;

 private:
  void require_number() const;
  void require_number_ended() const;
  Twofold digits(int& count, int& decimals);
  bool fraction(Twofold& value, bool after_whole);

  std::string_view text_;
  std::string_view field_;
  std::size_t at_ = 0;
};

}  // namespace latchwork::inline v0
