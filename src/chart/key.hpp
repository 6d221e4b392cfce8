#pragma once

#include <string>
#include <vector>

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
  stop,
  strip_line,
  repeat_line,
  centre,
  strip  ///< a strip's letter and name: words only
};

struct KeyEntry {
  Symbol symbol = Symbol::knit;
  Crossing crossing{};  ///< for Symbol::crossing: row and column say nothing
  std::string words{};
};

/// Just what the view holds, in a fixed order.
std::vector<KeyEntry> key_of(const View& view);

/// Crossings of the view that look unlike, row and column set to 1 and 0, in a fixed order.
std::vector<Crossing> crossing_kinds(const View& view);

/// "3/3 right cross"; "2/1/2 left cross, centre behind". "RC" is not used: it is the row counter too.
std::string crossing_words(const Crossing& crossing);

/// A letter for each strip that is unlike the others (by name and repeat): A, B, ... Z, AA, ...
struct StripLetters {
  std::vector<std::string> words;                 ///< "A: rope 3/3 every 8, repeats every 8 rows"
  std::vector<std::vector<std::string>> letters;  ///< per band, per strip
};
StripLetters strip_letters(const View& view);

}  // namespace latchwork::inline v0::drawing
