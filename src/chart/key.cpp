#include "chart/key.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

#include "crossing/words.hpp"

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

}  // namespace

std::vector<KeyEntry> key_of(const View& view, const Sheet& sheet, bool in_text) {
  const bool turned = view.side == Side::operator_view;
  std::vector<KeyEntry> key;
  const auto add = [&](bool used, Symbol symbol, std::string words) {
    if (used) key.push_back({symbol, {}, std::move(words)});
  };
  add(sheet.kinds.knit, Symbol::knit, turned ? "a face loop towards you: purl on the right side" : "knit: a face loop");
  add(sheet.kinds.purl, Symbol::purl, turned ? "a back loop towards you: knit on the right side" : "purl: a back loop");
  add(sheet.kinds.tuck || sheet.kinds.cap, Symbol::tuck,
      "tuck: from the lowest tucked row to the row that takes its loops");
  add(sheet.kinds.slip_behind, Symbol::slip_behind,
      turned ? "slip: the strand passes on the right side, away from you" : "slip: the strand passes behind");
  add(sheet.kinds.slip_front, Symbol::slip_front,
      turned ? "slip: the strand passes on your side" : "slip: the strand passes in front, a float");
  add(sheet.kinds.none, Symbol::none, "no stitch");
  for (const Crossing& crossing : sheet.crossing_kinds) {
    key.push_back({Symbol::crossing, crossing, words_of(crossing, turned)});
  }
  add(!sheet.cut.empty(), Symbol::cut_crossing, "part of a crossing that reaches past these columns");
  const auto repeated = [&](int row) { return !std::binary_search(view.new_stops.begin(), view.new_stops.end(), row); };
  const bool marks_alone = !in_text && std::any_of(sheet.stops.begin(), sheet.stops.end(), repeated);
  add(!sheet.stops.empty(), Symbol::stop,
      std::string("stop after this row: row counter, side of the carriage") +
          (marks_alone ? "; mark alone: as at a stop below" : ""));
  add(sheet.has_edges(), Symbol::strip_line, "edge of a strip");
  add(sheet.begins_again(in_text), Symbol::repeat_line, "a strip's rows begin again");
  add(sheet.axis.has_value(), Symbol::centre, "centre line");
  add(sheet.bed_middle.has_value(), Symbol::bed_middle, "middle of the bed, between L1 and R1");
  return key;
}

}  // namespace latchwork::inline v0::drawing
