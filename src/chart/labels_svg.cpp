#include "chart/labels_svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <iterator>
#include <utility>
#include <vector>

namespace latchwork::inline v0::drawing {
namespace {

/// Names at `wanted` places first, then at the others, as far as none touches another.
struct Label {
  int at = 0;
  bool wanted = false;
};
template <class Span>
std::vector<int> placed(const std::vector<Label>& labels, Span&& span_of) {
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
int step_for(Unit pitch, Unit needed) {
  for (int ten = 1; ten <= 100000; ten *= 10) {
    for (const int step : {ten, 2 * ten, 5 * ten}) {
      if (pitch * step >= needed) return step;
    }
  }
  return 500000;
}

class Labels {
 public:
  Labels(Pen& pen, const View& view, const Sheet& sheet, const Frame& frame, bool seam)
      : pen_(pen), view_(view), sheet_(sheet), frame_(frame), letters_(sheet.letters), seam_(seam) {}

  void append() {
    const int row_step = step_for(frame_.cell.height, frame_.font * 105 / 100);
    std::vector<Label> rows;
    for (int row = frame_.first_row; row <= frame_.last_row; ++row) {
      if (row % row_step == 0) rows.push_back({row, true});
    }
    rows.push_back({frame_.last_row, false});
    rows.push_back({frame_.first_row, false});
    const auto row_span = [&](int row) {
      return std::pair(row * frame_.cell.height, row * frame_.cell.height + frame_.font);
    };
    pen_.open("rows", font_size(frame_.font) + " text-anchor=\"end\"");
    const std::vector<int> shown = placed(rows, row_span);
    for (const int row : shown) {
      pen_.text(frame_.left - frame_.font * 4 / 10,
                frame_.row_top(row) + frame_.cell.height / 2 + frame_.font * 35 / 100, fmt::to_string(row));
    }
    pen_.close();
    if (sheet_.stops.empty()) {
      pen_.open("rows", font_size(frame_.font));
      for (const int row : shown) {
        pen_.text(frame_.left + frame_.width + frame_.font * 4 / 10,
                  frame_.row_top(row) + frame_.cell.height / 2 + frame_.font * 35 / 100, fmt::to_string(row));
      }
      pen_.close();
    }
    column_labels();
    strip_labels();
  }

 private:
  /// Lines of letters above the cells, the lowest rows' next to them, each with its rows where there are several.
  void strip_labels() {
    if (letters_.lines.empty()) return;
    Unit font = std::min(frame_.font, frame_.cell.width);
    for (const LetterLine& line : letters_.lines) {
      for (const StripLetter& strip : line.strips) {
        // Bold letters are wide, and those of the next strip keep their distance.
        const auto letters = static_cast<Unit>(strip.letter.size());
        font = std::min(font, strip.columns * frame_.cell.width * 100 / (letters * 95));
      }
    }
    const auto baseline = [&](std::size_t line) {
      return frame_.top - frame_.font / 2 - (seam_ ? frame_.cell.height : 0) -
             static_cast<Unit>(line) * frame_.font * 13 / 10;
    };
    pen_.open("strips", font_size(font) + " font-weight=\"bold\" text-anchor=\"middle\"");
    for (std::size_t i = 0; i < letters_.lines.size(); ++i) {
      for (const StripLetter& strip : letters_.lines[i].strips) {
        pen_.text(frame_.column_x(strip.column) + strip.columns * frame_.cell.width / 2, baseline(i), strip.letter);
      }
    }
    pen_.close();
    if (letters_.lines.size() < 2) return;
    pen_.open("strip-rows", font_size(frame_.font) + " text-anchor=\"end\"");
    for (std::size_t i = 0; i < letters_.lines.size(); ++i) {
      pen_.text(frame_.left - frame_.font * 4 / 10, baseline(i), rows_words(letters_, letters_.lines[i]));
    }
    pen_.close();
  }

  void column_labels() {
    std::vector<std::string> names;
    std::size_t longest = 1;
    for (int column = 0; column < view_.grid.columns(); ++column) {
      names.push_back(view_.column_name(column));
      longest = std::max(longest, names.back().size());
    }
    const bool needles = view_.side == Side::operator_view;
    int step = step_for(frame_.cell.width, text_width(frame_.font, longest) + frame_.font * 3 / 10);
    // Numbers are read in fives; and L1 stands next to R1, so needles numbered in twos would not be told apart.
    if (step == 2) step = 5;
    std::vector<Label> columns;
    for (int column = 0; column < view_.grid.columns(); ++column) {
      const std::int64_t number = needles ? std::abs(std::int64_t{needle_beside(view_.leftmost, column)}) : column;
      if (number % step == 0) columns.push_back({column, true});
    }
    columns.push_back({view_.grid.columns() - 1, false});
    columns.push_back({0, false});
    pen_.open("columns", font_size(frame_.font) + " text-anchor=\"middle\"");
    const auto middle = [&](int column) { return frame_.column_x(column) + frame_.cell.width / 2; };
    const auto span = [&](int column) {
      const Unit half =
          (text_width(frame_.font, names[static_cast<std::size_t>(column)].size()) + frame_.font * 2 / 10) / 2;
      return std::pair(middle(column) - half, middle(column) + half);
    };
    Path ticks;
    for (const int column : placed(columns, span)) {
      pen_.text(middle(column), frame_.bottom() + frame_.font * 14 / 10, names[static_cast<std::size_t>(column)]);
      ticks.move(middle(column), frame_.bottom() + 100).down_by(frame_.font * 3 / 10);
    }
    ticks.flush(pen_.body, " fill=\"none\" stroke=\"#000\"");
    pen_.close();
  }

  Pen& pen_;
  const View& view_;
  const Sheet& sheet_;
  const Frame& frame_;
  const StripLetters& letters_;
  bool seam_;
};

}  // namespace

std::string rows_words(const StripLetters& letters, const LetterLine& line) {
  if (letters.lines.size() < 2) return {};
  return line.row == line.last_row ? fmt::format("row {}", line.row)
                                   : fmt::format("rows {}-{}", line.row, line.last_row);
}

void append_labels(Pen& pen, const View& view, const Sheet& sheet, const Frame& frame, bool seam) {
  Labels(pen, view, sheet, frame, seam).append();
}

}  // namespace latchwork::inline v0::drawing
