#include <climits>
#include <cstdint>
#include <string>
#include <string_view>

#include "article_fit/check.hpp"
#include "error/refuse.hpp"
#include "file/gauge_json.hpp"
#include "latchwork/article_fit.hpp"
#include "latchwork/quantity.hpp"

namespace latchwork::inline v0 {
namespace {

using json::Is;
using json::Layout;
using json::Missing;

constexpr std::string_view choices_format = "latchwork-article-choices";
constexpr int max_side = Grid::max_side;
constexpr std::size_t max_substitutes = 50'000;  // as in yarn.json

struct Name {
  void operator()(json::Value value, std::string& name) const { name = value.text(); }
  void operator()(json::Writer& writer, const std::string& name) const { writer.text(name); }
};

struct Number {
  void operator()(json::Value value, double& number) const { number = value.real(); }
  void operator()(json::Writer& writer, double number) const { writer.real(number); }
};

/// A number of mm, or a text with its unit: "17 3/4 in". It is written as a number.
struct Millimetres {
  void operator()(json::Value value, double& mm) const {
    if (value.kind() != json::Kind::text) {
      mm = value.real();
    } else {
      mm = value.guard([&] { return read_length(value.text()).mm; });
    }
  }
  void operator()(json::Writer& writer, double mm) const { writer.real(mm); }
};

// The members of each struct, once, for reading and writing. Numbers with a part behind the point are looked at in
// require_article_request().
struct Lists {
  using Object = json::Object<Lists, Missing::keeps_default>;
  static constexpr Object on_a_line{Layout::line};
  static constexpr Object on_lines{Layout::lines};

  void operator()(auto& members, Is<NamedMeasure> auto& measure) const {
    members.required("name");
    members.text("name", measure.name);
    members.value("least_mm", measure.least_mm, Millimetres{});
    members.value("greatest_mm", measure.greatest_mm, Millimetres{});
    members.text("printed", measure.printed);
    members.text("of", measure.of);
  }
  void operator()(auto& members, Is<NamedCount> auto& count) const {
    members.required("name");
    members.text("name", count.name);
    json::whole(members, "count", count.count);
  }
  void operator()(auto& members, Is<ArticleChoices> auto& choices) const {
    members.text("list", choices.list);
    members.text("size", choices.size);
    members.text("rule", choices.rule);
    members.text("closure", choices.closure);
    members.list("measures", choices.measures, Layout::lines, on_a_line, Article::max_items);
    members.list("counts", choices.counts, Layout::lines, on_a_line, Article::max_items);
    members.boolean("measures_of_filling", choices.measures_of_filling);
  }
  void operator()(auto& members, Is<StripRun> auto& run) const {
    members.integer("first", run.first, 0, max_side);
    members.integer("last", run.last, 0, max_side);
    members.integer("least", run.least, 0, max_side);
    members.integer("most", run.most, 0, max_side);
    members.integer("as_group", run.as_group, -1, FitRequest::max_groups - 1);
  }
  void operator()(auto& members, Is<Substitute> auto& substitute) const {
    json::substitute_members(members, substitute);
  }
  void operator()(auto& members, Is<FitRequest> auto& design) const {
    members.optional("tolerance_percent", design.tolerance_percent, Number{});
    members.integer("edge_least", design.edge_least, 0, max_side);
    members.integer("edge_most", design.edge_most, 0, max_side);
    members.integer("panels_least", design.panels_least, 1, FitRequest::max_panels);
    members.integer("panels_most", design.panels_most, 1, FitRequest::max_panels);
    members.number("seam_stitches", design.seam_stitches);
    members.integer("rows_step", design.rows_step, 1, max_side);
    members.integer("rows_extra", design.rows_extra, 0, max_side);
    members.boolean("vary_start", design.vary_start);
    members.integer("needles", design.needles, 0, INT_MAX);
    members.integer("most", design.most, 1, FitRequest::max_candidates);
    members.optional("state", design.state, json::StateText{});
    members.list("substitutes", design.substitutes, Layout::lines, on_a_line, max_substitutes);
    members.number("seam_left", design.seam_left);
    members.number("seam_right", design.seam_right);
    members.number("seam_bottom", design.seam_bottom);
    members.number("seam_top", design.seam_top);
  }
  void operator()(auto& members, Is<ArticleRequest> auto& request) const {
    members.required("article");
    members.text("article", request.article);
    members.value("choices", request.choices, on_lines);
    members.list("made", request.made, Layout::line, Name{}, ArticleRequest::max_pieces);
    members.list("groups", request.groups, Layout::lines, on_a_line, std::size_t{FitRequest::max_groups});
    members.integer("edge", request.edge, -1, max_side);
    members.value("design", request.design, on_lines);
    members.integer("seam_ms_per_m", request.seam_ms_per_m, std::int64_t{0}, ArticleRequest::max_seam_ms_per_m);
  }
};

/// In a file the article is named, so that it can be read.
void require_file(const ArticleRequest& request) {
  require_article_request(request);
  if (request.article.empty()) refuse("article", "article is empty; name one");
}

}  // namespace

ArticleRequest read_article_request(std::string_view json) {
  return json::read_file<ArticleRequest, Lists, Missing::keeps_default>(json, choices_format, require_file);
}

std::string write(const ArticleRequest& request) {
  try {
    require_file(request);
  } catch (const Error& error) {
    if (error.code() != ErrorCode::bad_argument) throw;
    throw Error(ErrorCode::bad_value, error.place(), error.what());
  }
  return json::write_file<Lists, Missing::keeps_default>(request, choices_format);
}

}  // namespace latchwork::inline v0
