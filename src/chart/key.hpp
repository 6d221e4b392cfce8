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
  bed_middle,
  words  ///< words only: a strip's letter and name
};

struct KeyEntry {
  Symbol symbol = Symbol::knit;
  Crossing crossing{};  ///< for Symbol::crossing: row and column say nothing
  std::string words{};
};

/// Just what the view holds, in a fixed order.
std::vector<KeyEntry> key_of(const View& view);

/// A strip's letter, and the columns it stands at.
struct StripLetter {
  int column = 0;
  int columns = 1;
  std::string letter;
};

/// Rows in which the same strips stand side by side: a band, or several that are alike.
struct LetterLine {
  int row = 1;
  int last_row = 1;
  std::vector<StripLetter> strips;
};

/// A letter for each strip that is unlike the others (by name and repeat): A, B, ... Z, AA, ... Nothing where all are
/// alike.
struct StripLetters {
  std::vector<std::string> words;  ///< "A: rope 3/3 every 8, repeats every 8 rows"
  std::vector<LetterLine> lines;   ///< from row 1 up
};
StripLetters strip_letters(const View& view);

/// Leaves the lines of which some rows are shown; each strip keeps its letter.
void drop_lines_not_shown(StripLetters& letters, const View& view);

}  // namespace latchwork::inline v0::drawing
