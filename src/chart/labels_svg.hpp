#pragma once

#include <string>
#include <vector>

#include "chart/frame.hpp"
#include "chart/pen.hpp"
#include "chart/sheet.hpp"
#include "chart/view.hpp"

namespace latchwork::inline v0::drawing {

/// "rows 1-40", where letters differ from rows to rows; else nothing.
std::string rows_words(const StripLetters& letters, const LetterLine& line);

/// How high the letters of strips stand: those that would touch a neighbour's stand above it.
struct LetterTiers {
  std::vector<std::vector<int>> of_strip;  ///< line by line, counted from the line's lowest
  std::vector<int> first;                  ///< the lowest tier of each line, counted from the cells
  int total = 0;
};
/// Of the frame only its cell and font are looked at.
LetterTiers letter_tiers(const StripLetters& letters, const Frame& frame);

/// What stands between the cells and the heading.
struct AboveCells {
  const LetterTiers& tiers;
  bool seam = false;  ///< a row of crossings, next to the cells
};

/// Numbers of rows at the sides, names of columns below, letters of strips above, as many as keep clear of each other.
void append_labels(Pen& pen, const View& view, const Sheet& sheet, const Frame& frame, const AboveCells& above);

/// Where words left of the cells end.
struct RowEnds {
  Unit numbers = 0;
  Unit letter_rows = 0;  ///< rows of the lines of letters
};
/// Of all these only what tells one row from another.
void append_row_labels(Pen& pen, const Sheet& sheet, const Frame& frame, const AboveCells& above, const RowEnds& ends);

}  // namespace latchwork::inline v0::drawing
