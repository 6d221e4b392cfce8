#pragma once

// A chart taken apart: what stands where, so that tests can say what a reader would see.

#include <cmath>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "latchwork/chart.hpp"
#include "text.hpp"

namespace latchwork_test {

using namespace latchwork;

struct Point {
  double x = 0;
  double y = 0;
};

/// Corner points of a path's pieces, pen-up moves starting a new piece: enough of SVG for what charts hold.
inline std::vector<std::vector<Point>> pieces_of(const std::string& d) {
  std::vector<std::vector<Point>> pieces;
  Point pen;
  std::size_t i = 0;
  const auto number = [&] {
    while (i < d.size() && d[i] == ' ') ++i;
    std::size_t used = 0;
    const double value = std::stod(d.substr(i), &used);
    i += used;
    return value;
  };
  while (i < d.size()) {
    const char command = d[i++];
    switch (command) {
      case 'M':
        pen.x = number(), pen.y = number(), pieces.push_back({pen});
        continue;
      case 'm':
        pen.x += number(), pen.y += number(), pieces.push_back({pen});
        continue;
      case 'L':
        pen.x = number(), pen.y = number();
        break;
      case 'l':
        pen.x += number(), pen.y += number();
        break;
      case 'h':
        pen.x += number();
        break;
      case 'v':
        pen.y += number();
        break;
      case 'a':
        for (int k = 0; k < 5; ++k) number();
        pen.x += number(), pen.y += number();
        break;
      case 'z':
        pen = pieces.back().front();
        break;
      default:
        FAIL("unknown path command " << command);
    }
    pieces.back().push_back(pen);
  }
  return pieces;
}

/// A chart taken apart: path pieces by the class of their group.
struct Picture {
  std::string svg;
  std::map<std::string, std::vector<std::vector<Point>>> paths;
  Point corner;  // top left of the cells
  double cell_width = 0;
  double cell_height = 0;
  int rows = 0;

  Picture(const Panel& panel, const ChartOptions& options) : svg(chart_svg(panel, options)) {
    rows = panel.grid().rows();
    std::vector<std::string> groups;
    for (std::size_t at = svg.find('<'); at != std::string::npos; at = svg.find('<', at + 1)) {
      const std::string tag = svg.substr(at, svg.find('>', at) - at);
      if (tag.starts_with("<g")) {
        const std::size_t from = tag.find("class=\"lw-");
        groups.push_back(from == std::string::npos ? "" : tag.substr(from + 10, tag.find('"', from + 10) - from - 10));
      } else if (tag.starts_with("</g")) {
        groups.pop_back();
      } else if (tag.starts_with("<path")) {
        const std::size_t from = tag.find("d=\"") + 3;
        for (auto& piece : pieces_of(tag.substr(from, tag.find('"', from) - from))) {
          paths[groups.back()].push_back(piece);
        }
      }
    }
    const auto& border = paths.at("strip").back();
    corner = border.at(0);
    const int columns = options.columns != 0 ? options.columns : panel.grid().columns() - options.first_column;
    cell_width = (border.at(1).x - border.at(0).x) / columns;
    cell_height = (border.at(2).y - border.at(1).y) / rows;
  }
  int column_at(double x) const { return static_cast<int>(std::floor((x - corner.x) / cell_width)); }
  int row_at(double y) const { return rows - static_cast<int>(std::floor((y - corner.y) / cell_height)); }
  /// (row, column) of the middle of each piece.
  std::set<std::pair<int, int>> cells(const std::string& group) const {
    std::set<std::pair<int, int>> result;
    const auto found = paths.find(group);
    if (found == paths.end()) return result;
    for (const auto& piece : found->second) {
      result.insert(
          {row_at((piece.front().y + piece.back().y) / 2), column_at((piece.front().x + piece.back().x) / 2)});
    }
    return result;
  }
};

inline Panel panel_of(const Grid& grid) {
  return {"Sample", Strip{"sample", "sample", grid}};
}
inline ChartOptions seen_from(Side side) {
  ChartOptions options;
  options.side = side;
  return options;
}
inline ChartOptions seen_from(Side side, Blank blank) {
  ChartOptions options = seen_from(side);
  options.blank = blank;
  return options;
}

/// The words of the key alone.
inline std::string key_part(const std::string& svg) {
  return svg.substr(svg.find(">Key<"));
}

/// What stands between the tags, wrapped lines put together again.
inline std::string joined_words(const std::string& svg) {
  std::string words;
  for (std::size_t at = svg.find("<text"); at != std::string::npos; at = svg.find("<text", at + 1)) {
    const std::size_t from = svg.find('>', at) + 1;
    words += svg.substr(from, svg.find('<', from) - from) + " ";
  }
  return words;
}

/// A strip of `columns` stitches under its own name, repeated every `rows` rows.
inline Strip strip_of(const std::string& name, int columns, int rows = 1) {
  return {name, name, Grid(rows, columns)};
}

/// The texts of a group of the picture, with where they stand.
inline std::vector<std::pair<Point, std::string>> texts(const std::string& svg, const std::string& group) {
  std::vector<std::pair<Point, std::string>> result;
  const std::size_t open = svg.find("<g class=\"lw-" + group + "\"");
  if (open == std::string::npos) return result;
  const std::size_t close = svg.find("</g>", open);
  for (std::size_t at = svg.find("<text", open); at < close; at = svg.find("<text", at + 1)) {
    const std::size_t x = svg.find(" x=\"", at) + 4;
    const std::size_t y = svg.find(" y=\"", at) + 4;
    const std::size_t from = svg.find('>', at) + 1;
    result.push_back(
        {{std::stod(svg.substr(x)), std::stod(svg.substr(y))}, svg.substr(from, svg.find('<', from) - from)});
  }
  return result;
}

}  // namespace latchwork_test
