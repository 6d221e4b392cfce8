#include "schematic/names.hpp"

#include <algorithm>
#include <functional>
#include <iterator>

#include "chart/pen.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::schematics {
namespace {

using Words = std::vector<std::string>;

Words words_in(const std::string& text) {
  Words out;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t blank = std::min(text.find(' ', at), text.size());
    if (blank > at) out.push_back(text.substr(at, blank - at));
    at = blank + 1;
  }
  return out;
}

bool ends_part(const std::string& word) {
  return word.ends_with(':') || word.ends_with(',');
}

std::string words_from(const Words& words, std::size_t first, std::size_t end) {
  return joined({words.begin() + static_cast<std::ptrdiff_t>(first), words.begin() + static_cast<std::ptrdiff_t>(end)},
                " ");
}

/// So many words begin all names, and something is left of each.
std::size_t in_common(const std::vector<Words>& names) {
  std::size_t out = names.front().size();
  for (const Words& each : names) {
    const auto [own, other] = std::mismatch(each.begin(), each.end(), names.front().begin(), names.front().end());
    out = std::min({out, static_cast<std::size_t>(own - each.begin()), each.empty() ? 0 : each.size() - 1});
  }
  return out;
}

}  // namespace

Names names_over(const std::vector<std::string>& names, const std::vector<std::size_t>& letters) {
  if (names.size() < 2) return {{}, names};
  if (std::adjacent_find(names.begin(), names.end(), std::not_equal_to<>()) == names.end()) {
    return {names.front(), std::vector<std::string>(names.size())};
  }
  std::vector<Words> words;
  words.reserve(names.size());
  std::transform(names.begin(), names.end(), std::back_inserter(words), words_in);
  const std::size_t most = in_common(words);
  std::size_t taken = most;
  while (taken > 0 && !ends_part(words.front()[taken - 1])) --taken;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (drawing::letters_in(words_from(words[i], taken, words[i].size())) > letters[i]) taken = most;
  }
  Names out;
  if (taken == 0) return {{}, names};
  out.caption = words_from(words.front(), 0, taken);
  while (ends_part(out.caption)) out.caption.pop_back();
  for (const Words& each : words) out.own.push_back(words_from(each, taken, each.size()));
  return out;
}

}  // namespace latchwork::inline v0::schematics
