#include <fmt/format.h>

#include <array>
#include <string>

#include "latchwork/error.hpp"
#include "quantity/number.hpp"
#include "quantity/reader.hpp"
#include "yarn/systems.hpp"

namespace latchwork::inline v0 {
namespace {

constexpr int most_plies_by_number = 12;  // where either number may be the plies: more than the trade makes

struct Name {
  std::string_view words;  // small letters, one blank between
  YarnSystem system;
};
constexpr std::array names = {
    Name{"tex", YarnSystem::tex},
    Name{"dtex", YarnSystem::dtex},
    Name{"den", YarnSystem::denier},
    Name{"denier", YarnSystem::denier},
    Name{"nm", YarnSystem::metric},
    Name{"ne", YarnSystem::cotton},
    Name{"cotton", YarnSystem::cotton},
    Name{"spun silk", YarnSystem::spun_silk},
    Name{"worsted", YarnSystem::worsted},
    Name{"linen", YarnSystem::linen},
    Name{"woollen cut", YarnSystem::woollen_cut},
    Name{"woollen run", YarnSystem::woollen_run},
    Name{"ysw", YarnSystem::yorkshire},
    Name{"galashiels", YarnSystem::galashiels},
    Name{"west of england", YarnSystem::west_of_england},
    Name{"jute", YarnSystem::jute},
};
constexpr std::string_view how = "write as in Nm 28, cotton 5/2, 20 tex or 250 m / 100 g";

// The words that stand here, in small letters; `written`: as they were written.
std::string words(QuantityReader& reader, std::string& written) {
  std::string out;
  written.clear();
  while (true) {
    QuantityReader ahead = reader;
    ahead.pass_over_blanks();
    std::string_view word = ahead.word();
    if (word == "x") return out;  // of "20 tex x 2"
    if (word.empty()) return out;
    if (!out.empty()) {
      out += ' ';
      written += ' ';
    }
    written += word;
    for (const char c : word) out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    reader = ahead;
  }
}

const SystemOfYarn* named(std::string_view words) {
  for (const Name& each : names) {
    if (each.words == words) return &system_of(each.system);
  }
  return nullptr;
}

int plies_from(QuantityReader& reader) {
  const std::size_t from = reader.at();
  const double value = reader.decimal().nearest();
  if (value >= 1 && value <= most_plies && value == static_cast<int>(value)) return static_cast<int>(value);
  reader.refuse(ErrorCode::bad_value, from, fmt::format("the plies must be a whole number from 1 to {}", most_plies));
}

bool pass_over_times(QuantityReader& reader) {
  QuantityReader ahead = reader;
  ahead.pass_over_blanks();
  if (!ahead.pass_over("x") && !ahead.pass_over("\u00D7")) return false;
  ahead.pass_over_blanks();
  if (!ahead.at_number()) return false;
  reader = ahead;
  return true;
}

// The numbers of a yarn: "28", "28 x 2", "28/2".
struct Numbers {
  std::size_t from = 0;
  Twofold first;
  Twofold second;
  bool either = false;  // A/B, or A x B before the name: either may be the plies
  bool plied = false;   // the plies were told
  int plies = 1;
};

Numbers numbers_from(QuantityReader& reader, bool name_first) {
  Numbers out;
  out.from = reader.at();
  out.first = reader.decimal();
  QuantityReader ahead = reader;
  if (ahead.pass_over("/") && ahead.at_number()) {
    out.second = ahead.decimal();
    out.either = true;
    reader = ahead;
  } else if (pass_over_times(reader)) {
    if (name_first) {
      out.plies = plies_from(reader);
      out.plied = true;
    } else {  // "2 x 20 tex" is two plies of 20 tex, "28 x 2 Nm" two of Nm 28
      out.second = reader.decimal();
      out.either = true;
    }
  }
  return out;
}

YarnNumber checked(const QuantityReader& reader, std::size_t from, const SystemOfYarn& system, const Twofold& number,
                   int plies) {
  const double value = number.nearest();
  if (!(value >= least_yarn_number && value <= most_yarn_number)) {
    reader.refuse(ErrorCode::bad_value, from,
                  fmt::format("a yarn number must be {} to {}", least_yarn_number, most_yarn_number));
  }
  return {system.system, value, plies};
}

// Which of A/B or A x B is the plies; the rule is in the header.
YarnNumber told_apart(const QuantityReader& reader, const Numbers& numbers, const SystemOfYarn& system) {
  const double a = numbers.first.nearest();
  const double b = numbers.second.nearest();
  const auto can_be_plies = [](double n) { return n >= 1 && n <= most_plies_by_number && n == static_cast<int>(n); };
  const auto first_is_plies = [&] {
    return checked(reader, numbers.from, system, numbers.second, static_cast<int>(a));
  };
  const auto second_is_plies = [&] {
    return checked(reader, numbers.from, system, numbers.first, static_cast<int>(b));
  };
  if (can_be_plies(a) && can_be_plies(b)) {
    if (a == b || (system.plies_by_custom == 2 && b < a)) return second_is_plies();
    if (system.plies_by_custom == 1 && a < b) return first_is_plies();
    reader.refuse(
        ErrorCode::bad_syntax, numbers.from,
        fmt::format("either number may be the plies; write {2} {0} x {1} for {1} plies of {0}, or {2} {1} x {0}", a, b,
                    system.name));
  }
  if (can_be_plies(a)) return first_is_plies();
  if (can_be_plies(b)) return second_is_plies();
  reader.refuse(
      ErrorCode::bad_syntax, numbers.from,
      fmt::format("neither number can be the plies, which are 1 to {} here; write as in 28 x 2", most_plies_by_number));
}

// "120 m / 50 g", "50 g = 120 m", "1000 yd/lb".
struct Label {
  Twofold mm;
  Twofold g;
  bool inch_pound = true;
};

void take(QuantityReader& reader, Label& label, bool& has_length, bool& has_weight) {
  reader.pass_over_blanks();
  const std::size_t from = reader.at();
  QuantityReader ahead = reader;
  const bool alone = !ahead.at_number();
  if (!alone) ahead.number();
  ahead.pass_over_blanks();
  const std::size_t at = ahead.at();
  const std::string_view word = ahead.word();
  const Unit* unit = unit_named(word);
  if (unit == nullptr || unit->kind == Kind::duration) {
    if (word == "gr") reader.refuse(ErrorCode::bad_unit, at, "'gr' may mean grams or grains; write g or grain");
    reader.refuse(ErrorCode::bad_unit, at, fmt::format("a unit of length or weight is missing; {}", how));
  }
  bool& has = unit->kind == Kind::length ? has_length : has_weight;
  if (has) {
    reader.refuse(ErrorCode::bad_unit, at,
                  fmt::format("a second {}; a ball band has one length and one weight", kind_name(unit->kind)));
  }
  has = true;
  label.inch_pound = label.inch_pound && !unit->metric;
  Twofold& base = unit->kind == Kind::length ? label.mm : label.g;
  if (alone) {
    reader.unit(unit->kind);
    base = in_base(Twofold(1.0), *unit);
  } else {
    base = reader.quantity(unit->kind);
  }
  if (base.nearest() == 0) reader.refuse(ErrorCode::bad_value, from, fmt::format("the {} is 0", kind_name(unit->kind)));
}

YarnNumber label_from(QuantityReader& reader) {
  reader.pass_over_blanks();
  const std::size_t from = reader.at();
  Label label;
  bool has_length = false;
  bool has_weight = false;
  take(reader, label, has_length, has_weight);
  reader.pass_over_blanks();
  const std::size_t between = reader.at();
  if (!reader.pass_over("/") && !reader.pass_over("=")) {
    const std::string_view word = reader.word();
    if (word != "per" && word != "to") {
      reader.refuse(ErrorCode::bad_syntax, between,
                    fmt::format("the {} is missing; {}", has_length ? "weight" : "length", how));
    }
  }
  take(reader, label, has_length, has_weight);
  const SystemOfYarn& system = system_of(label.inch_pound ? YarnSystem::yards_per_pound : YarnSystem::metres_per_100g);
  const Twofold tex = label.g * Twofold(1e6) / label.mm;
  const int plies = pass_over_times(reader) ? plies_from(reader) : 1;
  return checked(reader, from, system, Twofold(system.over) / Twofold(system.under) / tex, plies);
}

bool is_label(QuantityReader reader) {
  if (!reader.at_number()) return false;
  const QuantityReader start = reader;
  try {
    reader.number();
  } catch (const Error&) {  // "12345/2 den" is no fraction
    reader = start;
    reader.decimal();
    if (reader.pass_over("/") && reader.at_number()) reader.decimal();
  }
  reader.pass_over_blanks();
  const std::string_view word = reader.word();
  return word == "gr" || unit_named(word) != nullptr;
}

}  // namespace

YarnNumber read_yarn_number(std::string_view text, std::string_view field) {
  QuantityReader reader(text, field);
  reader.pass_over_blanks();
  if (is_label(reader)) {
    const YarnNumber out = label_from(reader);
    reader.require_end();
    return out;
  }
  std::size_t at = reader.at();
  std::string written;
  std::string name = words(reader, written);
  const bool name_first = !name.empty();
  reader.pass_over_blanks();
  Numbers numbers = numbers_from(reader, name_first);
  if (!name_first) {
    reader.pass_over_blanks();
    at = reader.at();
    name = words(reader, written);
  }
  const SystemOfYarn* system = named(name);
  if (system == nullptr) {
    reader.refuse(ErrorCode::bad_unit, at,
                  name.empty() ? fmt::format("the name of the number is missing; {}", how)
                               : fmt::format("'{}' is no system of yarn numbers; {}", written, how));
  }
  if (!numbers.either && !numbers.plied && pass_over_times(reader)) numbers.plies = plies_from(reader);
  reader.require_end();
  if (numbers.either) return told_apart(reader, numbers, *system);
  return checked(reader, numbers.from, *system, numbers.first, numbers.plies);
}

std::string yarn_number_text(const YarnNumber& yarn) {
  require_yarn(yarn);
  const SystemOfYarn& system = system_of(yarn.system);
  const std::string number = shortest(yarn.number, units(Kind::length).front());

  std::string text =
      system.name_first ? fmt::format("{} {}", system.name, number) : fmt::format("{} {}", number, system.name);
  if (yarn.plies == 1) return text;

  return fmt::format("{} x {}", text, yarn.plies);
}

}  // namespace latchwork::inline v0
