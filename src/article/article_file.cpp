#include <array>

#include "article/check.hpp"
#include "file/object.hpp"

namespace latchwork::inline v0 {
namespace {

using json::Is;
using json::Layout;

constexpr std::string_view article_format = "latchwork-article";
constexpr std::array<std::string_view, 3> measured_on = {"finished", "filling", "body"};
constexpr std::array<std::string_view, 4> closure_kinds = {"open", "overlap", "seam", "buttons"};
constexpr std::array<std::string_view, 3> edge_uses = {"free", "seamed", "closure"};
constexpr std::array<std::string_view, 3> marks = {"published", "from memory", "practice"};

// Ranges are held by require_article(), for files and hosts' values alike.
void length(auto& members, std::string_view key, auto& member) {
  members.real(key, member, -1e9, 1e9);
}

struct Lists {
  static constexpr json::Object<Lists, json::Missing::keeps_default> on_a_line{Layout::line};
  static constexpr json::Object<Lists, json::Missing::keeps_default> on_lines{Layout::lines};

  static void names(auto& members, std::string_view key, auto& member) {
    members.list(key, member, Layout::line, Text{});
  }

  struct Text {
    void operator()(json::Value value, std::string& item) const { item = value.text(); }
    void operator()(json::Writer& writer, const std::string& item) const { writer.text(item); }
  };

  void operator()(auto& members, Is<NamedMeasure> auto& measure) const {
    members.text("name", measure.name);
    length(members, "least_mm", measure.least_mm);
    length(members, "greatest_mm", measure.greatest_mm);
    members.text("printed", measure.printed);
  }
  void operator()(auto& members, Is<ArticleSize> auto& size) const {
    members.text("name", size.name);
    members.list("measures", size.measures, Layout::line, on_a_line);
  }
  void operator()(auto& members, Is<SizeList> auto& list) const {
    members.text("name", list.name);
    members.text("source", list.source);
    members.choice("mark", list.mark, marks);
    members.choice("of", list.of, measured_on);
    members.list("sizes", list.sizes, Layout::lines, on_a_line);
  }
  void operator()(auto& members, Is<Term> auto& term) const {
    members.text("of", term.of);
    length(members, "times", term.times);
  }
  void operator()(auto& members, Is<Extent> auto& extent) const {
    members.list("terms", extent.terms, Layout::line, on_a_line);
    length(members, "least_mm", extent.least_mm);
    length(members, "greatest_mm", extent.greatest_mm);
    names(members, "over", extent.over);
  }
  void operator()(auto& members, Is<ShapePoint> auto& point) const {
    members.value("height", point.height, on_a_line);
    members.value("width", point.width, on_a_line);
  }
  void operator()(auto& members, Is<ArticlePiece> auto& piece) const {
    members.text("name", piece.name);
    json::whole(members, "count", piece.count);
    names(members, "times", piece.times);
    members.value("width", piece.width, on_a_line);
    members.value("length", piece.length, on_a_line);
    members.choice("left", piece.left, edge_uses);
    members.choice("right", piece.right, edge_uses);
    members.choice("lower", piece.lower, edge_uses);
    members.choice("upper", piece.upper, edge_uses);
    members.list("shape", piece.shape, Layout::lines, on_a_line);
    names(members, "closures", piece.closures);
  }
  void operator()(auto& members, Is<ArticleSeam> auto& seam) const {
    members.text("name", seam.name);
    json::whole(members, "count", seam.count);
    names(members, "times", seam.times);
    names(members, "between", seam.between);
    members.value("length", seam.length, on_a_line);
    names(members, "closures", seam.closures);
  }
  void operator()(auto& members, Is<Closure> auto& closure) const {
    members.text("name", closure.name);
    members.choice("kind", closure.kind, closure_kinds);
    length(members, "overlap_least_mm", closure.overlap_least_mm);
    length(members, "overlap_greatest_mm", closure.overlap_greatest_mm);
    members.text("source", closure.source);
    members.choice("mark", closure.mark, marks);
  }
  void operator()(auto& members, Is<RulePair> auto& pair) const {
    length(members, "filling_mm", pair.filling_mm);
    length(members, "finished_mm", pair.finished_mm);
  }
  void operator()(auto& members, Is<FillingRule> auto& rule) const {
    members.text("name", rule.name);
    members.text("source", rule.source);
    members.choice("mark", rule.mark, marks);
    length(members, "larger_least_mm", rule.larger_least_mm);
    length(members, "larger_greatest_mm", rule.larger_greatest_mm);
    members.list("pairs", rule.pairs, Layout::lines, on_a_line);
  }
  void operator()(auto& members, Is<ArticleInput> auto& input) const {
    members.text("name", input.name);
    members.text("meaning", input.meaning);
    length(members, "least_mm", input.least_mm);
    length(members, "greatest_mm", input.greatest_mm);
  }
  void operator()(auto& members, Is<ArticleCount> auto& count) const {
    members.text("name", count.name);
    members.text("meaning", count.meaning);
    json::whole(members, "least", count.least);
    json::whole(members, "greatest", count.greatest);
  }
  void operator()(auto& members, Is<Caution> auto& caution) const {
    members.text("text", caution.text);
    members.text("source", caution.source);
    members.choice("mark", caution.mark, marks);
  }
  void operator()(auto& members, Is<Article> auto& article) const {
    members.text("name", article.name);
    names(members, "measures", article.measures);
    members.list("lists", article.lists, Layout::lines, on_lines);
    members.list("inputs", article.inputs, Layout::lines, on_a_line);
    members.list("counts", article.counts, Layout::lines, on_a_line);
    members.list("closures", article.closures, Layout::lines, on_a_line);
    members.list("rules", article.rules, Layout::lines, on_lines);
    members.list("pieces", article.pieces, Layout::lines, on_lines);
    members.list("seams", article.seams, Layout::lines, on_a_line);
    members.list("cautions", article.cautions, Layout::lines, on_a_line);
  }
};

}  // namespace

Article read_article(std::string_view json) {
  const json::Document document(json);
  json::Fields fields = json::open(document, article_format, 1);
  json::Taking members(fields, json::Missing::keeps_default);
  Article article;
  Lists{}(members, article);
  fields.finish();
  document.root().guard([&] { require_article(article); });
  return article;
}

std::string write(const Article& article) {
  require_article(article);
  return json::write_file<Lists, json::Missing::keeps_default>(article, article_format);
}

}  // namespace latchwork::inline v0
