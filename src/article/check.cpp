#include "article/check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

#include "latchwork/error.hpp"

namespace latchwork::inline v0 {
namespace {

[[noreturn]] void refuse(std::string field, const std::string& what) {
  Place place;
  place.field = std::move(field);
  throw Error(ErrorCode::bad_value, place, what);
}

struct Bounds {
  double least;
  double greatest;
};
constexpr Bounds any_length{-1e5, 1e5};
constexpr Bounds some_length{1, 1e5};

void require_range(const std::string& at, std::string_view name, Bounds given, Bounds allowed) {
  const std::string first = fmt::format("{}{}least_mm", at, name);
  if (!(given.least >= allowed.least && given.least <= allowed.greatest)) {
    refuse(first, fmt::format("{} is {}, not {} to {}", first, given.least, allowed.least, allowed.greatest));
  }
  const std::string last = fmt::format("{}{}greatest_mm", at, name);
  if (!(given.greatest >= given.least && given.greatest <= allowed.greatest)) {
    refuse(last, fmt::format("{} is {}, not {} to {}", last, given.greatest, given.least, allowed.greatest));
  }
}

std::string item(std::string_view list, std::size_t index) {
  return fmt::format("{}[{}].", list, index);
}

// Every item has a name, which no other has.
template <class Item>
void require_names(std::string_view list, const std::vector<Item>& items) {
  if (items.size() > Article::max_items) {
    refuse(std::string(list), fmt::format("{} has {} items; there may be {}", list, items.size(), Article::max_items));
  }
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::string field = item(list, i) + "name";
    if (items[i].name.empty()) refuse(field, fmt::format("{} is empty", field));
    for (std::size_t j = 0; j < i; ++j) {
      if (items[j].name == items[i].name) refuse(field, fmt::format("'{}' stands twice in {}", items[i].name, list));
    }
  }
}

template <class Item>
bool has_name(const std::vector<Item>& items, const std::string& name) {
  return std::any_of(items.begin(), items.end(), [&](const Item& each) { return each.name == name; });
}

template <class Item>
void require_known(const std::string& field, const std::vector<std::string>& names, const std::vector<Item>& items) {
  if (names.size() > Article::max_items) refuse(field, fmt::format("{} has too many items", field));
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (!has_name(items, names[i])) {
      refuse(fmt::format("{}[{}]", field, i), fmt::format("{}[{}]: the article has no '{}'", field, i, names[i]));
    }
  }
}

class Check {
 public:
  explicit Check(const Article& article) : article_(article) {}

  void all() const {
    if (article_.name.empty()) refuse("name", "the article has no name");
    measures();
    lists();
    choices();
    require_names("pieces", article_.pieces);
    if (article_.pieces.empty()) refuse("pieces", "the article has no pieces");
    for (std::size_t i = 0; i < article_.pieces.size(); ++i) piece(item("pieces", i), article_.pieces[i]);
    require_names("seams", article_.seams);
    for (std::size_t i = 0; i < article_.seams.size(); ++i) {
      const ArticleSeam& seam = article_.seams[i];
      const std::string at = item("seams", i);
      repeated(at, seam);
      require_known(at + "between", seam.between, article_.counts);
      extent(at + "length.", seam.length);
    }
    if (article_.cautions.size() > Article::max_items) refuse("cautions", "there are too many cautions");
    for (std::size_t i = 0; i < article_.cautions.size(); ++i) {
      sourced(item("cautions", i), article_.cautions[i]);
      if (article_.cautions[i].text.empty()) refuse(item("cautions", i) + "text", "the caution has no text");
    }
  }

 private:
  void measures() const {
    const auto& names = article_.measures;
    if (names.size() > Article::max_items) refuse("measures", "there are too many measures");
    for (std::size_t i = 0; i < names.size(); ++i) {
      const std::string field = fmt::format("measures[{}]", i);
      const auto end = names.begin() + static_cast<std::ptrdiff_t>(i);
      if (names[i].empty() || names[i] == "overlap" || std::find(names.begin(), end, names[i]) != end) {
        refuse(field, fmt::format("{}: '{}' is empty, taken, or stands twice", field, names[i]));
      }
    }
  }

  void lists() const {
    require_names("lists", article_.lists);
    for (std::size_t i = 0; i < article_.lists.size(); ++i) {
      const SizeList& list = article_.lists[i];
      const std::string at = item("lists", i);
      sourced(at, list);
      if (list.sizes.empty()) refuse(at + "sizes", fmt::format("list '{}' has no sizes", list.name));
      if (list.of == SizeOf::filling && article_.rules.empty()) {
        refuse(at + "of", fmt::format("list '{}' is of fillings, and the article has no rule for them", list.name));
      }
      require_names(at + "sizes", list.sizes);
      for (std::size_t j = 0; j < list.sizes.size(); ++j) size(item(at + "sizes", j), list.sizes[j]);
    }
  }

  void size(const std::string& at, const ArticleSize& size) const {
    require_names(at + "measures", size.measures);
    for (std::size_t i = 0; i < size.measures.size(); ++i) {
      const NamedMeasure& measure = size.measures[i];
      const std::string in = item(at + "measures", i);
      require_range(in, "", {measure.least_mm, measure.greatest_mm}, some_length);
      if (std::find(article_.measures.begin(), article_.measures.end(), measure.name) == article_.measures.end()) {
        refuse(in + "name", fmt::format("'{}' is none of the article's measures", measure.name));
      }
      if (measure.printed.empty()) refuse(in + "printed", "how the source prints the measure is missing");
    }
    for (const std::string& name : article_.measures) {
      if (!has_name(size.measures, name)) refuse(at + "measures", fmt::format("size '{}' has no {}", size.name, name));
    }
  }

  void choices() const {
    require_names("inputs", article_.inputs);
    for (std::size_t i = 0; i < article_.inputs.size(); ++i) {
      const ArticleInput& input = article_.inputs[i];
      require_range(item("inputs", i), "", {input.least_mm, input.greatest_mm}, any_length);
      const auto& names = article_.measures;
      if (input.name == "overlap" || std::find(names.begin(), names.end(), input.name) != names.end()) {
        refuse(item("inputs", i) + "name", fmt::format("'{}' is taken by another measure", input.name));
      }
    }
    require_names("counts", article_.counts);
    for (std::size_t i = 0; i < article_.counts.size(); ++i) {
      const ArticleCount& count = article_.counts[i];
      if (count.least < 1 || count.least > 1000) refuse(item("counts", i) + "least", "least is not 1 to 1000");
      if (count.greatest < count.least || count.greatest > 1000) {
        refuse(item("counts", i) + "greatest", fmt::format("greatest is not {} to 1000", count.least));
      }
    }
    require_names("closures", article_.closures);
    for (std::size_t i = 0; i < article_.closures.size(); ++i) {
      const Closure& closure = article_.closures[i];
      sourced(item("closures", i), closure);
      require_range(item("closures", i), "overlap_", {closure.overlap_least_mm, closure.overlap_greatest_mm}, {0, 1e4});
    }
    require_names("rules", article_.rules);
    for (std::size_t i = 0; i < article_.rules.size(); ++i) rule(item("rules", i), article_.rules[i]);
  }

  static void rule(const std::string& at, const FillingRule& rule) {
    sourced(at, rule);
    require_range(at, "larger_", {rule.larger_least_mm, rule.larger_greatest_mm}, {-1e4, 1e4});
    if (rule.pairs.size() > Article::max_items) refuse(at + "pairs", "there are too many pairs");
    for (std::size_t i = 0; i < rule.pairs.size(); ++i) {
      const RulePair& pair = rule.pairs[i];
      const std::string in = item(at + "pairs", i);
      if (!(pair.filling_mm >= 1 && pair.filling_mm <= 1e5)) refuse(in + "filling_mm", "filling_mm is not 1 to 1e5");
      if (!(pair.finished_mm >= 1 && pair.finished_mm <= 1e5)) {
        refuse(in + "finished_mm", "finished_mm is not 1 to 1e5");
      }
    }
  }

  template <class Item>
  static void sourced(const std::string& at, const Item& each) {
    if (each.source.empty()) refuse(at + "source", fmt::format("{}source is empty", at));
  }

  template <class Item>
  void repeated(const std::string& at, const Item& each) const {
    if (each.count < 1 || each.count > 1000) refuse(at + "count", fmt::format("{} is not 1 to 1000", each.count));
    require_known(at + "times", each.times, article_.counts);
    require_known(at + "closures", each.closures, article_.closures);
  }

  void piece(const std::string& at, const ArticlePiece& piece) const {
    repeated(at, piece);
    extent(at + "width.", piece.width);
    extent(at + "length.", piece.length);
    if (piece.shape.size() > Article::max_items) refuse(at + "shape", "there are too many points");
    for (std::size_t i = 0; i < piece.shape.size(); ++i) {
      extent(item(at + "shape", i) + "height.", piece.shape[i].height);
      extent(item(at + "shape", i) + "width.", piece.shape[i].width);
    }
  }

  void extent(const std::string& at, const Extent& extent) const {
    require_range(at, "", {extent.least_mm, extent.greatest_mm}, any_length);
    require_known(at + "over", extent.over, article_.counts);
    if (extent.terms.size() > Article::max_items) refuse(at + "terms", "there are too many terms");
    for (std::size_t i = 0; i < extent.terms.size(); ++i) {
      const Term& term = extent.terms[i];
      const std::string in = item(at + "terms", i);
      if (!(term.times >= -100 && term.times <= 100)) refuse(in + "times", "times is not -100 to 100");
      const auto& names = article_.measures;
      const bool closes = term.of == "overlap" && !article_.closures.empty();
      if (!closes && !has_name(article_.inputs, term.of) &&
          std::find(names.begin(), names.end(), term.of) == names.end()) {
        refuse(in + "of", fmt::format("{}of: '{}' is no measure or input of the article", in, term.of));
      }
    }
  }

  const Article& article_;
};

}  // namespace

void require_article(const Article& article) {
  Check(article).all();
}

}  // namespace latchwork::inline v0
