#include "chart/bands.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

#include "chart/band_marks.hpp"
#include "chart/view.hpp"

namespace latchwork::inline v0::drawing {

void append_unit(std::string& out, Unit value) {
  if (value < 0) {
    out += '-';
    value = -value;
  }
  char digits[24];
  int n = 0;
  Unit whole = value / 100;
  do {
    digits[n++] = static_cast<char>('0' + whole % 10);
    whole /= 10;
  } while (whole > 0);
  while (n > 0) out += digits[--n];
  const Unit rest = value % 100;
  if (rest == 0) return;
  out += '.';
  out += static_cast<char>('0' + rest / 10);
  if (rest % 10 != 0) out += static_cast<char>('0' + rest % 10);
}

Path& Path::pair(char command, Unit x, Unit y) {
  text_ += command;
  append_unit(text_, x);
  text_ += ' ';
  append_unit(text_, y);
  return *this;
}

Path& Path::one(char command, Unit value) {
  text_ += command;
  append_unit(text_, value);
  return *this;
}

Path& Path::arch_by(Unit radius_x, Unit radius_y, Unit x, Unit y) {
  text_ += 'a';
  append_unit(text_, radius_x);
  text_ += ' ';
  append_unit(text_, radius_y);
  text_ += " 0 0 1 ";
  append_unit(text_, x);
  text_ += ' ';
  append_unit(text_, y);
  return *this;
}

void Path::flush(std::string& out, std::string_view attributes) {
  if (text_.empty()) return;
  out += "<path d=\"";
  out += text_;
  out += '"';
  out += attributes;
  out += "/>\n";
  text_.clear();
}

void append_crossing(std::string& out, const Crossing& crossing, Unit x, Unit y, CellSize size, const Above& row) {
  const std::span<const Cell> above = row.cells;
  const std::vector<Group> groups = groups_back_to_front(crossing);
  const Unit bottom = y + size.height;
  Path path;
  path.move(x, y).across_by(crossing.width() * size.width).down_by(size.height);
  path.across_by(-crossing.width() * size.width).close();
  path.flush(out);
  // The outer group that passes behind is shaded: in bands many stitches wide and one row high the lean shows by it.
  const auto behind = std::find_if(groups.begin(), groups.end(), [](const Group& group) { return group.outer; });
  for (const Group& group : groups) {
    const bool bare = !group.outer && !above.empty() && above[static_cast<std::size_t>(group.to)] == Cell::none;
    const Unit width = group.stitches * size.width;
    path.move(x + group.from * size.width, bottom).line(x + group.to * size.width, y).across_by(width);
    path.line(x + group.from * size.width + width, bottom).close();
    path.flush(out, bare ? " fill=\"#bbb\"" : &group == &*behind ? " fill=\"#999\"" : "");
    if (bare) {
      path.move(x + group.from * size.width, bottom).line(x + group.to * size.width + width, y);
      path.move(x + group.from * size.width + width, bottom).line(x + group.to * size.width, y);
      path.flush(out);
    }
  }
  if (!groups.back().outer && groups.size() > 1) {
    // A centre in front may hide where the outer groups meet: the edges of the one in front are dashed across it, as
    // hidden edges are in technical drawings (ISO 128).
    const Group& outer = groups[groups.size() - 2];
    for (const Unit side : {Unit{0}, outer.stitches * size.width}) {
      path.move(x + outer.from * size.width + side, bottom).line(x + outer.to * size.width + side, y);
    }
    path.flush(out, " fill=\"none\" stroke-dasharray=\"2 2\"");
  }
  if (above.empty()) return;
  const BandMarks marks = band_marks(crossing, size, above, row.blank);
  const auto draw = [&](const Stroke& stroke) {
    path.move(x + stroke.x, y + stroke.y);
    if (marks.marked == Cell::purl) {
      path.across_by(stroke.length);
    } else {
      path.down_by(stroke.length);
    }
  };
  for (const Stroke& stroke : marks.strokes) draw(stroke);
  for (const Narrow& stitch : marks.narrow) {
    const bool marked = above[static_cast<std::size_t>(stitch.to)] == marks.marked;
    if (marked && !row.leave_narrow && stitch.stroke.length > 0) draw(stitch.stroke);
  }
  path.flush(out, " fill=\"none\" stroke-width=\"1.6\"");
}

}  // namespace latchwork::inline v0::drawing
