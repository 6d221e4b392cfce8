#include <fmt/format.h>

#include <array>

#include "article_texts.hpp"
#include "latchwork/article.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0 {
namespace {

struct BuiltIn {
  std::string_view name;
  std::string_view json;
};

constexpr std::array built_in = {
    BuiltIn{"cushion cover", cushion_cover_json},
    BuiltIn{"blanket of panels", blanket_of_panels_json},
    BuiltIn{"scarf", scarf_json},
    BuiltIn{"bag panel", bag_panel_json},
    BuiltIn{"straight garment pieces", straight_garment_pieces_json},
};

}  // namespace

std::vector<std::string> article_names() {
  std::vector<std::string> names;
  names.reserve(built_in.size());
  for (const BuiltIn& each : built_in) names.emplace_back(each.name);
  return names;
}

Article built_in_article(std::string_view name) {
  std::string all;
  for (const BuiltIn& each : built_in) {
    if (each.name == name) return read_article(each.json);
    all += fmt::format("{}'{}'", all.empty() ? "" : ", ", each.name);
  }
  Place place;
  place.field = "name";
  throw Error(ErrorCode::bad_argument, place, fmt::format("no such article comes with latchwork; there are {}", all));
}

}  // namespace latchwork::inline v0
