#include "schematic/check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "error/refuse.hpp"
#include "latchwork/error.hpp"
#include "schematic/simple.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0::schematics {
namespace {

constexpr double most_mm = 1e6;

void require_count(const std::string& field, std::size_t count, std::size_t most) {
  if (count > most)
    refuse(ErrorCode::too_large, field, fmt::format("{} holds {}; the limit is {}", field, count, most));
}

void require_text(const std::string& field, std::string_view text) {
  if (utf8_error(text) != std::string_view::npos) {
    refuse(ErrorCode::bad_encoding, field, fmt::format("{} is not UTF-8", field));
  }
}

void require_mm(const std::string& field, double value, double least) {
  if (value >= least && value <= most_mm) return;  // false for NaN
  refuse(ErrorCode::bad_argument, field, fmt::format("{} is {}; it must be {}..{}", field, value, least, most_mm));
}

void require_point(const std::string& field, const OutlinePoint& point) {
  require_mm(field + ".x_mm", point.x_mm, -most_mm);
  require_mm(field + ".y_mm", point.y_mm, -most_mm);
}

void check(const SchematicMeasure& measure, std::size_t sizes, const std::string& at) {
  require_text(at + ".label", measure.label);
  if (measure.side > MeasureSide::right) {
    refuse(ErrorCode::bad_argument, at + ".side",
           fmt::format("{}.side is {}; it must be 0..3", at, static_cast<int>(measure.side)));
  }
  require_point(at + ".start", measure.start);
  require_point(at + ".end", measure.end);
  require_mm(at + ".mm", measure.mm, 0);
  if (measure.others_mm.size() + 1 != std::max<std::size_t>(sizes, 1)) {
    refuse(ErrorCode::bad_argument, at + ".others_mm",
           fmt::format("{}.others_mm holds {}; there are {} other sizes", at, measure.others_mm.size(),
                       std::max<std::size_t>(sizes, 1) - 1));
  }
  for (std::size_t i = 0; i < measure.others_mm.size(); ++i) {
    require_mm(fmt::format("{}.others_mm[{}]", at, i), measure.others_mm[i], 0);
  }
}

void check_outline(const std::vector<OutlinePoint>& outline, const std::string& at) {
  require_count(at, outline.size(), Schematic::max_points);
  if (outline.size() < 3) {
    refuse(ErrorCode::bad_argument, at, fmt::format("{} has {} corners; it needs three", at, outline.size()));
  }
  for (std::size_t i = 0; i < outline.size(); ++i) {
    require_point(fmt::format("{}[{}]", at, i), outline[i]);
  }
  const auto by_x = [](const OutlinePoint& a, const OutlinePoint& b) { return a.x_mm < b.x_mm; };
  const auto by_y = [](const OutlinePoint& a, const OutlinePoint& b) { return a.y_mm < b.y_mm; };
  const auto [left, right] = std::minmax_element(outline.begin(), outline.end(), by_x);
  const auto [low, high] = std::minmax_element(outline.begin(), outline.end(), by_y);
  if (right->x_mm - left->x_mm < 1 || high->y_mm - low->y_mm < 1) {
    refuse(ErrorCode::bad_argument, at,
           fmt::format("{} is {} mm wide and {} mm high; 1 mm is the least", at, right->x_mm - left->x_mm,
                       high->y_mm - low->y_mm));
  }
  require_simple(at, outline);
}

void check(const SchematicPiece& piece, std::size_t sizes, const std::string& at) {
  require_text(at + ".name", piece.name);
  check_outline(piece.outline, at + ".outline");
  require_count(at + ".measures", piece.measures.size(), Schematic::max_measures);
  if (!piece.others.empty() && piece.others.size() + 1 != std::max<std::size_t>(sizes, 1)) {
    refuse(ErrorCode::bad_argument, at + ".others",
           fmt::format("{}.others holds {}; there are {} other sizes", at, piece.others.size(),
                       std::max<std::size_t>(sizes, 1) - 1));
  }
  for (std::size_t i = 0; i < piece.others.size(); ++i) {
    check_outline(piece.others[i], fmt::format("{}.others[{}]", at, i));
  }
  require_count(at + ".notes", piece.notes.size(), Schematic::max_pieces);
  for (std::size_t i = 0; i < piece.notes.size(); ++i) require_text(fmt::format("{}.notes[{}]", at, i), piece.notes[i]);
  for (std::size_t i = 0; i < piece.measures.size(); ++i) {
    check(piece.measures[i], sizes, fmt::format("{}.measures[{}]", at, i));
  }
}

}  // namespace

void require_unit(LengthUnit unit) {
  if (unit == LengthUnit::cm || unit == LengthUnit::inch) return;
  refuse(ErrorCode::bad_argument, "unit",
         fmt::format("unit is {}; it must be {} (cm) or {} (inch)", static_cast<int>(unit),
                     static_cast<int>(LengthUnit::cm), static_cast<int>(LengthUnit::inch)));
}

void check(const Schematic& schematic) {
  require_text("title", schematic.title);
  require_count("sizes", schematic.sizes.size(), Schematic::max_sizes);
  require_count("pieces", schematic.pieces.size(), Schematic::max_pieces);
  require_count("notes", schematic.notes.size(), Schematic::max_pieces);
  for (std::size_t i = 0; i < schematic.sizes.size(); ++i)
    require_text(fmt::format("sizes[{}]", i), schematic.sizes[i]);
  for (std::size_t i = 0; i < schematic.notes.size(); ++i)
    require_text(fmt::format("notes[{}]", i), schematic.notes[i]);
  require_unit(schematic.unit);
  if (schematic.pieces.empty()) refuse(ErrorCode::bad_argument, "pieces", "a schematic needs one piece or more");
  for (std::size_t i = 0; i < schematic.pieces.size(); ++i) {
    check(schematic.pieces[i], schematic.sizes.size(), fmt::format("pieces[{}]", i));
  }
}

}  // namespace latchwork::inline v0::schematics
