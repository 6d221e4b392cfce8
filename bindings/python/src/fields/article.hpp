#pragma once

#include "../field.hpp"
#include "latchwork/article.hpp"

namespace latchwork::python {

template <>
struct Data<SizeOf> {
  static constexpr char name[] = "SizeOf";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<ClosureKind> {
  static constexpr char name[] = "ClosureKind";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 3;
};

template <>
struct Data<EdgeUse> {
  static constexpr char name[] = "EdgeUse";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<SourceMark> {
  static constexpr char name[] = "SourceMark";
  static constexpr char module[] = "latchwork._enums";
  static constexpr long long least = 0, most = 2;
};

template <>
struct Data<NamedMeasure> {
  static constexpr char name[] = "NamedMeasure";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("name", &NamedMeasure::name), field("least_mm", &NamedMeasure::least_mm),
                 field("greatest_mm", &NamedMeasure::greatest_mm), field("printed", &NamedMeasure::printed),
                 field("of", &NamedMeasure::of)};
};

template <>
struct Data<ArticleSize> {
  static constexpr char name[] = "ArticleSize";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("name", &ArticleSize::name), field("measures", &ArticleSize::measures)};
};

template <>
struct Data<SizeList> {
  static constexpr char name[] = "SizeList";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("name", &SizeList::name), field("source", &SizeList::source), field("mark", &SizeList::mark),
                 field("of", &SizeList::of), field("sizes", &SizeList::sizes)};
};

template <>
struct Data<LengthTerm> {
  static constexpr char name[] = "LengthTerm";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("of", &LengthTerm::of), field("times", &LengthTerm::times)};
};

template <>
struct Data<Extent> {
  static constexpr char name[] = "Extent";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("terms", &Extent::terms), field("least_mm", &Extent::least_mm),
                                            field("greatest_mm", &Extent::greatest_mm), field("over", &Extent::over)};
};

template <>
struct Data<ShapePoint> {
  static constexpr char name[] = "ShapePoint";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("height", &ShapePoint::height), field("width", &ShapePoint::width)};
};

template <>
struct Data<ArticlePiece> {
  static constexpr char name[] = "ArticlePiece";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("name", &ArticlePiece::name),
                                            field("count", &ArticlePiece::count),
                                            field("times", &ArticlePiece::times),
                                            field("across", &ArticlePiece::across),
                                            field("up", &ArticlePiece::up),
                                            field("width", &ArticlePiece::width),
                                            field("length", &ArticlePiece::length),
                                            field("left", &ArticlePiece::left),
                                            field("right", &ArticlePiece::right),
                                            field("lower", &ArticlePiece::lower),
                                            field("upper", &ArticlePiece::upper),
                                            field("shape", &ArticlePiece::shape),
                                            field("closures", &ArticlePiece::closures)};
};

template <>
struct Data<ArticleSeam> {
  static constexpr char name[] = "ArticleSeam";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = false;
  static constexpr auto fields =
      std::tuple{field("name", &ArticleSeam::name),     field("count", &ArticleSeam::count),
                 field("times", &ArticleSeam::times),   field("between", &ArticleSeam::between),
                 field("length", &ArticleSeam::length), field("closures", &ArticleSeam::closures)};
};

template <>
struct Data<Closure> {
  static constexpr char name[] = "Closure";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("name", &Closure::name),
                                            field("kind", &Closure::kind),
                                            field("overlap_least_mm", &Closure::overlap_least_mm),
                                            field("overlap_greatest_mm", &Closure::overlap_greatest_mm),
                                            field("source", &Closure::source),
                                            field("mark", &Closure::mark)};
};

template <>
struct Data<RulePair> {
  static constexpr char name[] = "RulePair";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("filling_mm", &RulePair::filling_mm), field("finished_mm", &RulePair::finished_mm)};
};

template <>
struct Data<FillingRule> {
  static constexpr char name[] = "FillingRule";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("name", &FillingRule::name),
                                            field("source", &FillingRule::source),
                                            field("mark", &FillingRule::mark),
                                            field("larger_least_mm", &FillingRule::larger_least_mm),
                                            field("larger_greatest_mm", &FillingRule::larger_greatest_mm),
                                            field("pairs", &FillingRule::pairs),
                                            field("squares_only", &FillingRule::squares_only),
                                            field("oblongs_only", &FillingRule::oblongs_only)};
};

template <>
struct Data<ArticleInput> {
  static constexpr char name[] = "ArticleInput";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("name", &ArticleInput::name), field("meaning", &ArticleInput::meaning),
                 field("least_mm", &ArticleInput::least_mm), field("greatest_mm", &ArticleInput::greatest_mm)};
};

template <>
struct Data<ArticleCount> {
  static constexpr char name[] = "ArticleCount";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("name", &ArticleCount::name), field("meaning", &ArticleCount::meaning),
                 field("least", &ArticleCount::least), field("greatest", &ArticleCount::greatest)};
};

template <>
struct Data<Caution> {
  static constexpr char name[] = "Caution";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("text", &Caution::text), field("source", &Caution::source), field("mark", &Caution::mark)};
};

template <>
struct Data<Article> {
  static constexpr char name[] = "Article";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("name", &Article::name),     field("measures", &Article::measures),
                                            field("lists", &Article::lists),   field("inputs", &Article::inputs),
                                            field("counts", &Article::counts), field("closures", &Article::closures),
                                            field("rules", &Article::rules),   field("pieces", &Article::pieces),
                                            field("seams", &Article::seams),   field("cautions", &Article::cautions)};
};

template <>
struct Data<NamedCount> {
  static constexpr char name[] = "NamedCount";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("name", &NamedCount::name), field("count", &NamedCount::count)};
};

template <>
struct Data<ArticleChoices> {
  static constexpr char name[] = "ArticleChoices";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = false;
  static constexpr auto fields = std::tuple{field("list", &ArticleChoices::list),
                                            field("size", &ArticleChoices::size),
                                            field("rule", &ArticleChoices::rule),
                                            field("closure", &ArticleChoices::closure),
                                            field("measures", &ArticleChoices::measures),
                                            field("counts", &ArticleChoices::counts),
                                            field("measures_of_filling", &ArticleChoices::measures_of_filling)};
};

template <>
struct Data<TargetPoint> {
  static constexpr char name[] = "TargetPoint";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("height_least_mm", &TargetPoint::height_least_mm),
                                            field("height_greatest_mm", &TargetPoint::height_greatest_mm),
                                            field("width_least_mm", &TargetPoint::width_least_mm),
                                            field("width_greatest_mm", &TargetPoint::width_greatest_mm)};
};

template <>
struct Data<TargetPiece> {
  static constexpr char name[] = "TargetPiece";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("name", &TargetPiece::name),
                                            field("count", &TargetPiece::count),
                                            field("width_least_mm", &TargetPiece::width_least_mm),
                                            field("width_greatest_mm", &TargetPiece::width_greatest_mm),
                                            field("length_least_mm", &TargetPiece::length_least_mm),
                                            field("length_greatest_mm", &TargetPiece::length_greatest_mm),
                                            field("left", &TargetPiece::left),
                                            field("right", &TargetPiece::right),
                                            field("lower", &TargetPiece::lower),
                                            field("upper", &TargetPiece::upper),
                                            field("shape", &TargetPiece::shape)};
};

template <>
struct Data<TargetSeam> {
  static constexpr char name[] = "TargetSeam";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields =
      std::tuple{field("name", &TargetSeam::name), field("count", &TargetSeam::count),
                 field("least_mm", &TargetSeam::least_mm), field("greatest_mm", &TargetSeam::greatest_mm)};
};

template <>
struct Data<Targets> {
  static constexpr char name[] = "Targets";
  static constexpr char module[] = "latchwork._article";
  static constexpr bool frozen = true;
  static constexpr auto fields = std::tuple{field("pieces", &Targets::pieces),
                                            field("seams", &Targets::seams),
                                            field("filling", &Targets::filling),
                                            field("cautions", &Targets::cautions),
                                            field("sources", &Targets::sources),
                                            field("seam_least_mm", &Targets::seam_least_mm),
                                            field("seam_greatest_mm", &Targets::seam_greatest_mm)};
};

}  // namespace latchwork::python
