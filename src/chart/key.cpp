#include "chart/key.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

#include "crossing/words.hpp"
#include "text/letters.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0::drawing {

namespace {

/// A crossing as drawn, in the words of the RS: what is written beside the chart names it so.
std::string words_of(Crossing crossing, bool turned) {
  if (!turned) return crossing_long_name(crossing);
  std::swap(crossing.left, crossing.right);
  if (crossing.centre > 0 && crossing.place != Centre::between) {
    crossing.place = crossing.place == Centre::front ? Centre::behind : Centre::front;
  }
  return crossing_long_name(crossing) + " on the RS, as it looks from here";
}

bool same_strips(const std::vector<StripLetter>& a, const std::vector<StripLetter>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const StripLetter& x, const StripLetter& y) {
    return x.column == y.column && x.letter == y.letter;
  });
}

}  // namespace

std::vector<KeyEntry> key_of(const View& view) {
  const bool turned = view.side == Side::operator_view;
  std::vector<KeyEntry> key;
  const auto add = [&](bool used, Symbol symbol, std::string words) {
    if (used) key.push_back({symbol, {}, std::move(words)});
  };
  add(view.kinds.knit, Symbol::knit, turned ? "a face loop towards you: purl on the right side" : "knit: a face loop");
  add(view.kinds.purl, Symbol::purl, turned ? "a back loop towards you: knit on the right side" : "purl: a back loop");
  add(view.kinds.tuck, Symbol::tuck, "tuck: from the lowest tucked row to the row that takes its loops");
  add(view.kinds.slip_behind, Symbol::slip_behind,
      turned ? "slip: the strand passes on the right side, away from you" : "slip: the strand passes behind");
  add(view.kinds.slip_front, Symbol::slip_front,
      turned ? "slip: the strand passes on your side" : "slip: the strand passes in front, a float");
  add(view.kinds.none, Symbol::none, "no stitch");
  for (const Crossing& crossing : view.crossing_kinds) {
    key.push_back({Symbol::crossing, crossing, words_of(crossing, turned)});
  }
  add(!view.stops.empty(), Symbol::stop, "stop after this row: row counter, side of the carriage");
  add(view.has_edges(), Symbol::strip_line, "edge of a strip");
  const bool repeats = std::any_of(view.bands.begin(), view.bands.end(), [](const Band& band) {
    return std::any_of(band.strips.begin(), band.strips.end(),
                       [&](const StripSpan& strip) { return strip.repeat_rows > 1 && strip.repeat_rows < band.rows; });
  });
  add(repeats || view.bands.size() > 1, Symbol::repeat_line, "a strip's rows begin again");
  add(view.axis.has_value(), Symbol::centre, "centre line");
  add(view.bed_middle().has_value(), Symbol::bed_middle, "middle of the bed, between L1 and R1");
  return key;
}

StripLetters strip_letters(const View& view) {
  StripLetters result;
  std::map<std::pair<std::string, int>, std::string> known;  // ordered: no hash order in what is written
  const auto letter_of = [&](const StripSpan& strip) {
    const std::string& name = strip.name.empty() ? strip.texture : strip.name;
    auto [entry, fresh] = known.try_emplace({name, strip.repeat_rows});
    if (fresh) {
      entry->second = letter_name(known.size() - 1);
      std::string words = fmt::format("{}: {}", entry->second, one_line(name));
      if (strip.repeat_rows > 1) words += fmt::format(", repeats every {} rows", strip.repeat_rows);
      result.words.push_back(std::move(words));
    }
    return entry->second;
  };
  std::vector<LetterLine> lines;
  for (const Band& band : view.bands) {
    LetterLine line{.row = band.row, .last_row = band.row + band.rows - 1, .strips = {}};
    for (const StripSpan& strip : band.strips) line.strips.push_back({strip.column, strip.columns, {}});
    // Letters are given from the left on the RS, so that a strip has one letter in both of a panel's charts.
    for (std::size_t i = 0; i < band.strips.size(); ++i) {
      const std::size_t at = view.side == Side::operator_view ? band.strips.size() - 1 - i : i;
      line.strips[at].letter = letter_of(band.strips[at]);
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

void drop_lines_not_shown(StripLetters& letters, const View& view) {
  std::erase_if(letters.lines,
                [&](const LetterLine& line) { return line.row > view.last_row || line.last_row < view.first_row; });
}

}  // namespace latchwork::inline v0::drawing
