#pragma once

// The fields of every plain struct and the range of every enum, as the headers have them. A field left out does not
// compile (-Wmissing-field-initializers); the Python side is held against the headers by tests/python.

#include "convert.hpp"
#include "latchwork/latchwork.hpp"

namespace latchwork::python {

template <class T, class Member>
constexpr Field<T, Member> field(const char* name, Member T::*member) {
  return {name, member};
}

template <>
struct Data<Cell> {
  static constexpr char name[] = "Cell";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 4;
};

template <>
struct Data<Side> {
  static constexpr char name[] = "Side";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<Lean> {
  static constexpr char name[] = "Lean";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<Centre> {
  static constexpr char name[] = "Centre";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<ErrorCode> {
  static constexpr char name[] = "ErrorCode";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 1, most = 23;
};

template <>
struct Data<Severity> {
  static constexpr char name[] = "Severity";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<FindingCode> {
  static constexpr char name[] = "FindingCode";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 1, most = 36;
};

template <>
struct Data<EffortTerm> {
  static constexpr char name[] = "EffortTerm";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 11;
};

template <>
struct Data<TermState> {
  static constexpr char name[] = "TermState";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 3;
};

template <>
struct Data<MeasureSide> {
  static constexpr char name[] = "MeasureSide";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 3;
};

template <>
struct Data<EdgeLine> {
  static constexpr char name[] = "EdgeLine";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<CutWork> {
  static constexpr char name[] = "CutWork";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<SpacingEnds> {
  static constexpr char name[] = "SpacingEnds";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<Counted> {
  static constexpr char name[] = "Counted";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<LengthUnit> {
  static constexpr char name[] = "LengthUnit";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 5;
};

template <>
struct Data<WeightUnit> {
  static constexpr char name[] = "WeightUnit";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 4;
};

template <>
struct Data<ClothState> {
  static constexpr char name[] = "ClothState";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<PlainState> {
  static constexpr char name[] = "PlainState";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<YarnRoute> {
  static constexpr char name[] = "YarnRoute";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 3;
};

template <>
struct Data<YarnSystem> {
  static constexpr char name[] = "YarnSystem";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 15;
};

template <>
struct Data<Axis> {
  static constexpr char name[] = "Axis";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 1;
};

template <>
struct Data<MachineClass> {
  static constexpr char name[] = "MachineClass";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 3;
};

template <>
struct Data<MoveKind> {
  static constexpr char name[] = "MoveKind";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 14;
};

template <>
struct Data<GroupName> {
  static constexpr char name[] = "GroupName";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<PlanStatus> {
  static constexpr char name[] = "PlanStatus";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<BranchEnd> {
  static constexpr char name[] = "BranchEnd";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<Condition> {
  static constexpr char name[] = "Condition";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 6;
};

template <>
struct Data<StopCause> {
  static constexpr char name[] = "StopCause";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 4;
};

template <>
struct Data<Place> {
  static constexpr char name[] = "Place";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("row", &Place::row), field("column", &Place::column), field("line", &Place::line),
                 field("field", &Place::field), field("character", &Place::character)};
};

template <>
struct Data<Crossing> {
  static constexpr char name[] = "Crossing";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("row", &Crossing::row),       field("column", &Crossing::column), field("left", &Crossing::left),
                 field("centre", &Crossing::centre), field("right", &Crossing::right),   field("lean", &Crossing::lean),
                 field("place", &Crossing::place)};
};

template <>
struct Data<Wale> {
  static constexpr char name[] = "Wale";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("column", &Wale::column), field("row", &Wale::row), field("columns", &Wale::columns)};
};

template <>
struct Data<Strip> {
  static constexpr char name[] = "Strip";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("name", &Strip::name), field("texture", &Strip::texture), field("grid", &Strip::grid)};
};

template <>
struct Data<StripSpan> {
  static constexpr char name[] = "StripSpan";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("name", &StripSpan::name), field("texture", &StripSpan::texture),
                                            field("column", &StripSpan::column), field("columns", &StripSpan::columns),
                                            field("repeat_rows", &StripSpan::repeat_rows)};
};

template <>
struct Data<Band> {
  static constexpr char name[] = "Band";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("row", &Band::row), field("rows", &Band::rows), field("strips", &Band::strips)};
};

template <>
struct Data<Machine> {
  static constexpr char name[] = "Machine";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("name", &Machine::name),
                                            field("needles", &Machine::needles),
                                            field("pitch_mm", &Machine::pitch_mm),
                                            field("leftmost", &Machine::leftmost),
                                            field("prongs", &Machine::prongs),
                                            field("comfortable_crossing", &Machine::comfortable_crossing),
                                            field("tuck_limit", &Machine::tuck_limit),
                                            field("float_limit", &Machine::float_limit),
                                            field("max_ladder", &Machine::max_ladder),
                                            field("cast_on_loops", &Machine::cast_on_loops),
                                            field("carriage_starts_right", &Machine::carriage_starts_right)};
};

template <>
struct Data<Effort> {
  static constexpr char name[] = "Effort";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("stop", &Effort::stop),
                                            field("batch", &Effort::batch),
                                            field("drop", &Effort::drop),
                                            field("rung_knit", &Effort::rung_knit),
                                            field("rung_purl", &Effort::rung_purl),
                                            field("rung_tuck", &Effort::rung_tuck),
                                            field("rung_slip", &Effort::rung_slip),
                                            field("crossing", &Effort::crossing),
                                            field("crossing_stitch", &Effort::crossing_stitch),
                                            field("hold", &Effort::hold),
                                            field("shaping", &Effort::shaping),
                                            field("row", &Effort::row)};
};

template <>
struct Data<MachineFile> {
  static constexpr char name[] = "MachineFile";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("machine", &MachineFile::machine), field("effort", &MachineFile::effort)};
};

template <>
struct Data<Finding> {
  static constexpr char name[] = "Finding";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("code", &Finding::code),
                                            field("severity", &Finding::severity),
                                            field("place", &Finding::place),
                                            field("last_row", &Finding::last_row),
                                            field("last_column", &Finding::last_column),
                                            field("value", &Finding::value),
                                            field("limit", &Finding::limit),
                                            field("message", &Finding::message),
                                            field("suggestion", &Finding::suggestion)};
};

template <>
struct Data<Length> {
  static constexpr char name[] = "Length";
  static constexpr char module[] = "latchwork._quantity";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("mm", &Length::mm)};
};

template <>
struct Data<Weight> {
  static constexpr char name[] = "Weight";
  static constexpr char module[] = "latchwork._quantity";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("g", &Weight::g)};
};

template <>
struct Data<Duration> {
  static constexpr char name[] = "Duration";
  static constexpr char module[] = "latchwork._quantity";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("ms", &Duration::ms)};
};

template <>
struct Data<CountPerLength> {
  static constexpr char name[] = "CountPerLength";
  static constexpr char module[] = "latchwork._quantity";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("counted", &CountPerLength::counted), field("count", &CountPerLength::count),
                 field("length_mm", &CountPerLength::length_mm)};
};

template <>
struct Data<YarnNumber> {
  static constexpr char name[] = "YarnNumber";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("system", &YarnNumber::system), field("number", &YarnNumber::number),
                                            field("plies", &YarnNumber::plies)};
};

template <>
struct Data<PlainConstants> {
  static constexpr char name[] = "PlainConstants";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("courses", &PlainConstants::courses), field("wales", &PlainConstants::wales)};
};

template <>
struct Data<WeighedSwatch> {
  static constexpr char name[] = "WeighedSwatch";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("texture", &WeighedSwatch::texture),     field("weight_g", &WeighedSwatch::weight_g),
                 field("scale_g", &WeighedSwatch::scale_g),     field("width_mm", &WeighedSwatch::width_mm),
                 field("height_mm", &WeighedSwatch::height_mm), field("stitches", &WeighedSwatch::stitches),
                 field("rows", &WeighedSwatch::rows),           field("tex", &WeighedSwatch::tex)};
};

template <>
struct Data<MeasuredLoops> {
  static constexpr char name[] = "MeasuredLoops";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("texture", &MeasuredLoops::texture), field("stitches", &MeasuredLoops::stitches),
                 field("length_mm", &MeasuredLoops::length_mm)};
};

template <>
struct Data<Yarn> {
  static constexpr char name[] = "Yarn";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("name", &Yarn::name), field("number", &Yarn::number), field("ball_g", &Yarn::ball_g)};
};

template <>
struct Data<YarnRows> {
  static constexpr char name[] = "YarnRows";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("first", &YarnRows::first), field("last", &YarnRows::last), field("yarn", &YarnRows::yarn)};
};

template <>
struct Data<YarnRequest> {
  static constexpr char name[] = "YarnRequest";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("yarns", &YarnRequest::yarns),
                                            field("rows", &YarnRequest::rows),
                                            field("weighed", &YarnRequest::weighed),
                                            field("loops", &YarnRequest::loops),
                                            field("substitutes", &YarnRequest::substitutes),
                                            field("state", &YarnRequest::state),
                                            field("plain", &YarnRequest::plain),
                                            field("pieces", &YarnRequest::pieces),
                                            field("cast_on_rows", &YarnRequest::cast_on_rows),
                                            field("bind_off_rows", &YarnRequest::bind_off_rows),
                                            field("waste_rows", &YarnRequest::waste_rows),
                                            field("waste_yarn", &YarnRequest::waste_yarn),
                                            field("seam_mm", &YarnRequest::seam_mm),
                                            field("seam_ratio", &YarnRequest::seam_ratio),
                                            field("seam_yarn", &YarnRequest::seam_yarn),
                                            field("sureness", &YarnRequest::sureness),
                                            field("allowance", &YarnRequest::allowance)};
};

template <>
struct Data<OutlinePoint> {
  static constexpr char name[] = "OutlinePoint";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("x_mm", &OutlinePoint::x_mm), field("y_mm", &OutlinePoint::y_mm)};
};

template <>
struct Data<SchematicMeasure> {
  static constexpr char name[] = "SchematicMeasure";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("label", &SchematicMeasure::label), field("side", &SchematicMeasure::side),
                 field("start", &SchematicMeasure::start), field("end", &SchematicMeasure::end),
                 field("mm", &SchematicMeasure::mm),       field("others_mm", &SchematicMeasure::others_mm)};
};

template <>
struct Data<SchematicPiece> {
  static constexpr char name[] = "SchematicPiece";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("name", &SchematicPiece::name), field("outline", &SchematicPiece::outline),
                 field("measures", &SchematicPiece::measures), field("seam_left", &SchematicPiece::seam_left),
                 field("seam_right", &SchematicPiece::seam_right)};
};

template <>
struct Data<Schematic> {
  static constexpr char name[] = "Schematic";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("title", &Schematic::title), field("sizes", &Schematic::sizes),
                                            field("pieces", &Schematic::pieces), field("notes", &Schematic::notes),
                                            field("unit", &Schematic::unit)};
};

template <>
struct Data<EdgePoint> {
  static constexpr char name[] = "EdgePoint";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("row", &EdgePoint::row), field("columns", &EdgePoint::columns)};
};

template <>
struct Data<EdgeEvent> {
  static constexpr char name[] = "EdgeEvent";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("row", &EdgeEvent::row), field("stitches", &EdgeEvent::stitches),
                                            field("every", &EdgeEvent::every), field("times", &EdgeEvent::times)};
};

template <>
struct Data<EdgeShape> {
  static constexpr char name[] = "EdgeShape";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("points", &EdgeShape::points), field("line", &EdgeShape::line),
                                            field("start", &EdgeShape::start), field("events", &EdgeShape::events)};
};

template <>
struct Data<RowSpan> {
  static constexpr char name[] = "RowSpan";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("first", &RowSpan::first), field("last", &RowSpan::last)};
};

template <>
struct Data<Outline> {
  static constexpr char name[] = "Outline";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("rows", &Outline::rows)};
};

template <>
struct Data<ShapingStep> {
  static constexpr char name[] = "ShapingStep";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("row", &ShapingStep::row), field("left", &ShapingStep::left),
                                            field("right", &ShapingStep::right)};
};

template <>
struct Data<OutlineSize> {
  static constexpr char name[] = "OutlineSize";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{
      field("bottom_width_mm", &OutlineSize::bottom_width_mm), field("widest_width_mm", &OutlineSize::widest_width_mm),
      field("top_width_mm", &OutlineSize::top_width_mm),       field("height_mm", &OutlineSize::height_mm),
      field("bottom_columns", &OutlineSize::bottom_columns),   field("widest_columns", &OutlineSize::widest_columns),
      field("widest_row", &OutlineSize::widest_row),           field("top_columns", &OutlineSize::top_columns)};
};

template <>
struct Data<Spacing> {
  static constexpr char name[] = "Spacing";
  static constexpr char module[] = "latchwork._shape";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("length", &Spacing::length),
                                            field("events", &Spacing::events),
                                            field("ends", &Spacing::ends),
                                            field("step", &Spacing::step),
                                            field("every", &Spacing::every),
                                            field("times", &Spacing::times),
                                            field("longer_times", &Spacing::longer_times),
                                            field("rest", &Spacing::rest),
                                            field("gaps", &Spacing::gaps),
                                            field("positions", &Spacing::positions)};
};

template <>
struct Data<YarnShare> {
  static constexpr char name[] = "YarnShare";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("yarn", &YarnShare::yarn),         field("weight_g", &YarnShare::weight_g),
                 field("spread_g", &YarnShare::spread_g), field("length_m", &YarnShare::length_m),
                 field("buy_g", &YarnShare::buy_g),       field("balls", &YarnShare::balls)};
};

template <>
struct Data<YarnEstimate> {
  static constexpr char name[] = "YarnEstimate";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("route", &YarnEstimate::route),       field("weight_g", &YarnEstimate::weight_g),
                 field("spread_g", &YarnEstimate::spread_g), field("length_m", &YarnEstimate::length_m),
                 field("shares", &YarnEstimate::shares),     field("notes", &YarnEstimate::notes)};
};

template <>
struct Data<YarnNeed> {
  static constexpr char name[] = "YarnNeed";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("estimates", &YarnNeed::estimates), field("apart", &YarnNeed::apart),
                 field("missing", &YarnNeed::missing), field("warnings", &YarnNeed::warnings)};
};

template <>
struct Data<YarnCategory> {
  static constexpr char name[] = "YarnCategory";
  static constexpr char module[] = "latchwork._yarn";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("number", &YarnCategory::number),
                                            field("name", &YarnCategory::name),
                                            field("least_stitches", &YarnCategory::least_stitches),
                                            field("most_stitches", &YarnCategory::most_stitches),
                                            field("least_needle_mm", &YarnCategory::least_needle_mm),
                                            field("most_needle_mm", &YarnCategory::most_needle_mm)};
};

template <>
struct Data<Measurement> {
  static constexpr char name[] = "Measurement";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("texture", &Measurement::texture), field("counted", &Measurement::counted),
                 field("count", &Measurement::count),     field("length_mm", &Measurement::length_mm),
                 field("place", &Measurement::place),     field("swatch", &Measurement::swatch),
                 field("state", &Measurement::state),     field("line", &Measurement::line)};
};

template <>
struct Data<Density> {
  static constexpr char name[] = "Density";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("per_10cm", &Density::per_10cm), field("spread", &Density::spread),
                 field("standard_error", &Density::standard_error), field("places", &Density::places)};
};

template <>
struct Data<Gauge> {
  static constexpr char name[] = "Gauge";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("texture", &Gauge::texture), field("state", &Gauge::state),
                                            field("stitches", &Gauge::stitches), field("rows", &Gauge::rows)};
};

template <>
struct Data<Shrinkage> {
  static constexpr char name[] = "Shrinkage";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("texture", &Shrinkage::texture),           field("from_state", &Shrinkage::from_state),
                 field("to_state", &Shrinkage::to_state),         field("width_percent", &Shrinkage::width_percent),
                 field("width_error", &Shrinkage::width_error),   field("length_percent", &Shrinkage::length_percent),
                 field("length_error", &Shrinkage::length_error), field("error_known", &Shrinkage::error_known)};
};

template <>
struct Data<Substitute> {
  static constexpr char name[] = "Substitute";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("texture", &Substitute::texture), field("use", &Substitute::use)};
};

template <>
struct Data<StripSize> {
  static constexpr char name[] = "StripSize";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("name", &StripSize::name),          field("texture", &StripSize::texture),
                 field("band", &StripSize::band),          field("columns", &StripSize::columns),
                 field("rows", &StripSize::rows),          field("width_mm", &StripSize::width_mm),
                 field("height_mm", &StripSize::height_mm)};
};

template <>
struct Data<Size> {
  static constexpr char name[] = "Size";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("width_mm", &Size::width_mm),
                                            field("least_width_mm", &Size::least_width_mm),
                                            field("height_mm", &Size::height_mm),
                                            field("least_height_mm", &Size::least_height_mm),
                                            field("greatest_height_mm", &Size::greatest_height_mm),
                                            field("seam_width_mm", &Size::seam_width_mm),
                                            field("seam_height_mm", &Size::seam_height_mm),
                                            field("width_spread_mm", &Size::width_spread_mm),
                                            field("height_spread_mm", &Size::height_spread_mm),
                                            field("level", &Size::level),
                                            field("width_margin_mm", &Size::width_margin_mm),
                                            field("height_margin_mm", &Size::height_margin_mm),
                                            field("spread_known", &Size::spread_known),
                                            field("strips", &Size::strips),
                                            field("findings", &Size::findings)};
};

template <>
struct Data<FitRequest> {
  static constexpr char name[] = "FitRequest";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("width_mm", &FitRequest::width_mm),
                                            field("height_mm", &FitRequest::height_mm),
                                            field("repeat", &FitRequest::repeat),
                                            field("closing", &FitRequest::closing),
                                            field("edge", &FitRequest::edge),
                                            field("edge_least", &FitRequest::edge_least),
                                            field("edge_most", &FitRequest::edge_most),
                                            field("repeats_least", &FitRequest::repeats_least),
                                            field("repeats_most", &FitRequest::repeats_most),
                                            field("rows_step", &FitRequest::rows_step),
                                            field("rows_extra", &FitRequest::rows_extra),
                                            field("needles", &FitRequest::needles),
                                            field("most", &FitRequest::most)};
};

template <>
struct Data<FitCandidate> {
  static constexpr char name[] = "FitCandidate";
  static constexpr char module[] = "latchwork._data";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("repeats", &FitCandidate::repeats),
                                            field("edge_columns", &FitCandidate::edge_columns),
                                            field("columns", &FitCandidate::columns),
                                            field("rows", &FitCandidate::rows),
                                            field("width_mm", &FitCandidate::width_mm),
                                            field("height_mm", &FitCandidate::height_mm),
                                            field("width_error_mm", &FitCandidate::width_error_mm),
                                            field("height_error_mm", &FitCandidate::height_error_mm),
                                            field("error", &FitCandidate::error)};
};

template <>
struct Data<GroupReturn> {
  static constexpr char name[] = "GroupReturn";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("group", &GroupReturn::group), field("stitches", &GroupReturn::stitches),
                 field("from_needle", &GroupReturn::from_needle), field("to_needle", &GroupReturn::to_needle),
                 field("prongs", &GroupReturn::prongs)};
};

template <>
struct Data<CrossingStep> {
  static constexpr char name[] = "CrossingStep";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("crossing", &CrossingStep::crossing), field("returns", &CrossingStep::returns),
                 field("ease", &CrossingStep::ease)};
};

template <>
struct Data<Reform> {
  static constexpr char name[] = "Reform";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("needle", &Reform::needle), field("column", &Reform::column), field("wale", &Reform::wale),
                 field("from_row", &Reform::from_row), field("rungs", &Reform::rungs)};
};

template <>
struct Data<Shaping> {
  static constexpr char name[] = "Shaping";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("needle", &Shaping::needle), field("column", &Shaping::column), field("on", &Shaping::on)};
};

template <>
struct Data<Stop> {
  static constexpr char name[] = "Stop";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("row", &Stop::row),
                                            field("carriage_right", &Stop::carriage_right),
                                            field("releases", &Stop::releases),
                                            field("reforms", &Stop::reforms),
                                            field("crossings", &Stop::crossings),
                                            field("shapings", &Stop::shapings),
                                            field("holds", &Stop::holds),
                                            field("effort_ms", &Stop::effort_ms)};
};

template <>
struct Data<Rhythm> {
  static constexpr char name[] = "Rhythm";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("every", &Rhythm::every), field("first", &Rhythm::first)};
};

template <>
struct Data<KeptRhythm> {
  static constexpr char name[] = "KeptRhythm";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("row", &KeptRhythm::row), field("first_column", &KeptRhythm::first_column),
                 field("last_column", &KeptRhythm::last_column), field("rhythm", &KeptRhythm::rhythm)};
};

template <>
struct Data<Conditions> {
  static constexpr char name[] = "Conditions";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("carriage_right_only", &Conditions::carriage_right_only),
                                            field("rows_apart", &Conditions::rows_apart),
                                            field("max_depth", &Conditions::max_depth),
                                            field("max_kinds", &Conditions::max_kinds),
                                            field("rhythms", &Conditions::rhythms),
                                            field("closed_rows", &Conditions::closed_rows),
                                            field("forced_exempt", &Conditions::forced_exempt)};
};

template <>
struct Data<Plan> {
  static constexpr char name[] = "Plan";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("rows", &Plan::rows),
                                            field("columns", &Plan::columns),
                                            field("leftmost", &Plan::leftmost),
                                            field("carriage_starts_right", &Plan::carriage_starts_right),
                                            field("columns_on", &Plan::columns_on),
                                            field("stops", &Plan::stops),
                                            field("total_ms", &Plan::total_ms),
                                            field("bound_ms", &Plan::bound_ms),
                                            field("status", &Plan::status),
                                            field("rhythm", &Plan::rhythm),
                                            field("findings", &Plan::findings)};
};

template <>
struct Data<TwoRhythms> {
  static constexpr char name[] = "TwoRhythms";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("crossings", &TwoRhythms::crossings),
                                            field("reforms", &TwoRhythms::reforms), field("plan", &TwoRhythms::plan)};
};

template <>
struct Data<ConditionPrice> {
  static constexpr char name[] = "ConditionPrice";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("condition", &ConditionPrice::condition), field("status", &ConditionPrice::status),
                 field("total_ms", &ConditionPrice::total_ms), field("price_ms", &ConditionPrice::price_ms),
                 field("least_price_ms", &ConditionPrice::least_price_ms)};
};

template <>
struct Data<FrontPoint> {
  static constexpr char name[] = "FrontPoint";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("kinds", &FrontPoint::kinds), field("plan", &FrontPoint::plan)};
};

template <>
struct Data<Front> {
  static constexpr char name[] = "Front";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("points", &Front::points), field("fewest_proven", &Front::fewest_proven),
                 field("findings", &Front::findings)};
};

template <>
struct Data<StopReason> {
  static constexpr char name[] = "StopReason";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("row", &StopReason::row),
                                            field("cause", &StopReason::cause),
                                            field("place", &StopReason::place),
                                            field("saves_ms", &StopReason::saves_ms),
                                            field("least_saves_ms", &StopReason::least_saves_ms),
                                            field("beside_ms", &StopReason::beside_ms),
                                            field("message", &StopReason::message)};
};

template <>
struct Data<Period> {
  static constexpr char name[] = "Period";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("from_row", &Period::from_row), field("last_row", &Period::last_row),
                 field("rows", &Period::rows), field("times", &Period::times), field("stops", &Period::stops)};
};

template <>
struct Data<Tolerance> {
  static constexpr char name[] = "Tolerance";
  static constexpr char module[] = "latchwork._choice";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("term", &Tolerance::term),
                                            field("value_ms", &Tolerance::value_ms),
                                            field("least_ms", &Tolerance::least_ms),
                                            field("most_ms", &Tolerance::most_ms),
                                            field("least_exact", &Tolerance::least_exact),
                                            field("most_exact", &Tolerance::most_exact)};
};

template <>
struct Data<HandWork> {
  static constexpr char name[] = "HandWork";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("stops", &HandWork::stops),           field("batches", &HandWork::batches),
                 field("crossings", &HandWork::crossings),   field("holds", &HandWork::holds),
                 field("shapings", &HandWork::shapings),     field("rungs_knit", &HandWork::rungs_knit),
                 field("rungs_purl", &HandWork::rungs_purl), field("rungs_tuck", &HandWork::rungs_tuck),
                 field("rungs_slip", &HandWork::rungs_slip), field("stitches_crossed", &HandWork::stitches_crossed),
                 field("hand_ms", &HandWork::hand_ms),       field("carriage_ms", &HandWork::carriage_ms)};
};

template <>
struct Data<Progress> {
  static constexpr char name[] = "Progress";
  static constexpr char module[] = "latchwork._plan";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("bound_ms", &Progress::bound_ms),
                                            field("best_ms", &Progress::best_ms), field("share", &Progress::share)};
};

template <>
struct Data<StopPrice> {
  static constexpr char name[] = "StopPrice";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("row", &StopPrice::row), field("price", &StopPrice::price)};
};

template <>
struct Data<WaleClass> {
  static constexpr char name[] = "WaleClass";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("wales", &WaleClass::wales), field("prices", &WaleClass::prices),
                                            field("least", &WaleClass::least)};
};

template <>
struct Data<Branch> {
  static constexpr char name[] = "Branch";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("row", &Branch::row), field("below", &Branch::below), field("stop", &Branch::stop),
                 field("end", &Branch::end), field("by", &Branch::by)};
};

template <>
struct Data<Stretch> {
  static constexpr char name[] = "Stretch";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("row", &Stretch::row), field("gain", &Stretch::gain), field("branches", &Stretch::branches)};
};

template <>
struct Data<Certificate> {
  static constexpr char name[] = "Certificate";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("rows", &Certificate::rows),           field("columns", &Certificate::columns),
                 field("bound_ms", &Certificate::bound_ms),   field("unit", &Certificate::unit),
                 field("forced", &Certificate::forced),       field("classes", &Certificate::classes),
                 field("stretches", &Certificate::stretches), field("branches", &Certificate::branches)};
};

template <>
struct Data<CertificateCheck> {
  static constexpr char name[] = "CertificateCheck";
  static constexpr char module[] = "latchwork._certificate";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("holds", &CertificateCheck::holds), field("bound_ms", &CertificateCheck::bound_ms),
                 field("place", &CertificateCheck::place), field("message", &CertificateCheck::message)};
};

template <>
struct Data<Move> {
  static constexpr char name[] = "Move";
  static constexpr char module[] = "latchwork._simulate";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("kind", &Move::kind), field("needle", &Move::needle), field("last_needle", &Move::last_needle),
                 field("row", &Move::row), field("tool", &Move::tool)};
};

template <>
struct Data<Bed> {
  static constexpr char name[] = "Bed";
  static constexpr char module[] = "latchwork._simulate";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("leftmost", &Bed::leftmost), field("columns", &Bed::columns)};
};

template <>
struct Data<Fault> {
  static constexpr char name[] = "Fault";
  static constexpr char module[] = "latchwork._simulate";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("move", &Fault::move), field("place", &Fault::place), field("message", &Fault::message)};
};

template <>
struct Data<Fabric> {
  static constexpr char name[] = "Fabric";
  static constexpr char module[] = "latchwork._simulate";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("grid", &Fabric::grid), field("faults", &Fabric::faults), field("loops", &Fabric::loops)};
};

template <>
struct Data<Verification> {
  static constexpr char name[] = "Verification";
  static constexpr char module[] = "latchwork._simulate";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("verified", &Verification::verified), field("difference", &Verification::difference),
                 field("message", &Verification::message), field("loops", &Verification::loops)};
};

template <>
struct Data<Brief> {
  static constexpr char name[] = "Brief";
  static constexpr char module[] = "latchwork._brief";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("panel", &Brief::panel), field("swatch", &Brief::swatch), field("machine", &Brief::machine),
                 field("effort", &Brief::effort), field("yarn", &Brief::yarn)};
};

template <>
struct Data<Job> {
  static constexpr char name[] = "Job";
  static constexpr char module[] = "latchwork._brief";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("findings", &Job::findings),
                                            field("plan", &Job::plan),
                                            field("regular", &Job::regular),
                                            field("verification", &Job::verification),
                                            field("regular_verification", &Job::regular_verification),
                                            field("size", &Job::size),
                                            field("yarn", &Job::yarn)};
};

template <>
struct Data<Spell> {
  static constexpr char name[] = "Spell";
  static constexpr char module[] = "latchwork._timings";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("stops", &Spell::stops),
                                            field("batches", &Spell::batches),
                                            field("drops", &Spell::drops),
                                            field("rungs_knit", &Spell::rungs_knit),
                                            field("rungs_purl", &Spell::rungs_purl),
                                            field("rungs_tuck", &Spell::rungs_tuck),
                                            field("rungs_slip", &Spell::rungs_slip),
                                            field("crossings", &Spell::crossings),
                                            field("stitches_crossed", &Spell::stitches_crossed),
                                            field("holds", &Spell::holds),
                                            field("shapings", &Spell::shapings),
                                            field("rows", &Spell::rows),
                                            field("time_ms", &Spell::time_ms),
                                            field("note", &Spell::note),
                                            field("line", &Spell::line)};
};

template <>
struct Data<TermFit> {
  static constexpr char name[] = "TermFit";
  static constexpr char module[] = "latchwork._timings";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("term", &TermFit::term),
                                            field("state", &TermFit::state),
                                            field("value_ms", &TermFit::value_ms),
                                            field("estimate_ms", &TermFit::estimate_ms),
                                            field("standard_error_ms", &TermFit::standard_error_ms),
                                            field("spells", &TermFit::spells),
                                            field("tied_with", &TermFit::tied_with)};
};

template <>
struct Data<OutlyingSpell> {
  static constexpr char name[] = "OutlyingSpell";
  static constexpr char module[] = "latchwork._timings";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("spell", &OutlyingSpell::spell), field("line", &OutlyingSpell::line),
                 field("residual_ms", &OutlyingSpell::residual_ms), field("studentized", &OutlyingSpell::studentized)};
};

template <>
struct Data<EffortFit> {
  static constexpr char name[] = "EffortFit";
  static constexpr char module[] = "latchwork._timings";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("effort", &EffortFit::effort),      field("terms", &EffortFit::terms),
                 field("outlying", &EffortFit::outlying),  field("spells", &EffortFit::spells),
                 field("rank", &EffortFit::rank),          field("degrees_of_freedom", &EffortFit::degrees_of_freedom),
                 field("spread_ms", &EffortFit::spread_ms)};
};

// Each struct is converted in one place, fields.cpp: every file would otherwise compile the whole tree of a Job.
// clang-format off
#define LATCHWORK_PLAIN_STRUCTS(X) \
  X(Place) X(Crossing) X(Wale) X(Strip) X(StripSpan) X(Band) X(Machine) X(Effort) X(MachineFile) X(Finding) \
  X(Measurement) X(Density) X(Gauge) X(Shrinkage) X(Substitute) X(StripSize) X(Size) X(FitRequest) X(FitCandidate) X(GroupReturn) \
  X(CrossingStep) X(Reform) X(Shaping) X(Stop) X(Rhythm) X(KeptRhythm) X(Conditions) X(Plan) X(TwoRhythms) \
  X(ConditionPrice) X(FrontPoint) X(Front) X(StopReason) X(Period) X(Tolerance) X(HandWork) X(Progress) X(StopPrice) \
  X(WaleClass) X(Branch) X(Stretch) X(Certificate) X(CertificateCheck) X(Move) X(Bed) X(Fault) X(Fabric) \
  X(Verification) X(Brief) X(Job) X(Spell) X(TermFit) X(OutlyingSpell) X(EffortFit) X(Length) X(Weight) \
  X(Duration) X(CountPerLength) X(YarnNumber) X(YarnCategory) X(PlainConstants) \
  X(WeighedSwatch) X(MeasuredLoops) X(Yarn) X(YarnRows) X(YarnRequest) X(YarnShare) X(YarnEstimate) \
  X(YarnNeed) X(OutlinePoint) X(SchematicMeasure) X(SchematicPiece) X(Schematic) X(EdgePoint) X(EdgeEvent) \
  X(EdgeShape) X(RowSpan) X(Outline) X(ShapingStep) X(OutlineSize) X(Spacing)
// clang-format on

#define LATCHWORK_DECLARE(T)                                \
  extern template py::object struct_to_python<T>(const T&); \
  extern template T struct_from_python<T>(py::handle, const Path&);
LATCHWORK_PLAIN_STRUCTS(LATCHWORK_DECLARE)
#undef LATCHWORK_DECLARE

}  // namespace latchwork::python
