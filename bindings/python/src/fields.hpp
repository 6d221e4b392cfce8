#pragma once

// The fields of every plain struct and the range of every enum, as the headers have them: one file for each public
// header. A field left out does not compile (-Wmissing-field-initializers); the Python side is held against the headers
// by tests/python.

#include "fields/article.hpp"
#include "fields/article_fit.hpp"
#include "fields/brief.hpp"
#include "fields/cell.hpp"
#include "fields/certificate.hpp"
#include "fields/chart.hpp"
#include "fields/choice.hpp"
#include "fields/conditions.hpp"
#include "fields/crossing.hpp"
#include "fields/effort.hpp"
#include "fields/error.hpp"
#include "fields/file.hpp"
#include "fields/finding.hpp"
#include "fields/fit.hpp"
#include "fields/gauge.hpp"
#include "fields/grading.hpp"
#include "fields/grid.hpp"
#include "fields/machine.hpp"
#include "fields/move.hpp"
#include "fields/panel.hpp"
#include "fields/plain_knit.hpp"
#include "fields/plan.hpp"
#include "fields/quantity.hpp"
#include "fields/reason.hpp"
#include "fields/schematic.hpp"
#include "fields/session.hpp"
#include "fields/shaping.hpp"
#include "fields/simulate.hpp"
#include "fields/size.hpp"
#include "fields/spacing.hpp"
#include "fields/split.hpp"
#include "fields/strip.hpp"
#include "fields/timings.hpp"
#include "fields/wale.hpp"
#include "fields/yarn.hpp"
#include "fields/yarn_need.hpp"

namespace latchwork::python {

// Each struct is converted in one place, fields.cpp: every file would otherwise compile the whole tree of a Job.
// clang-format off
#define LATCHWORK_PLAIN_STRUCTS(X) \
  X(Place) X(Crossing) X(Wale) X(Strip) X(StripSpan) X(Band) X(Machine) X(Effort) X(MachineFile) X(Finding) \
  X(Measurement) X(Density) X(Gauge) X(Shrinkage) X(Substitute) X(StripSize) X(RowWidth) X(Size) X(FitGroup) X(FitRequest) X(GradeSize) X(GradeRequest) X(Grading) \
  X(FitCandidate) X(FitGive) X(FitNearest) X(FitResult) X(GroupReturn) \
  X(CrossingStep) X(Reform) X(Shaping) X(Stop) X(Rhythm) X(KeptRhythm) X(Conditions) X(Plan) X(TwoRhythms) \
  X(ConditionPrice) X(FrontPoint) X(Front) X(StopReason) X(Period) X(WorkTimes) X(Session) X(Rest) X(Tolerance) X(HandWork) X(Progress) X(StopPrice) \
  X(WaleClass) X(Branch) X(Stretch) X(Certificate) X(CertificateCheck) X(Move) X(Bed) X(Fault) X(Fabric) \
  X(Verification) X(Brief) X(Job) X(Spell) X(TermFit) X(OutlyingSpell) X(EffortFit) X(Length) X(Weight) \
  X(Duration) X(CountPerLength) X(YarnNumber) X(YarnCategory) X(PlainConstants) \
  X(WeighedSwatch) X(MeasuredLoops) X(Yarn) X(YarnRows) X(YarnRequest) X(YarnShare) X(YarnEstimate) \
  X(YarnNeed) X(OutlinePoint) X(SchematicMeasure) X(SchematicPiece) X(Schematic) X(EdgePoint) X(EdgeEvent) \
  X(EdgeShape) X(RowSpan) X(Outline) X(ShapingStep) X(Spacing) X(SplitPart) \
  X(NamedMeasure) X(ArticleSize) X(SizeList) X(LengthTerm) X(Extent) X(ShapePoint) X(ArticlePiece) \
  X(ArticleSeam) X(Closure) X(RulePair) X(FillingRule) X(ArticleInput) X(ArticleCount) X(Caution) X(Article) \
  X(NamedCount) X(ArticleChoices) X(TargetPoint) X(TargetPiece) X(TargetSeam) X(Targets) \
  X(StripRun) X(ArticleRequest) X(PieceFit) X(ArticleFit) X(PieceWork) X(FittedPanel) X(ArticleJob)
// clang-format on

#define LATCHWORK_DECLARE(T)                                \
  extern template py::object struct_to_python<T>(const T&); \
  extern template T struct_from_python<T>(py::handle, const Path&);
LATCHWORK_PLAIN_STRUCTS(LATCHWORK_DECLARE)
#undef LATCHWORK_DECLARE

}  // namespace latchwork::python
