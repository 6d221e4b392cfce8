#include "chart/pen.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "text/utf8.hpp"

namespace latchwork::inline v0::drawing {

void Pen::open(std::string_view name, std::string_view attributes) {
  fmt::format_to(std::back_inserter(body), "<g class=\"lw-{}\" {}>\n", name, attributes);
}

void Pen::open_stroke(std::string_view name, Unit stroke, std::string_view more) {
  std::string width;
  append_unit(width, stroke);
  open(name, fmt::format("{} stroke-width=\"{}\"", more, width));
}

void Pen::close() {
  body += "</g>\n";
}

void Pen::text(Unit x, Unit y, std::string_view words) {
  body += "<text x=\"";
  append_unit(body, x);
  body += "\" y=\"";
  append_unit(body, y);
  body += "\">";
  body += escaped_xml(words);
  body += "</text>\n";
}

std::string font_size(Unit font) {
  std::string out = "font-size=\"";
  append_unit(out, font);
  return out + "\"";
}

std::size_t letters_in(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::vector<std::string> wrapped(std::string_view text, std::size_t letters) {
  const std::size_t most = std::max<std::size_t>(letters, 1);
  std::vector<std::string> lines(1);
  std::size_t used = 0;
  const auto next_line = [&] {
    lines.emplace_back();
    used = 0;
  };
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (used > 0 && used + 1 + letters_in(word) > most) next_line();
    if (used > 0) {
      lines.back() += ' ';
      ++used;
    }
    for (std::size_t at = 0; at < word.size();) {
      const std::size_t size = std::min(character_size(word[at]), word.size() - at);
      if (used == most) next_line();
      lines.back().append(word, at, size);
      at += size;
      ++used;
    }
  }
  return lines;
}

void append_slip(Path& path, CellSize cell, Unit x, Unit y, bool front) {
  const Unit w = cell.width;
  const Unit h = cell.height;
  path.move(x + w * 2 / 10, y + h * 2 / 10).line_by(w * 3 / 10, h * 6 / 10).line_by(w * 3 / 10, -h * 6 / 10);
  if (front) path.move(x + w * 1 / 10, y + h / 2).across_by(w * 8 / 10);
}

}  // namespace latchwork::inline v0::drawing
