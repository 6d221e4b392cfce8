#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "catch.hpp"

// Where the words of a schematic drawing stand.

namespace latchwork_test {

struct Rect {
  double x = 0, y = 0, width = 0, height = 0;
};

inline double number_after(const std::string& svg, const std::string& key, std::size_t from) {
  return std::stod(svg.substr(svg.find(key, from) + key.size()));
}

/// The places of all words on the drawing itself, which stand on white.
inline std::vector<Rect> words_on(const std::string& svg) {
  std::vector<Rect> out;
  const std::string start = "<rect fill=\"#fff\"";
  for (std::size_t at = svg.find(start); at != std::string::npos; at = svg.find(start, at + 1)) {
    out.push_back({number_after(svg, " x=\"", at), number_after(svg, " y=\"", at), number_after(svg, " width=\"", at),
                   number_after(svg, " height=\"", at)});
  }
  return out;
}

/// No words lie on others or beyond the page.
inline void check_layout(const std::string& svg) {
  const std::vector<Rect> words = words_on(svg);
  const double width = number_after(svg, "viewBox=\"0 0 ", 0);
  for (std::size_t i = 0; i < words.size(); ++i) {
    const Rect& a = words[i];
    INFO("words " << i << " at " << a.x << ", " << a.y);
    CHECK((a.x >= 0 && a.x + a.width <= width));
    for (std::size_t j = i + 1; j < words.size(); ++j) {
      const Rect& b = words[j];
      INFO("and words " << j << " at " << b.x << ", " << b.y);
      const bool apart = a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
      CHECK(apart);
    }
  }
}

}  // namespace latchwork_test
