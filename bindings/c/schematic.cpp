// Schematic drawings.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

SchematicMeasure measure_in(const latchwork_schematic_measure& from, const std::string& at) {
  SchematicMeasure to;
  to.label = text_or_none(from.label);
  to.side = enumerator(from.side, MeasureSide::right, (at + ".side").c_str());
  to.start = {from.start.x_mm, from.start.y_mm};
  to.end = {from.end.x_mm, from.end.y_mm};
  to.mm = from.mm;
  const auto others = array_in(from.others_mm, from.other_count, (at + ".others_mm").c_str());
  to.others_mm.assign(others.begin(), others.end());
  return to;
}

SchematicPiece piece_in(const latchwork_schematic_piece& from, const std::string& at) {
  SchematicPiece to;
  to.name = text_or_none(from.name);
  for (const auto& point : array_in(from.outline, from.outline_count, (at + ".outline").c_str())) {
    to.outline.push_back({point.x_mm, point.y_mm});
  }
  for (const auto& measure : array_in(from.measures, from.measure_count, (at + ".measures").c_str())) {
    to.measures.push_back(measure_in(measure, at + ".measures[" + std::to_string(to.measures.size()) + "]"));
  }
  to.seam_left = flag(from.seam_left, (at + ".seam_left").c_str());
  to.seam_right = flag(from.seam_right, (at + ".seam_right").c_str());
  for (const auto& other : array_in(from.others, from.other_count, (at + ".others").c_str())) {
    const std::string field = at + ".others[" + std::to_string(to.others.size()) + "]";
    std::vector<OutlinePoint>& outline = to.others.emplace_back();
    for (const auto& point : array_in(other.points, other.point_count, field.c_str())) {
      outline.push_back({point.x_mm, point.y_mm});
    }
  }
  to.notes = texts_in(from.notes, from.note_count, (at + ".notes").c_str());
  return to;
}

Schematic schematic_in(const latchwork_schematic* schematic) {
  const latchwork_schematic from = struct_in(schematic, latchwork_schematic LATCHWORK_SCHEMATIC_INIT, "schematic");
  Schematic to;
  to.title = text_or_none(from.title);
  to.sizes = texts_in(from.sizes, from.size_count, "sizes");
  to.notes = texts_in(from.notes, from.note_count, "notes");
  to.unit = enumerator(from.unit, LengthUnit::yard, "unit");
  for (const auto& piece : array_in(from.pieces, from.piece_count, "pieces")) {
    to.pieces.push_back(piece_in(piece, "pieces[" + std::to_string(to.pieces.size()) + "]"));
  }
  return to;
}

SchematicPiece piece_of(const latchwork_panel* panel, const latchwork_swatch* swatch,
                        const latchwork_size_options* options) {
  return schematic_piece(given(panel, "panel").value, given(swatch, "swatch").value, size_options_in(options));
}

}  // namespace

latchwork_status latchwork_schematic_svg(const latchwork_schematic* schematic, char* text, size_t capacity,
                                         size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(schematic_svg(schematic_in(schematic)));
  });
}

latchwork_status latchwork_panel_schematic_piece(const latchwork_panel* panel, const latchwork_swatch* swatch,
                                                 const latchwork_size_options* options,
                                                 latchwork_outline_point* outline, size_t capacity, size_t* needed,
                                                 latchwork_error* error) {
  return guarded(error, [&] {
    Room room(outline, capacity, needed, "outline");
    room.take(piece_of(panel, swatch, options).outline, [](const OutlinePoint& from) {
      return latchwork_outline_point{from.x_mm, from.y_mm};
    });
  });
}

latchwork_status latchwork_panel_schematic_measures(const latchwork_panel* panel, const latchwork_swatch* swatch,
                                                    const latchwork_size_options* options,
                                                    latchwork_schematic_measure* measures, size_t capacity,
                                                    size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    Room room(measures, capacity, needed, "measures");
    room.take(piece_of(panel, swatch, options).measures, [](const SchematicMeasure& from) {
      return latchwork_schematic_measure{
          {from.start.x_mm, from.start.y_mm}, {from.end.x_mm, from.end.y_mm}, from.mm, nullptr, 0, nullptr,
          static_cast<int32_t>(from.side)};
    });
  });
}

latchwork_status latchwork_panel_schematic_label(const latchwork_panel* panel, const latchwork_swatch* swatch,
                                                 const latchwork_size_options* options, size_t index, char* text,
                                                 size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(element(piece_of(panel, swatch, options).measures, index, "index").label);
  });
}

latchwork_status latchwork_panel_schematic_notes(const latchwork_panel* panel, const latchwork_swatch* swatch,
                                                 const latchwork_size_options* options, char* text, size_t capacity,
                                                 size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    room.take_text(lines_of(piece_of(panel, swatch, options).notes));
  });
}

latchwork_status latchwork_graded_schematic_svg(const latchwork_fit_request* design, const latchwork_grade_size* sizes,
                                                size_t count, const latchwork_grading* grading,
                                                const latchwork_swatch* swatch, const char* title, int32_t unit,
                                                char* text, size_t capacity, size_t* needed, latchwork_error* error) {
  return guarded(error, [&] {
    TextRoom room(text, capacity, needed, "text");
    Schematic schematic = graded_schematic(grade_request_in(design, sizes, count), given(grading, "grading").value,
                                           given(swatch, "swatch").value, enumerator(unit, LengthUnit::yard, "unit"));
    schematic.title = text_or_none(title);
    room.take_text(schematic_svg(schematic));
  });
}
