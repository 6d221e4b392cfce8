#include "chart/key_svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "chart/bands.hpp"

namespace latchwork::inline v0::drawing {
namespace {

/// One entry of the key, laid out.
struct Laid {
  const KeyEntry* entry;
  std::vector<std::string> words;
  Unit x, width, symbol_width, symbol_height, text_height;
};

Unit append_line(Pen& pen, const Symbols& symbols, const std::vector<Laid>& line, Unit y) {
  const Unit font = symbols.font;
  Unit height = 0;
  for (const Laid& laid : line) height = std::max({height, laid.symbol_height, laid.text_height});
  for (const Laid& laid : line) {
    const Unit x = font / 2 + laid.x;
    symbols.append(pen, *laid.entry, x, y + (height - laid.symbol_height) / 2);
    Unit baseline = y + (height - laid.text_height) / 2 + font * 95 / 100;
    for (const std::string& words : laid.words) {
      pen.text(laid.symbol_width == 0 ? x : x + laid.symbol_width + font / 2, baseline, words);
      baseline += font * 125 / 100;
    }
  }
  return y + height + font / 2;
}

}  // namespace

Unit Symbols::width(const KeyEntry& entry) const {
  if (entry.symbol == Symbol::words) return 0;
  const int cells_wide = entry.symbol == Symbol::crossing ? entry.crossing.width() : 1;
  return std::max(cells_wide * cell.width, 2 * font);
}

Unit Symbols::height(const KeyEntry& entry) const {
  return (entry.symbol == Symbol::tuck ? 2 : 1) * cell.height;
}

Unit Symbols::overhang(const KeyEntry& entry) const {
  return entry.symbol == Symbol::centre ? cell.height / 4 : 100;  // or half a line's width
}

void Symbols::append(Pen& pen, const KeyEntry& entry, Unit x, Unit y) const {
  const Unit w = cell.width;
  const Unit h = cell.height;
  Path path;
  const auto box = [&](int tall, std::string_view fill) {
    path.move(x, y).across_by(w).down_by(tall * h).across_by(-w).close();
    path.flush(pen.body, fmt::format(" fill=\"{}\" stroke=\"#777\" stroke-width=\"0.6\"", fill));
  };
  constexpr std::string_view ink = " fill=\"none\" stroke=\"#000\" stroke-width=\"1.5\"";
  switch (entry.symbol) {
    case Symbol::knit:
      box(1, "#fff");
      if (blank != Cell::knit) path.move(x + w / 2, y + h * 2 / 10).down_by(h * 6 / 10);
      break;
    case Symbol::purl:
      box(1, "#fff");
      if (blank != Cell::purl) path.move(x + w * 2 / 10, y + h / 2).across_by(w * 6 / 10);
      break;
    case Symbol::tuck: {
      box(2, "#fff");
      box(1, "#fff");
      const Unit inset = w * 18 / 100;
      path.move(x + inset, y + h * 182 / 100).up_by(h * 122 / 100);
      path.arch_by(w / 2 - inset, h * 45 / 100, w - 2 * inset, 0).down_by(h * 122 / 100);
      break;
    }
    case Symbol::slip_behind:
    case Symbol::slip_front:
      box(1, "#fff");
      append_slip(path, cell, x, y, entry.symbol == Symbol::slip_front);
      break;
    case Symbol::none:
      box(1, "#bbb");
      path.move(x, y).line_by(w, h).move_by(-w, 0).line_by(w, -h);
      break;
    case Symbol::crossing:
      pen.body += "<g fill=\"#fff\" stroke=\"#000\" stroke-width=\"1.2\" stroke-linejoin=\"round\">\n";
      append_crossing(pen.body, entry.crossing, x, y, cell, {});
      pen.close();
      break;
    case Symbol::cut_crossing:
      path.move(x, y).across_by(w).down_by(h).across_by(-w).close();
      path.flush(pen.body, " fill=\"#ddd\" stroke=\"#000\" stroke-width=\"2\" stroke-dasharray=\"4 4\"");
      break;
    case Symbol::stop:
      path.move(x + font * 14 / 10, y + h / 2).line_by(font * 6 / 10, -font * 3 / 10).down_by(font * 6 / 10);
      path.close();
      path.flush(pen.body);
      path.move(x, y + h / 2).across_by(font * 14 / 10);
      path.flush(pen.body, " fill=\"none\" stroke=\"#000\" stroke-width=\"2.9\" stroke-dasharray=\"6 5\"");
      break;
    case Symbol::strip_line:
      path.move(x + w / 2, y).down_by(h);
      path.flush(pen.body, " fill=\"none\" stroke=\"#000\" stroke-width=\"2\"");
      break;
    case Symbol::repeat_line:
      path.move(x, y + h / 2).across_by(w);
      path.flush(pen.body, " fill=\"none\" stroke=\"#000\" stroke-width=\"1.1\"");
      break;
    case Symbol::words:
      break;
    case Symbol::bed_middle:
      path.move(x + w / 2, y + h / 2 - font * 25 / 100).line_by(font * 3 / 10, font * 5 / 10);
      path.across_by(-font * 6 / 10).close();
      path.flush(pen.body);
      break;
    case Symbol::centre:
      path.move(x + w / 2, y - h / 4).down_by(h * 3 / 2);
      path.flush(pen.body, " fill=\"none\" stroke=\"#000\" stroke-width=\"1.4\" stroke-dasharray=\"12 3 2 3\"");
      break;
  }
  path.flush(pen.body, ink);
}

std::vector<KeyEntry> svg_key(const View& view, const Sheet& sheet, std::span<const std::string> words) {
  std::vector<KeyEntry> entries = key_of(view, sheet, false);
  for (KeyEntry& entry : entries) {
    if (entry.symbol == Symbol::crossing) entry.words += ", made before this row";
  }
  for (const std::string& each : words) entries.push_back({.symbol = Symbol::words, .crossing = {}, .words = each});
  return entries;
}

/// Entries stand side by side on stops a sixth of the width apart, each line's on one middle.
Unit append_key(Pen& pen, const Symbols& symbols, std::span<const KeyEntry> key, Unit width, Unit y) {
  const Unit font = symbols.font;
  pen.open("key-title", font_size(font) + " font-weight=\"bold\"");
  pen.text(font / 2, y + font, "Key");
  pen.close();
  y += font * 16 / 10;
  pen.open("key", font_size(font));
  const Unit stop = (width - font) / 6;
  std::vector<Laid> line;
  Unit used = 0;
  for (const KeyEntry& entry : key) {
    Laid laid{.entry = &entry,
              .words = {},
              .x = used,
              .width = 0,
              .symbol_width = symbols.width(entry),
              .symbol_height = symbols.height(entry),
              .text_height = 0};
    const Unit room = width - font - laid.symbol_width - font / 2;
    laid.words = wrapped(entry.words, static_cast<std::size_t>(std::max<Unit>(room * 100 / (font * 58), 8)));
    std::size_t longest = 0;
    for (const std::string& part : laid.words) longest = std::max(longest, letters_in(part));
    laid.text_height = static_cast<Unit>(laid.words.size()) * font * 125 / 100;
    laid.width = laid.symbol_width + font / 2 + font * 58 * static_cast<Unit>(longest) / 100;
    if (used > 0 && used + laid.width > width - font) {
      y = append_line(pen, symbols, line, y);
      line.clear();
      laid.x = 0;
    }
    used = (laid.x + laid.width + font + stop - 1) / stop * stop;
    line.push_back(std::move(laid));
  }
  y = append_line(pen, symbols, line, y) + font * 3 / 10;
  pen.close();
  return y;
}

}  // namespace latchwork::inline v0::drawing
