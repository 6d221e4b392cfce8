#include "quantity/reader.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdint>

#include "error/refuse.hpp"
#include "quantity/number.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr int most_decimals = 30;  // the least quantity, written in the greatest unit to 17 digits, has fewer
constexpr int most_fraction_digits = 4;
constexpr int most_whole_digits = 9;  // before a fraction

struct Fraction {
  std::string_view sign;
  int over;
  int under;
};
constexpr std::array fractions = {
    // the number forms of Unicode's Latin-1 Supplement and of 2153..215E
    Fraction{"\u00BC", 1, 4}, Fraction{"\u00BD", 1, 2}, Fraction{"\u00BE", 3, 4},
    Fraction{"\u2153", 1, 3}, Fraction{"\u2154", 2, 3}, Fraction{"\u215B", 1, 8},
    Fraction{"\u215C", 3, 8}, Fraction{"\u215D", 5, 8}, Fraction{"\u215E", 7, 8},
};

constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
constexpr bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

}  // namespace

QuantityReader::QuantityReader(std::string_view text, std::string_view field) : text_(text), field_(field) {
  if (utf8_error(field) != std::string_view::npos) {
    latchwork::refuse(ErrorCode::bad_encoding, "field", "field holds a byte that is not UTF-8");
  }
  if (text.size() > max_quantity_bytes) {
    refuse(ErrorCode::too_large, max_quantity_bytes,
           fmt::format("{} bytes for one quantity; the limit is {}", text.size(), max_quantity_bytes));
  }
  if (const std::size_t bad = utf8_error(text); bad != std::string_view::npos) {
    refuse(ErrorCode::bad_encoding, bad, fmt::format("a byte that is not UTF-8 (offset {})", bad));
  }
}

void QuantityReader::refuse(ErrorCode code, std::size_t offset, const std::string& why) const {
  Place place;
  place.field = field_;
  place.character = 1;
  for (const char c : text_.substr(0, offset)) {
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++place.character;
  }
  const std::string where = field_.empty() ? std::string() : fmt::format("{}, ", shown(field_));
  throw Error(code, place, fmt::format("{}character {}: {}", where, place.character, why));
}

void QuantityReader::pass_over_blanks() {
  while (at_ < text_.size()) {
    if (text_[at_] == ' ' || text_[at_] == '\t') {
      ++at_;
    } else if (!pass_over("\u00A0") && !pass_over("\u202F")) {  // no-break spaces, which word processors put here
      return;
    }
  }
}

bool QuantityReader::pass_over(std::string_view sign) {
  if (!text_.substr(at_).starts_with(sign)) return false;
  at_ += sign.size();
  return true;
}

bool QuantityReader::at_number() const {
  const std::string_view rest = text_.substr(at_);
  if (rest.empty()) return false;
  if (is_digit(rest[0]) || (rest[0] == '.' && rest.size() > 1 && is_digit(rest[1]))) return true;
  for (const Fraction& each : fractions) {
    if (rest.starts_with(each.sign)) return true;
  }
  return false;
}

// Digits with or without a decimal point. `count`: digits, leading zeros aside.
Twofold QuantityReader::digits(int& count, int& decimals) {
  const std::size_t from = at_;
  std::uint64_t whole = 0;
  bool point = false;
  count = decimals = 0;
  for (; at_ < text_.size(); ++at_) {
    if (text_[at_] == '.' && !point && at_ + 1 < text_.size() && is_digit(text_[at_ + 1])) {
      point = true;
      continue;
    }
    if (!is_digit(text_[at_])) break;
    if (point) ++decimals;
    if (count > 0 || text_[at_] != '0') ++count;
    if (count > most_digits || decimals > most_decimals) {
      refuse(ErrorCode::bad_value, from,
             fmt::format("more digits than {}, or more decimals than {}", most_digits, most_decimals));
    }
    whole = whole * 10 + static_cast<std::uint64_t>(text_[at_] - '0');
  }
  return Twofold(whole) / power_of_ten(decimals);
}

// The fraction that stands here, added to `value`. Nothing is passed over where there is none.
bool QuantityReader::fraction(Twofold& value, bool after_whole) {
  for (const Fraction& each : fractions) {
    if (!pass_over(each.sign)) continue;
    // One division, of whole numbers: 3 1/3 times 3 is 10.
    value = (value * Twofold(double(each.under)) + Twofold(double(each.over))) / Twofold(double(each.under));
    return true;
  }
  if (!after_whole || at_ == text_.size() || !is_digit(text_[at_])) return false;
  const std::size_t start = at_;
  const auto part = [&] {
    int many = 0;
    double out = 0;
    for (; at_ < text_.size() && is_digit(text_[at_]); ++at_, ++many) out = out * 10 + (text_[at_] - '0');
    if (many > most_fraction_digits) {
      refuse(ErrorCode::bad_value, start, fmt::format("more than {} digits in a fraction", most_fraction_digits));
    }
    return out;
  };
  std::size_t end = at_;
  while (end < text_.size() && is_digit(text_[end])) ++end;
  if (end == text_.size() || text_[end] != '/' || end + 1 == text_.size() || !is_digit(text_[end + 1])) return false;
  const double over = part();
  ++at_;
  const double under = part();
  if (under == 0) refuse(ErrorCode::bad_value, start, "a fraction of nothing: its lower number is 0");
  value = (value * Twofold(under) + Twofold(over)) / Twofold(under);
  return true;
}

void QuantityReader::require_number() const {
  const std::string_view rest = text_.substr(at_);
  if (rest.starts_with('-') || rest.starts_with("\u2212")) {
    refuse(ErrorCode::bad_value, at_, "a minus sign: no quantity is negative");
  }
  if (at_number()) return;
  refuse(ErrorCode::bad_syntax, at_,
         rest.empty() ? std::string("a number is missing") : fmt::format("'{}' is not a number", shown(rest)));
}

void QuantityReader::require_number_ended() const {
  if (at_ == text_.size()) return;
  if (text_[at_] == ',') {
    refuse(ErrorCode::bad_syntax, at_, "a comma: numbers have a decimal point, and thousands stand together");
  }
  if (text_[at_] == '.') refuse(ErrorCode::bad_syntax, at_, "a point without a digit after it");
}

Twofold QuantityReader::decimal() {
  require_number();
  if (!is_digit(text_[at_]) && text_[at_] != '.') {
    refuse(ErrorCode::bad_syntax, at_, fmt::format("'{}' is not a decimal number", shown(text_.substr(at_))));
  }
  int count = 0;
  int decimals = 0;
  const Twofold value = digits(count, decimals);
  require_number_ended();
  return value;
}

Twofold QuantityReader::number() {
  require_number();
  Twofold value;
  if (fraction(value, true)) return value;  // "3/4", "¾"
  int count = 0;
  int decimals = 0;
  value = digits(count, decimals);
  require_number_ended();
  const std::size_t after = at_;
  pass_over_blanks();
  const std::size_t second = at_;
  if (!fraction(value, at_ > after)) {
    at_ = after;
  } else if (decimals > 0 || count > most_whole_digits) {
    refuse(ErrorCode::bad_syntax, second,
           fmt::format("a fraction after decimals, or after more than {} digits", most_whole_digits));
  }
  return value;
}

std::string_view QuantityReader::word() {
  const std::size_t from = at_;
  if (pass_over("\"") || pass_over("\u2033")) return text_.substr(from, at_ - from);
  while (at_ < text_.size() && is_letter(text_[at_])) ++at_;
  const std::string_view out = text_.substr(from, at_ - from);
  if (!out.empty()) pass_over(".");  // "17 in."
  return out;
}

const Unit& QuantityReader::unit(Kind kind) {
  const std::size_t from = at_;
  const std::string_view name = word();
  const std::string wanted = fmt::format("a {} is in {}", kind_name(kind), unit_list(kind));
  if (name.empty()) {
    const std::string_view rest = text_.substr(from);
    if (kind != Kind::weight && (rest.starts_with('\'') || rest.starts_with("\u2032"))) {
      refuse(ErrorCode::bad_unit, from,
             fmt::format("' may mean feet or minutes; write {}", kind == Kind::length ? "ft" : "min"));
    }
    refuse(ErrorCode::bad_unit, from,
           at_end() ? fmt::format("the unit is missing; {}", wanted)
                    : fmt::format("'{}' is no unit; {}", shown(rest), wanted));
  }
  if (name == "gr") refuse(ErrorCode::bad_unit, from, "'gr' may mean grams or grains; write g or grain");
  const Unit* found = unit_named(name);
  if (found == nullptr) refuse(ErrorCode::bad_unit, from, fmt::format("'{}' is no unit; {}", shown(name), wanted));
  if (found->kind != kind) {
    refuse(ErrorCode::bad_unit, from, fmt::format("'{}' is a unit of {}; {}", name, kind_name(found->kind), wanted));
  }
  return *found;
}

double QuantityReader::in_range_or_refuse(const Twofold& base, Kind kind, std::size_t from) const {
  const double value = base.nearest();
  if (!in_range(value)) {
    refuse(ErrorCode::bad_value, from,
           kind == Kind::duration  // whole milliseconds
               ? fmt::format("a duration is 0 to {:.0f} ms", most_quantity)
               : fmt::format("a {} is 0 or {} to {} {}", kind_name(kind), least_quantity, most_quantity,
                             units(kind).front().name));
  }
  return value;
}

Twofold QuantityReader::quantity(Kind kind) {
  pass_over_blanks();
  const std::size_t from = at_;
  Twofold total;
  const Unit* before = nullptr;
  do {
    const Twofold value = number();
    pass_over_blanks();
    const std::size_t here = at_;
    const Unit& found = unit(kind);
    if (before != nullptr && before->metric != found.metric) {
      refuse(ErrorCode::bad_unit, here,
             fmt::format("'{}' after '{}': one {} has units of one system", found.name, before->name, kind_name(kind)));
    }
    if (before != nullptr && found.over * before->under >= before->over * found.under) {
      refuse(ErrorCode::bad_unit, here,
             fmt::format("'{}' after '{}': the greater unit comes first, and each once", found.name, before->name));
    }
    total = total + in_base(value, found);
    before = &found;
    pass_over_blanks();
  } while (at_number());
  in_range_or_refuse(total, kind, from);
  return total;
}

void QuantityReader::require_end() {
  pass_over_blanks();
  if (at_end()) return;
  refuse(ErrorCode::bad_syntax, at_, fmt::format("'{}' is one too many", shown(text_.substr(at_))));
}

}  // namespace latchwork::inline v0
