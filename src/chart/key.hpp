#pragma once

#include <string>
#include <vector>

#include "chart/sheet.hpp"
#include "chart/view.hpp"

namespace latchwork::inline v0::drawing {

enum class Symbol {
  knit,
  purl,
  tuck,
  slip_behind,
  slip_front,
  none,
  crossing,
  cut_crossing,
  stop,
  strip_line,
  repeat_line,
  centre,
  bed_middle,
  words  ///< words only: a strip's letter and name
};

struct KeyEntry {
  Symbol symbol = Symbol::knit;
  Crossing crossing{};  ///< for Symbol::crossing: row and column say nothing
  std::string words{};
};

/// Just what the sheet's picture holds, or its chart in text, in a fixed order.
std::vector<KeyEntry> key_of(const View& view, const Sheet& sheet, bool in_text);

}  // namespace latchwork::inline v0::drawing
