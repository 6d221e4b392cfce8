#include "chart/band_marks.hpp"

#include <algorithm>
#include <cstddef>

namespace latchwork::inline v0::drawing {
namespace {

constexpr Unit half_stroke = 80;  ///< of a mark
constexpr Unit clear = 120;       ///< from a mark's edge to the middle of a line
constexpr Unit tight = 30;        ///< the same where there is no room
constexpr Unit shortest = 420;    ///< a mark, not a speck

struct Piece {
  Unit from = 0;
  Unit to = 0;
  Unit width() const { return to - from; }
};

/// Part of a row that a mark lies in, clear of the lines round it.
struct Box {
  Unit low = 0;  ///< heights from the block's foot
  Unit high = 0;
  Piece seen{};
};

/// Left end of a group's band at a height.
Unit band_at(const Group& group, Unit height, CellSize size) {
  return (group.from * (size.height - height) + group.to * height) * size.width / size.height;
}

/// What a band takes of the row between two heights: all of it lies on the band at either, or any of it does.
Piece common(const Group& group, const Box& box, CellSize size) {
  const auto [left, right] = std::minmax({band_at(group, box.low, size), band_at(group, box.high, size)});
  return {right, left + group.stitches * size.width};
}
Piece reach(const Group& group, const Box& box, CellSize size) {
  const auto [left, right] = std::minmax({band_at(group, box.low, size), band_at(group, box.high, size)});
  return {left, right + group.stitches * size.width};
}

/// The widest part of a group's band between two heights that no group in front of it reaches.
Piece widest_seen(std::span<const Group> groups, std::size_t index, const Box& box, CellSize size) {
  std::vector<Piece> seen{common(groups[index], box, size)};
  for (std::size_t k = index + 1; k < groups.size(); ++k) {
    const Piece hidden = reach(groups[k], box, size);
    std::vector<Piece> left;
    for (const Piece& piece : seen) {
      if (piece.from < hidden.from) left.push_back({piece.from, std::min(piece.to, hidden.from)});
      if (piece.to > hidden.to) left.push_back({std::max(piece.from, hidden.to), piece.to});
    }
    seen = std::move(left);
  }
  Piece widest;
  for (const Piece& piece : seen) {
    if (piece.width() > widest.width()) widest = piece;
  }
  return widest;
}

/// Half way up, where a band in front is seen whole, else at the upper end, where stitches have nearly arrived, else at
/// the lower one.
Box best_box(std::span<const Group> groups, std::size_t index, CellSize size, Unit mark, Unit gap) {
  const Unit tall = mark + 2 * gap;
  Box best;
  for (const Unit low : {(size.height - tall) / 2, size.height - tall, Unit{0}}) {
    Box box{.low = low, .high = low + tall};
    box.seen = widest_seen(groups, index, box, size);
    if (box.seen.width() > best.seen.width()) best = box;
  }
  best.seen.from += gap;
  best.seen.to = std::max(best.seen.from, best.seen.to - gap);
  return best;
}

/// The dash of one of a group's stitches, each with the same part of the box.
Stroke dash_in(const Box& box, Unit stitch, Unit stitches, CellSize size) {
  const Unit room = box.seen.width();
  const Unit length = std::min(room * (stitches == 1 ? 80 : 62) / (100 * stitches), size.width * 60 / 100);
  const Unit middle = box.seen.from + room * (2 * stitch + 1) / (2 * stitches);
  return {middle - length / 2, size.height - (box.low + box.high) / 2, length};
}

/// The same for an upright stroke: none, of length 0, where it would touch its neighbours.
Stroke upright_in(const Box& box, Unit stitch, Unit stitches, CellSize size) {
  const Unit room = box.seen.width();
  const bool fits = room >= stitches * 3 * half_stroke;
  return {box.seen.from + room * (2 * stitch + 1) / (2 * stitches), size.height - (box.low + box.high + shortest) / 2,
          fits ? shortest : 0};
}

}  // namespace

BandMarks band_marks(const Crossing& crossing, CellSize size, std::span<const Cell> above, Cell blank) {
  BandMarks marks;
  marks.marked = blank == Cell::knit ? Cell::purl : Cell::knit;
  const bool upright = marks.marked == Cell::knit;
  const auto stroke_in = upright ? upright_in : dash_in;
  const Unit tall = (upright ? shortest : 0) + 2 * half_stroke;
  const std::vector<Group> groups = groups_back_to_front(crossing);
  for (std::size_t k = 0; k < groups.size(); ++k) {
    const Group& group = groups[k];
    const Box box = best_box(groups, k, size, tall, clear);
    const Box narrow_box = best_box(groups, k, size, tall, tight);
    for (int stitch = 0; stitch < group.stitches; ++stitch) {
      const Cell cell = above[static_cast<std::size_t>(group.to) + static_cast<std::size_t>(stitch)];
      const Stroke stroke = stroke_in(box, stitch, group.stitches, size);
      if (cell == Cell::none) continue;
      if (stroke.length < shortest) {
        marks.narrow.push_back({.from = group.from + stitch,
                                .to = group.to + stitch,
                                .stroke = stroke_in(narrow_box, stitch, group.stitches, size)});
      } else if (cell == marks.marked) {
        marks.strokes.push_back(stroke);
      }
    }
  }
  return marks;
}

Unmarked unmarked(const View& view, std::span<const Crossing> crossings, CellSize size) {
  Unmarked result;
  std::vector<Cell> above;
  for (const Crossing& crossing : crossings) {
    if (crossing.row == view.grid.rows()) continue;
    const auto at = [&](int row, int step) { return view.mark(row, crossing.column + step).cell; };
    above.clear();
    for (int step = 0; step < crossing.width(); ++step) above.push_back(at(crossing.row + 1, step));
    for (const Narrow& stitch : band_marks(crossing, size, above, view.blank).narrow) {
      const Cell cell = above[static_cast<std::size_t>(stitch.to)];
      result.any = result.any || (cell != view.blank && (cell == Cell::knit || cell == Cell::purl));
      result.as_below = result.as_below && cell == at(crossing.row, stitch.from);
    }
  }
  return result;
}

}  // namespace latchwork::inline v0::drawing
