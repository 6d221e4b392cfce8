#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "latchwork/chart.hpp"
#include "latchwork/panel.hpp"

namespace latchwork::inline v0::drawing {

/// A strip's letter, and the columns it stands at.
struct StripLetter {
  int column = 0;
  int columns = 1;
  std::string letter;
  std::size_t index = 0;  ///< of the letter: 0 for A
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

/// Of bands as seen from `side`; letters are given from the left on the RS, so that a strip has one letter in both of a
/// panel's charts.
StripLetters strip_letters(std::span<const Band> bands, Side side);

/// The words of just the letters that stand in some of its lines, in order.
std::vector<std::string> words_of_lines(const StripLetters& letters, std::span<const LetterLine> lines);

/// The lines of which some rows are shown, with the words of their letters alone; each strip keeps its letter.
StripLetters letters_of_rows(const StripLetters& letters, int first_row, int last_row);

}  // namespace latchwork::inline v0::drawing
