#include "brief/substitutes.hpp"

#include <fmt/format.h>

#include <array>
#include <cstddef>
#include <set>
#include <string_view>
#include <utility>

#include "gauge/gauges.hpp"
#include "latchwork/error.hpp"
#include "text/csv.hpp"
#include "text/csv_table.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0::report {
namespace {

enum Column : std::size_t { texture, use };
constexpr std::array columns = {CsvColumn{"texture", true}, CsvColumn{"use", true}};
constexpr std::size_t most_substitutes = 10'000;
constexpr std::size_t most_bytes = std::size_t{16} << 20;

Place place_of(const std::string& field) {
  Place place;
  place.field = field;
  return place;
}

/// The name of a texture.
std::string name_in(const CsvTable& table, Column column) {
  const std::string_view text = table.text(column);
  if (text.empty()) table.refuse(ErrorCode::bad_value, column, "is empty; it must name a texture");
  require_field_text(text, most_measurement_bytes, table.place(column));
  return std::string(text);
}

}  // namespace

std::string substitutes_text(const std::vector<Substitute>& substitutes) {
  if (substitutes.size() > most_substitutes) {
    throw Error(ErrorCode::too_large, place_of("brief.substitutes"),
                fmt::format("brief.substitutes are {}; there may be {}", substitutes.size(), most_substitutes));
  }
  std::string out = "texture,use\n";
  std::set<std::string_view> named_before;
  for (std::size_t i = 0; i < substitutes.size(); ++i) {
    const Substitute& each = substitutes[i];
    const std::string field = fmt::format("brief.substitutes[{}].", i);
    for (const auto& [name, text] : {std::pair{"texture", &each.texture}, std::pair{"use", &each.use}}) {
      if (text->empty()) throw Error(ErrorCode::bad_value, place_of(field + name), field + name + " is empty");
      require_field_text(*text, most_measurement_bytes, place_of(field + name));
    }
    if (each.texture == each.use) {
      throw Error(ErrorCode::bad_value, place_of(field + "use"), field + "use is the texture itself");
    }
    if (!named_before.insert(each.texture).second) {
      throw Error(ErrorCode::bad_value, place_of(field + "texture"), field + "texture has a substitute already");
    }
    out += csv_field(each.texture) + "," + csv_field(each.use) + "\n";
  }
  return out;
}

std::vector<Substitute> read_substitutes(const std::string& csv) {
  CsvTable table(csv, columns, most_bytes);
  std::vector<Substitute> out;
  std::set<std::string, std::less<>> named_before;
  while (table.next()) {
    if (out.size() == most_substitutes) {
      throw Error(ErrorCode::too_large, table.place(),
                  fmt::format("line {}: there are more than {} substitutes", table.line(), most_substitutes));
    }
    Substitute each{name_in(table, texture), name_in(table, use)};
    if (each.texture == each.use) {
      table.refuse(ErrorCode::bad_value, use, fmt::format("'{}' cannot stand in for itself", shown(each.use)));
    }
    if (!named_before.insert(each.texture).second) {
      table.refuse(ErrorCode::bad_value, texture, fmt::format("'{}' has a substitute already", shown(each.texture)));
    }
    out.push_back(std::move(each));
  }
  return out;
}

}  // namespace latchwork::inline v0::report
