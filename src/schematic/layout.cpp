#include "schematic/layout.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <tuple>
#include <utility>

#include "chart/pen.hpp"
#include "text/letters.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::schematics {
namespace {

using drawing::letters_in;
using drawing::text_width;

constexpr Unit page_width = 30 * font;     // text is a thirtieth of it
constexpr Unit most_width = 38 * font;     // of a row of pieces that are not sewn together
constexpr Unit outlines_wide = 15 * font;  // what the outlines of a row take, at most
constexpr Unit outlines_high = 26 * font;
constexpr Unit lane_gap = 14 * font / 10;
constexpr Unit width_lane = 19 * font / 10;
constexpr Unit text_room = 8 * font / 10;  // of a width lane
constexpr Unit gap = 12 * font / 10;
constexpr int least_name = 28;  // letters of a piece's name on one line, however narrow the piece

/// cm to one decimal, inches to a quarter; halves go up. What is there is not told as nothing: "under 1/8".
std::string number_text(double mm, LengthUnit unit) {
  const bool is_cm = unit == LengthUnit::cm;
  if (mm > 0 && mm < (is_cm ? 0.5 : 25.4 / 8)) return is_cm ? "under 0.05" : "under 1/8";
  if (unit == LengthUnit::cm) {
    const auto tenths = static_cast<std::int64_t>(std::floor(mm + 0.5));
    return tenths % 10 == 0 ? fmt::to_string(tenths / 10) : fmt::format("{}.{}", tenths / 10, tenths % 10);
  }
  const auto quarters = static_cast<std::int64_t>(std::floor(mm / 25.4 * 4 + 0.5));
  static constexpr const char* parts[] = {"", "1/4", "1/2", "3/4"};
  if (quarters % 4 == 0) return fmt::to_string(quarters / 4);
  if (quarters < 4) return parts[quarters];
  return fmt::format("{} {}", quarters / 4, parts[quarters % 4]);
}

/// The piece with its outline's top left corner at (0, 0), and how far it reaches round that.
struct Cell {
  PlacedPiece placed;
  Unit left = 0, right = 0, top = 0, bottom = 0;  // extent, texts and all
};

class PieceLayout {
 public:
  PieceLayout(const Schematic& schematic, std::size_t index, std::size_t first_letter, double scale)
      : piece_(schematic.pieces[index]),
        unit_(schematic.unit),
        letter_(first_letter),
        scale_(scale),
        box_(box_of(piece_)) {
    cell_.placed.piece = index;
    cell_.placed.right = x_of(box_.right);
    cell_.placed.bottom = y_of(box_.low);
  }

  Cell made() {
    cell_.right = cell_.placed.right;
    cell_.bottom = cell_.placed.bottom;
    for (const MeasureSide side : {MeasureSide::left, MeasureSide::right, MeasureSide::bottom, MeasureSide::top})
      lanes(side);
    std::sort(cell_.placed.measures.begin(), cell_.placed.measures.end(),
              [](const PlacedMeasure& a, const PlacedMeasure& b) { return a.measure < b.measure; });
    const Unit middle = cell_.placed.right / 2;
    if (!piece_.name.empty()) {
      // A long name takes lines rather than width, which would shrink the piece.
      const Unit letters = std::max(cell_.placed.right / text_width(font, 1), Unit{least_name});
      cell_.placed.name = drawing::wrapped(piece_.name, static_cast<std::size_t>(letters));
      const Unit below_first = static_cast<Unit>(cell_.placed.name.size() - 1) * name_line;
      cell_.placed.name_y = cell_.top - font * 7 / 10 - below_first;
      cell_.top -= 2 * font + below_first;
      for (const std::string& line : cell_.placed.name) reach_across(middle, text_width(font, letters_in(line)));
    }
    return std::move(cell_);
  }

 private:
  Unit x_of(double x_mm) const { return std::llround((x_mm - box_.left) * scale_); }
  Unit y_of(double y_mm) const { return std::llround((box_.high - y_mm) * scale_); }

  void reach_across(Unit middle, Unit width) {
    cell_.left = std::min(cell_.left, middle - width / 2 - font / 2);
    cell_.right = std::max(cell_.right, middle + width / 2 + font / 2);
  }

  PlacedMeasure placed(std::size_t index) const {
    const SchematicMeasure& measure = piece_.measures[index];
    PlacedMeasure out;
    out.measure = index;
    out.lines.push_back(fmt::format("{} = {}", measure_mark(letter_ + index), measure_text(measure, unit_)));
    if (const std::size_t bracket = out.lines[0].find(" ("); bracket != std::string::npos && !across(measure.side)) {
      out.lines.push_back(out.lines[0].substr(bracket + 1));
      out.lines[0].resize(bracket);
    }
    const std::pair xs{x_of(measure.start.x_mm), x_of(measure.end.x_mm)};
    const std::pair ys{y_of(measure.start.y_mm), y_of(measure.end.y_mm)};
    std::tie(out.from, out.to) = across(measure.side) ? xs : ys;
    std::tie(out.from_foot, out.to_foot) = across(measure.side) ? ys : xs;
    if (out.from > out.to) {
      std::swap(out.from, out.to);
      std::swap(out.from_foot, out.to_foot);
    }
    return out;
  }

  /// The measures of a side, each on a line of its own, the shorter nearer to the piece.
  void lanes(MeasureSide side) {
    std::vector<PlacedMeasure> all;
    for (std::size_t i = 0; i < piece_.measures.size(); ++i) {
      if (piece_.measures[i].side == side) all.push_back(placed(i));
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const PlacedMeasure& a, const PlacedMeasure& b) { return a.to - a.from < b.to - b.from; });
    if (across(side)) {
      Unit clear = cell_.placed.right;  // of all extension lines
      for (const PlacedMeasure& each : all) clear = std::max(clear, each.to);
      for (PlacedMeasure& each : all) lane_of_width(each, side, clear + font * 6 / 10);
    } else {
      lanes_of_heights(all, side);
    }
    std::move(all.begin(), all.end(), std::back_inserter(cell_.placed.measures));
  }

  void lane_of_width(PlacedMeasure& each, MeasureSide side, Unit clear) {
    if (side == MeasureSide::bottom) {
      each.line = cell_.bottom += width_lane;
    } else {
      each.line = cell_.top -= width_lane - text_room;
      cell_.top -= text_room;
    }
    const Unit width = width_of(each);
    each.beside = width > each.to - each.from;
    each.words = each.beside ? clear : (each.from + each.to - width) / 2;
    cell_.left = std::min(cell_.left, each.words - font / 2);
    cell_.right = std::max(cell_.right, each.words + width + font / 2);
    cell_.left = std::min(cell_.left, each.from);  // where points lie beyond the outline
    cell_.right = std::max(cell_.right, each.to);
  }

  /// Heights above one another share a line.
  void lanes_of_heights(std::vector<PlacedMeasure>& all, MeasureSide side) {
    std::vector<bool> done(all.size(), false);
    for (std::size_t first = 0; first < all.size(); ++first) {
      if (done[first]) continue;
      const Unit line = side == MeasureSide::left ? cell_.left - lane_gap : cell_.right + lane_gap;
      Unit width = 0;
      std::vector<std::pair<Unit, Unit>> taken;
      for (std::size_t i = first; i < all.size(); ++i) {
        PlacedMeasure& each = all[i];
        const Unit middle = (each.from + each.to) / 2;
        const Unit half = font * 6 / 10 * static_cast<Unit>(each.lines.size());
        const std::pair span{std::min(each.from, middle - half), std::max(each.to, middle + half)};
        const bool free = std::none_of(taken.begin(), taken.end(), [&](const std::pair<Unit, Unit>& other) {
          return span.first < other.second && other.first < span.second;
        });
        if (done[i] || !free) continue;
        done[i] = true;
        taken.push_back(span);
        each.line = line;
        width = std::max(width, width_of(each));
        cell_.top = std::min(cell_.top, span.first);
        cell_.bottom = std::max(cell_.bottom, span.second);
      }
      (side == MeasureSide::left ? cell_.left : cell_.right) =
          side == MeasureSide::left ? line - width - font * 6 / 10 : line + width + font * 6 / 10;
    }
  }

  const SchematicPiece& piece_;
  LengthUnit unit_;
  std::size_t letter_;
  double scale_;
  Box box_;
  Cell cell_;
};

void move(PlacedPiece& placed, const Schematic& schematic, Unit x, Unit y) {
  placed.left += x;
  placed.right += x;
  placed.top += y;
  placed.bottom += y;
  placed.name_y += y;
  for (PlacedMeasure& each : placed.measures) {
    const bool flat = across(schematic.pieces[placed.piece].measures[each.measure].side);
    each.from += flat ? x : y;
    each.to += flat ? x : y;
    each.from_foot += flat ? y : x;
    each.to_foot += flat ? y : x;
    each.line += flat ? y : x;
    each.words += x;
  }
}

/// One scale for all: the widest row of pieces sewn together, and the tallest piece, fit.
double scale_of(const Schematic& schematic) {
  double widest = 0;
  double tallest = 0;
  double row = 0;
  for (std::size_t i = 0; i < schematic.pieces.size(); ++i) {
    const Box box = box_of(schematic.pieces[i]);
    const bool sewn = i > 0 && (schematic.pieces[i].seam_left || schematic.pieces[i - 1].seam_right);
    row = (sewn ? row : 0) + box.right - box.left;
    widest = std::max(widest, row);
    tallest = std::max(tallest, box.high - box.low);
  }
  return std::min(static_cast<double>(outlines_wide) / widest, static_cast<double>(outlines_high) / tallest);
}

}  // namespace

Box box_of(const std::vector<OutlinePoint>& outline) {
  Box out{outline[0].x_mm, outline[0].x_mm, outline[0].y_mm, outline[0].y_mm};
  for (const OutlinePoint& point : outline) {
    out.left = std::min(out.left, point.x_mm);
    out.right = std::max(out.right, point.x_mm);
    out.low = std::min(out.low, point.y_mm);
    out.high = std::max(out.high, point.y_mm);
  }
  return out;
}

std::string measure_mark(std::size_t index) {
  std::string mark = letter_name(index);
  for (char& letter : mark) letter = static_cast<char>(letter - 'A' + 'a');
  return mark;
}

Box box_of(const SchematicPiece& piece) {
  Box out = box_of(piece.outline);
  for (const std::vector<OutlinePoint>& other : piece.others) {
    const Box box = box_of(other);
    out = {std::min(out.left, box.left), std::max(out.right, box.right), std::min(out.low, box.low),
           std::max(out.high, box.high)};
  }
  return out;
}

std::string measure_text(const SchematicMeasure& measure, LengthUnit unit) {
  std::string out = number_text(measure.mm, unit);
  if (!measure.others_mm.empty()) {
    std::vector<std::string> others;
    others.reserve(measure.others_mm.size());
    for (const double mm : measure.others_mm) others.push_back(number_text(mm, unit));
    out += fmt::format(" ({})", joined(others));
  }
  return out + (unit == LengthUnit::cm ? " cm" : " in");
}

Unit width_of(const PlacedMeasure& measure) {
  std::size_t letters = 0;
  for (const std::string& line : measure.lines) letters = std::max(letters, letters_in(line));
  return text_width(font, letters);
}

Layout laid_out(const Schematic& schematic, Unit top) {
  Layout out;
  out.unit_of_mm = scale_of(schematic);
  std::vector<std::vector<Cell>> rows;
  std::size_t letter = 0;
  Unit used = 0;
  for (std::size_t i = 0; i < schematic.pieces.size(); ++i) {
    Cell cell = PieceLayout(schematic, i, letter, out.unit_of_mm).made();
    letter += schematic.pieces[i].measures.size();
    const Unit width = cell.right - cell.left;
    const bool sewn = i > 0 && (schematic.pieces[i].seam_left || schematic.pieces[i - 1].seam_right);
    if (rows.empty() || (!sewn && used + gap + width > most_width)) {
      rows.emplace_back();
      used = 0;
    }
    used += (rows.back().empty() ? 0 : gap) + width;
    rows.back().push_back(std::move(cell));
    out.width = std::max(out.width, used);
  }
  out.width = std::max(out.width + font, page_width);
  Unit y = top;
  for (std::vector<Cell>& row : rows) {
    Unit wide = -gap;
    Unit above = 0;  // of the outlines, which stand on one line
    Unit below = 0;
    for (const Cell& cell : row) {
      wide += gap + cell.right - cell.left;
      above = std::max(above, cell.placed.bottom - cell.top);
      below = std::max(below, cell.bottom - cell.placed.bottom);
    }
    Unit x = (out.width - wide) / 2;
    for (Cell& cell : row) {
      move(cell.placed, schematic, x - cell.left, y + above - cell.placed.bottom);
      x += cell.right - cell.left + gap;
      out.pieces.push_back(std::move(cell.placed));
    }
    y += above + below + 2 * font;
  }
  out.height = y - top - 2 * font;
  return out;
}

}  // namespace latchwork::inline v0::schematics
