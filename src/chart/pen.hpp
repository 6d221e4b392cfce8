#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "chart/svg.hpp"

namespace latchwork::inline v0::drawing {

/// Writes the elements of a chart's SVG one after the other.
struct Pen {
  std::string body{};

  /// A group of class "lw-NAME"; close() ends it.
  void open(std::string_view name, std::string_view attributes);
  void open_stroke(std::string_view name, Unit stroke, std::string_view more = "fill=\"none\" stroke=\"#000\"");
  void close();
  /// Words at a baseline's start (or middle or end, as the group says), escaped.
  void text(Unit x, Unit y, std::string_view words);
};

/// font-size="12.5"
std::string font_size(Unit font);

/// Guessed, since no font is at hand: wide enough for the common sans-serif faces.
constexpr Unit text_width(Unit font, std::size_t letters) {
  return font * 62 * static_cast<Unit>(letters) / 100;
}

/// Characters of UTF-8.
std::size_t letters_in(std::string_view text);

/// Broken at spaces into lines of at most so many letters, 1 or more; a word longer than a line is broken too.
std::vector<std::string> wrapped(std::string_view text, std::size_t letters);

/// A slip in the cell whose top left corner is (x, y); with a bar where its strand passes in front.
void append_slip(Path& path, CellSize cell, Unit x, Unit y, bool front);

}  // namespace latchwork::inline v0::drawing
