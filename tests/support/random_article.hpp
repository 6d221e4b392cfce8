#pragma once

#include <string>
#include <utility>
#include <vector>

#include "latchwork/article.hpp"
#include "latchwork/article_fit.hpp"
#include "random_values.hpp"

namespace latchwork_test {

/// Any article that does not contradict itself.
class AnyArticle {
 public:
  explicit AnyArticle(Random& random) : random_(random) {}

  Article made() {
    Article article;
    article.name = name("article");
    article.measures = {"width", name("height")};
    for (int i = 0; i < 3; ++i) {
      article.counts.push_back(
          {name("count" + std::to_string(i)), any_text(random_), random_.between(1, 9), random_.between(9, 1000)});
    }
    article.inputs = {{"ease", any_text(random_), -100, number(-100, 1e5)}};
    if (random_.one_in(2)) {
      article.closures = {{"lap", ClosureKind::overlap, 10, number(10, 1e4), "s", mark()},
                          {"sewn", ClosureKind::seam, 0, 0, name("s"), mark()}};
    }
    if (random_.one_in(2)) {
      article.rules = {{"larger", "s", mark(), number(-1e4, 0), number(0, 1e4), {}},
                       {"graded", "s", mark(), 0, 0, {{number(1, 9), 4}, {number(10, 1e5), number(5, 9)}}}};
      article.rules[0].squares_only = random_.one_in(4);
      article.rules[1].oblongs_only = random_.one_in(4);
    }
    for (int i = random_.between(0, 3); i > 0; --i) article.lists.push_back(list(article, i));
    for (int i = random_.between(1, 3); i > 0; --i) article.pieces.push_back(piece(article, i));
    for (int i = random_.between(0, 3); i > 0; --i) article.seams.push_back(seam(article, i));
    article.cautions = some<Caution>(random_, [&](Random&) { return Caution{name("text"), name("source"), mark()}; });
    return article;
  }

 private:
  double number(double least, double most) {
    return least + (most - least) * (static_cast<double>(random_.next() >> 11) * 0x1p-53);
  }
  std::string name(const std::string& start) { return start + any_text(random_); }
  SourceMark mark() { return static_cast<SourceMark>(random_.between(0, 2)); }
  EdgeUse use() { return static_cast<EdgeUse>(random_.between(0, 2)); }

  SizeList list(const Article& article, int number_of) {
    SizeList out{"list" + std::to_string(number_of), name("source"), mark(), SizeOf::finished, {}};
    out.of = article.rules.empty() ? (random_.one_in(2) ? SizeOf::body : SizeOf::finished)
                                   : (random_.one_in(2) ? SizeOf::filling : SizeOf::finished);
    for (int i = random_.between(1, 3); i > 0; --i) {
      ArticleSize size{"size" + std::to_string(i), {}};
      for (const std::string& of : article.measures) {
        const double least = number(1, 1e5);
        size.measures.push_back({of, least, number(least, 1e5), name("as printed"), {}});
        if (random_.one_in(4)) size.measures.back().of = "ease";
      }
      out.sizes.push_back(std::move(size));
    }
    return out;
  }

  std::vector<std::string> counts_of(const Article& article) {
    std::vector<std::string> out;
    for (const ArticleCount& count : article.counts) {
      if (random_.one_in(4)) out.push_back(count.name);
    }
    return out;
  }

  std::vector<std::string> closures_of(const Article& article) {
    if (article.closures.empty() || random_.one_in(2)) return {};
    return {article.closures[static_cast<std::size_t>(random_.between(0, 1))].name};
  }

  Extent extent(const Article& article) {
    Extent out;
    std::vector<std::string> lengths = article.measures;
    lengths.emplace_back("ease");
    if (!article.closures.empty()) lengths.emplace_back("overlap");
    for (const std::string& of : lengths) {
      if (random_.one_in(2)) out.terms.push_back({of, number(-100, 100)});
    }
    out.least_mm = number(-1e5, 1e5);
    out.greatest_mm = number(out.least_mm, 1e5);
    out.over = counts_of(article);
    return out;
  }

  ArticlePiece piece(const Article& article, int number_of) {
    ArticlePiece out;
    out.name = "piece" + std::to_string(number_of);
    out.count = random_.between(1, 1000);
    out.times = counts_of(article);
    if (random_.one_in(2)) out.across = article.counts[0].name;
    if (random_.one_in(2)) out.up = article.counts[1].name;
    out.width = extent(article);
    out.length = extent(article);
    out.left = use();
    out.right = use();
    out.lower = use();
    out.upper = use();
    out.shape = some<ShapePoint>(random_, [&](Random&) { return ShapePoint{extent(article), extent(article)}; });
    out.closures = closures_of(article);
    return out;
  }

  ArticleSeam seam(const Article& article, int number_of) {
    return {"seam" + std::to_string(number_of),
            random_.between(1, 1000),
            counts_of(article),
            counts_of(article),
            extent(article),
            closures_of(article)};
  }

  Random& random_;
};

inline Article any_article(Random& random) {
  return AnyArticle(random).made();
}

/// Choices that name what the article has; what they come to may still be refused.
inline ArticleChoices any_choices(const Article& article, Random& random) {
  const auto name_of = [&](const auto& items) {
    return items.empty() ? std::string() : items[random.next() % items.size()].name;
  };
  ArticleChoices choices;
  if (!article.lists.empty() && random.one_in(2)) {
    const SizeList& list = article.lists[random.next() % article.lists.size()];
    choices.list = list.name;
    choices.size = name_of(list.sizes);
  } else {
    for (const std::string& of : article.measures) choices.measures.push_back({of, 400, 450, ""});
  }
  choices.rule = name_of(article.rules);
  choices.closure = name_of(article.closures);
  for (const ArticleInput& input : article.inputs) {
    choices.measures.push_back({input.name, input.least_mm, input.greatest_mm, ""});
  }
  for (const ArticleCount& count : article.counts) choices.counts.push_back({count.name, count.least});
  return choices;
}

/// One that some panel's design can be.
inline ArticleRequest any_article_request(Random& random) {
  ArticleRequest out;
  out.article = "\xC3\xA9 article " + std::to_string(random.between(1, 9));
  out.choices = any_choices(any_article(random), random);
  for (int i = random.between(0, 3); i > 0; --i) out.made.push_back("piece" + std::to_string(i));
  for (int i = random.between(0, FitRequest::max_groups); i > 0; --i) {
    const int first = random.between(0, 40);
    const int least = random.between(0, 9);
    const int earlier = static_cast<int>(out.groups.size()) - 1;
    const int as_group = random.one_in(3) ? random.between(-1, earlier) : -1;
    out.groups.push_back({first, random.between(first, 60), least, random.between(least, 20), as_group});
  }
  out.edge = random.between(-1, 30);
  FitRequest& design = out.design;
  if (random.one_in(2)) design.tolerance_percent = random.between(0, 1000) / 10.0;
  design.edge_least = random.between(0, 5);
  design.edge_most = random.between(design.edge_least, 20);
  design.panels_least = random.between(1, 5);
  design.panels_most = random.between(design.panels_least, FitRequest::max_panels);
  design.seam_stitches = random.between(0, 2) / 2.0;
  design.rows_step = random.between(1, 60);
  design.rows_extra = random.between(0, 60);
  design.vary_start = random.one_in(2);
  design.needles = random.between(0, 300);
  design.most = random.between(1, 50);
  if (random.one_in(2)) design.state = static_cast<ClothState>(random.between(0, 2));
  for (int i = random.between(0, 2); i > 0; --i) design.substitutes.push_back({"t" + std::to_string(i), "u"});
  design.seam_left = random.between(0, 2000) / 2.0;
  design.seam_right = random.between(0, 4) / 2.0;
  design.seam_bottom = random.between(0, 4) / 2.0;
  design.seam_top = random.between(0, 4) / 2.0;
  if (random.one_in(2)) out.seam_ms_per_m = random.between(0, static_cast<int>(ArticleRequest::max_seam_ms_per_m));
  return out;
}

}  // namespace latchwork_test
