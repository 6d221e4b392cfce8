// Grids as rows of letters, and back.
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <iterator>
#include <optional>
#include <span>
#include <utility>

#include "latchwork/grid.hpp"
#include "rules.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0 {
namespace {

using namespace rules;

Place place_on_line(int line, int column = -1) {
  Place place;
  place.line = line;
  place.column = column;
  return place;
}

bool is_blank(char letter) noexcept {
  return letter == ' ' || letter == '\t' || letter == '\r';
}

std::string_view trimmed(std::string_view text) noexcept {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

/// The character that begins here, for people; a byte that cannot be shown is shown by its number.
std::string first_letter(std::string_view text) {
  const std::string_view letter = text.substr(0, character_size(text.front()));
  const bool is_control = text.front() >= 0 && text.front() < ' ';
  if (utf8_error(letter) == std::string_view::npos && !is_control) return fmt::format("'{}'", shown(letter));
  return fmt::format("byte 0x{:02X}", static_cast<unsigned char>(text.front()));
}

/// Reads one crossing line word by word.
class CrossingLine {
 public:
  CrossingLine(std::string_view text, int line) : rest_(text), line_(line) {}

  Crossing read() {
    if (word() != "x") refuse("begins with 'x' and a space");
    Crossing crossing;
    crossing.column = number(word(), "the column");
    std::string_view groups = word();
    const auto slashes = std::ranges::count(groups, '/');
    if (slashes != 1 && slashes != 2) refuse("needs its groups as LEFT/RIGHT or LEFT/CENTRE/RIGHT");
    const bool centred = slashes == 2;
    crossing.left = number(next_group(groups), "the left group");
    if (centred) crossing.centre = number(next_group(groups), "the centre group");
    crossing.right = number(groups, "the right group");
    const std::string_view lean = word();
    if (lean != "R" && lean != "L") refuse("needs R or L after its groups");
    crossing.lean = lean == "R" ? Lean::right : Lean::left;
    const std::string_view place = word();
    if (!centred) {
      if (!place.empty()) refuse("without a centre ends after R or L");
      return crossing;
    }
    if (place == "front") {
      crossing.place = Centre::front;
    } else if (place == "between") {
      crossing.place = Centre::between;
    } else if (place == "behind") {
      crossing.place = Centre::behind;
    } else {
      refuse("with a centre ends with front, between or behind");
    }
    if (!trimmed(rest_).empty()) refuse("has more words than it needs");
    return crossing;
  }

 private:
  [[noreturn]] void refuse(std::string_view what) const {
    throw Error(ErrorCode::bad_syntax, place_on_line(line_),
                fmt::format("line {}: a crossing line {}: x COLUMN LEFT/RIGHT R|L, or x COLUMN LEFT/CENTRE/RIGHT R|L "
                            "front|between|behind",
                            line_, what));
  }
  std::string_view word() {
    rest_ = trimmed(rest_);
    std::size_t length = 0;
    while (length < rest_.size() && !is_blank(rest_[length])) ++length;
    const std::string_view found = rest_.substr(0, length);
    rest_.remove_prefix(length);
    return found;
  }
  /// Takes what stands before the next slash, and the slash, away from `groups`.
  static std::string_view next_group(std::string_view& groups) {
    const std::size_t slash = groups.find('/');
    const std::string_view found = groups.substr(0, slash);
    groups.remove_prefix(slash + 1);
    return found;
  }
  int number(std::string_view digits, std::string_view what) const {
    int value = 0;
    const char* end = digits.data() + digits.size();
    const auto [stopped, failure] = std::from_chars(digits.data(), end, value);
    if (failure == std::errc::result_out_of_range) {
      throw Error(ErrorCode::too_large, place_on_line(line_),
                  fmt::format("line {}: {} of a crossing is a number past {}", line_, what, Grid::max_side));
    }
    if (failure != std::errc{} || stopped != end) refuse(fmt::format("needs a whole number for {}", what));
    return value;
  }

  std::string_view rest_;
  int line_;
};

struct TextRow {
  std::string_view letters;
  int line;
};

/// `row`: counted from the bottom, as a grid's.
[[noreturn]] void refuse_letter(const TextRow& of, std::size_t at, int row) {
  Place place = place_on_line(of.line, static_cast<int>(at));
  place.row = row;
  throw Error(ErrorCode::bad_letter, place,
              fmt::format("line {}: letter {} is {}, which stands for no cell (k, p, t, s and . do)", of.line, at + 1,
                          first_letter(of.letters.substr(at))));
}

/// A row of another length than those above. A letter of several bytes makes no row too long: what stands for no cell,
/// in it or in those above, is told first. `below`: the text after it.
[[noreturn]] void refuse_length(std::span<const TextRow> rows, const TextRow& of, std::string_view below) {
  int row = 1;
  while (!below.empty()) {
    const std::size_t end = below.find('\n');
    const std::string_view content = trimmed(below.substr(0, end));
    below.remove_prefix(end == std::string_view::npos ? below.size() : end + 1);
    if (!content.empty() && content.front() != 'x') ++row;
  }
  const auto require_letters = [&](const TextRow& one) {
    const auto bad = std::ranges::find_if(one.letters, [](char letter) { return !cell_of(letter); });
    if (bad != one.letters.end()) refuse_letter(one, static_cast<std::size_t>(bad - one.letters.begin()), row);
    ++row;
  };
  require_letters(of);
  for (auto above = rows.rbegin(); above != rows.rend(); ++above) require_letters(*above);
  Place place = place_on_line(of.line);
  place.field = "columns";
  throw Error(ErrorCode::size_mismatch, place,
              fmt::format("line {} has {}; the rows above have {}", of.line, count_of(std::ssize(of.letters), "letter"),
                          rows.front().letters.size()));
}

/// A crossing line: `above` rows of letters stand before it, so it belongs to row R - above.
struct TextCrossing {
  Crossing crossing;
  int line;
  std::size_t above;
};

}  // namespace

Grid Grid::from_text(std::string_view text) {
  std::vector<TextRow> rows;
  std::vector<TextCrossing> crossings;
  text = without_byte_order_mark(text);
  for (int line = 1; !text.empty(); ++line) {
    const std::size_t end = text.find('\n');
    const std::string_view content = trimmed(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    if (content.empty()) continue;
    if (content.front() == 'x') {
      crossings.push_back({CrossingLine(content, line).read(), line, rows.size()});
      continue;
    }
    if (rows.size() >= max_side || content.size() > max_side) {
      Place place = place_on_line(line);
      place.field = rows.size() >= max_side ? "rows" : "columns";
      throw Error(ErrorCode::too_large, place,
                  fmt::format("line {}: a grid has at most {} rows and columns", line, max_side));
    }
    if (!rows.empty() && content.size() != rows.front().letters.size()) {
      refuse_length(rows, {content, line}, text);
    }
    if (static_cast<std::int64_t>(rows.size() + 1) * std::ssize(content) > max_cells) {
      Place place = place_on_line(line);
      place.field = "rows";
      throw Error(ErrorCode::too_large, place, fmt::format("line {}: a grid has at most {} cells", line, max_cells));
    }
    rows.push_back({content, line});
  }
  if (rows.empty()) throw Error(ErrorCode::bad_syntax, place_on_line(1), "no row of letters; a grid has at least 1");
  if (!crossings.empty() && crossings.back().above == rows.size()) {
    throw Error(ErrorCode::bad_syntax, place_on_line(crossings.back().line),
                fmt::format("line {}: a crossing line needs a row of letters below it", crossings.back().line));
  }

  const int count = static_cast<int>(rows.size());
  const int width = static_cast<int>(rows.front().letters.size());
  std::vector<Cell> cells;
  cells.reserve(rows.size() * rows.front().letters.size());
  for (auto row = rows.rbegin(); row != rows.rend(); ++row) {
    for (std::size_t x = 0; x < row->letters.size(); ++x) {
      const std::optional<Cell> cell = cell_of(row->letters[x]);
      if (!cell) refuse_letter(*row, x, static_cast<int>(row - rows.rbegin()) + 1);
      cells.push_back(*cell);
    }
  }
  Grid grid(count, width, std::move(cells), {});
  // From the bottom up, so that each is added at the end of the list.
  for (auto found = crossings.rbegin(); found != crossings.rend(); ++found) {
    found->crossing.row = count - static_cast<int>(found->above);
    try {
      grid.cross(found->crossing);
    } catch (const Error& error) {
      Place place = error.place();
      place.line = found->line;
      throw Error(error.code(), place, fmt::format("line {}: {}", found->line, error.what()));
    }
  }
  return grid;
}

std::string Grid::to_text() const {
  std::string text;
  text.reserve(cells_.size() + static_cast<std::size_t>(rows_) + crossings_.size() * 20);
  auto upper = crossings_.end();
  for (int row = rows_; row >= 1; --row) {
    auto lower = upper;
    while (lower != crossings_.begin() && std::prev(lower)->row == row) --lower;
    for (auto crossing = lower; crossing != upper; ++crossing) {
      text += fmt::format("x {} {}/", crossing->column, crossing->left);
      if (crossing->centre > 0) text += fmt::format("{}/", crossing->centre);
      text += fmt::format("{} {}", crossing->right, crossing->lean == Lean::right ? 'R' : 'L');
      if (crossing->centre > 0) {
        text += crossing->place == Centre::front     ? " front"
                : crossing->place == Centre::between ? " between"
                                                     : " behind";
      }
      text += '\n';
    }
    upper = lower;
    const Cell* cells = cells_.data() + static_cast<std::size_t>(row - 1) * static_cast<std::size_t>(columns_);
    for (int x = 0; x < columns_; ++x) text += cell_letter(cells[x]);
    text += '\n';
  }
  return text;
}

}  // namespace latchwork::inline v0
