#pragma once

#include <span>
#include <string>

#include "chart/pen.hpp"
#include "chart/sheet.hpp"
#include "chart/view.hpp"

namespace latchwork::inline v0::drawing {

struct KeyLayout {
  CellSize cell;
  Unit font = 1000;
  Unit width = 0;  ///< of the picture
};

/// Draws the key below y: the symbols the sheet uses, then what is said in words alone. Returns where it ends.
Unit append_key(Pen& pen, const View& view, const Sheet& sheet, std::span<const std::string> words,
                const KeyLayout& layout, Unit y);

}  // namespace latchwork::inline v0::drawing
