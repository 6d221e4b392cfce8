#include "chart/strip_letters.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

#include "text/letters.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0::drawing {
namespace {

bool same_strips(const std::vector<StripLetter>& a, const std::vector<StripLetter>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const StripLetter& x, const StripLetter& y) {
    return x.column == y.column && x.letter == y.letter;
  });
}

}  // namespace

StripLetters strip_letters(std::span<const Band> bands, Side side) {
  StripLetters result;
  std::map<std::pair<std::string, int>, std::size_t> known;  // ordered: no hash order in what is written
  const auto letter_of = [&](const StripSpan& strip) {
    const std::string& name = strip.name.empty() ? strip.texture : strip.name;
    const auto [entry, fresh] = known.try_emplace({name, strip.repeat_rows}, known.size());
    if (fresh) {
      std::string words = fmt::format("{}: {}", letter_name(entry->second), one_line(name));
      if (strip.repeat_rows > 1) words += fmt::format(", repeats every {} rows", strip.repeat_rows);
      result.words.push_back(std::move(words));
    }
    return entry->second;
  };
  std::vector<LetterLine> lines;
  for (const Band& band : bands) {
    LetterLine line{.row = band.row, .last_row = band.row + band.rows - 1, .strips = {}};
    for (const StripSpan& strip : band.strips) line.strips.push_back({strip.column, strip.columns, {}, 0});
    for (std::size_t i = 0; i < band.strips.size(); ++i) {
      const std::size_t at = side == Side::operator_view ? band.strips.size() - 1 - i : i;
      line.strips[at].index = letter_of(band.strips[at]);
      line.strips[at].letter = letter_name(line.strips[at].index);
    }
    if (!lines.empty() && same_strips(lines.back().strips, line.strips)) {
      lines.back().last_row = line.last_row;
    } else {
      lines.push_back(std::move(line));
    }
  }
  if (result.words.size() > 1) {
    result.lines = std::move(lines);
  } else {
    result.words.clear();
  }
  return result;
}

std::vector<std::string> words_of_lines(const StripLetters& letters, std::span<const LetterLine> lines) {
  std::vector<std::size_t> used;
  for (const LetterLine& line : lines) {
    for (const StripLetter& strip : line.strips) used.push_back(strip.index);
  }
  std::sort(used.begin(), used.end());
  used.erase(std::unique(used.begin(), used.end()), used.end());
  std::vector<std::string> words;
  words.reserve(used.size());
  for (const std::size_t index : used) words.push_back(letters.words[index]);
  return words;
}

StripLetters letters_of_rows(const StripLetters& letters, int first_row, int last_row) {
  StripLetters result;
  auto line = std::lower_bound(letters.lines.begin(), letters.lines.end(), first_row,
                               [](const LetterLine& one, int row) { return one.last_row < row; });
  for (; line != letters.lines.end() && line->row <= last_row; ++line) result.lines.push_back(*line);
  result.words = words_of_lines(letters, result.lines);
  return result;
}

}  // namespace latchwork::inline v0::drawing
