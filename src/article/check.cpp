#include "article/check.hpp"

#include <fmt/format.h>

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "error/refuse.hpp"
#include "text/utf8.hpp"

namespace latchwork::inline v0 {
namespace {

struct Bounds {
  double least;
  double greatest;
};
constexpr Bounds any_length{-1e5, 1e5};
constexpr Bounds some_length{1, 1e5};
constexpr Bounds overlaps{0, 1e4};
constexpr Bounds differences{-1e4, 1e4};
constexpr Bounds factors{-100, 100};

void require(const std::string& field, double value, Bounds allowed) {
  if (value >= allowed.least && value <= allowed.greatest) return;  // false for NaN
  refuse(field, fmt::format("{} is {}; it must be {} to {}", field, value, allowed.least, allowed.greatest));
}

/// Of `at` + "least_mm" and `at` + "greatest_mm".
void require_range(const std::string& at, Bounds given, Bounds allowed) {
  require(at + "least_mm", given.least, allowed);
  require(at + "greatest_mm", given.greatest, {given.least, allowed.greatest});
}

void require_count(const std::string& field, int value, int least) {
  if (value >= least && value <= max_article_count) return;
  refuse(field, fmt::format("{} is {}; it must be {} to {}", field, value, least, max_article_count));
}

void require_text(const std::string& field, std::string_view text) {
  if (utf8_error(text) != std::string_view::npos) {
    refuse(ErrorCode::bad_encoding, field, fmt::format("{} is not UTF-8", field));
  }
}

void require_some_text(const std::string& field, std::string_view text) {
  if (text.empty()) refuse(field, fmt::format("{} is empty", field));
  require_text(field, text);
}

void require_items(const std::string& field, std::size_t count) {
  if (count <= Article::max_items) return;
  refuse(field, fmt::format("{} has {} items; there may be {}", field, count, Article::max_items));
}

std::string item(std::string_view list, std::size_t index) {
  return fmt::format("{}[{}].", list, index);
}

using Names = std::set<std::string_view>;

/// Every item has a name, which no other has. The names.
template <class Item>
Names require_names(const std::string& list, const std::vector<Item>& items) {
  require_items(list, items.size());
  Names names;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::string field = item(list, i) + "name";
    require_some_text(field, items[i].name);
    if (!names.insert(items[i].name).second) {
      refuse(field, fmt::format("{}: '{}' stands twice in {}", field, items[i].name, list));
    }
  }
  return names;
}

void require_known(const std::string& field, const std::string& name, const Names& names) {
  require_text(field, name);
  if (names.count(name) == 0) refuse(field, fmt::format("{}: the article has no '{}'", field, name));
}

void require_known(const std::string& field, const std::vector<std::string>& given, const Names& names) {
  require_items(field, given.size());
  for (std::size_t i = 0; i < given.size(); ++i) require_known(fmt::format("{}[{}]", field, i), given[i], names);
}

template <class Item>
void require_source(const std::string& at, const Item& each) {
  require_some_text(at + "source", each.source);
  if (each.mark > SourceMark::practice) refuse(at + "mark", fmt::format("{}mark is none", at));
}

class Check {
 public:
  explicit Check(const Article& article) : article_(article) {}

  void all() {
    require_some_text("name", article_.name);
    measures();
    inputs();
    counts();
    closures();
    rules();
    lists();
    pieces();
    seams();
    require_items("cautions", article_.cautions.size());
    for (std::size_t i = 0; i < article_.cautions.size(); ++i) {
      const std::string at = item("cautions", i);
      require_some_text(at + "text", article_.cautions[i].text);
      require_source(at, article_.cautions[i]);
    }
  }

 private:
  void measures() {
    require_items("measures", article_.measures.size());
    for (std::size_t i = 0; i < article_.measures.size(); ++i) {
      const std::string field = fmt::format("measures[{}]", i);
      require_some_text(field, article_.measures[i]);
      take_length(field, article_.measures[i]);
      measures_.insert(article_.measures[i]);
    }
  }

  void inputs() {
    inputs_ = require_names("inputs", article_.inputs);
    for (std::size_t i = 0; i < article_.inputs.size(); ++i) {
      const ArticleInput& input = article_.inputs[i];
      const std::string at = item("inputs", i);
      take_length(at + "name", input.name);
      require_text(at + "meaning", input.meaning);
      require_range(at, {input.least_mm, input.greatest_mm}, any_length);
    }
  }

  /// A name that terms may refer to.
  void take_length(const std::string& field, const std::string& name) {
    if (name == "overlap") refuse(field, fmt::format("{}: 'overlap' is the closure's", field));
    if (!lengths_.insert(name).second) refuse(field, fmt::format("{}: '{}' stands twice", field, name));
  }

  void counts() {
    counts_ = require_names("counts", article_.counts);
    for (std::size_t i = 0; i < article_.counts.size(); ++i) {
      const ArticleCount& count = article_.counts[i];
      const std::string at = item("counts", i);
      require_text(at + "meaning", count.meaning);
      require_count(at + "least", count.least, 1);
      require_count(at + "greatest", count.greatest, count.least);
    }
  }

  void closures() {
    closures_ = require_names("closures", article_.closures);
    if (!article_.closures.empty()) lengths_.insert("overlap");
    for (std::size_t i = 0; i < article_.closures.size(); ++i) {
      const Closure& closure = article_.closures[i];
      const std::string at = item("closures", i);
      require_source(at, closure);
      if (closure.kind > ClosureKind::buttons) refuse(at + "kind", fmt::format("{}kind is none", at));
      const Bounds allowed = closure.kind == ClosureKind::seam ? Bounds{0, 0} : overlaps;
      require_range(at + "overlap_", {closure.overlap_least_mm, closure.overlap_greatest_mm}, allowed);
    }
  }

  void rules() {
    require_names("rules", article_.rules);
    for (std::size_t i = 0; i < article_.rules.size(); ++i) {
      const FillingRule& rule = article_.rules[i];
      const std::string at = item("rules", i);
      require_source(at, rule);
      require_range(at + "larger_", {rule.larger_least_mm, rule.larger_greatest_mm},
                    rule.pairs.empty() ? differences : Bounds{0, 0});
      if (rule.squares_only && rule.oblongs_only) {
        refuse(at + "oblongs_only", fmt::format("{}oblongs_only: the rule is for squares only", at));
      }
      pairs(at + "pairs", rule.pairs);
    }
  }

  /// Each filling and each finished length once: which of two should be taken nobody could say.
  static void pairs(const std::string& list, const std::vector<RulePair>& pairs) {
    require_items(list, pairs.size());
    std::set<double> fillings;
    std::set<double> articles;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
      const std::string filling = item(list, i) + "filling_mm";
      const std::string finished = item(list, i) + "finished_mm";
      require(filling, pairs[i].filling_mm, some_length);
      require(finished, pairs[i].finished_mm, some_length);
      if (!fillings.insert(pairs[i].filling_mm).second) {
        refuse(filling, fmt::format("{}: {} stands twice", filling, pairs[i].filling_mm));
      }
      if (!articles.insert(pairs[i].finished_mm).second) {
        refuse(finished, fmt::format("{}: {} stands twice", finished, pairs[i].finished_mm));
      }
    }
  }

  void lists() const {
    require_names("lists", article_.lists);
    for (std::size_t i = 0; i < article_.lists.size(); ++i) {
      const SizeList& list = article_.lists[i];
      const std::string at = item("lists", i);
      require_source(at, list);
      if (list.of > SizeOf::body) refuse(at + "of", fmt::format("{}of is none", at));
      if (list.of == SizeOf::filling && article_.rules.empty()) {
        refuse(at + "of", fmt::format("{}of: fillings, and the article has no rule for them", at));
      }
      if (list.of == SizeOf::body && !article_.rules.empty()) {
        refuse(at + "of", fmt::format("{}of: a body, and the article's rules are for fillings", at));
      }
      if (list.sizes.empty()) refuse(at + "sizes", fmt::format("{}sizes has none; it must have one or more", at));
      require_names(at + "sizes", list.sizes);
      for (std::size_t j = 0; j < list.sizes.size(); ++j) size(item(at + "sizes", j), list.sizes[j]);
    }
  }

  /// All the article's measures, and no others.
  void size(const std::string& at, const ArticleSize& size) const {
    const Names given = require_names(at + "measures", size.measures);
    for (std::size_t i = 0; i < size.measures.size(); ++i) {
      const NamedMeasure& measure = size.measures[i];
      const std::string in = item(at + "measures", i);
      require_known(in + "name", measure.name, measures_);
      if (!measure.of.empty()) require_known(in + "of", measure.of, inputs_);
      require_range(in, {measure.least_mm, measure.greatest_mm}, measure.of.empty() ? some_length : any_length);
      require_some_text(in + "printed", measure.printed);
    }
    for (const std::string& name : article_.measures) {
      if (given.count(name) == 0) refuse(at + "measures", fmt::format("{}measures has no '{}'", at, name));
    }
  }

  template <class Item>
  void repeated(const std::string& at, const Item& each) const {
    require_count(at + "count", each.count, 1);
    require_known(at + "times", each.times, counts_);
    require_known(at + "closures", each.closures, closures_);
  }

  void pieces() const {
    if (article_.pieces.empty()) refuse("pieces", "pieces has none; it must have one or more");
    require_names("pieces", article_.pieces);
    for (std::size_t i = 0; i < article_.pieces.size(); ++i) {
      const ArticlePiece& piece = article_.pieces[i];
      const std::string at = item("pieces", i);
      repeated(at, piece);
      if (!piece.across.empty()) require_known(at + "across", piece.across, counts_);
      if (!piece.up.empty()) require_known(at + "up", piece.up, counts_);
      extent(at + "width.", piece.width);
      extent(at + "length.", piece.length);
      edge(at + "left", piece.left);
      edge(at + "right", piece.right);
      edge(at + "lower", piece.lower);
      edge(at + "upper", piece.upper);
      require_items(at + "shape", piece.shape.size());
      for (std::size_t j = 0; j < piece.shape.size(); ++j) {
        extent(item(at + "shape", j) + "height.", piece.shape[j].height);
        extent(item(at + "shape", j) + "width.", piece.shape[j].width);
      }
    }
  }

  static void edge(const std::string& field, EdgeUse use) {
    if (use > EdgeUse::closure) refuse(field, fmt::format("{} is none", field));
  }

  void seams() const {
    require_names("seams", article_.seams);
    for (std::size_t i = 0; i < article_.seams.size(); ++i) {
      const ArticleSeam& seam = article_.seams[i];
      const std::string at = item("seams", i);
      repeated(at, seam);
      require_known(at + "between", seam.between, counts_);
      extent(at + "length.", seam.length);
    }
  }

  void extent(const std::string& at, const Extent& extent) const {
    require_range(at, {extent.least_mm, extent.greatest_mm}, any_length);
    require_known(at + "over", extent.over, counts_);
    require_items(at + "terms", extent.terms.size());
    for (std::size_t i = 0; i < extent.terms.size(); ++i) {
      const std::string in = item(at + "terms", i);
      require_known(in + "of", extent.terms[i].of, lengths_);
      require(in + "times", extent.terms[i].times, factors);
    }
  }

  const Article& article_;
  Names measures_;
  Names inputs_;
  Names lengths_;  // what terms may refer to: measures, inputs, the overlap of a closure
  Names counts_;
  Names closures_;
};

}  // namespace

void require_article(const Article& article) {
  Check(article).all();
}

}  // namespace latchwork::inline v0
