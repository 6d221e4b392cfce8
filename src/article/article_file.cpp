#include <array>
#include <string>
#include <string_view>

#include "article/check.hpp"
#include "file/object.hpp"
#include "latchwork/article.hpp"

namespace latchwork::inline v0 {
namespace {

using json::Is;
using json::Layout;
using json::Missing;

constexpr std::string_view article_format = "latchwork-article";
constexpr std::array<std::string_view, 3> measured_on = {"finished", "filling", "body"};
constexpr std::array<std::string_view, 4> closure_kinds = {"open", "overlap", "seam", "buttons"};
constexpr std::array<std::string_view, 3> edge_uses = {"free", "seamed", "closure"};
constexpr std::array<std::string_view, 3> marks = {"published", "from_memory", "practice"};

struct Name {
  void operator()(json::Value value, std::string& name) const { name = value.text(); }
  void operator()(json::Writer& writer, const std::string& name) const { writer.text(name); }
};

// The members of each struct, once, for reading and writing. Ranges are those of require_article().
struct Lists {
  using Object = json::Object<Lists, Missing::keeps_default>;
  static constexpr Object on_a_line{Layout::line};
  static constexpr Object on_lines{Layout::lines};

  static void items_of(auto& members, std::string_view key, auto& items, Layout layout, Object each) {
    members.list(key, items, layout, each, Article::max_items);
  }
  static void names(auto& members, std::string_view key, auto& items) {
    members.list(key, items, Layout::line, Name{}, Article::max_items);
  }

  void operator()(auto& members, Is<NamedMeasure> auto& measure) const {
    members.required("name", "least_mm", "greatest_mm", "printed");
    members.text("name", measure.name);
    members.number("least_mm", measure.least_mm);
    members.number("greatest_mm", measure.greatest_mm);
    members.text("printed", measure.printed);
    members.word("of", measure.of);
  }
  void operator()(auto& members, Is<ArticleSize> auto& size) const {
    members.required("name");
    members.text("name", size.name);
    items_of(members, "measures", size.measures, Layout::line, on_a_line);
  }
  void operator()(auto& members, Is<SizeList> auto& list) const {
    members.required("name", "source", "sizes");
    members.text("name", list.name);
    members.text("source", list.source);
    members.choice("mark", list.mark, marks);
    members.choice("of", list.of, measured_on);
    items_of(members, "sizes", list.sizes, Layout::lines, on_a_line);
  }
  void operator()(auto& members, Is<LengthTerm> auto& term) const {
    members.required("of");
    members.text("of", term.of);
    members.number("times", term.times);
  }
  void operator()(auto& members, Is<Extent> auto& extent) const {
    items_of(members, "terms", extent.terms, Layout::line, on_a_line);
    members.number("least_mm", extent.least_mm);
    members.number("greatest_mm", extent.greatest_mm);
    names(members, "over", extent.over);
  }
  void operator()(auto& members, Is<ShapePoint> auto& point) const {
    members.value("height", point.height, on_a_line);
    members.value("width", point.width, on_a_line);
  }
  void operator()(auto& members, Is<ArticlePiece> auto& piece) const {
    members.required("name");
    members.text("name", piece.name);
    json::whole(members, "count", piece.count);
    names(members, "times", piece.times);
    members.text("across", piece.across);
    members.text("up", piece.up);
    members.value("width", piece.width, on_a_line);
    members.value("length", piece.length, on_a_line);
    members.choice("left", piece.left, edge_uses);
    members.choice("right", piece.right, edge_uses);
    members.choice("lower", piece.lower, edge_uses);
    members.choice("upper", piece.upper, edge_uses);
    items_of(members, "shape", piece.shape, Layout::lines, on_a_line);
    names(members, "closures", piece.closures);
  }
  void operator()(auto& members, Is<ArticleSeam> auto& seam) const {
    members.required("name");
    members.text("name", seam.name);
    json::whole(members, "count", seam.count);
    names(members, "times", seam.times);
    names(members, "between", seam.between);
    members.value("length", seam.length, on_a_line);
    names(members, "closures", seam.closures);
  }
  void operator()(auto& members, Is<Closure> auto& closure) const {
    members.required("name", "source");
    members.text("name", closure.name);
    members.choice("kind", closure.kind, closure_kinds);
    members.number("overlap_least_mm", closure.overlap_least_mm);
    members.number("overlap_greatest_mm", closure.overlap_greatest_mm);
    members.text("source", closure.source);
    members.choice("mark", closure.mark, marks);
  }
  void operator()(auto& members, Is<RulePair> auto& pair) const {
    members.required("filling_mm", "finished_mm");
    members.number("filling_mm", pair.filling_mm);
    members.number("finished_mm", pair.finished_mm);
  }
  void operator()(auto& members, Is<FillingRule> auto& rule) const {
    members.required("name", "source");
    members.text("name", rule.name);
    members.text("source", rule.source);
    members.choice("mark", rule.mark, marks);
    members.number("larger_least_mm", rule.larger_least_mm);
    members.number("larger_greatest_mm", rule.larger_greatest_mm);
    items_of(members, "pairs", rule.pairs, Layout::lines, on_a_line);
    members.hint("squares_only", rule.squares_only);
    members.hint("oblongs_only", rule.oblongs_only);
  }
  void operator()(auto& members, Is<ArticleInput> auto& input) const {
    members.required("name");
    members.text("name", input.name);
    members.text("meaning", input.meaning);
    members.number("least_mm", input.least_mm);
    members.number("greatest_mm", input.greatest_mm);
  }
  void operator()(auto& members, Is<ArticleCount> auto& count) const {
    members.required("name");
    members.text("name", count.name);
    members.text("meaning", count.meaning);
    json::whole(members, "least", count.least);
    json::whole(members, "greatest", count.greatest);
  }
  void operator()(auto& members, Is<Caution> auto& caution) const {
    members.required("text", "source");
    members.text("text", caution.text);
    members.text("source", caution.source);
    members.choice("mark", caution.mark, marks);
  }
  void operator()(auto& members, Is<Article> auto& article) const {
    members.required("name", "pieces");
    members.text("name", article.name);
    names(members, "measures", article.measures);
    items_of(members, "lists", article.lists, Layout::lines, on_lines);
    items_of(members, "inputs", article.inputs, Layout::lines, on_a_line);
    items_of(members, "counts", article.counts, Layout::lines, on_a_line);
    items_of(members, "closures", article.closures, Layout::lines, on_a_line);
    items_of(members, "rules", article.rules, Layout::lines, on_lines);
    items_of(members, "pieces", article.pieces, Layout::lines, on_lines);
    items_of(members, "seams", article.seams, Layout::lines, on_a_line);
    items_of(members, "cautions", article.cautions, Layout::lines, on_a_line);
  }
};

}  // namespace

Article read_article(std::string_view json) {
  return json::read_file<Article, Lists, Missing::keeps_default>(json, article_format, require_article);
}

std::string write(const Article& article) {
  try {
    require_article(article);
  } catch (const Error& error) {
    if (error.code() != ErrorCode::bad_argument) throw;
    throw Error(ErrorCode::bad_value, error.place(), error.what());
  }
  return json::write_file<Lists, Missing::keeps_default>(article, article_format);
}

}  // namespace latchwork::inline v0
