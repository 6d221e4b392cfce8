#include "schematic/layout.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <tuple>
#include <utility>

#include "chart/pen.hpp"
#include "schematic/names.hpp"
#include "schematic/sewn.hpp"
#include "text/letters.hpp"
#include "text/words.hpp"

namespace latchwork::inline v0::schematics {
namespace {

using drawing::letters_in;
using drawing::text_width;

constexpr Unit page_width = 30 * font;     // text is a thirtieth of it
constexpr Unit most_width = 38 * font;     // of a row of pieces
constexpr Unit outlines_wide = 15 * font;  // what the outlines of a row take, at most
constexpr Unit sewn_wide = 21 * font;      // where the widest is of pieces sewn together, each with a width of its own
constexpr Unit outlines_high = 26 * font;
constexpr Unit lane_gap = 14 * font / 10;
constexpr Unit width_lane = 19 * font / 10;
constexpr Unit text_room = 8 * font / 10;  // of a width lane
constexpr Unit gap = 12 * font / 10;
constexpr Unit name_gap = 4 * font / 10;  // between names of pieces sewn together
constexpr int least_name = 28;            // letters of a piece's name on one line, however narrow the piece
constexpr int least_sewn_name = 8;        // the same where other pieces are sewn to it

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

/// A piece of its own, or all pieces that are sewn together, from `first` to before `last`.
struct Block {
  std::size_t first = 0;
  std::size_t last = 0;
  std::vector<OutlinePoint> places;  ///< as places_of()
  Box box;                           ///< of all outlines in all sizes, in the place of the first
};

std::vector<Block> blocks_of(const std::vector<SchematicPiece>& pieces) {
  std::vector<Block> out;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (!is_sewn(pieces, i)) out.push_back({i, i, {}, {}});
    out.back().last = i + 1;
  }
  for (Block& block : out) {
    block.places = places_of(pieces, block.first, block.last);
    block.box = box_of(pieces[block.first]);
    for (std::size_t i = block.first + 1; i < block.last; ++i) {
      const OutlinePoint& place = block.places[i - block.first];
      const Box box = box_of(pieces[i]);
      block.box = {std::min(block.box.left, box.left + place.x_mm), std::max(block.box.right, box.right + place.x_mm),
                   std::min(block.box.low, box.low + place.y_mm), std::max(block.box.high, box.high + place.y_mm)};
    }
  }
  return out;
}

/// A block with the top left corner of its outlines at (0, 0), and how far it reaches round that.
struct Cell {
  std::vector<PlacedPiece> placed;
  Unit outline_right = 0, outline_bottom = 0;
  Unit left = 0, right = 0, top = 0, bottom = 0;  // extent, texts and all
};

class BlockLayout {
 public:
  BlockLayout(const Schematic& schematic, const Block& block, std::size_t first_letter, double scale)
      : pieces_(schematic.pieces), unit_(schematic.unit), block_(block), scale_(scale), box_(block.box) {
    cell_.outline_right = std::llround((box_.right - box_.left) * scale_);
    cell_.outline_bottom = std::llround((box_.high - box_.low) * scale_);
    for (std::size_t i = block.first; i < block.last; ++i) {
      const Box box = box_of(pieces_[i]);
      PlacedPiece& placed = cell_.placed.emplace_back();
      placed.piece = i;
      placed.left = x_of(i, box.left);
      placed.right = x_of(i, box.right);
      placed.top = y_of(i, box.high);
      placed.bottom = y_of(i, box.low);
      letters_.push_back(first_letter);
      first_letter += pieces_[i].measures.size();
    }
  }

  Cell made() {
    cell_.right = cell_.outline_right;
    cell_.bottom = cell_.outline_bottom;
    for (const MeasureSide side : {MeasureSide::left, MeasureSide::right, MeasureSide::bottom, MeasureSide::top})
      lanes(side);
    for (PlacedPiece& placed : cell_.placed) {
      std::sort(placed.measures.begin(), placed.measures.end(),
                [](const PlacedMeasure& a, const PlacedMeasure& b) { return a.measure < b.measure; });
    }
    names();
    return std::move(cell_);
  }

 private:
  /// A measure of one of the pieces.
  struct Measured {
    std::size_t piece = 0;
    PlacedMeasure placed;
  };
  /// Widths beside one another on one line.
  struct WidthLane {
    Unit line = 0;
    std::vector<std::pair<Unit, Unit>> taken;
    std::vector<std::size_t> pieces;
  };

  Unit x_of(std::size_t piece, double x_mm) const {
    return std::llround((x_mm + block_.places[piece - block_.first].x_mm - box_.left) * scale_);
  }
  Unit y_of(std::size_t piece, double y_mm) const {
    return std::llround((box_.high - y_mm - block_.places[piece - block_.first].y_mm) * scale_);
  }

  void reach_across(Unit middle, Unit width) {
    cell_.left = std::min(cell_.left, middle - width / 2 - font / 2);
    cell_.right = std::max(cell_.right, middle + width / 2 + font / 2);
  }

  /// Letters that a name may have on a line.
  Unit letters_over(const PlacedPiece& placed) const {
    const bool is_alone = cell_.placed.size() == 1;
    // Of pieces sewn together the sizes lie about one middle of them all, not of each.
    const Box drawn = is_alone ? box_of(pieces_[placed.piece]) : box_of(pieces_[placed.piece].outline);
    const Unit wide = x_of(placed.piece, drawn.right) - x_of(placed.piece, drawn.left);
    return is_alone ? std::max(wide / text_width(font, 1), Unit{least_name})
                    : std::max((wide - name_gap) / text_width(font, 1), Unit{least_sewn_name});
  }

  void write_caption(const std::string& caption) {
    if (caption.empty()) return;
    PlacedPiece& first = cell_.placed.front();
    const Unit wide = cell_.outline_right;
    first.caption =
        drawing::wrapped(caption, static_cast<std::size_t>(std::max(wide / text_width(font, 1), Unit{least_name})));
    first.caption_middle = cell_.outline_right / 2;
    const Unit below_first = static_cast<Unit>(first.caption.size() - 1) * name_line;
    first.caption_y = cell_.top - font * 2 / 10 - below_first;
    for (const std::string& line : first.caption)
      reach_across(first.caption_middle, text_width(font, letters_in(line)));
    cell_.top -= font * 14 / 10 + below_first;
  }

  /// Each over its piece. A long name takes lines rather than width, which would shrink the piece. Where pieces sewn
  /// together leave no room beside each other for theirs, some stand higher, each with a line down to its piece.
  void names() {
    const bool is_alone = cell_.placed.size() == 1;
    std::vector<std::string> full;
    std::vector<std::size_t> letters;
    for (const PlacedPiece& placed : cell_.placed) {
      full.push_back(pieces_[placed.piece].name);
      letters.push_back(static_cast<std::size_t>(letters_over(placed)));
    }
    const Names over = names_over(full, letters);
    struct Lane {
      std::vector<std::size_t> names;
      Unit right = 0;
      std::size_t lines = 0;
    };
    std::vector<Lane> lanes;
    for (std::size_t i = 0; i < cell_.placed.size(); ++i) {
      PlacedPiece& placed = cell_.placed[i];
      const std::string& name = over.own[i];
      if (name.empty()) continue;
      const Box drawn = is_alone ? box_of(pieces_[placed.piece]) : box_of(pieces_[placed.piece].outline);
      placed.name = drawing::wrapped(name, letters[i]);
      std::size_t most = 0;
      for (const std::string& line : placed.name) most = std::max(most, letters_in(line));
      const Unit middle = (x_of(placed.piece, drawn.left) + x_of(placed.piece, drawn.right)) / 2;
      placed.name_left = x_of(placed.piece, drawn.left);
      placed.name_right = x_of(placed.piece, drawn.right);
      const Unit half = text_width(font, most) / 2;
      auto lane = std::find_if(lanes.begin(), lanes.end(),
                               [&](const Lane& each) { return each.right + name_gap <= middle - half; });
      if (lane == lanes.end()) lane = lanes.insert(lanes.end(), Lane{});
      lane->names.push_back(i);
      lane->right = middle + half;
      lane->lines = std::max(lane->lines, placed.name.size());
    }
    for (const Lane& lane : lanes) {
      const Unit below_first = static_cast<Unit>(lane.lines - 1) * name_line;
      for (const std::size_t i : lane.names) {
        PlacedPiece& placed = cell_.placed[i];
        placed.name_y = cell_.top - font * 7 / 10 - static_cast<Unit>(placed.name.size() - 1) * name_line;
        placed.name_led = &lane != &lanes.front();
        const Unit middle = (placed.name_left + placed.name_right) / 2;
        for (const std::string& line : placed.name) reach_across(middle, text_width(font, letters_in(line)));
      }
      cell_.top -= (&lane == &lanes.back() ? 20 : 17) * font / 10 + below_first;
    }
    write_caption(over.caption);
  }

  PlacedMeasure placed(std::size_t piece, std::size_t index) const {
    const SchematicMeasure& measure = pieces_[piece].measures[index];
    PlacedMeasure out;
    out.measure = index;
    out.lines.push_back(
        fmt::format("{} = {}", measure_mark(letters_[piece - block_.first] + index), measure_text(measure, unit_)));
    if (const std::size_t bracket = out.lines[0].find(" ("); bracket != std::string::npos && !across(measure.side)) {
      out.lines.push_back(out.lines[0].substr(bracket + 1));
      out.lines[0].resize(bracket);
    }
    const std::pair xs{x_of(piece, measure.start.x_mm), x_of(piece, measure.end.x_mm)};
    const std::pair ys{y_of(piece, measure.start.y_mm), y_of(piece, measure.end.y_mm)};
    std::tie(out.from, out.to) = across(measure.side) ? xs : ys;
    std::tie(out.from_foot, out.to_foot) = across(measure.side) ? ys : xs;
    if (out.from > out.to) {
      std::swap(out.from, out.to);
      std::swap(out.from_foot, out.to_foot);
    }
    return out;
  }

  /// The measures of a side, each on a line of its own, the shorter nearer to the piece; but those of pieces sewn
  /// together share a line where they lie beside one another.
  void lanes(MeasureSide side) {
    std::vector<Measured> all;
    for (const PlacedPiece& of : cell_.placed) {
      const std::vector<SchematicMeasure>& measures = pieces_[of.piece].measures;
      for (std::size_t i = 0; i < measures.size(); ++i) {
        if (measures[i].side == side) all.push_back({of.piece, placed(of.piece, i)});
      }
    }
    std::stable_sort(all.begin(), all.end(), [](const Measured& a, const Measured& b) {
      return a.placed.to - a.placed.from < b.placed.to - b.placed.from;
    });
    if (across(side)) {
      Unit clear = cell_.outline_right;  // of all extension lines
      for (const Measured& each : all) clear = std::max(clear, each.placed.to);
      std::vector<WidthLane> taken;
      for (Measured& each : all) lane_of_width(each, side, clear + font * 6 / 10, taken);
    } else {
      lanes_of_heights(all, side);
    }
    for (Measured& each : all) cell_.placed[each.piece - block_.first].measures.push_back(std::move(each.placed));
  }

  void lane_of_width(Measured& measured, MeasureSide side, Unit clear, std::vector<WidthLane>& lanes) {
    PlacedMeasure& each = measured.placed;
    const Unit width = width_of(each);
    each.beside = width > each.to - each.from;
    const auto shared = std::find_if(lanes.begin(), lanes.end(), [&](const WidthLane& lane) {
      return !each.beside && std::find(lane.pieces.begin(), lane.pieces.end(), measured.piece) == lane.pieces.end() &&
             std::none_of(lane.taken.begin(), lane.taken.end(), [&](const std::pair<Unit, Unit>& other) {
               return each.from < other.second && other.first < each.to;
             });
    });
    if (shared != lanes.end()) {
      each.line = shared->line;
      shared->taken.emplace_back(each.from, each.to);
      shared->pieces.push_back(measured.piece);
    } else {
      if (side == MeasureSide::bottom) {
        each.line = cell_.bottom += width_lane;
      } else {
        each.line = cell_.top -= width_lane - text_room;
        cell_.top -= text_room;
      }
      // Words beside a line have it to themselves.
      if (!each.beside) lanes.push_back({each.line, {{each.from, each.to}}, {measured.piece}});
    }
    each.words = each.beside ? clear : (each.from + each.to - width) / 2;
    cell_.left = std::min(cell_.left, each.words - font / 2);
    cell_.right = std::max(cell_.right, each.words + width + font / 2);
    cell_.left = std::min(cell_.left, each.from);  // where points lie beyond the outline
    cell_.right = std::max(cell_.right, each.to);
  }

  /// Heights above one another share a line.
  void lanes_of_heights(std::vector<Measured>& all, MeasureSide side) {
    std::vector<bool> done(all.size(), false);
    for (std::size_t first = 0; first < all.size(); ++first) {
      if (done[first]) continue;
      const Unit line = side == MeasureSide::left ? cell_.left - lane_gap : cell_.right + lane_gap;
      Unit width = 0;
      std::vector<std::pair<Unit, Unit>> taken;
      for (std::size_t i = first; i < all.size(); ++i) {
        PlacedMeasure& each = all[i].placed;
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

  const std::vector<SchematicPiece>& pieces_;
  LengthUnit unit_;
  const Block& block_;
  double scale_;
  Box box_;
  std::vector<std::size_t> letters_;  ///< index of each piece's first
  Cell cell_;
};

void move(PlacedPiece& placed, const Schematic& schematic, Unit x, Unit y) {
  placed.left += x;
  placed.right += x;
  placed.top += y;
  placed.bottom += y;
  placed.name_left += x;
  placed.name_right += x;
  placed.name_y += y;
  placed.caption_middle += x;
  placed.caption_y += y;
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

/// One scale for all: the widest of pieces sewn together, and the tallest piece, fit.
double scale_of(const std::vector<Block>& blocks) {
  double widest = 0;
  double tallest = 0;
  bool is_sewn = false;
  for (const Block& block : blocks) {
    const double width = block.box.right - block.box.left;
    if (width > widest) is_sewn = block.last - block.first > 1;
    widest = std::max(widest, width);
    tallest = std::max(tallest, block.box.high - block.box.low);
  }
  return std::min(static_cast<double>(is_sewn ? sewn_wide : outlines_wide) / widest,
                  static_cast<double>(outlines_high) / tallest);
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
  const std::vector<Block> blocks = blocks_of(schematic.pieces);
  out.unit_of_mm = scale_of(blocks);
  std::vector<std::vector<Cell>> rows;
  std::size_t letter = 0;
  Unit used = 0;
  for (const Block& block : blocks) {
    Cell cell = BlockLayout(schematic, block, letter, out.unit_of_mm).made();
    for (std::size_t i = block.first; i < block.last; ++i) letter += schematic.pieces[i].measures.size();
    const Unit width = cell.right - cell.left;
    if (rows.empty() || used + gap + width > most_width) {
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
      above = std::max(above, cell.outline_bottom - cell.top);
      below = std::max(below, cell.bottom - cell.outline_bottom);
    }
    Unit x = (out.width - wide) / 2;
    for (Cell& cell : row) {
      for (PlacedPiece& placed : cell.placed) {
        move(placed, schematic, x - cell.left, y + above - cell.outline_bottom);
        out.pieces.push_back(std::move(placed));
      }
      x += cell.right - cell.left + gap;
    }
    y += above + below + 2 * font;
  }
  out.height = y - top - 2 * font;
  return out;
}

}  // namespace latchwork::inline v0::schematics
