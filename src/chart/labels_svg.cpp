#include "chart/labels_svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <iterator>
#include <string>
#include <string_view>
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

std::vector<int> numbered_rows(const Frame& frame) {
  const int row_step = step_for(frame.cell.height, frame.font * 105 / 100);
  std::vector<Label> rows;
  for (int row = frame.first_row; row <= frame.last_row; ++row) {
    if (row % row_step == 0) rows.push_back({row, true});
  }
  rows.push_back({frame.last_row, false});
  rows.push_back({frame.first_row, false});
  return placed(rows,
                [&](int row) { return std::pair(row * frame.cell.height, row * frame.cell.height + frame.font); });
}

void append_row_numbers(Pen& pen, const Frame& frame, const std::vector<int>& rows, Unit x, std::string_view more) {
  pen.open("rows", font_size(frame.font) + std::string(more));
  for (const int row : rows) {
    pen.text(x, frame.row_top(row) + frame.cell.height / 2 + frame.font * 35 / 100, fmt::to_string(row));
  }
  pen.close();
}

/// Of a line of letters, on one of its tiers.
Unit letters_baseline(const Frame& frame, const AboveCells& above, std::size_t line, int tier) {
  return frame.top - frame.font / 2 - (above.seam ? frame.cell.height : 0) -
         (above.tiers.first[line] + tier) * frame.font * 13 / 10;
}

class Labels {
 public:
  Labels(Pen& pen, const View& view, const Sheet& sheet, const Frame& frame, const AboveCells& above)
      : pen_(pen), view_(view), sheet_(sheet), frame_(frame), letters_(sheet.letters), above_(above) {}

  void append() {
    const Unit left = frame_.left - frame_.font * 4 / 10;
    append_row_labels(pen_, sheet_, frame_, above_, {.numbers = left, .letter_rows = left});
    if (sheet_.stops.empty()) {
      append_row_numbers(pen_, frame_, numbered_rows(frame_), frame_.left + frame_.width + frame_.font * 4 / 10, "");
    }
    column_labels();
    strip_labels();
  }

 private:
  /// Lines of letters above the cells, the lowest rows' next to them, each with its rows where there are several.
  void strip_labels() {
    if (letters_.lines.empty()) return;
    const auto baseline = [&](std::size_t line, int tier) { return letters_baseline(frame_, above_, line, tier); };
    const auto middle = [&](const StripLetter& strip) {
      return frame_.column_x(strip.column) + strip.columns * frame_.cell.width / 2;
    };
    Path leaders;  // from a letter down past its neighbours
    pen_.open_stroke("strip-leaders", 60);
    for (std::size_t i = 0; i < letters_.lines.size(); ++i) {
      const LetterLine& line = letters_.lines[i];
      for (std::size_t k = 0; k < line.strips.size(); ++k) {
        const int tier = above_.tiers.of_strip[i][k];
        if (tier == 0) continue;
        leaders.move(middle(line.strips[k]), baseline(i, tier) + frame_.font * 2 / 10)
            .line(middle(line.strips[k]), baseline(i, 0) + frame_.font * 2 / 10);
      }
    }
    leaders.flush(pen_.body);
    pen_.close();
    pen_.open("strips", font_size(frame_.font) + " font-weight=\"bold\" text-anchor=\"middle\"");
    for (std::size_t i = 0; i < letters_.lines.size(); ++i) {
      const LetterLine& line = letters_.lines[i];
      for (std::size_t k = 0; k < line.strips.size(); ++k) {
        pen_.text(middle(line.strips[k]), baseline(i, above_.tiers.of_strip[i][k]), line.strips[k].letter);
      }
    }
    pen_.close();
  }

  void column_labels() {
    std::vector<std::string> names;
    std::size_t longest = 1;
    for (int column = sheet_.first_column; column <= sheet_.last_column; ++column) {
      names.push_back(view_.column_name(column));
      longest = std::max(longest, names.back().size());
    }
    const bool needles = view_.side == Side::operator_view;
    int step = step_for(frame_.cell.width, text_width(frame_.font, longest) + frame_.font * 3 / 10);
    // Numbers are read in fives; and L1 stands next to R1, so needles numbered in twos would not be told apart.
    if (step == 2) step = 5;
    std::vector<Label> columns;
    for (int column = sheet_.first_column; column <= sheet_.last_column; ++column) {
      const std::int64_t number = needles ? std::abs(std::int64_t{needle_beside(view_.leftmost, column)}) : column;
      if (number % step == 0) columns.push_back({column, true});
    }
    columns.push_back({sheet_.last_column, false});
    columns.push_back({sheet_.first_column, false});
    pen_.open("columns", font_size(frame_.font) + " text-anchor=\"middle\"");
    const auto middle = [&](int column) { return frame_.column_x(column) + frame_.cell.width / 2; };
    const auto name_of = [&](int column) -> const std::string& {
      return names[static_cast<std::size_t>(column - sheet_.first_column)];
    };
    const auto span = [&](int column) {
      const Unit half = (text_width(frame_.font, name_of(column).size()) + frame_.font * 2 / 10) / 2;
      return std::pair(middle(column) - half, middle(column) + half);
    };
    Path ticks;
    for (const int column : placed(columns, span)) {
      pen_.text(middle(column), frame_.bottom() + frame_.font * 14 / 10, name_of(column));
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
  const AboveCells& above_;
};

}  // namespace

void append_row_labels(Pen& pen, const Sheet& sheet, const Frame& frame, const AboveCells& above, const RowEnds& ends) {
  append_row_numbers(pen, frame, numbered_rows(frame), ends.numbers, " text-anchor=\"end\"");
  const std::vector<LetterLine>& lines = sheet.letters.lines;
  if (lines.size() < 2) return;
  pen.open("strip-rows", font_size(frame.font) + " text-anchor=\"end\"");
  for (std::size_t i = 0; i < lines.size(); ++i) {
    pen.text(ends.letter_rows, letters_baseline(frame, above, i, 0), rows_words(sheet.letters, lines[i]));
  }
  pen.close();
}

std::string rows_words(const StripLetters& letters, const LetterLine& line) {
  if (letters.lines.size() < 2) return {};
  return line.row == line.last_row ? fmt::format("row {}", line.row)
                                   : fmt::format("rows {}-{}", line.row, line.last_row);
}

LetterTiers letter_tiers(const StripLetters& letters, const Frame& frame) {
  LetterTiers out;
  for (const LetterLine& line : letters.lines) {
    std::vector<Unit> ends;  // of what stands on each tier
    std::vector<int> tiers;
    tiers.reserve(line.strips.size());
    for (const StripLetter& strip : line.strips) {
      // Bold letters are wide, and keep their distance.
      const Unit half = frame.font * (75 * static_cast<Unit>(strip.letter.size()) + 20) / 200;
      const Unit middle = strip.column * frame.cell.width + strip.columns * frame.cell.width / 2;
      const auto free = std::find_if(ends.begin(), ends.end(), [&](Unit end) { return end <= middle - half; });
      tiers.push_back(static_cast<int>(free - ends.begin()));
      if (free == ends.end()) {
        ends.push_back(middle + half);
      } else {
        *free = middle + half;
      }
    }
    out.first.push_back(out.total);
    out.total += static_cast<int>(ends.size());
    out.of_strip.push_back(std::move(tiers));
  }
  return out;
}

void append_labels(Pen& pen, const View& view, const Sheet& sheet, const Frame& frame, const AboveCells& above) {
  Labels(pen, view, sheet, frame, above).append();
}

}  // namespace latchwork::inline v0::drawing
