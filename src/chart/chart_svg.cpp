#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <utility>

#include "chart/band_marks.hpp"
#include "chart/bands.hpp"
#include "chart/drawn.hpp"
#include "chart/key.hpp"
#include "chart/key_svg.hpp"
#include "chart/labels_svg.hpp"
#include "chart/pen.hpp"
#include "chart/sheet.hpp"
#include "chart/svg.hpp"
#include "chart/view.hpp"
#include "latchwork/chart.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace drawing;

/// Left and right of the cells.
struct Margins {
  Unit left = 0;
  Unit right = 0;
};

/// What stands beside the cells.
struct Beside {
  Unit number = 0;       ///< a row's
  Unit stop = 0;         ///< a stop's mark and words; 0 where there is none
  Unit letter_rows = 0;  ///< rows of a line of letters
};

Beside beside(const Sheet& sheet, Unit font) {
  const Unit digits = text_width(font, fmt::formatted_size("{}", sheet.last_row));
  std::size_t widest = 0;
  for (const LetterLine& line : sheet.letters.lines) widest = std::max(widest, rows_words(sheet.letters, line).size());
  return {.number = digits + font * 8 / 10,
          .stop = sheet.stops.empty() ? 0 : digits + text_width(font, 4) + font * 17 / 10,
          .letter_rows = widest == 0 ? 0 : text_width(font, widest) + font * 8 / 10};
}

Margins margins_of(const Sheet& sheet, Unit font) {
  const Beside words = beside(sheet, font);
  return {.left = std::max(words.number, words.letter_rows), .right = words.stop == 0 ? words.number : words.stop};
}

/// Crossings with the row below them on the sheet too.
std::span<const Crossing> with_row_below(const Sheet& sheet) {
  const auto first = std::find_if(sheet.crossings.begin(), sheet.crossings.end(),
                                  [&](const Crossing& crossing) { return crossing.row >= sheet.first_row; });
  return {first, sheet.crossings.end()};
}

class Drawing {
 public:
  Drawing(const View& view, const Sheet& sheet, CellSize size, std::optional<Unit> font)
      : view_(view), sheet_(sheet), unmarked_(unmarked(view, with_row_below(sheet), size)) {
    frame_.cell = size;
    frame_.first_row = sheet.first_row;
    frame_.last_row = sheet.last_row;
    frame_.first_column = sheet.first_column;
    frame_.width = sheet.columns() * frame_.cell.width;
    frame_.height = (frame_.last_row - frame_.first_row + 1) * frame_.cell.height;
    // Text of about 2.3 mm when the picture fills an A4 page (190 mm x 260 mm), and never smaller than suits a cell.
    frame_.font = font.value_or(std::clamp<Unit>(
        std::max((frame_.width + 12000) * 23 / 1900, (frame_.height + 16000) * 23 / 2600), 1000, 4800));
    seam_ = (!sheet.crossings.empty() && sheet.crossings.back().row == sheet.last_row) ||
            (!sheet.cut.empty() && sheet.cut.back().row == sheet.last_row);
    blocks_ = sheet.crossings;
    blocks_.insert(blocks_.end(), sheet.cut.begin(), sheet.cut.end());
    std::stable_sort(blocks_.begin(), blocks_.end(),
                     [](const Crossing& a, const Crossing& b) { return a.row < b.row; });
    tiers_ = letter_tiers(sheet.letters, frame_);
  }

  /// Heading, cells and key.
  DrawnChart whole() {
    place_cells(40 * frame_.font);
    const Unit below = cells_and_labels(heading(frame_.font / 2));
    const Unit end = append_key(pen_, symbols(), key(), total_, below);
    return finished({.width = total_, .height = end + frame_.font / 2}, whose());
  }

  DrawnChart cells_alone() {
    place_cells(0);
    const Unit height = cells_and_labels(0);
    return finished({.width = total_, .height = height}, whose());
  }

  /// Row numbers, then stops, whose marks point to the cells on the right.
  DrawnChart rows_alone() {
    const Beside words = beside(sheet_, frame_.font);
    const Unit width = std::max(words.number + words.stop, words.letter_rows);
    place_rows(0);
    append_row_labels(
        pen_, sheet_, frame_, above_cells(),
        {.numbers = width - words.stop - frame_.font * 4 / 10, .letter_rows = width - frame_.font * 4 / 10});
    stop_marks(width - words.stop + frame_.font * 2 / 10, width - frame_.font / 10, -frame_.font * 6 / 10);
    return finished({.width = width, .height = height_below()}, " aria-hidden=\"true\">\n");
  }

  std::vector<KeyPicture> key_pictures() {
    const Symbols drawn = symbols();
    std::vector<KeyPicture> pictures;
    for (const KeyEntry& entry : key()) {
      KeyPicture picture{.symbol = {}, .words = entry.words};
      if (entry.symbol != Symbol::words) {
        const Unit over = drawn.overhang(entry);
        pen_.body.clear();
        drawn.append(pen_, entry, 100, over);
        picture.symbol = finished({.width = drawn.width(entry) + 200, .height = drawn.height(entry) + 2 * over},
                                  " aria-hidden=\"true\">\n");
      }
      pictures.push_back(std::move(picture));
    }
    return pictures;
  }

 private:
  struct Extent {
    Unit width = 0;
    Unit height = 0;
  };

  /// In the middle of a picture that is at least so wide.
  void place_cells(Unit least) {
    const Margins margins = margins_of(sheet_, frame_.font);
    const Unit needed = margins.left + frame_.width + margins.right;
    total_ = std::max(needed, least);
    frame_.left = margins.left + (total_ - needed) / 2;
  }

  /// Below what ends at y.
  void place_rows(Unit y) {
    frame_.top =
        y + frame_.font * 7 / 10 + std::max(tiers_.total, 1) * frame_.font * 13 / 10 + (seam_ ? frame_.cell.height : 0);
  }

  AboveCells above_cells() const { return {.tiers = tiers_, .seam = seam_}; }

  Symbols symbols() const { return {.cell = frame_.cell, .font = frame_.font, .blank = view_.blank}; }

  std::vector<KeyEntry> key() const {
    std::vector<std::string> words;
    if (unmarked_.any && unmarked_.as_below) {
      words.emplace_back("a stitch of a crossing that is too narrow for its mark is as in the row below");
    }
    words.insert(words.end(), sheet_.letters.words.begin(), sheet_.letters.words.end());
    return svg_key(view_, sheet_, words);
  }

  /// Where what follows the names of columns begins.
  Unit height_below() const { return frame_.bottom() + frame_.font * 22 / 10; }

  /// All but heading and key; gives where what follows begins.
  Unit cells_and_labels(Unit y) {
    place_rows(y);
    cells();
    crossings();
    tucks_and_slips();
    lines();
    stops();
    append_labels(pen_, view_, sheet_, frame_, above_cells());
    return height_below();
  }

  /// What the picture tells those who do not see it, from the end of the element's name on.
  std::string whose() const {
    return " role=\"img\">\n<title>" + escaped_xml(sheet_.title) + "</title>\n<desc>" +
           escaped_xml(joined(sheet_.notes, " ")) + "</desc>\n";
  }

  DrawnChart finished(const Extent& size, const std::string& told) const {
    std::string out;
    out.reserve(pen_.body.size() + 1024);
    out += "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" viewBox=\"0 0 ";
    append_unit(out, size.width);
    out += ' ';
    append_unit(out, size.height);
    out += '"' + told;
    out += "<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n";
    out += "<g font-family=\"sans-serif\" fill=\"#000\">\n" + pen_.body + "</g>\n</svg>\n";
    return {.svg = std::move(out),
            .width = static_cast<double>(size.width) / 100,
            .height = static_cast<double>(size.height) / 100,
            .cells_left = static_cast<double>(frame_.left) / 100,
            .cells_width = static_cast<double>(frame_.width) / 100};
  }

  /// Whether the line above a row lies between two rows that are shown.
  bool shown_above(int row) const { return row >= frame_.first_row && row < frame_.last_row; }

  Unit heading(Unit y) {
    const Unit big = frame_.font * 13 / 10;
    const auto letters = [&](Unit per_letter) {
      return static_cast<std::size_t>((total_ - frame_.font) * 100 / per_letter);
    };
    pen_.open("title", font_size(big) + " font-weight=\"bold\"");
    for (const std::string& line : wrapped(sheet_.title, letters(big * 62))) {
      y += big * 12 / 10;
      pen_.text(frame_.font / 2, y, line);
    }
    pen_.close();
    pen_.open("notes", font_size(frame_.font));
    for (const std::string& note : notes_of(view_, sheet_)) {
      for (const std::string& line : wrapped(note, letters(frame_.font * 56))) {
        y += frame_.font * 13 / 10;
        pen_.text(frame_.font / 2, y, line);
      }
    }
    pen_.close();
    return y;
  }

  /// Columns of a row hidden under a crossing made before it.
  void mark_hidden(int row) {
    hidden_.assign(static_cast<std::size_t>(view_.grid.columns()), false);
    const auto& all = blocks_;
    while (next_crossing_ < all.size() && all[next_crossing_].row < row - 1) ++next_crossing_;
    for (std::size_t i = next_crossing_; i < all.size() && all[i].row == row - 1; ++i) {
      std::fill_n(hidden_.begin() + all[i].column, all[i].width(), true);
    }
  }

  void cells() {
    next_crossing_ = 0;
    std::string marked;
    Path path;
    pen_.open("none", "fill=\"#bbb\"");
    for (int row = frame_.first_row; row <= frame_.last_row; ++row) {
      mark_hidden(row);
      Path marks;
      Unit pen = 0;
      for (int column = sheet_.first_column; column <= sheet_.last_column; ++column) {
        if (hidden_[static_cast<std::size_t>(column)]) continue;
        const Cell cell = view_.mark(row, column).cell;
        const Unit x = frame_.column_x(column);
        if (cell == Cell::purl && view_.blank == Cell::knit) {
          const Unit from = x + frame_.cell.width * 2 / 10;
          if (marks.empty()) {
            marks.move(from, frame_.row_top(row) + frame_.cell.height / 2);
          } else {
            marks.move_by(from - pen, 0);
          }
          marks.across_by(frame_.cell.width * 6 / 10);
          pen = from + frame_.cell.width * 6 / 10;
        } else if (cell == Cell::knit && view_.blank == Cell::purl) {
          marks.move(x + frame_.cell.width / 2, frame_.row_top(row) + frame_.cell.height * 2 / 10)
              .down_by(frame_.cell.height * 6 / 10);
        } else if (cell == Cell::none) {
          path.move(x, frame_.row_top(row))
              .across_by(frame_.cell.width)
              .down_by(frame_.cell.height)
              .across_by(-frame_.cell.width)
              .close();
        }
      }
      path.flush(pen_.body);
      marks.flush(marked);
    }
    pen_.close();
    grid_lines();
    pen_.open_stroke("none", 90);
    next_crossing_ = 0;
    for (int row = frame_.first_row; row <= frame_.last_row; ++row) {
      mark_hidden(row);
      for (int column = sheet_.first_column; column <= sheet_.last_column; ++column) {
        if (view_.mark(row, column).cell != Cell::none || hidden_[static_cast<std::size_t>(column)]) continue;
        path.move(frame_.column_x(column), frame_.row_top(row)).line_by(frame_.cell.width, frame_.cell.height);
        path.move_by(-frame_.cell.width, 0).line_by(frame_.cell.width, -frame_.cell.height);
      }
      path.flush(pen_.body);
    }
    pen_.close();
    pen_.open_stroke(view_.blank == Cell::knit ? "purl" : "knit", 160);
    pen_.body += marked;
    pen_.close();
  }

  void grid_lines() {
    pen_.open_stroke("grid", 45, "fill=\"none\" stroke=\"#777\"");
    Path path;
    for (int row = frame_.first_row - 1; row <= frame_.last_row; ++row)
      path.move(frame_.left, frame_.row_top(row)).across_by(frame_.width);
    for (int column = sheet_.first_column; column <= sheet_.last_column + 1; ++column)
      path.move(frame_.column_x(column), frame_.top).down_by(frame_.height);
    path.flush(pen_.body);
    pen_.close();
  }

  /// Of a crossing that the edge of the sheet would tear nothing is drawn but where it lies: a grey box with a broken
  /// outline, since grey alone would carry it.
  void cut_crossings() {
    if (sheet_.cut.empty()) return;
    Path path;
    pen_.open("cut-crossing", "fill=\"#ddd\" stroke=\"#000\" stroke-width=\"2\" stroke-dasharray=\"4 4\"");
    for (const Crossing& crossing : sheet_.cut) {
      const int first = std::max(crossing.column, sheet_.first_column);
      const int end = std::min(crossing.column + crossing.width(), sheet_.last_column + 1);
      path.move(frame_.column_x(first), frame_.row_top(crossing.row + 1))
          .across_by((end - first) * frame_.cell.width)
          .down_by(frame_.cell.height)
          .across_by((first - end) * frame_.cell.width)
          .close();
    }
    path.flush(pen_.body);
    pen_.close();
  }

  void crossings() {
    cut_crossings();
    if (sheet_.crossings.empty()) return;
    pen_.open_stroke("crossing", 150, "fill=\"#fff\" stroke=\"#000\" stroke-linejoin=\"round\"");
    std::vector<Cell> above;
    for (const Crossing& crossing : sheet_.crossings) {
      above.clear();
      if (crossing.row < view_.grid.rows()) {
        for (int i = 0; i < crossing.width(); ++i) {
          above.push_back(view_.mark(crossing.row + 1, crossing.column + i).cell);
        }
      }
      append_crossing(pen_.body, crossing, frame_.column_x(crossing.column), frame_.row_top(crossing.row + 1),
                      frame_.cell,
                      {.cells = above,
                       .blank = view_.blank,
                       .leave_narrow = unmarked_.as_below && crossing.row >= sheet_.first_row});
    }
    pen_.close();
  }

  /// Legs of an arch in every tucked row, and its top in the row that takes the loops.
  void tucks_and_slips() {
    std::string slips;
    pen_.open_stroke("tuck", 150, "fill=\"none\" stroke=\"#000\" stroke-linecap=\"round\"");
    Path path;
    Path slip;
    const Unit inset = frame_.cell.width * 18 / 100;
    const Unit span = frame_.cell.width - 2 * inset;
    for (int row = frame_.first_row; row <= frame_.last_row; ++row) {
      for (int column = sheet_.first_column; column <= sheet_.last_column; ++column) {
        const Mark& mark = view_.mark(row, column);
        const Unit x = frame_.column_x(column);
        const Unit y = frame_.row_top(row);
        if (mark.cell == Cell::tuck) {
          const Unit foot = mark.foot ? frame_.cell.height * 82 / 100 : frame_.cell.height;
          path.move(x + inset, y + foot).up_by(foot).move_by(span, 0).down_by(foot);
        } else if (mark.cap) {
          path.move(x + inset, y + frame_.cell.height).up_by(frame_.cell.height * 40 / 100);
          path.arch_by(span / 2, frame_.cell.height * 45 / 100, span, 0).down_by(frame_.cell.height * 40 / 100);
        } else if (mark.cell == Cell::slip) {
          append_slip(slip, frame_.cell, x, y, mark.front);
        }
      }
      path.flush(pen_.body);
      slip.flush(slips);
    }
    pen_.close();
    pen_.open_stroke("slip", 150);
    pen_.body += slips;
    pen_.close();
  }

  void lines() {
    Path path;
    pen_.open_stroke("repeat", 110);
    for (const Band& band : sheet_.bands) {
      for (const StripSpan& strip : band.strips) {
        if (strip.repeat_rows < 2) continue;
        // Rows from the band's first: a repeat may be as high as a number can be.
        const int below =
            std::max(0, frame_.first_row - band.row) / strip.repeat_rows;  // repeats that end under the sheet
        if (below >= band.rows / strip.repeat_rows) continue;
        for (int row = (below + 1) * strip.repeat_rows; row < band.rows; row += strip.repeat_rows) {
          if (!shown_above(band.row + row - 1)) break;
          path.move(frame_.column_x(strip.column), frame_.row_top(band.row + row - 1))
              .across_by(strip.columns * frame_.cell.width);
        }
      }
      if (band.row > 1 && shown_above(band.row - 1))
        path.move(frame_.left, frame_.row_top(band.row - 1)).across_by(frame_.width);
    }
    path.flush(pen_.body);
    pen_.close();
    pen_.open_stroke("strip", 200);
    for (const Band& band : sheet_.bands) {
      const int low = std::max(band.row, frame_.first_row);
      const int high = std::min(band.row + band.rows - 1, frame_.last_row);
      if (low > high) continue;
      for (const StripSpan& strip : band.strips) {
        if (strip.column > sheet_.first_column) {
          path.move(frame_.column_x(strip.column), frame_.row_top(high)).down_by((high - low + 1) * frame_.cell.height);
        }
      }
    }
    path.move(frame_.left, frame_.top).across_by(frame_.width).down_by(frame_.height).across_by(-frame_.width).close();
    path.flush(pen_.body);
    pen_.close();
    if (const auto& middle = sheet_.bed_middle) {
      // A solid arrowhead under the cells: L1 stands left of it, R1 right.
      pen_.open("bed-middle", "fill=\"#000\" stroke=\"none\"");
      path.move(frame_.column_x(*middle), frame_.bottom() + 60)
          .line_by(frame_.font * 3 / 10, frame_.font * 5 / 10)
          .across_by(-frame_.font * 6 / 10);
      path.close();
      path.flush(pen_.body);
      pen_.close();
    }
    if (!sheet_.axis) return;
    pen_.open_stroke("centre", 110, "fill=\"none\" stroke=\"#000\" stroke-dasharray=\"12 3 2 3\"");
    const Unit x = frame_.column_x(0) + *sheet_.axis * frame_.cell.width / 2;
    // From the frame: above it stand crossings of the seam and letters of strips.
    path.move(x, frame_.top).line(x, frame_.bottom() + frame_.font * 6 / 10);
    path.flush(pen_.body);
    pen_.close();
  }

  void stops() {
    if (sheet_.stops.empty()) return;
    Path path;
    // A line wherever the same is done again would bury the cells: those stops have their mark alone.
    for (const int row : sheet_.stops) {
      if (!std::binary_search(view_.new_stops.begin(), view_.new_stops.end(), row)) continue;
      path.move(frame_.left, frame_.row_top(row)).across_by(frame_.width + frame_.font / 4);
    }
    if (!path.empty()) {
      // Heavier than every line that it may lie on, so that its dashes are told there too.
      pen_.open_stroke("stop", 290, "fill=\"none\" stroke=\"#000\" stroke-dasharray=\"6 5\"");
      path.flush(pen_.body);
      pen_.close();
    }
    const Unit x = frame_.left + frame_.width + frame_.font / 4;
    stop_marks(x + frame_.font * 8 / 10, x, frame_.font * 6 / 10);
  }

  /// Each stop's words from `words` on, and its mark from its tip to its broad end.
  void stop_marks(Unit words, Unit tip, Unit broad) {
    if (sheet_.stops.empty()) return;
    Path path;
    pen_.open("stop-mark", font_size(frame_.font) + " font-weight=\"bold\"");
    Unit free_below = frame_.bottom() + 2 * frame_.font;
    for (const int row : sheet_.stops) {
      const Unit y = frame_.row_top(row);
      path.move(tip, y).line_by(broad, -frame_.font * 3 / 10).down_by(frame_.font * 6 / 10).close();
      // Too close to the one below it moves up beside its mark, by its own height at most; in a long run of stops some
      // marks stand without their number, which the words and the text chart have.
      const Unit middle = std::min(y, free_below - frame_.font / 2);
      if (y - middle > frame_.font) continue;
      free_below = middle - frame_.font / 2;
      pen_.text(words, middle + frame_.font * 35 / 100, fmt::format("{} {}", row, view_.carriage_after(row)));
    }
    path.flush(pen_.body);
    pen_.close();
  }

  const View& view_;
  const Sheet& sheet_;
  Frame frame_;
  std::vector<Crossing> blocks_;  ///< whole and cut ones, by row
  LetterTiers tiers_;
  Unmarked unmarked_;  // stitches of crossings without room for their mark
  Unit total_ = 0;     // width of the picture
  bool seam_ = false;  // a crossing after the last row is drawn above it
  std::vector<bool> hidden_;
  std::size_t next_crossing_ = 0;
  Pen pen_;
};

/// A cell is 16 units high and as wide as the gauge says, to a tenth of a unit.
CellSize cell_size(const ChartOptions& options) {
  const double ratio = options.stitch_width_mm / options.stitch_height_mm;
  return {.width = std::llround(160 * ratio) * 10, .height = 1600};
}

Unit units(Words words) {
  return std::llround(words.font * 100);
}

}  // namespace

DrawnChart drawing::drawn_chart(const View& view, const Sheet& sheet, const ChartOptions& options) {
  return Drawing(view, sheet, cell_size(options), std::nullopt).whole();
}

DrawnChart drawing::drawn_cells(const View& view, const Sheet& sheet, const ChartOptions& options, Words words) {
  return Drawing(view, sheet, cell_size(options), units(words)).cells_alone();
}

DrawnChart drawing::drawn_rows(const View& view, const Sheet& sheet, const ChartOptions& options, Words words) {
  return Drawing(view, sheet, cell_size(options), units(words)).rows_alone();
}

std::vector<KeyPicture> drawing::key_pictures(const View& view, const Sheet& sheet, const ChartOptions& options,
                                              Words words) {
  return Drawing(view, sheet, cell_size(options), units(words)).key_pictures();
}

std::vector<std::string> drawing::notes_of(const View& view, const Sheet& sheet) {
  std::vector<std::string> notes = sheet.notes;
  notes.push_back(fmt::format("A cell without a mark is a {} loop, as it looks from here.",
                              view.blank == Cell::knit ? "face" : "back"));
  return notes;
}

double drawing::words_beside(const Sheet& sheet) {
  constexpr Unit font = 1000;
  const Margins margins = margins_of(sheet, font);
  return static_cast<double>(margins.left + margins.right) / static_cast<double>(font);
}

double drawing::cell_proportion(const ChartOptions& options) {
  const CellSize size = cell_size(options);
  return static_cast<double>(size.width) / static_cast<double>(size.height);
}

std::string chart_svg(const Panel& panel, const ChartOptions& options) {
  const View view = view_of(panel, options);
  return drawn_chart(view, sheet_of(view, part_of(view, options)), options).svg;
}

}  // namespace latchwork::inline v0
