#include "chart/key_svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "chart/bands.hpp"
#include "chart/key.hpp"

namespace latchwork::inline v0::drawing {
namespace {

class Key {
 public:
  Key(Pen& pen, const View& view, const Sheet& sheet, const KeyLayout& layout)
      : pen_(pen), view_(view), sheet_(sheet), cell_(layout.cell), font_(layout.font), width_(layout.width) {}

  /// Entries stand side by side on stops a sixth of the width apart, each line's on one middle.
  Unit drawn(std::span<const std::string> in_words, Unit y) {
    pen_.open("key-title", font_size(font_) + " font-weight=\"bold\"");
    pen_.text(font_ / 2, y + font_, "Key");
    pen_.close();
    y += font_ * 16 / 10;
    pen_.open("key", font_size(font_));
    std::vector<KeyEntry> entries = key_of(view_, sheet_, false);
    for (const std::string& words : in_words) {
      entries.push_back({.symbol = Symbol::words, .crossing = {}, .words = words});
    }
    const Unit stop = (width_ - font_) / 6;
    std::vector<Laid> line;
    Unit used = 0;
    for (const KeyEntry& entry : entries) {
      const int cells_wide = entry.symbol == Symbol::crossing ? entry.crossing.width() : 1;
      Laid laid{.entry = &entry,
                .words = {},
                .x = used,
                .width = 0,
                .symbol_width = entry.symbol == Symbol::words ? 0 : std::max(cells_wide * cell_.width, 2 * font_),
                .symbol_height = (entry.symbol == Symbol::tuck ? 2 : 1) * cell_.height,
                .text_height = 0};
      std::string words = entry.words;
      if (entry.symbol == Symbol::crossing) words += ", made before this row";
      const Unit room = width_ - font_ - laid.symbol_width - font_ / 2;
      laid.words = wrapped(words, static_cast<std::size_t>(std::max<Unit>(room * 100 / (font_ * 58), 8)));
      std::size_t longest = 0;
      for (const std::string& part : laid.words) longest = std::max(longest, letters_in(part));
      laid.text_height = static_cast<Unit>(laid.words.size()) * font_ * 125 / 100;
      laid.width = laid.symbol_width + font_ / 2 + font_ * 58 * static_cast<Unit>(longest) / 100;
      if (used > 0 && used + laid.width > width_ - font_) {
        y = key_line(line, y);
        line.clear();
        laid.x = 0;
      }
      used = (laid.x + laid.width + font_ + stop - 1) / stop * stop;
      line.push_back(std::move(laid));
    }
    y = key_line(line, y) + font_ * 3 / 10;
    pen_.close();
    return y;
  }

 private:
  /// One entry of the key, laid out.
  struct Laid {
    const KeyEntry* entry;
    std::vector<std::string> words;
    Unit x, width, symbol_width, symbol_height, text_height;
  };

  Unit key_line(const std::vector<Laid>& line, Unit y) {
    Unit height = 0;
    for (const Laid& laid : line) height = std::max({height, laid.symbol_height, laid.text_height});
    for (const Laid& laid : line) {
      const Unit x = font_ / 2 + laid.x;
      if (laid.entry->symbol != Symbol::words) key_symbol(*laid.entry, x, y + (height - laid.symbol_height) / 2);
      Unit baseline = y + (height - laid.text_height) / 2 + font_ * 95 / 100;
      for (const std::string& words : laid.words) {
        pen_.text(laid.symbol_width == 0 ? x : x + laid.symbol_width + font_ / 2, baseline, words);
        baseline += font_ * 125 / 100;
      }
    }
    return y + height + font_ / 2;
  }

  void key_symbol(const KeyEntry& entry, Unit x, Unit y) {
    const Unit w = cell_.width;
    const Unit h = cell_.height;
    Path path;
    const auto box = [&](int tall, std::string_view fill) {
      path.move(x, y).across_by(w).down_by(tall * h).across_by(-w).close();
      path.flush(pen_.body, fmt::format(" fill=\"{}\" stroke=\"#777\" stroke-width=\"0.6\"", fill));
    };
    constexpr std::string_view ink = " fill=\"none\" stroke=\"#000\" stroke-width=\"1.5\"";
    switch (entry.symbol) {
      case Symbol::knit:
        box(1, "#fff");
        if (view_.blank != Cell::knit) path.move(x + w / 2, y + h * 2 / 10).down_by(h * 6 / 10);
        break;
      case Symbol::purl:
        box(1, "#fff");
        if (view_.blank != Cell::purl) path.move(x + w * 2 / 10, y + h / 2).across_by(w * 6 / 10);
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
        append_slip(path, cell_, x, y, entry.symbol == Symbol::slip_front);
        break;
      case Symbol::none:
        box(1, "#bbb");
        path.move(x, y).line_by(w, h).move_by(-w, 0).line_by(w, -h);
        break;
      case Symbol::crossing:
        pen_.body += "<g fill=\"#fff\" stroke=\"#000\" stroke-width=\"1.2\" stroke-linejoin=\"round\">\n";
        append_crossing(pen_.body, entry.crossing, x, y, cell_, {});
        pen_.close();
        break;
      case Symbol::cut_crossing:
        path.move(x, y).across_by(w).down_by(h).across_by(-w).close();
        path.flush(pen_.body, " fill=\"#ddd\" stroke=\"#000\" stroke-width=\"2\" stroke-dasharray=\"4 4\"");
        break;
      case Symbol::stop:
        path.move(x + font_ * 14 / 10, y + h / 2).line_by(font_ * 6 / 10, -font_ * 3 / 10).down_by(font_ * 6 / 10);
        path.close();
        path.flush(pen_.body);
        path.move(x, y + h / 2).across_by(font_ * 14 / 10);
        path.flush(pen_.body, " fill=\"none\" stroke=\"#000\" stroke-width=\"2.9\" stroke-dasharray=\"6 5\"");
        break;
      case Symbol::strip_line:
        path.move(x + w / 2, y).down_by(h);
        path.flush(pen_.body, " fill=\"none\" stroke=\"#000\" stroke-width=\"2\"");
        break;
      case Symbol::repeat_line:
        path.move(x, y + h / 2).across_by(w);
        path.flush(pen_.body, " fill=\"none\" stroke=\"#000\" stroke-width=\"1.1\"");
        break;
      case Symbol::words:
        break;
      case Symbol::bed_middle:
        path.move(x + w / 2, y + h / 2 - font_ * 25 / 100).line_by(font_ * 3 / 10, font_ * 5 / 10);
        path.across_by(-font_ * 6 / 10).close();
        path.flush(pen_.body);
        break;
      case Symbol::centre:
        path.move(x + w / 2, y - h / 4).down_by(h * 3 / 2);
        path.flush(pen_.body, " fill=\"none\" stroke=\"#000\" stroke-width=\"1.4\" stroke-dasharray=\"12 3 2 3\"");
        break;
    }
    path.flush(pen_.body, ink);
  }

  Pen& pen_;
  const View& view_;
  const Sheet& sheet_;
  CellSize cell_;
  Unit font_;
  Unit width_;  // of the picture
};

}  // namespace

Unit append_key(Pen& pen, const View& view, const Sheet& sheet, std::span<const std::string> words,
                const KeyLayout& layout, Unit y) {
  return Key(pen, view, sheet, layout).drawn(words, y);
}

}  // namespace latchwork::inline v0::drawing
