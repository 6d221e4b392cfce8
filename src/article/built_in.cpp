#include <fmt/format.h>

#include <string>
#include <string_view>
#include <vector>

#include "article/texts.hpp"
#include "error/refuse.hpp"
#include "latchwork/article.hpp"
#include "latchwork/error.hpp"

namespace latchwork::inline v0 {

std::vector<std::string> article_names() {
  std::vector<std::string> names;
  names.reserve(built_in_texts().size());
  for (const BuiltInText& each : built_in_texts()) names.emplace_back(each.name);
  return names;
}

Article built_in_article(std::string_view name) {
  std::string all;
  for (const BuiltInText& each : built_in_texts()) {
    if (each.name == name) return read_article(each.json);
    all += fmt::format("{}'{}'", all.empty() ? "" : ", ", each.name);
  }
  refuse("name", fmt::format("no such article comes with latchwork; there are {}", all));
}

}  // namespace latchwork::inline v0
