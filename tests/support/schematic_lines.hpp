#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "catch.hpp"

// What a schematic drawing of one piece in one size shows, read back from its SVG.

namespace latchwork_test {

struct DrawnPoint {
  double x = 0, y = 0;
  friend bool operator==(const DrawnPoint&, const DrawnPoint&) = default;
};

/// A measure as it is drawn: what is written, and between which two places of the page.
struct DrawnMeasure {
  std::string letter;
  double cm = 0;
  bool flat = true;  ///< a width
  double from = 0, to = 0;
};

/// The lines of a path; a new one from each M on.
inline std::vector<std::vector<DrawnPoint>> lines_in(const std::string& words) {
  std::vector<std::vector<DrawnPoint>> out;
  std::string spaced;
  for (const char each : words) {
    if (each == 'M') spaced += " M ";
    spaced += each == 'M' || each == 'L' || each == 'z' ? ' ' : each;
  }
  std::istringstream in(spaced);
  for (std::string word; in >> word;) {
    if (word == "M") {
      out.emplace_back();
      continue;
    }
    DrawnPoint point{std::stod(word), 0};
    in >> point.y;
    out.back().push_back(point);
  }
  return out;
}

/// Those of all paths of one group; none where there is no such group.
inline std::vector<std::vector<DrawnPoint>> all_lines_of(const std::string& svg, const std::string& group) {
  std::vector<std::vector<DrawnPoint>> out;
  const std::size_t at = svg.find("<g class=\"" + group + "\"");
  if (at == std::string::npos) return out;
  const std::size_t end = svg.find("</g>", at);
  for (std::size_t path = svg.find(" d=\"", at); path < end; path = svg.find(" d=\"", path + 1)) {
    const std::size_t from = path + 4;
    for (std::vector<DrawnPoint>& line : lines_in(svg.substr(from, svg.find('"', from) - from))) {
      out.push_back(std::move(line));
    }
  }
  return out;
}

/// Those of the first path of one group.
inline std::vector<std::vector<DrawnPoint>> lines_of(const std::string& svg, const std::string& group) {
  const std::size_t at = svg.find("<g class=\"" + group + "\"");
  REQUIRE(at != std::string::npos);
  const std::size_t path = svg.find(" d=\"", at) + 4;
  return lines_in(svg.substr(path, svg.find('"', path) - path));
}

inline std::vector<DrawnMeasure> measures_on(const std::string& svg) {
  std::vector<DrawnMeasure> out;
  const std::vector<std::vector<DrawnPoint>> lines = lines_of(svg, "lw-dimension");
  const std::size_t group = svg.find("<g class=\"lw-measure\"");
  const std::size_t end = svg.find("<g class=\"lw-list\"", group);
  for (std::size_t at = svg.find(" = ", group); at < end; at = svg.find(" = ", at + 1)) {
    const std::size_t line = 3 * out.size();  // an extension line, the other one, the line between them
    REQUIRE(line + 2 < lines.size());
    const std::vector<DrawnPoint>& first = lines[line];
    DrawnMeasure measure;
    measure.letter = svg.substr(at - 1, 1);
    measure.cm = std::stod(svg.substr(at + 3));
    measure.flat = first[0].x == first[1].x;
    measure.from = measure.flat ? first[0].x : first[0].y;
    measure.to = measure.flat ? lines[line + 1][0].x : lines[line + 1][0].y;
    out.push_back(measure);
  }
  return out;
}

/// How far an outline reaches at a height of the page.
inline std::pair<double, double> reach_at(const std::vector<DrawnPoint>& outline, double y) {
  double least = 1e9;
  double most = -1e9;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const DrawnPoint& a = outline[i];
    const DrawnPoint& b = outline[(i + 1) % outline.size()];
    if ((a.y - y) * (b.y - y) > 0) continue;
    const double x = a.y == b.y ? a.x : a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x);
    least = std::min(least, x);
    most = std::max(most, x);
  }
  return {least, most};
}

inline double area_of(const std::vector<DrawnPoint>& outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const DrawnPoint& a = outline[i];
    const DrawnPoint& b = outline[(i + 1) % outline.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return std::abs(twice) / 2;
}

}  // namespace latchwork_test
