#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "chart/pen.hpp"
#include "chart/svg.hpp"
#include "latchwork/schematic.hpp"
#include "schematic/check.hpp"
#include "schematic/drawn.hpp"
#include "schematic/layout.hpp"
#include "schematic/sewn.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace drawing;
using namespace schematics;

constexpr Unit tick = font * 3 / 10;
constexpr Unit clear = font * 3 / 10;  // between outline and extension line

class Drawing {
 public:
  explicit Drawing(const Schematic& schematic) : schematic_(schematic) {}

  DrawnSchematic written() {
    const std::string title = title_words();
    const std::vector<std::string> lines = list();
    // Where the heading ends depends on the width and the width on nothing above: laid out once for its width.
    layout_ = laid_out(schematic_, 0);
    Unit y = font / 2;
    pen_.open("title", font_size(big) + " font-weight=\"bold\"");
    y = paragraph(title, big, y);
    pen_.close();
    layout_ = laid_out(schematic_, y + font);
    outlines();
    dimension_lines();
    texts();
    y += font + layout_.height + font;
    pen_.open("list", font_size(font));
    for (const std::string& line : lines) y = paragraph(line, font, y);
    pen_.close();

    std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" viewBox=\"0 0 ";
    append_unit(out, layout_.width);
    out += ' ';
    append_unit(out, y + font);
    out += "\" role=\"img\">\n<title>" + escaped_xml(title) + "</title>\n<desc>" + escaped_xml(joined(lines, " "));
    out += "</desc>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n";
    out += "<g font-family=\"sans-serif\" fill=\"#000\">\n" + pen_.body + "</g>\n</svg>\n";
    return {.svg = std::move(out), .fonts_wide = static_cast<double>(layout_.width) / static_cast<double>(font)};
  }

 private:
  static constexpr Unit big = font * 13 / 10;

  std::string title_words() const {
    return (schematic_.title.empty() ? "Schematic" : schematic_.title + ": schematic") + ", right side shown";
  }

  std::vector<std::string> list() const {
    std::vector<std::string> lines;
    if (!schematic_.sizes.empty()) {
      std::string sizes = "Sizes: " + schematic_.sizes.front();
      if (schematic_.sizes.size() > 1) {
        sizes += fmt::format(" ({})", joined({schematic_.sizes.begin() + 1, schematic_.sizes.end()}));
        const bool all = std::any_of(schematic_.pieces.begin(), schematic_.pieces.end(),
                                     [](const SchematicPiece& piece) { return !piece.others.empty(); });
        sizes += all ? "; the first is drawn thick" : "; the first is drawn";
      }
      lines.push_back(sizes + ".");
    }
    std::size_t letter = 0;
    bool seams = false;
    for (std::size_t i = 0; i < schematic_.pieces.size(); ++i) {
      const SchematicPiece& piece = schematic_.pieces[i];
      seams = seams || piece.seam_left || piece.seam_right;
      for (const SchematicMeasure& measure : piece.measures) {
        const bool named =
            schematic_.pieces.size() > 1 && !piece.name.empty() && !reaches_over(schematic_.pieces, i, measure);
        const std::string of = named ? piece.name + ", " : "";
        lines.push_back(fmt::format("{}: {}{}{}{}", measure_mark(letter++), of, measure.label,
                                    measure.label.empty() ? "" : ", ", measure_text(measure, schematic_.unit)));
      }
    }
    if (seams) lines.emplace_back("Dashed: a seam to the piece beside it.");
    std::vector<std::string> notes;
    for (const SchematicPiece& piece : schematic_.pieces) {
      for (const std::string& note : piece.notes) {
        if (std::find(notes.begin(), notes.end(), note) == notes.end()) notes.push_back(note);
      }
    }
    notes.insert(notes.end(), schematic_.notes.begin(), schematic_.notes.end());
    lines.insert(lines.end(), notes.begin(), notes.end());
    return lines;
  }

  Unit paragraph(const std::string& words, Unit size, Unit y) {
    // Bold words are wider than plain ones.
    for (const std::string& line :
         wrapped(words, static_cast<std::size_t>((layout_.width - font) * 100 / (size * 64)))) {
      y += size * 13 / 10;
      pen_.text(font / 2, y, line);
    }
    return y;
  }

  void outline(const PlacedPiece& placed, const std::vector<OutlinePoint>& points, const Box& box) {
    Path path;
    Unit x = 0;
    Unit y = 0;
    for (const OutlinePoint& point : points) {
      const Unit next_x = placed.left + std::llround((point.x_mm - box.left) * layout_.unit_of_mm);
      const Unit next_y = placed.top + std::llround((box.high - point.y_mm) * layout_.unit_of_mm);
      if (path.empty()) {
        path.move(next_x, next_y);
      } else if (next_x != x || next_y != y) {
        path.line(next_x, next_y);
      }
      x = next_x;
      y = next_y;
    }
    path.close().flush(pen_.body);
  }

  void outlines() {
    constexpr const char* how = "fill=\"none\" stroke=\"#000\" stroke-linejoin=\"round\"";
    if (std::any_of(schematic_.pieces.begin(), schematic_.pieces.end(),
                    [](const SchematicPiece& piece) { return !piece.others.empty(); })) {
      pen_.open_stroke("other", 50, how);
      for (const PlacedPiece& placed : layout_.pieces) {
        const SchematicPiece& piece = schematic_.pieces[placed.piece];
        const Box box = box_of(piece);
        for (const std::vector<OutlinePoint>& other : piece.others) outline(placed, other, box);
      }
      pen_.close();
    }
    pen_.open_stroke("outline", 120, how);
    for (const PlacedPiece& placed : layout_.pieces) {
      const SchematicPiece& piece = schematic_.pieces[placed.piece];
      outline(placed, piece.outline, box_of(piece));
    }
    pen_.close();
    seams();
  }

  /// One side of a piece as it is drawn, where it is straight up at its outermost; else all of its height.
  struct Side {
    Unit x = 0, top = 0, bottom = 0;
  };
  Side side_of(const PlacedPiece& placed, bool left) const {
    const SchematicPiece& piece = schematic_.pieces[placed.piece];
    const Box all = box_of(piece);
    const Box drawn = box_of(piece.outline);
    const double x = left ? drawn.left : drawn.right;
    double low = drawn.high;
    double high = drawn.low;
    for (const OutlinePoint& point : piece.outline) {
      if (std::abs(point.x_mm - x) > 1e-6) continue;
      low = std::min(low, point.y_mm);
      high = std::max(high, point.y_mm);
    }
    if (high <= low) std::tie(low, high) = std::pair(drawn.low, drawn.high);
    return {placed.left + std::llround((x - all.left) * layout_.unit_of_mm),
            placed.top + std::llround((all.high - high) * layout_.unit_of_mm),
            placed.top + std::llround((all.high - low) * layout_.unit_of_mm)};
  }

  /// Dashed in place of the outlines' own lines between two pieces; where the piece beside it is not drawn, inside.
  void seams() {
    constexpr Unit half_stroke = 60;  // of an outline, which goes on past the seam's ends
    Path ground;
    Path seams;
    for (std::size_t i = 0; i < layout_.pieces.size(); ++i) {
      const PlacedPiece& placed = layout_.pieces[i];
      const SchematicPiece& piece = schematic_.pieces[placed.piece];
      const bool is_last = i + 1 == layout_.pieces.size();
      const Unit inset = std::min(font * 4 / 10, (placed.right - placed.left) / 8);
      if (is_sewn(schematic_.pieces, placed.piece)) {
        const Side before = side_of(layout_.pieces[i - 1], false);
        const Side here = side_of(placed, true);
        const Unit top = std::max(before.top, here.top) + half_stroke;
        const Unit bottom = std::min(before.bottom, here.bottom) - half_stroke;
        if (top < bottom) {
          ground.move(here.x, top).line(here.x, bottom);
          seams.move(here.x, top).line(here.x, bottom);
        }
      } else if (piece.seam_left) {
        const Side side = side_of(placed, true);
        seams.move(side.x + inset, side.top).line(side.x + inset, side.bottom);
      }
      if (piece.seam_right && is_last) {
        const Side side = side_of(placed, false);
        seams.move(side.x - inset, side.top).line(side.x - inset, side.bottom);
      }
    }
    if (!ground.empty()) {
      pen_.open_stroke("seam-ground", 2 * half_stroke + 40, "fill=\"none\" stroke=\"#fff\"");
      ground.flush(pen_.body);
      pen_.close();
    }
    if (seams.empty()) return;
    pen_.open_stroke("seam", 80, "fill=\"none\" stroke=\"#000\" stroke-dasharray=\"4 3\"");
    seams.flush(pen_.body);
    pen_.close();
  }

  /// An extension line from a point to a little past the dimension line.
  static void extension(Path& path, bool flat, Unit along, Unit foot, Unit line) {
    const Unit from = foot < line ? std::min(foot + clear, line) : std::max(foot - clear, line);
    const Unit to = foot < line ? line + tick : line - tick;
    if (flat) {
      path.move(along, from).line(along, to);
    } else {
      path.move(from, along).line(to, along);
    }
  }

  void dimension_lines() {
    Path thin;
    Path ticks;
    for (const PlacedPiece& placed : layout_.pieces) {
      for (const PlacedMeasure& each : placed.measures) {
        const bool flat = across(schematic_.pieces[placed.piece].measures[each.measure].side);
        extension(thin, flat, each.from, each.from_foot, each.line);
        extension(thin, flat, each.to, each.to_foot, each.line);
        if (flat) {
          thin.move(each.from, each.line).line(each.beside ? each.words - clear : each.to, each.line);
        } else {
          thin.move(each.line, each.from).line(each.line, each.to);
        }
        for (const Unit end : {each.from, each.to}) {  // an oblique stroke at each end, as builders draw
          const Unit x = flat ? end : each.line;
          const Unit y = flat ? each.line : end;
          ticks.move(x - tick * 2 / 3, y + tick * 2 / 3).line(x + tick * 2 / 3, y - tick * 2 / 3);
        }
      }
    }
    for (const PlacedPiece& placed : layout_.pieces) {  // after those of the measures
      if (!placed.name_led) continue;
      const Unit middle = (placed.name_left + placed.name_right) / 2;
      const Unit under = placed.name_y + static_cast<Unit>(placed.name.size() - 1) * name_line + clear;
      thin.move(middle, under).line(middle, placed.top - clear);
    }
    if (thin.empty()) return;
    pen_.open_stroke("dimension", 45);
    thin.flush(pen_.body);
    pen_.close();
    pen_.open_stroke("tick", 110);
    ticks.flush(pen_.body);
    pen_.close();
  }

  void texts() {
    pen_.open("measure", font_size(font));
    for (const PlacedPiece& placed : layout_.pieces) {
      const SchematicPiece& piece = schematic_.pieces[placed.piece];
      for (const PlacedMeasure& each : placed.measures) {
        const Unit width = width_of(each);
        const Unit middle = (each.from + each.to) / 2;
        const MeasureSide side = piece.measures[each.measure].side;
        Unit x = each.words;
        Unit y = each.beside ? each.line + font * 35 / 100 : each.line - font * 3 / 10;
        if (!across(side)) {
          x = side == MeasureSide::left ? each.line - font * 4 / 10 - width : each.line + font * 4 / 10;
          y = middle + font * 35 / 100 - font * 6 / 10 * (static_cast<Unit>(each.lines.size()) - 1);
        }
        for (const std::string& line : each.lines) {
          if (each.beside) {
            white(x, y, width);
            pen_.text(x, y, line);
          } else {
            on_white(x, y, width, line);
          }
          y += font * 12 / 10;
        }
      }
      Unit caption_y = placed.caption_y;
      for (const std::string& line : placed.caption) {
        const Unit width = text_width(font, letters_in(line));
        on_white(placed.caption_middle - width / 2, caption_y, width, line);
        caption_y += name_line;
      }
      Unit name_y = placed.name_y;
      for (const std::string& line : placed.name) {
        const Unit width = text_width(font, letters_in(line));
        on_white((placed.name_left + placed.name_right - width) / 2, name_y, width, line);
        name_y += name_line;
      }
    }
    pen_.close();
  }

  /// For words of that width: an extension line may pass behind them.
  void white(Unit x, Unit baseline, Unit width) {
    pen_.body += "<rect fill=\"#fff\" x=\"";
    append_unit(pen_.body, x);
    pen_.body += "\" y=\"";
    append_unit(pen_.body, baseline - font * 85 / 100);
    pen_.body += "\" width=\"";
    append_unit(pen_.body, width);
    pen_.body += "\" height=\"";
    append_unit(pen_.body, font * 105 / 100);
    pen_.body += "\"/>\n";
  }

  /// Words in the middle of a place of that width.
  void on_white(Unit x, Unit baseline, Unit width, const std::string& words) {
    white(x, baseline, width);
    pen_.body += "<g text-anchor=\"middle\">";
    pen_.text(x + width / 2, baseline, words);
    pen_.body += "</g>\n";
  }

  const Schematic& schematic_;
  Layout layout_;
  Pen pen_;
};

}  // namespace

DrawnSchematic schematics::drawn_schematic(const Schematic& schematic) {
  check(schematic);
  return Drawing(schematic).written();
}

std::string schematic_svg(const Schematic& schematic) {
  return drawn_schematic(schematic).svg;
}

}  // namespace latchwork::inline v0
