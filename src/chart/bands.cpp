#include "chart/bands.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

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

namespace {

struct Piece {
  Unit from = 0;
  Unit to = 0;
};

/// Left end of a group's band where it is `percent` of the way up.
Unit band_at(const Group& group, Unit percent, Unit width) {
  return (group.from * (100 - percent) + group.to * percent) * width / 100;
}

/// The widest part of a stitch on its band that no group in front hides at that height.
Piece widest_seen(std::span<const Group> groups, std::size_t index, int stitch, Unit percent, Unit width) {
  const Unit start = band_at(groups[index], percent, width) + stitch * width;
  std::vector<Piece> seen{{start, start + width}};
  for (std::size_t k = index + 1; k < groups.size(); ++k) {
    const Unit hidden_from = band_at(groups[k], percent, width);
    const Unit hidden_to = hidden_from + groups[k].stitches * width;
    std::vector<Piece> left;
    for (const Piece& piece : seen) {
      if (piece.from < hidden_from) left.push_back({piece.from, std::min(piece.to, hidden_from)});
      if (piece.to > hidden_to) left.push_back({std::max(piece.from, hidden_to), piece.to});
    }
    seen = left;
  }
  Piece widest;
  for (const Piece& piece : seen) {
    if (piece.to - piece.from > widest.to - widest.from) widest = piece;
  }
  return widest;
}

/// A dash in the middle of the front band; on the others near the upper end, where the stitch has nearly arrived, and
/// higher up where little is to be seen.
void append_dash(Path& path, std::span<const Group> groups, std::size_t index, int stitch, Unit x, Unit y,
                 CellSize size) {
  for (const Unit percent : {50, 82, 87, 92}) {
    if (percent == 50 && index + 1 < groups.size()) continue;
    const Piece piece = widest_seen(groups, index, stitch, percent, size.width);
    const Unit seen = piece.to - piece.from;
    if (seen * 100 < size.width * 40 && percent < 92) continue;
    const Unit length = std::min(size.width * 60 / 100, seen * 70 / 100);
    if (length == 0) return;
    path.move(x + (piece.from + piece.to - length) / 2, y + size.height * (100 - percent) / 100).across_by(length);
    return;
  }
}

}  // namespace

void append_crossing(std::string& out, const Crossing& crossing, Unit x, Unit y, CellSize size,
                     std::span<const Cell> above) {
  const std::vector<Group> groups = groups_back_to_front(crossing);
  const Unit bottom = y + size.height;
  Path path;
  path.move(x, y).across_by(crossing.width() * size.width).down_by(size.height);
  path.across_by(-crossing.width() * size.width).close();
  path.flush(out);
  for (const Group& group : groups) {
    const bool bare = !group.outer && !above.empty() && above[static_cast<std::size_t>(group.to)] == Cell::none;
    const Unit width = group.stitches * size.width;
    path.move(x + group.from * size.width, bottom).line(x + group.to * size.width, y).across_by(width);
    path.line(x + group.from * size.width + width, bottom).close();
    path.flush(out, bare ? " fill=\"#bbb\"" : "");
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
  for (std::size_t k = 0; k < groups.size(); ++k) {
    for (int stitch = 0; stitch < groups[k].stitches; ++stitch) {
      const auto column = static_cast<std::ptrdiff_t>(groups[k].to) + stitch;
      if (*(above.begin() + column) != Cell::purl) continue;
      append_dash(path, groups, k, stitch, x, y, size);
    }
  }
  path.flush(out, " fill=\"none\"");
}

}  // namespace latchwork::inline v0::drawing
