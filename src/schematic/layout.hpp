#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "chart/svg.hpp"
#include "latchwork/schematic.hpp"

namespace latchwork::inline v0::schematics {

using drawing::Unit;

inline constexpr Unit font = 1000;  ///< all else is laid out in it

/// How far outlines reach, in mm.
struct Box {
  double left = 0, right = 0, low = 0, high = 0;
};
Box box_of(const std::vector<OutlinePoint>& outline);
Box box_of(const SchematicPiece& piece);  ///< in all its sizes

/// Whether a measure is a width.
inline bool across(MeasureSide side) {
  return side == MeasureSide::bottom || side == MeasureSide::top;
}

/// The mark of a measure, counted over all pieces: "a", ... "z", "aa". Lower case, since the letters of charts are
/// strips.
std::string measure_mark(std::size_t index);

/// "45 (50, 55) cm".
std::string measure_text(const SchematicMeasure& measure, LengthUnit unit);

/// One measure on the page. Its dimension line stands at `line`: a height above the page's x, a width at its y.
struct PlacedMeasure {
  std::size_t measure = 0;         ///< index into the piece's measures
  std::vector<std::string> lines;  ///< "a = 45 (50, 55) cm"; beside a height what is in brackets on a line of its own
  Unit from = 0;                   ///< ends of the line: x of a width, y of a height; from <= to
  Unit to = 0;
  Unit from_foot = 0;  ///< where the extension lines begin: y of a width's points, x of a height's
  Unit to_foot = 0;
  Unit line = 0;
  Unit words = 0;       ///< of a width: the x at which they begin
  bool beside = false;  ///< of a width with no room for them: they stand right of all lines, at the end of its own
};

/// One piece on the page. All x and y are the page's.
struct PlacedPiece {
  std::size_t piece = 0;
  Unit left = 0, right = 0, top = 0, bottom = 0;  ///< of its outlines
  std::vector<std::string> name;                  ///< its lines
  Unit name_left = 0, name_right = 0;             ///< they are centred between these
  Unit name_y = 0;                                ///< baseline of the first of them
  bool name_led = false;                          ///< it stands so high that a line leads from it to the piece
  std::vector<std::string> caption;               ///< of the first of pieces sewn together: what their names begin with
  Unit caption_middle = 0;                        ///< its lines are centred there
  Unit caption_y = 0;                             ///< baseline of the first of them
  std::vector<PlacedMeasure> measures;
};

/// Of its widest line.
Unit width_of(const PlacedMeasure& measure);

/// From line to line of a name.
inline constexpr Unit name_line = font * 13 / 10;

struct Layout {
  double unit_of_mm = 0;  ///< the scale
  Unit width = 0;
  Unit height = 0;  ///< of the pieces alone, from `top`
  std::vector<PlacedPiece> pieces;
};

/// Places everything below `top` so that no text lies on another. Measures are named a, b, ... over all pieces.
Layout laid_out(const Schematic& schematic, Unit top);

}  // namespace latchwork::inline v0::schematics
