#pragma once

#include <span>
#include <string>
#include <vector>

#include "chart/key.hpp"
#include "chart/pen.hpp"
#include "chart/sheet.hpp"
#include "chart/view.hpp"

namespace latchwork::inline v0::drawing {

/// The key of a sheet's picture, and what is said in words alone.
std::vector<KeyEntry> svg_key(const View& view, const Sheet& sheet, std::span<const std::string> words);

/// Draws the symbols of a key.
struct Symbols {
  CellSize cell;
  Unit font = 1000;
  Cell blank = Cell::knit;

  Unit width(const KeyEntry& entry) const;
  Unit height(const KeyEntry& entry) const;
  /// How far it reaches over its height, above and below.
  Unit overhang(const KeyEntry& entry) const;
  void append(Pen& pen, const KeyEntry& entry, Unit x, Unit y) const;
};

/// Draws a key below y in a picture so wide, as many entries to a line as fit. Returns where it ends.
Unit append_key(Pen& pen, const Symbols& symbols, std::span<const KeyEntry> key, Unit width, Unit y);

}  // namespace latchwork::inline v0::drawing
