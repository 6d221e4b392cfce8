// Pieces that are sewn of several panels.
#include "schematic/sewn.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "fit/request.hpp"
#include "schematic/layout.hpp"

namespace latchwork::inline v0::schematics {
namespace {

constexpr double alike_mm = 0.05;

bool near(double a, double b) {
  return std::abs(a - b) < alike_mm;
}

bool is_told(const std::vector<SchematicMeasure>& told, const SchematicMeasure& measure) {
  return std::any_of(told.begin(), told.end(), [&](const SchematicMeasure& each) {
    return each.label == measure.label && near(each.mm, measure.mm) &&
           std::equal(each.others_mm.begin(), each.others_mm.end(), measure.others_mm.begin(), measure.others_mm.end(),
                      near);
  });
}

const SchematicMeasure* measure_of(const SchematicPiece& piece, const std::string& label) {
  const auto found = std::find_if(piece.measures.begin(), piece.measures.end(),
                                  [&](const SchematicMeasure& each) { return each.label == label; });
  return found == piece.measures.end() ? nullptr : &*found;
}

/// One width of all panels together. A panel without it is straight: its only width is the same all the way up.
std::optional<SchematicMeasure> width_of_all(const std::vector<SchematicPiece>& panels, const std::string& label) {
  const std::vector<OutlinePoint> places = places_of(panels, 0, panels.size());
  SchematicMeasure out;
  out.label = fmt::format("{} panels, {}", panels.size() == 2 ? "both" : fmt::format("all {}", panels.size()), label);
  std::optional<double> height;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const SchematicMeasure* each = measure_of(panels[i], label);
    const bool is_straight = std::count_if(panels[i].measures.begin(), panels[i].measures.end(),
                                           [](const SchematicMeasure& of) { return across(of.side); }) == 1;
    if (each == nullptr && !is_straight) return std::nullopt;
    const bool has_own = each != nullptr;
    if (!has_own) {
      each = &*std::find_if(panels[i].measures.begin(), panels[i].measures.end(),
                            [](const SchematicMeasure& of) { return across(of.side); });
    } else if (height && std::abs(*height - each->start.y_mm) > alike_mm) {
      return std::nullopt;
    } else {
      height = each->start.y_mm;
      out.side = each->side;
    }
    out.mm += each->mm;
    if (i == 0) out.start = each->start;
    out.end = {each->end.x_mm + places[i].x_mm, each->end.y_mm};
  }
  if (!height) return std::nullopt;
  out.start.y_mm = out.end.y_mm = *height;
  return out;
}

}  // namespace

std::vector<SchematicPiece> sewn_pieces(std::string_view name, const std::vector<Panel>& panels,
                                        const FitRequest& wanted, const Swatch& swatch) {
  std::vector<SchematicPiece> out;
  out.reserve(panels.size());
  const int count = static_cast<int>(panels.size());
  for (int i = 0; i < count; ++i) {
    const Panel& panel = panels[static_cast<std::size_t>(i)];
    SchematicPiece piece = schematic_piece(panel, swatch, fitting::measuring_of(wanted, i, count));
    piece.name = name;
    if (count > 1) piece.name += fmt::format("{}panel {} of {}", name.empty() ? "" : ", ", i + 1, count);
    piece.seam_left = i > 0;
    piece.seam_right = i < count - 1;
    out.push_back(std::move(piece));
  }
  if (count < 2) return out;
  std::vector<SchematicMeasure> whole;
  for (const SchematicMeasure& own : out.front().measures) {
    if (!across(own.side)) continue;
    if (std::optional<SchematicMeasure> each = width_of_all(out, own.label)) whole.push_back(std::move(*each));
  }
  std::move(whole.begin(), whole.end(), std::back_inserter(out.front().measures));
  return out;
}

void leave_told(std::vector<SchematicPiece>& panels) {
  std::vector<SchematicMeasure> told;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const bool is_last = i + 1 == panels.size();
    std::erase_if(panels[i].measures, [&](const SchematicMeasure& measure) {
      return is_told(told, measure) || (!is_last && measure.label == "height");
    });
    told.insert(told.end(), panels[i].measures.begin(), panels[i].measures.end());
  }
}

bool is_sewn(const std::vector<SchematicPiece>& pieces, std::size_t index) {
  return index > 0 && (pieces[index].seam_left || pieces[index - 1].seam_right);
}

bool reaches_over(const std::vector<SchematicPiece>& pieces, std::size_t index, const SchematicMeasure& measure) {
  const bool sewn = is_sewn(pieces, index) || (index + 1 < pieces.size() && is_sewn(pieces, index + 1));
  if (!sewn || !across(measure.side)) return false;
  constexpr double beyond_mm = 0.5;
  const Box box = box_of(pieces[index].outline);
  return std::min(measure.start.x_mm, measure.end.x_mm) < box.left - beyond_mm ||
         std::max(measure.start.x_mm, measure.end.x_mm) > box.right + beyond_mm;
}

std::vector<OutlinePoint> places_of(const std::vector<SchematicPiece>& pieces, std::size_t first, std::size_t last) {
  std::vector<OutlinePoint> out(1);
  const double low = box_of(pieces[first].outline).low;
  for (std::size_t i = first + 1; i < last; ++i) {
    const double right = box_of(pieces[i - 1].outline).right + out.back().x_mm;
    const Box box = box_of(pieces[i].outline);
    out.push_back({right - box.left, low - box.low});
  }
  return out;
}

}  // namespace latchwork::inline v0::schematics
