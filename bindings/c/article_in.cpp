// An article out of C's structs.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

/// The elements of one array, with the field of each: "pieces[2].".
template <class To, class From, class Convert>
std::vector<To> list_in(const From* items, std::size_t count, const std::string& name, Convert&& convert) {
  std::vector<To> out;
  for (const From& from : array_in(items, count, name.c_str())) {
    out.push_back(convert(from, name + "[" + std::to_string(out.size()) + "]."));
  }
  return out;
}

template <class Enum>
Enum enum_in(int32_t value, Enum last, const std::string& field) {
  return enumerator(value, last, field.c_str());
}

SourceMark mark_in(int32_t mark, const std::string& at) {
  return enum_in(mark, SourceMark::practice, at + "mark");
}

EdgeUse use_in(int32_t use, const std::string& field) {
  return enum_in(use, EdgeUse::closure, field);
}

NamedMeasure measure_in(const latchwork_named_measure& from, const std::string&) {
  return {text_or_none(from.name), from.least_mm, from.greatest_mm, text_or_none(from.printed), text_or_none(from.of)};
}

ArticleSize size_in(const latchwork_article_size& from, const std::string& at) {
  return {text_or_none(from.name),
          list_in<NamedMeasure>(from.measures, from.measure_count, at + "measures", measure_in)};
}

SizeList size_list_in(const latchwork_size_list& from, const std::string& at) {
  return {text_or_none(from.name), text_or_none(from.source), mark_in(from.mark, at),
          enum_in(from.of, SizeOf::body, at + "of"),
          list_in<ArticleSize>(from.sizes, from.size_count, at + "sizes", size_in)};
}

Extent extent_in(const latchwork_extent& from, const std::string& at) {
  return {list_in<LengthTerm>(from.terms, from.term_count, at + "terms",
                              [](const latchwork_length_term& term, const std::string&) {
                                return LengthTerm{text_or_none(term.of), term.times};
                              }),
          from.least_mm, from.greatest_mm, texts_in(from.over, from.over_count, at + "over")};
}

ShapePoint point_in(const latchwork_shape_point& from, const std::string& at) {
  return {extent_in(from.height, at + "height."), extent_in(from.width, at + "width.")};
}

ArticlePiece article_piece_in(const latchwork_article_piece& from, const std::string& at) {
  ArticlePiece to;
  to.name = text_or_none(from.name);
  to.count = from.count;
  to.times = texts_in(from.times, from.time_count, at + "times");
  to.across = text_or_none(from.across);
  to.up = text_or_none(from.up);
  to.width = extent_in(from.width, at + "width.");
  to.length = extent_in(from.length, at + "length.");
  to.left = use_in(from.left, at + "left");
  to.right = use_in(from.right, at + "right");
  to.lower = use_in(from.lower, at + "lower");
  to.upper = use_in(from.upper, at + "upper");
  to.shape = list_in<ShapePoint>(from.shape, from.shape_count, at + "shape", point_in);
  to.closures = texts_in(from.closures, from.closure_count, at + "closures");
  return to;
}

ArticleSeam seam_in(const latchwork_article_seam& from, const std::string& at) {
  ArticleSeam to;
  to.name = text_or_none(from.name);
  to.count = from.count;
  to.times = texts_in(from.times, from.time_count, at + "times");
  to.between = texts_in(from.between, from.between_count, at + "between");
  to.length = extent_in(from.length, at + "length.");
  to.closures = texts_in(from.closures, from.closure_count, at + "closures");
  return to;
}

Closure closure_in(const latchwork_closure& from, const std::string& at) {
  return {text_or_none(from.name),   enum_in(from.kind, ClosureKind::buttons, at + "kind"),
          from.overlap_least_mm,     from.overlap_greatest_mm,
          text_or_none(from.source), mark_in(from.mark, at)};
}

FillingRule rule_in(const latchwork_filling_rule& from, const std::string& at) {
  return {text_or_none(from.name),
          text_or_none(from.source),
          mark_in(from.mark, at),
          from.larger_least_mm,
          from.larger_greatest_mm,
          list_in<RulePair>(from.pairs, from.pair_count, at + "pairs",
                            [](const latchwork_rule_pair& pair, const std::string&) {
                              return RulePair{pair.filling_mm, pair.finished_mm};
                            }),
          flag(from.squares_only, (at + "squares_only").c_str()),
          flag(from.oblongs_only, (at + "oblongs_only").c_str())};
}

ArticleInput input_in(const latchwork_article_input& from, const std::string&) {
  return {text_or_none(from.name), text_or_none(from.meaning), from.least_mm, from.greatest_mm};
}

ArticleCount count_in(const latchwork_article_count& from, const std::string&) {
  return {text_or_none(from.name), text_or_none(from.meaning), from.least, from.greatest};
}

Caution caution_in(const latchwork_caution& from, const std::string& at) {
  return {text_or_none(from.text), text_or_none(from.source), mark_in(from.mark, at)};
}

}  // namespace

namespace latchwork::c {

Article article_in(const latchwork_article* article) {
  const latchwork_article from = struct_in(article, latchwork_article LATCHWORK_ARTICLE_INIT, "article");
  Article to;
  to.name = text_or_none(from.name);
  to.measures = texts_in(from.measures, from.measure_count, "measures");
  to.lists = list_in<SizeList>(from.lists, from.list_count, "lists", size_list_in);
  to.inputs = list_in<ArticleInput>(from.inputs, from.input_count, "inputs", input_in);
  to.counts = list_in<ArticleCount>(from.counts, from.count_count, "counts", count_in);
  to.closures = list_in<Closure>(from.closures, from.closure_count, "closures", closure_in);
  to.rules = list_in<FillingRule>(from.rules, from.rule_count, "rules", rule_in);
  to.pieces = list_in<ArticlePiece>(from.pieces, from.piece_count, "pieces", article_piece_in);
  to.seams = list_in<ArticleSeam>(from.seams, from.seam_count, "seams", seam_in);
  to.cautions = list_in<Caution>(from.cautions, from.caution_count, "cautions", caution_in);
  return to;
}

ArticleChoices article_choices_in(const latchwork_article_choices* choices) {
  const latchwork_article_choices from =
      struct_in(choices, latchwork_article_choices LATCHWORK_ARTICLE_CHOICES_INIT, "choices");
  ArticleChoices to;
  to.list = text_or_none(from.list);
  to.size = text_or_none(from.size);
  to.rule = text_or_none(from.rule);
  to.closure = text_or_none(from.closure);
  to.measures = list_in<NamedMeasure>(from.measures, from.measure_count, "choices.measures", measure_in);
  to.counts = list_in<NamedCount>(from.counts, from.count_count, "choices.counts",
                                  [](const latchwork_named_count& count, const std::string&) {
                                    return NamedCount{text_or_none(count.name), count.count};
                                  });
  to.measures_of_filling = flag(from.measures_of_filling, "choices.measures_of_filling");
  return to;
}

}  // namespace latchwork::c
