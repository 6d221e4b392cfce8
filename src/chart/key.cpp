#include "chart/key.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace latchwork::inline v0::drawing {

std::string crossing_words(const Crossing& crossing) {
  const bool right = crossing.lean == Lean::right;
  const int front = right ? crossing.left : crossing.right;
  const int back = right ? crossing.right : crossing.left;
  const char* way = right ? "right" : "left";
  if (crossing.centre == 0) return fmt::format("{}/{} {} cross", front, back, way);
  const char* place = crossing.place == Centre::front     ? "in front"
                      : crossing.place == Centre::between ? "between"
                                                          : "behind";
  return fmt::format("{}/{}/{} {} cross, centre {}", front, crossing.centre, back, way, place);
}

std::vector<Crossing> crossing_kinds(const View& view) {
  const auto order = [](const Crossing& c) {
    return std::tuple(c.width(), c.left, c.centre, c.right, c.lean != Lean::right, c.place);
  };
  std::vector<Crossing> kinds;
  for (Crossing crossing : view.grid.crossings()) {
    crossing.row = 1;
    crossing.column = 0;
    kinds.push_back(crossing);
  }
  std::sort(kinds.begin(), kinds.end(), [&](const auto& a, const auto& b) { return order(a) < order(b); });
  kinds.erase(std::unique(kinds.begin(), kinds.end()), kinds.end());
  return kinds;
}

std::vector<KeyEntry> key_of(const View& view) {
  const bool turned = view.side == Side::operator_view;
  bool knit = false, purl = false, tuck = false, behind = false, front = false, none = false;
  for (const Mark& mark : view.marks) {
    knit = knit || mark.cell == Cell::knit;
    purl = purl || mark.cell == Cell::purl;
    tuck = tuck || mark.cell == Cell::tuck;
    behind = behind || (mark.cell == Cell::slip && !mark.front);
    front = front || (mark.cell == Cell::slip && mark.front);
    none = none || mark.cell == Cell::none;
  }
  std::vector<KeyEntry> key;
  const auto add = [&](bool used, Symbol symbol, std::string words) {
    if (used) key.push_back({symbol, {}, std::move(words)});
  };
  add(knit, Symbol::knit, turned ? "a face loop towards you: purl on the right side" : "knit: a face loop");
  add(purl, Symbol::purl, turned ? "a back loop towards you: knit on the right side" : "purl: a back loop");
  add(tuck, Symbol::tuck, "tuck: from the lowest tucked row to the row that takes its loops");
  add(behind, Symbol::slip_behind,
      turned ? "slip: the strand passes on the right side, away from you" : "slip: the strand passes behind");
  add(front, Symbol::slip_front,
      turned ? "slip: the strand passes on your side" : "slip: the strand passes in front, a float");
  add(none, Symbol::none, "no stitch");
  for (const Crossing& crossing : crossing_kinds(view)) {
    key.push_back({Symbol::crossing, crossing, crossing_words(crossing)});
  }
  add(!view.stops.empty(), Symbol::stop, "stop after this row: row counter, side of the carriage");
  add(!view.strip_lines().empty(), Symbol::strip_line, "edge of a strip");
  const bool repeats = std::any_of(view.bands.begin(), view.bands.end(), [](const Band& band) {
    return std::any_of(band.strips.begin(), band.strips.end(),
                       [&](const StripSpan& strip) { return strip.repeat_rows > 1 && strip.repeat_rows < band.rows; });
  });
  add(repeats || view.bands.size() > 1, Symbol::repeat_line, "a strip's rows begin again");
  add(view.axis.has_value(), Symbol::centre, "centre line");
  return key;
}

StripLetters strip_letters(const View& view) {
  StripLetters result;
  std::map<std::pair<std::string, int>, std::string> known;  // ordered: no hash order in what is written
  for (const Band& band : view.bands) {
    auto& row = result.letters.emplace_back();
    for (const StripSpan& strip : band.strips) {
      auto [entry, fresh] = known.try_emplace({strip.name, strip.repeat_rows});
      if (fresh) {
        std::string letters;
        for (std::size_t n = known.size(); n > 0; n = (n - 1) / 26) {
          letters.insert(letters.begin(), static_cast<char>('A' + (n - 1) % 26));
        }
        entry->second = letters;
        std::string words = fmt::format("{}: {}", letters, strip.name.empty() ? strip.texture : strip.name);
        if (strip.repeat_rows > 1) words += fmt::format(", repeats every {} rows", strip.repeat_rows);
        result.words.push_back(std::move(words));
      }
      row.push_back(entry->second);
    }
  }
  return result;
}

}  // namespace latchwork::inline v0::drawing
