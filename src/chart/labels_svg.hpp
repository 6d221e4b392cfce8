#pragma once

#include <string>

#include "chart/frame.hpp"
#include "chart/pen.hpp"
#include "chart/sheet.hpp"
#include "chart/view.hpp"

namespace latchwork::inline v0::drawing {

/// "rows 1-40", where letters differ from rows to rows; else nothing.
std::string rows_words(const StripLetters& letters, const LetterLine& line);

/// Numbers of rows at the sides, names of columns below, letters of strips above, as many as keep clear of each other.
/// `seam`: a row of crossings stands between the cells and the letters.
void append_labels(Pen& pen, const View& view, const Sheet& sheet, const Frame& frame, bool seam);

}  // namespace latchwork::inline v0::drawing
