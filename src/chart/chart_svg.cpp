#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <iterator>
#include <utility>

#include "chart/band_marks.hpp"
#include "chart/bands.hpp"
#include "chart/drawn.hpp"
#include "chart/key.hpp"
#include "chart/key_svg.hpp"
#include "chart/pen.hpp"
#include "chart/svg.hpp"
#include "chart/view.hpp"
#include "latchwork/chart.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace drawing;

class Drawing {
 public:
  Drawing(const View& view, CellSize size, Unmarked narrow) : view_(view), size_(size), unmarked_(narrow) {
    first_ = view.first_row;
    last_ = view.last_row;
    columns_ = view.grid.columns();
    width_ = columns_ * size_.width;
    height_ = (last_ - first_ + 1) * size_.height;
    // Text of about 2.3 mm when the picture fills an A4 page (190 mm x 260 mm), and never smaller than suits a cell.
    font_ = std::clamp<Unit>(std::max((width_ + 12000) * 23 / 1900, (height_ + 16000) * 23 / 2600), 1000, 4800);
    seam_ = std::any_of(view.grid.crossings().begin(), view.grid.crossings().end(),
                        [&](const Crossing& c) { return c.row == last_ && view.shows(c); });
    const Unit digits = text_width(font_, fmt::formatted_size("{}", last_));
    letters_ = strip_letters(view_);
    drop_lines_not_shown(letters_, view_);
    std::size_t widest = 0;
    for (const LetterLine& line : letters_.lines) widest = std::max(widest, rows_words(line).size());
    const Unit left_margin = std::max(digits, text_width(font_, widest)) + font_ * 8 / 10;
    const Unit right_margin =
        view.stops.empty() ? digits + font_ * 8 / 10 : digits + text_width(font_, 4) + font_ * 17 / 10;
    total_ = std::max(left_margin + width_ + right_margin, 30 * font_);
    left_ = left_margin + (total_ - left_margin - width_ - right_margin) / 2;
  }

  DrawnChart written() {
    Unit y = font_ / 2;
    y = heading(y);
    const auto letter_lines = static_cast<Unit>(std::max<std::size_t>(letters_.lines.size(), 1));
    top_ = y + font_ * 4 / 10 + letter_lines * font_ * 13 / 10 + (seam_ ? size_.height : 0);
    cells();
    crossings();
    tucks_and_slips();
    lines();
    stops();
    labels();
    std::vector<std::string> words;
    if (unmarked_.any && unmarked_.as_below) {
      words.emplace_back("a stitch of a crossing that is too narrow for its mark is as in the row below");
    }
    words.insert(words.end(), letters_.words.begin(), letters_.words.end());
    y = append_key(pen_, view_, words, {.cell = size_, .font = font_, .width = total_}, bottom() + font_ * 22 / 10);
    const Unit height = y + font_ / 2;
    std::string out;
    out.reserve(pen_.body.size() + 1024);
    out += "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" viewBox=\"0 0 ";
    append_unit(out, total_);
    out += ' ';
    append_unit(out, height);
    out += "\" role=\"img\">\n<title>" + escaped_xml(view_.title) + "</title>\n<desc>";
    out += escaped_xml(joined(view_.notes, " "));
    out += "</desc>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n";
    out += "<g font-family=\"sans-serif\" fill=\"#000\">\n" + pen_.body + "</g>\n</svg>\n";
    return {
        .svg = std::move(out), .width = static_cast<double>(total_) / 100, .height = static_cast<double>(height) / 100};
  }

 private:
  Unit column_x(int column) const { return left_ + column * size_.width; }
  Unit row_top(int row) const { return top_ + (last_ - row) * size_.height; }
  Unit bottom() const { return top_ + height_; }

  /// Whether the line above a row lies between two rows that are shown.
  bool shown_above(int row) const { return row >= first_ && row < last_; }

  Unit heading(Unit y) {
    const Unit big = font_ * 13 / 10;
    pen_.open("title", font_size(big) + " font-weight=\"bold\"");
    for (const std::string& line :
         wrapped(view_.title, static_cast<std::size_t>((total_ - font_) * 100 / (big * 62)))) {
      y += big * 12 / 10;
      pen_.text(font_ / 2, y, line);
    }
    pen_.close();
    pen_.open("notes", font_size(font_));
    std::vector<std::string> notes = view_.notes;
    notes.push_back(blank_words());
    for (const std::string& note : notes) {
      for (const std::string& line : wrapped(note, static_cast<std::size_t>((total_ - font_) * 100 / (font_ * 56)))) {
        y += font_ * 13 / 10;
        pen_.text(font_ / 2, y, line);
      }
    }
    pen_.close();
    return y;
  }

  std::string blank_words() const {
    return view_.blank == Cell::knit ? "A cell without a mark is a face loop, as it looks from here."
                                     : "A cell without a mark is a back loop, as it looks from here.";
  }

  /// Columns of a row hidden under a crossing made before it.
  void mark_hidden(int row) {
    hidden_.assign(static_cast<std::size_t>(columns_), false);
    const auto all = view_.grid.crossings();
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
    for (int row = first_; row <= last_; ++row) {
      mark_hidden(row);
      Path marks;
      Unit pen = 0;
      for (int column = 0; column < columns_; ++column) {
        if (hidden_[static_cast<std::size_t>(column)]) continue;
        const Cell cell = view_.mark(row, column).cell;
        const Unit x = column_x(column);
        if (cell == Cell::purl && view_.blank == Cell::knit) {
          const Unit from = x + size_.width * 2 / 10;
          if (marks.empty()) {
            marks.move(from, row_top(row) + size_.height / 2);
          } else {
            marks.move_by(from - pen, 0);
          }
          marks.across_by(size_.width * 6 / 10);
          pen = from + size_.width * 6 / 10;
        } else if (cell == Cell::knit && view_.blank == Cell::purl) {
          marks.move(x + size_.width / 2, row_top(row) + size_.height * 2 / 10).down_by(size_.height * 6 / 10);
        } else if (cell == Cell::none) {
          path.move(x, row_top(row)).across_by(size_.width).down_by(size_.height).across_by(-size_.width).close();
        }
      }
      path.flush(pen_.body);
      marks.flush(marked);
    }
    pen_.close();
    grid_lines();
    pen_.open_stroke("none", 90);
    next_crossing_ = 0;
    for (int row = first_; row <= last_; ++row) {
      mark_hidden(row);
      for (int column = 0; column < columns_; ++column) {
        if (view_.mark(row, column).cell != Cell::none || hidden_[static_cast<std::size_t>(column)]) continue;
        path.move(column_x(column), row_top(row)).line_by(size_.width, size_.height);
        path.move_by(-size_.width, 0).line_by(size_.width, -size_.height);
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
    for (int row = first_ - 1; row <= last_; ++row) path.move(left_, row_top(row)).across_by(width_);
    for (int column = 0; column <= columns_; ++column) path.move(column_x(column), top_).down_by(height_);
    path.flush(pen_.body);
    pen_.close();
  }

  void crossings() {
    if (view_.grid.crossings().empty()) return;
    pen_.open_stroke("crossing", 150, "fill=\"#fff\" stroke=\"#000\" stroke-linejoin=\"round\"");
    std::vector<Cell> above;
    for (const Crossing& crossing : view_.grid.crossings()) {
      if (!view_.shows(crossing)) continue;
      above.clear();
      if (crossing.row < view_.grid.rows()) {
        for (int i = 0; i < crossing.width(); ++i) {
          above.push_back(view_.mark(crossing.row + 1, crossing.column + i).cell);
        }
      }
      append_crossing(pen_.body, crossing, column_x(crossing.column), row_top(crossing.row + 1), size_,
                      {.cells = above, .blank = view_.blank, .leave_narrow = unmarked_.as_below});
    }
    pen_.close();
  }

  /// Legs of an arch in every tucked row, and its top in the row that takes the loops.
  void tucks_and_slips() {
    std::string slips;
    pen_.open_stroke("tuck", 150, "fill=\"none\" stroke=\"#000\" stroke-linecap=\"round\"");
    Path path;
    Path slip;
    const Unit inset = size_.width * 18 / 100;
    const Unit span = size_.width - 2 * inset;
    for (int row = first_; row <= last_; ++row) {
      for (int column = 0; column < columns_; ++column) {
        const Mark& mark = view_.mark(row, column);
        const Unit x = column_x(column);
        const Unit y = row_top(row);
        if (mark.cell == Cell::tuck) {
          const Unit foot = mark.foot ? size_.height * 82 / 100 : size_.height;
          path.move(x + inset, y + foot).up_by(foot).move_by(span, 0).down_by(foot);
        } else if (mark.cap) {
          path.move(x + inset, y + size_.height).up_by(size_.height * 40 / 100);
          path.arch_by(span / 2, size_.height * 45 / 100, span, 0).down_by(size_.height * 40 / 100);
        } else if (mark.cell == Cell::slip) {
          append_slip(slip, size_, x, y, mark.front);
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
    for (const Band& band : view_.bands) {
      for (const StripSpan& strip : band.strips) {
        if (strip.repeat_rows < 2) continue;
        // Rows from the band's first: a repeat may be as high as a number can be.
        const int below = std::max(0, first_ - band.row) / strip.repeat_rows;  // repeats that end under the sheet
        if (below >= band.rows / strip.repeat_rows) continue;
        for (int row = (below + 1) * strip.repeat_rows; row < band.rows; row += strip.repeat_rows) {
          if (!shown_above(band.row + row - 1)) break;
          path.move(column_x(strip.column), row_top(band.row + row - 1)).across_by(strip.columns * size_.width);
        }
      }
      if (band.row > 1 && shown_above(band.row - 1)) path.move(left_, row_top(band.row - 1)).across_by(width_);
    }
    path.flush(pen_.body);
    pen_.close();
    pen_.open_stroke("strip", 200);
    for (const Band& band : view_.bands) {
      const int low = std::max(band.row, first_);
      const int high = std::min(band.row + band.rows - 1, last_);
      if (low > high) continue;
      for (const StripSpan& strip : band.strips) {
        if (strip.column > 0) {
          path.move(column_x(strip.column), row_top(high)).down_by((high - low + 1) * size_.height);
        }
      }
    }
    path.move(left_, top_).across_by(width_).down_by(height_).across_by(-width_).close();
    path.flush(pen_.body);
    pen_.close();
    if (const auto middle = view_.bed_middle()) {
      // A solid arrowhead under the cells: L1 stands left of it, R1 right.
      pen_.open("bed-middle", "fill=\"#000\" stroke=\"none\"");
      path.move(column_x(*middle), bottom() + 60).line_by(font_ * 3 / 10, font_ * 5 / 10).across_by(-font_ * 6 / 10);
      path.close();
      path.flush(pen_.body);
      pen_.close();
    }
    if (!view_.axis) return;
    pen_.open_stroke("centre", 110, "fill=\"none\" stroke=\"#000\" stroke-dasharray=\"12 3 2 3\"");
    const Unit x = left_ + *view_.axis * size_.width / 2;
    // From the frame: above it stand crossings of the seam and letters of strips.
    path.move(x, top_).line(x, bottom() + font_ * 6 / 10);
    path.flush(pen_.body);
    pen_.close();
  }

  void stops() {
    if (view_.stops.empty()) return;
    Path path;
    pen_.open_stroke("stop", 170, "fill=\"none\" stroke=\"#000\" stroke-dasharray=\"5 3\"");
    for (const int row : view_.stops) path.move(left_, row_top(row)).across_by(width_ + font_ / 4);
    path.flush(pen_.body);
    pen_.close();
    pen_.open("stop-mark", font_size(font_) + " font-weight=\"bold\"");
    const Unit x = left_ + width_ + font_ / 4;
    Unit free_below = bottom() + 2 * font_;
    for (const int row : view_.stops) {
      const Unit y = row_top(row);
      path.move(x, y).line_by(font_ * 6 / 10, -font_ * 3 / 10).down_by(font_ * 6 / 10).close();
      if (y + font_ / 2 > free_below) continue;  // too close to the one below: the mark stands without its number
      free_below = y - font_ / 2;
      pen_.text(x + font_ * 8 / 10, y + font_ * 35 / 100, fmt::format("{} {}", row, view_.carriage_after(row)));
    }
    path.flush(pen_.body);
    pen_.close();
  }

  /// Names at `wanted` places first, then at the others, as far as none touches another.
  struct Label {
    int at = 0;
    bool wanted = false;
  };
  template <class Span>
  static std::vector<int> placed(const std::vector<Label>& labels, Span&& span_of) {
    std::vector<std::pair<Unit, Unit>> taken;
    std::vector<int> result;
    for (const bool wanted : {true, false}) {
      for (const Label& label : labels) {
        if (label.wanted != wanted) continue;
        const std::pair<Unit, Unit> span = span_of(label.at);
        const auto after = std::lower_bound(taken.begin(), taken.end(), span);
        if (after != taken.end() && after->first < span.second) continue;
        if (after != taken.begin() && std::prev(after)->second > span.first) continue;
        taken.insert(after, span);
        result.push_back(label.at);
      }
    }
    std::sort(result.begin(), result.end());
    return result;
  }
  static int step_for(Unit pitch, Unit needed) {
    for (int ten = 1; ten <= 100000; ten *= 10) {
      for (const int step : {ten, 2 * ten, 5 * ten}) {
        if (pitch * step >= needed) return step;
      }
    }
    return 500000;
  }

  void labels() {
    const int row_step = step_for(size_.height, font_ * 105 / 100);
    std::vector<Label> rows;
    for (int row = first_; row <= last_; ++row) {
      if (row % row_step == 0) rows.push_back({row, true});
    }
    rows.push_back({last_, false});
    rows.push_back({first_, false});
    const auto row_span = [&](int row) { return std::pair(row * size_.height, row * size_.height + font_); };
    pen_.open("rows", font_size(font_) + " text-anchor=\"end\"");
    const std::vector<int> shown = placed(rows, row_span);
    for (const int row : shown) {
      pen_.text(left_ - font_ * 4 / 10, row_top(row) + size_.height / 2 + font_ * 35 / 100, fmt::to_string(row));
    }
    pen_.close();
    if (view_.stops.empty()) {
      pen_.open("rows", font_size(font_));
      for (const int row : shown) {
        pen_.text(left_ + width_ + font_ * 4 / 10, row_top(row) + size_.height / 2 + font_ * 35 / 100,
                  fmt::to_string(row));
      }
      pen_.close();
    }
    column_labels();
    strip_labels();
  }

  /// "rows 1-40", where letters differ from rows to rows.
  std::string rows_words(const LetterLine& line) const {
    if (letters_.lines.size() < 2) return {};
    return line.row == line.last_row ? fmt::format("row {}", line.row)
                                     : fmt::format("rows {}-{}", line.row, line.last_row);
  }

  /// Lines of letters above the cells, the lowest rows' next to them, each with its rows where there are several.
  void strip_labels() {
    if (letters_.lines.empty()) return;
    Unit font = std::min(font_, size_.width);
    for (const LetterLine& line : letters_.lines) {
      for (const StripLetter& strip : line.strips) {
        // Bold letters are wide, and those of the next strip keep their distance.
        const auto letters = static_cast<Unit>(strip.letter.size());
        font = std::min(font, strip.columns * size_.width * 100 / (letters * 95));
      }
    }
    const auto baseline = [&](std::size_t line) {
      return top_ - font_ / 2 - (seam_ ? size_.height : 0) - static_cast<Unit>(line) * font_ * 13 / 10;
    };
    pen_.open("strips", font_size(font) + " font-weight=\"bold\" text-anchor=\"middle\"");
    for (std::size_t i = 0; i < letters_.lines.size(); ++i) {
      for (const StripLetter& strip : letters_.lines[i].strips) {
        pen_.text(column_x(strip.column) + strip.columns * size_.width / 2, baseline(i), strip.letter);
      }
    }
    pen_.close();
    if (letters_.lines.size() < 2) return;
    pen_.open("strip-rows", font_size(font_) + " text-anchor=\"end\"");
    for (std::size_t i = 0; i < letters_.lines.size(); ++i) {
      pen_.text(left_ - font_ * 4 / 10, baseline(i), rows_words(letters_.lines[i]));
    }
    pen_.close();
  }

  void column_labels() {
    std::vector<std::string> names;
    std::size_t longest = 1;
    for (int column = 0; column < columns_; ++column) {
      names.push_back(view_.column_name(column));
      longest = std::max(longest, names.back().size());
    }
    const bool needles = view_.side == Side::operator_view;
    int step = step_for(size_.width, text_width(font_, longest) + font_ * 3 / 10);
    // Numbers are read in fives; and L1 stands next to R1, so needles numbered in twos would not be told apart.
    if (step == 2) step = 5;
    std::vector<Label> columns;
    for (int column = 0; column < columns_; ++column) {
      const std::int64_t number = needles ? std::abs(std::int64_t{needle_beside(view_.leftmost, column)}) : column;
      if (number % step == 0) columns.push_back({column, true});
    }
    columns.push_back({columns_ - 1, false});
    columns.push_back({0, false});
    pen_.open("columns", font_size(font_) + " text-anchor=\"middle\"");
    const auto middle = [&](int column) { return column_x(column) + size_.width / 2; };
    const auto span = [&](int column) {
      const Unit half = (text_width(font_, names[static_cast<std::size_t>(column)].size()) + font_ * 2 / 10) / 2;
      return std::pair(middle(column) - half, middle(column) + half);
    };
    Path ticks;
    for (const int column : placed(columns, span)) {
      pen_.text(middle(column), bottom() + font_ * 14 / 10, names[static_cast<std::size_t>(column)]);
      ticks.move(middle(column), bottom() + 100).down_by(font_ * 3 / 10);
    }
    ticks.flush(pen_.body, " fill=\"none\" stroke=\"#000\"");
    pen_.close();
  }

  const View& view_;
  CellSize size_;
  int first_ = 1;  // row shown
  int last_ = 1;
  int columns_ = 0;
  Unmarked unmarked_;  // stitches of crossings without room for their mark
  Unit width_ = 0;     // of the cells
  Unit height_ = 0;    // of the cells
  Unit font_ = 1000;
  Unit total_ = 0;  // of the picture
  Unit left_ = 0;
  Unit top_ = 0;
  bool seam_ = false;  // a crossing after the last row is drawn above it
  StripLetters letters_;
  std::vector<bool> hidden_;
  std::size_t next_crossing_ = 0;
  Pen pen_;
};

/// A cell is 16 units high and as wide as the gauge says, to a tenth of a unit.
CellSize cell_size(const ChartOptions& options) {
  const double ratio = options.stitch_width_mm / options.stitch_height_mm;
  return {.width = std::llround(160 * ratio) * 10, .height = 1600};
}

}  // namespace

std::vector<DrawnChart> drawing::drawn_sheets(const Panel& panel, const ChartOptions& options, const Paper& paper) {
  View view = view_of(panel, options);
  const CellSize size = cell_size(options);
  const Unmarked narrow = unmarked(view, size);
  const int rows = view.grid.rows();
  const auto drawn = [&](int first, int last) {
    view.show_rows(first, last);
    return Drawing(view, size, narrow).written();
  };
  std::vector<DrawnChart> sheets;
  sheets.push_back(drawn(1, rows));
  const DrawnChart& whole = sheets.front();
  const double most = std::max(16 / paper.row_mm, whole.width / paper.width_mm) * paper.height_mm;
  if (whole.height <= most) return sheets;
  // What stands round the cells is on every sheet; a low sheet's letters are smaller, never larger.
  constexpr int least = 20;
  const double room = (most - (whole.height - 16.0 * rows)) / 16;
  const int fitting = static_cast<int>(std::clamp<double>(room, std::min(least, rows), rows));
  const int count = (rows + fitting - 1) / fitting;
  int each = (rows + count - 1) / count;
  each += each % 2;  // the carriage begins each sheet on the same side
  sheets.clear();
  for (int first = 1; first <= rows; first += each) sheets.push_back(drawn(first, std::min(rows, first + each - 1)));
  return sheets;
}

std::string chart_svg(const Panel& panel, const ChartOptions& options) {
  const View view = view_of(panel, options);
  const CellSize size = cell_size(options);
  return Drawing(view, size, unmarked(view, size)).written().svg;
}

}  // namespace latchwork::inline v0
