#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <map>
#include <utility>

#include "chart/key.hpp"
#include "chart/sheet.hpp"
#include "chart/view.hpp"
#include "latchwork/chart.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace drawing;

/// Letters for a terminal: strokes and dashes as in the drawn symbols, an n for the arch of a tuck, a v for a slip.
char letter_of(const Mark& mark) {
  switch (mark.cell) {
    case Cell::knit:
      return '|';
    case Cell::purl:
      return '-';
    case Cell::tuck:
      return 'n';
    case Cell::slip:
      return mark.front ? 'w' : 'v';
    case Cell::none:
      return 'x';
  }
  return '?';
}

/// Columns that a line shows.
struct Columns {
  int first = 0;
  int last = 0;
};

/// A row of characters over the columns, with a blank where in every band a strip ends.
class Line {
 public:
  Line(Columns columns, std::vector<int> breaks) : columns_(columns), breaks_(std::move(breaks)) { clear(); }
  void clear() {
    const int count = columns_.last - columns_.first + 1;
    cells_.assign(static_cast<std::size_t>(count), ' ');
  }
  char& operator[](int column) { return cells_[static_cast<std::size_t>(column - columns_.first)]; }
  /// `gap` fills the blanks at strip ends.
  std::string written(char gap = ' ') const {
    std::string out;
    std::size_t next = 0;
    for (int column = columns_.first; column <= columns_.last; ++column) {
      if (next < breaks_.size() && breaks_[next] == column) {
        out += gap;
        ++next;
      }
      out += cells_[static_cast<std::size_t>(column - columns_.first)];
    }
    while (!out.empty() && out.back() == ' ') out.pop_back();
    return out;
  }

 private:
  Columns columns_;
  std::vector<int> breaks_;
  std::string cells_;
};

constexpr char centre_letter(Centre place) {
  switch (place) {
    case Centre::front:
      return '#';
    case Centre::between:
      return '=';
    case Centre::behind:
      return ':';
  }
  return '=';
}

void put_crossing(Line& line, const Crossing& crossing) {
  const char slant = crossing.lean == Lean::right ? '/' : '\\';
  for (const Group& group : groups_back_to_front(crossing)) {
    const bool front = group.outer && (group.from == 0) == (crossing.lean == Lean::right);
    const char letter = front ? slant : group.outer ? '.' : centre_letter(crossing.place);
    for (int i = 0; i < group.stitches; ++i) line[crossing.column + group.to + i] = letter;
  }
}

/// Where a crossing lies that the edge of the columns would tear.
void put_cut(Line& line, const Crossing& crossing, Columns columns) {
  const int last = std::min(crossing.column + crossing.width() - 1, columns.last);
  for (int column = std::max(crossing.column, columns.first); column <= last; ++column) line[column] = '~';
}

std::string aligned(std::string_view label, std::string_view line) {
  std::string out = fmt::format("{:>8} {}", label, line);
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out + "\n";
}

/// The column names written downward, one line a character, each name's last character in the last line.
std::string headings(const View& view, const std::vector<int>& breaks, Columns columns) {
  std::size_t longest = 0;
  std::vector<std::string> names;
  for (int column = columns.first; column <= columns.last; ++column) {
    names.push_back(view.column_name(column));
    longest = std::max(longest, names.back().size());
  }
  std::string out;
  Line line(columns, breaks);
  const bool needles = view.side == Side::operator_view;
  for (std::size_t i = 0; i < longest; ++i) {
    line.clear();
    for (int column = columns.first; column <= columns.last; ++column) {
      const std::string& name = names[static_cast<std::size_t>(column - columns.first)];
      const std::size_t pad = longest - name.size();
      if (needles) {
        // The side letter always stands in the first line, the number under it with its last digit in the last.
        if (i == 0) line[column] = name[0];
        if (i > pad) line[column] = name[i - pad];
      } else if (i >= pad) {
        line[column] = name[i - pad];
      }
    }
    const char* label = i + 1 < longest ? "" : needles ? "needle" : "column";
    out += aligned(label, line.written());
  }
  return out;
}

std::string axis_line(int half, const std::vector<int>& breaks, Columns columns) {
  // Written between or under the columns: the axis in half columns, moved by the blanks before it.
  Line line(columns, breaks);
  if (half % 2 == 1) {
    line[(half - 1) / 2] = '^';
    return aligned("", line.written());
  }
  // On the edge of the columns only one of the two stands.
  if (half / 2 > columns.first) line[half / 2 - 1] = '>';
  if (half / 2 <= columns.last) line[half / 2] = '<';
  return aligned("", line.written());
}

/// A line of strips' letters; those wider than their strip are written downward. `ruled`: a rule after the letter shows
/// the strip's columns, since not every edge has its blank.
std::string letter_lines(const std::vector<int>& breaks, const LetterLine& letters, bool ruled, Columns columns) {
  const auto fits = [](const StripLetter& strip) {
    return strip.letter.size() <= static_cast<std::size_t>(strip.columns);
  };
  std::size_t depth = 1;
  for (const StripLetter& strip : letters.strips) {
    if (!fits(strip)) depth = std::max(depth, strip.letter.size());
  }
  std::string out;
  Line line(columns, breaks);
  for (std::size_t i = 0; i < depth; ++i) {
    line.clear();
    for (const StripLetter& strip : letters.strips) {
      for (int k = ruled && i == 0 ? 1 : strip.columns; k < strip.columns; ++k) line[strip.column + k] = '_';
      if (!fits(strip)) {
        if (i < strip.letter.size()) line[strip.column] = strip.letter[i];
      } else if (i == 0) {
        for (std::size_t k = 0; k < strip.letter.size(); ++k)
          line[strip.column + static_cast<int>(k)] = strip.letter[k];
      }
    }
    out += aligned(i == 0 ? "strip" : "", line.written());
  }
  return out;
}

/// For each row from 0 up what stands beside it where strips begin again: "  + A C", without letters where there are
/// none.
std::vector<std::string> rows_again(const View& view, const StripLetters& letters, Columns columns) {
  std::vector<std::string> marks(static_cast<std::size_t>(view.grid.rows()) + 1);
  const auto mark = [&](int row, const std::string& letter) {
    std::string& words = marks[static_cast<std::size_t>(row)];
    if (words.empty()) words = "  +";
    if (!letter.empty()) words += " " + letter;
  };
  std::size_t at = 0;  // the band's line of letters
  for (const Band& band : view.bands) {
    while (at + 1 < letters.lines.size() && letters.lines[at + 1].row <= band.row) ++at;
    // Bands that are alike: all begins again. Where they differ the letters tell.
    const bool alike = band.row > 1 && (letters.lines.empty() || letters.lines[at].row != band.row);
    std::map<std::pair<std::size_t, std::string>, int> repeats;  // A ... Z before AA
    for (std::size_t i = 0; i < band.strips.size(); ++i) {
      const int last = band.strips[i].column + band.strips[i].columns - 1;
      if (last < columns.first || band.strips[i].column > columns.last) continue;
      const std::string letter = letters.lines.empty() ? "" : letters.lines[at].strips[i].letter;
      repeats[{letter.size(), letter}] = band.strips[i].repeat_rows;
    }
    for (const auto& [letter, every] : repeats) {
      if (alike) mark(band.row, letter.second);
      if (every < 2 || every >= band.rows) continue;
      for (int row = every; row < band.rows; row += every) mark(band.row + row, letter.second);
    }
  }
  return marks;
}

/// Whether some band has an edge where the lines have no blank.
bool has_other_edges(const Sheet& sheet, const std::vector<int>& breaks) {
  return std::any_of(sheet.bands.begin(), sheet.bands.end(),
                     [&](const Band& band) { return band.strips.size() > breaks.size() + 1; });
}

/// What of the chart's own stands in its key.
struct KeyMarks {
  std::string again;    ///< "+", or "+ A" with the first strip that begins again; empty: none does
  std::string ruled;    ///< "A__", the first strip's letter and rule; empty: letters have no rules
  bool blanks = false;  ///< there are blanks at edges of strips
};

/// The lowest mark of a row in which strips begin again, with its first letter alone.
std::string first_again(const Sheet& sheet, const std::vector<std::string>& again) {
  for (int row = sheet.first_row; row <= sheet.last_row; ++row) {
    const std::string& marks = again[static_cast<std::size_t>(row)];
    if (marks.empty()) continue;
    const std::string mark = marks.substr(2);
    return mark.substr(0, mark.find(' ', 2));
  }
  return {};
}

/// The letter of the lowest, leftmost strip with its rule.
std::string first_ruled(const StripLetters& letters) {
  const StripLetter& strip = letters.lines.front().strips.front();
  std::string mark = strip.letter;
  mark.resize(std::max(mark.size(), static_cast<std::size_t>(strip.columns)), '_');
  return mark;
}

std::string key_text(const View& view, const Sheet& sheet, const KeyMarks& marks) {
  std::string out = "Key\n";
  const auto add = [&](std::string_view symbol, std::string_view words) {
    out += fmt::format("  {:<8} {}\n", symbol, words);
  };
  for (const KeyEntry& entry : key_of(view, sheet, true)) {
    switch (entry.symbol) {
      case Symbol::knit:
        add("|", entry.words);
        break;
      case Symbol::purl:
        add("-", entry.words);
        break;
      case Symbol::tuck:
        if (sheet.kinds.tuck) add("n", "tuck: held with the loop below until the next | or - above takes it");
        break;
      case Symbol::slip_behind:
        add("v", entry.words);
        break;
      case Symbol::slip_front:
        add("w", entry.words);
        break;
      case Symbol::none:
        add("x", entry.words);
        break;
      case Symbol::crossing: {
        Line line({.first = 0, .last = entry.crossing.width() - 1}, {});
        put_crossing(line, entry.crossing);
        add(line.written(), entry.words);
        break;
      }
      case Symbol::cut_crossing:
        add("~", entry.words);
        break;
      case Symbol::stop:
        add(fmt::format("{} {}*", sheet.stops.front(), view.carriage_after(sheet.stops.front())),
            "stop after this row: row counter, side of the carriage");
        break;
      case Symbol::strip_line:
        if (marks.blanks) add("(blank)", marks.ruled.empty() ? entry.words : "edge of a strip in all rows");
        if (!marks.ruled.empty()) {
          add(marks.ruled, fmt::format("strip {} in the rows above, as wide as its columns",
                                       marks.ruled.substr(0, marks.ruled.find('_'))));
        }
        break;
      case Symbol::repeat_line:
        if (!marks.again.empty()) {
          add(marks.again, marks.again == "+"
                               ? "the rows begin again with this row"
                               : fmt::format("strip {}'s rows begin again with this row", marks.again.substr(2)));
        }
        break;
      case Symbol::words:
      case Symbol::bed_middle:  // the letters of the needles' names show it
        break;
      case Symbol::centre:
        add(*sheet.axis % 2 == 1 ? "^" : "><", entry.words);
        break;
    }
  }
  if (!sheet.crossings.empty()) {
    std::array<bool, 3> centre{};
    bool right = false;
    bool left = false;
    for (const Crossing& crossing : sheet.crossings) {
      if (crossing.centre > 0) centre.at(static_cast<std::size_t>(crossing.place)) = true;
      (crossing.lean == Lean::right ? right : left) = true;
    }
    constexpr std::array<std::string_view, 3> lies = {"in front of both", "between them", "behind both"};
    std::string centres;
    for (const Centre place : {Centre::front, Centre::between, Centre::behind}) {
      if (!centre.at(static_cast<std::size_t>(place))) continue;
      centres += fmt::format(", {} a centre {}", centre_letter(place), lies.at(static_cast<std::size_t>(place)));
    }
    const char* slants = right && left ? "/ and \\ are" : right ? "/ is" : "\\ is";
    out += fmt::format(
        "  In a crossing {} the group that passes in front{}, . the other{}; it stands between the rows it "
        "is made between.\n",
        slants, view.side == Side::operator_view ? " as seen from here" : "", centres);
  }
  return out;
}

}  // namespace

std::string chart_text(const Panel& panel, const ChartOptions& options) {
  const View view = view_of(panel, options);
  const Sheet sheet = sheet_of(view, part_of(view, options));
  const Columns columns{.first = sheet.first_column, .last = sheet.last_column};
  std::vector<int> breaks = view.shared_edges();
  breaks.erase(std::remove_if(breaks.begin(), breaks.end(),
                              [&](int column) { return column <= columns.first || column > columns.last; }),
               breaks.end());
  const std::vector<std::string> again = rows_again(view, view.letters, columns);
  const StripLetters& letters = sheet.letters;
  const bool ruled = !letters.lines.empty() && has_other_edges(sheet, breaks);
  std::string out = sheet.title + "\n";
  for (const std::string& note : sheet.notes) out += note + "\n";
  out += "\n";
  Line line(columns, breaks);
  const auto& all = sheet.crossings;
  std::size_t end = all.size();
  std::size_t end_cut = sheet.cut.size();
  std::size_t next_stop = sheet.stops.size();
  std::size_t next_letters = letters.lines.size();
  const auto crossings_after = [&](int row) {
    bool any = false;
    line.clear();
    for (; end > 0 && all[end - 1].row == row; --end) {
      put_crossing(line, all[end - 1]);
      any = true;
    }
    for (; end_cut > 0 && sheet.cut[end_cut - 1].row == row; --end_cut) {
      put_cut(line, sheet.cut[end_cut - 1], columns);
      any = true;
    }
    if (any) out += aligned("", line.written());
  };
  for (int row = sheet.last_row; row >= sheet.first_row; --row) {
    crossings_after(row);
    for (int column = columns.first; column <= columns.last; ++column) line[column] = letter_of(view.mark(row, column));
    while (next_stop > 0 && sheet.stops[next_stop - 1] > row) --next_stop;
    const bool stop = next_stop > 0 && sheet.stops[next_stop - 1] == row;
    out += aligned(stop ? fmt::format("{} {}*", row, view.carriage_after(row)) : fmt::format("{}     ", row),
                   line.written() + again[static_cast<std::size_t>(row)]);
    // Letters stand below their rows, the lowest ones under the names of the columns.
    if (next_letters > 1 && letters.lines[next_letters - 1].row == row) {
      out += letter_lines(breaks, letters.lines[--next_letters], ruled, columns);
    }
  }
  if (sheet.first_row > 1) crossings_after(sheet.first_row - 1);
  if (const int below = sheet.first_row - 1; !sheet.stops.empty() && sheet.stops.front() == below) {
    out += aligned(fmt::format("{} {}*", below, view.carriage_after(below)), "");
  }
  if (sheet.axis) out += axis_line(*sheet.axis, breaks, columns);
  out += headings(view, breaks, columns);
  if (!letters.lines.empty()) out += letter_lines(breaks, letters.lines.front(), ruled, columns);
  out += "\n" + key_text(view, sheet,
                         {.again = first_again(sheet, again),
                          .ruled = ruled ? first_ruled(letters) : "",
                          .blanks = !breaks.empty()});
  for (const std::string& words : letters.words) out += "  " + words + "\n";
  return out;
}

}  // namespace latchwork::inline v0
