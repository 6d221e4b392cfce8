// An article as C sees it.
#include "barrier.hpp"

using namespace latchwork;
using namespace latchwork::c;

namespace {

/// Makes C's arrays and keeps them.
class Arrays {
 public:
  explicit Arrays(std::vector<std::shared_ptr<const void>>& kept) : kept_(kept) {}

  /// Sets a pointer and its count to the elements as `convert` makes them; to NULL for none.
  template <class From, class To, class Convert>
  void put(const std::vector<From>& from, const To*& items, std::size_t& count, Convert&& convert) {
    count = from.size();
    items = nullptr;
    if (from.empty()) return;
    std::vector<To> made;
    made.reserve(from.size());
    for (const From& each : from) made.push_back(convert(each));
    const auto owned = std::make_shared<const std::vector<To>>(std::move(made));
    items = owned->data();
    kept_.push_back(owned);
  }

  void texts(const std::vector<std::string>& from, const char* const*& items, std::size_t& count) {
    put(from, items, count, [](const std::string& text) { return text.c_str(); });
  }

  latchwork_extent extent(const Extent& from) {
    latchwork_extent to{nullptr, 0, from.least_mm, from.greatest_mm, nullptr, 0};
    put(from.terms, to.terms, to.term_count, [](const LengthTerm& term) {
      return latchwork_length_term{term.of.c_str(), term.times};
    });
    texts(from.over, to.over, to.over_count);
    return to;
  }

  latchwork_size_list size_list(const SizeList& from) {
    latchwork_size_list to{};
    to.name = from.name.c_str();
    to.source = from.source.c_str();
    to.mark = static_cast<int32_t>(from.mark);
    to.of = static_cast<int32_t>(from.of);
    put(from.sizes, to.sizes, to.size_count, [&](const ArticleSize& size) {
      latchwork_article_size out{size.name.c_str(), nullptr, 0};
      put(size.measures, out.measures, out.measure_count, named_measure_out);
      return out;
    });
    return to;
  }

  latchwork_filling_rule rule(const FillingRule& from) {
    latchwork_filling_rule to{};
    to.name = from.name.c_str();
    to.source = from.source.c_str();
    to.mark = static_cast<int32_t>(from.mark);
    to.larger_least_mm = from.larger_least_mm;
    to.larger_greatest_mm = from.larger_greatest_mm;
    put(from.pairs, to.pairs, to.pair_count, [](const RulePair& pair) {
      return latchwork_rule_pair{pair.filling_mm, pair.finished_mm};
    });
    to.squares_only = from.squares_only ? 1 : 0;
    to.oblongs_only = from.oblongs_only ? 1 : 0;
    return to;
  }

  latchwork_article_piece piece(const ArticlePiece& from) {
    latchwork_article_piece to{};
    to.name = from.name.c_str();
    to.count = from.count;
    texts(from.times, to.times, to.time_count);
    to.across = from.across.c_str();
    to.up = from.up.c_str();
    to.width = extent(from.width);
    to.length = extent(from.length);
    to.left = static_cast<int32_t>(from.left);
    to.right = static_cast<int32_t>(from.right);
    to.lower = static_cast<int32_t>(from.lower);
    to.upper = static_cast<int32_t>(from.upper);
    put(from.shape, to.shape, to.shape_count, [&](const ShapePoint& point) {
      return latchwork_shape_point{extent(point.height), extent(point.width)};
    });
    texts(from.closures, to.closures, to.closure_count);
    return to;
  }

  latchwork_article_seam seam(const ArticleSeam& from) {
    latchwork_article_seam to{};
    to.name = from.name.c_str();
    to.count = from.count;
    texts(from.times, to.times, to.time_count);
    texts(from.between, to.between, to.between_count);
    to.length = extent(from.length);
    texts(from.closures, to.closures, to.closure_count);
    return to;
  }

 private:
  std::vector<std::shared_ptr<const void>>& kept_;
};

latchwork_closure closure_out(const Closure& from) {
  return {from.name.c_str(),
          from.source.c_str(),
          from.overlap_least_mm,
          from.overlap_greatest_mm,
          static_cast<int32_t>(from.kind),
          static_cast<int32_t>(from.mark)};
}

}  // namespace

namespace latchwork::c {

latchwork_named_measure named_measure_out(const NamedMeasure& measure) {
  return {measure.name.c_str(), measure.least_mm, measure.greatest_mm, measure.printed.c_str(), measure.of.c_str()};
}

latchwork_caution caution_out(const Caution& caution) {
  return {caution.text.c_str(), caution.source.c_str(), static_cast<int32_t>(caution.mark)};
}

latchwork_article article_out(const Article& article, std::vector<std::shared_ptr<const void>>& kept) {
  Arrays arrays(kept);
  latchwork_article to = LATCHWORK_ARTICLE_INIT;
  to.name = article.name.c_str();
  arrays.texts(article.measures, to.measures, to.measure_count);
  arrays.put(article.lists, to.lists, to.list_count, [&](const SizeList& list) { return arrays.size_list(list); });
  arrays.put(article.inputs, to.inputs, to.input_count, [](const ArticleInput& input) {
    return latchwork_article_input{input.name.c_str(), input.meaning.c_str(), input.least_mm, input.greatest_mm};
  });
  arrays.put(article.counts, to.counts, to.count_count, [](const ArticleCount& count) {
    return latchwork_article_count{count.name.c_str(), count.meaning.c_str(), count.least, count.greatest};
  });
  arrays.put(article.closures, to.closures, to.closure_count, closure_out);
  arrays.put(article.rules, to.rules, to.rule_count, [&](const FillingRule& rule) { return arrays.rule(rule); });
  arrays.put(article.pieces, to.pieces, to.piece_count, [&](const ArticlePiece& piece) { return arrays.piece(piece); });
  arrays.put(article.seams, to.seams, to.seam_count, [&](const ArticleSeam& seam) { return arrays.seam(seam); });
  arrays.put(article.cautions, to.cautions, to.caution_count, caution_out);
  return to;
}

}  // namespace latchwork::c
