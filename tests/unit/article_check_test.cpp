#include <cmath>
#include <functional>
#include <string>

#include "catch.hpp"
#include "latchwork/article.hpp"
#include "sample_article.hpp"

namespace article_check_test {

// Articles that contradict themselves, or are out of their ranges.

using namespace latchwork;
using latchwork_test::refused_field;
using latchwork_test::sample_article;
using latchwork_test::sample_choices;

namespace {

using Change = std::function<void(Article&)>;

struct Wrong {
  Change change;
  std::string field;
};

const Wrong wrong_articles[] = {
    {[](Article& a) { a.name = ""; }, "name"},
    {[](Article& a) { a.measures[1] = ""; }, "measures[1]"},
    {[](Article& a) { a.measures[1] = "length"; }, "measures[1]"},   // twice
    {[](Article& a) { a.measures[1] = "overlap"; }, "measures[1]"},  // the closure's
    {[](Article& a) { a.measures.resize(1001, "x"); }, "measures"},
    {[](Article& a) { a.lists[1].name = "windows"; }, "lists[1].name"},
    {[](Article& a) { a.lists[1].source = ""; }, "lists[1].source"},
    {[](Article& a) { a.lists[1].mark = static_cast<SourceMark>(3); }, "lists[1].mark"},
    {[](Article& a) { a.lists[1].of = static_cast<SizeOf>(3); }, "lists[1].of"},
    {[](Article& a) { a.lists[1].of = SizeOf::body; }, "lists[1].of"},  // whose rules are for fillings
    {[](Article& a) { a.rules.clear(); }, "lists[0].of"},               // a filling without a rule
    {[](Article& a) { a.lists[0].sizes.clear(); }, "lists[0].sizes"},
    {[](Article& a) { a.lists[0].sizes[1].name = "narrow"; }, "lists[0].sizes[1].name"},
    {[](Article& a) { a.lists[0].sizes[1].measures.pop_back(); }, "lists[0].sizes[1].measures"},
    {[](Article& a) { a.lists[0].sizes[1].measures[1].name = "height"; }, "lists[0].sizes[1].measures[1].name"},
    {[](Article& a) { a.lists[0].sizes[1].measures[1].name = "length"; }, "lists[0].sizes[1].measures[1].name"},
    {[](Article& a) { a.lists[0].sizes[1].measures[1].least_mm = 0.5; }, "lists[0].sizes[1].measures[1].least_mm"},
    {[](Article& a) { a.lists[0].sizes[1].measures[1].least_mm = std::nan(""); },
     "lists[0].sizes[1].measures[1].least_mm"},
    {[](Article& a) { a.lists[0].sizes[1].measures[1].greatest_mm = 319; },
     "lists[0].sizes[1].measures[1].greatest_mm"},
    {[](Article& a) { a.lists[0].sizes[1].measures[1].printed = ""; }, "lists[0].sizes[1].measures[1].printed"},
    {[](Article& a) { a.lists[0].sizes[1].measures[1].of = "length"; },
     "lists[0].sizes[1].measures[1].of"},  // no input
    {[](Article& a) {
       a.lists[0].sizes[0].measures[1] = {"girth", -1e6, 0, "flat", "flap"};
     },
     "lists[0].sizes[0].measures[1].least_mm"},
    {[](Article& a) { a.rules[0].squares_only = a.rules[0].oblongs_only = true; }, "rules[0].oblongs_only"},
    {[](Article& a) { a.inputs[0].name = "girth"; }, "inputs[0].name"},
    {[](Article& a) { a.inputs[0].name = "overlap"; }, "inputs[0].name"},
    {[](Article& a) { a.inputs[0].greatest_mm = 1e6; }, "inputs[0].greatest_mm"},
    {[](Article& a) { a.counts[1].name = "parts"; }, "counts[1].name"},
    {[](Article& a) { a.counts[1].least = 0; }, "counts[1].least"},
    {[](Article& a) { a.counts[1].greatest = 0; }, "counts[1].greatest"},
    {[](Article& a) { a.counts[1].greatest = 1001; }, "counts[1].greatest"},
    {[](Article& a) { a.closures[0].kind = static_cast<ClosureKind>(9); }, "closures[0].kind"},
    {[](Article& a) { a.closures[0].source = ""; }, "closures[0].source"},
    {[](Article& a) { a.closures[0].overlap_least_mm = -1; }, "closures[0].overlap_least_mm"},
    {[](Article& a) { a.closures[0].overlap_greatest_mm = 59; }, "closures[0].overlap_greatest_mm"},
    {[](Article& a) { a.closures[1].overlap_greatest_mm = 10; },
     "closures[1].overlap_greatest_mm"},  // a seam laps none
    {[](Article& a) { a.rules[0].larger_least_mm = -10'001; }, "rules[0].larger_least_mm"},
    {[](Article& a) { a.rules[0].larger_greatest_mm = 9; }, "rules[0].larger_greatest_mm"},
    {[](Article& a) { a.rules[1].larger_greatest_mm = 9; }, "rules[1].larger_greatest_mm"},  // beside its pairs
    {[](Article& a) { a.rules[1].pairs[1].filling_mm = 0; }, "rules[1].pairs[1].filling_mm"},
    {[](Article& a) { a.rules[1].pairs[1].filling_mm = 700; }, "rules[1].pairs[1].filling_mm"},    // twice
    {[](Article& a) { a.rules[1].pairs[1].finished_mm = 690; }, "rules[1].pairs[1].finished_mm"},  // twice
    {[](Article& a) { a.pieces.clear(); }, "pieces"},
    {[](Article& a) { a.pieces[1].name = "body"; }, "pieces[1].name"},
    {[](Article& a) { a.pieces[1].count = 0; }, "pieces[1].count"},
    {[](Article& a) {
       a.pieces[1].times = {"tiers", "rings"};
     },
     "pieces[1].times[1]"},
    {[](Article& a) { a.pieces[0].across = "rings"; }, "pieces[0].across"},
    {[](Article& a) { a.pieces[0].up = "girth"; }, "pieces[0].up"},  // a measure is no count
    {[](Article& a) { a.pieces[0].width.terms[0].of = "height"; }, "pieces[0].width.terms[0].of"},
    {[](Article& a) { a.pieces[0].width.terms[0].times = 101; }, "pieces[0].width.terms[0].times"},
    {[](Article& a) { a.pieces[0].width.terms[0].times = std::nan(""); }, "pieces[0].width.terms[0].times"},
    {[](Article& a) { a.pieces[0].width.over = {"girth"}; }, "pieces[0].width.over[0]"},
    {[](Article& a) { a.pieces[0].length.least_mm = 1; }, "pieces[0].length.greatest_mm"},
    {[](Article& a) { a.pieces[0].left = static_cast<EdgeUse>(3); }, "pieces[0].left"},
    {[](Article& a) { a.pieces[1].shape[1].height.terms[0].of = "tail"; }, "pieces[1].shape[1].height.terms[0].of"},
    {[](Article& a) { a.pieces[1].shape[1].width.least_mm = 46; }, "pieces[1].shape[1].width.greatest_mm"},
    {[](Article& a) { a.pieces[1].closures = {"zip"}; }, "pieces[1].closures[0]"},
    {[](Article& a) { a.seams[0].between = {"girth"}; }, "seams[0].between[0]"},
    {[](Article& a) { a.seams[0].count = 1001; }, "seams[0].count"},
    {[](Article& a) { a.seams[0].length.terms[1].of = ""; }, "seams[0].length.terms[1].of"},
    {[](Article& a) { a.cautions[0].text = ""; }, "cautions[0].text"},
    {[](Article& a) { a.cautions[0].source = ""; }, "cautions[0].source"},
};

}  // namespace

TEST_CASE("an article that contradicts itself is refused with its place, as it is reckoned and as it is written",
          "[article][error]") {
  for (const Wrong& wrong : wrong_articles) {
    CAPTURE(wrong.field);
    Article article = sample_article();
    wrong.change(article);
    CHECK_THROWS_MATCHES(targets(article, sample_choices()), Error,
                         refused_field(ErrorCode::bad_argument, wrong.field));
    CHECK_THROWS_MATCHES(write(article), Error, refused_field(ErrorCode::bad_value, wrong.field));
  }
}

TEST_CASE("without a closure there is no overlap to refer to", "[article][error]") {
  Article article = sample_article();
  article.closures.clear();
  article.pieces.pop_back();
  article.seams.clear();
  CHECK_THROWS_MATCHES(write(article), Error, refused_field(ErrorCode::bad_value, "pieces[0].length.terms[1].of"));
  article.pieces[0].length.terms.pop_back();
  CHECK_NOTHROW(write(article));
}

TEST_CASE("a text that is not UTF-8 is refused with its field", "[article][error]") {
  const auto [change, field] = GENERATE(table<Change, std::string>({
      {[](Article& a) { a.name = "\xFF"; }, "name"},
      {[](Article& a) { a.inputs[0].meaning = "\xC3"; }, "inputs[0].meaning"},
      {[](Article& a) { a.counts[0].meaning = "\x80"; }, "counts[0].meaning"},
      {[](Article& a) { a.pieces[0].across = "\xFF"; }, "pieces[0].across"},
      {[](Article& a) { a.cautions[0].text = "\xFF"; }, "cautions[0].text"},
  }));
  Article article = sample_article();
  change(article);
  CHECK_THROWS_MATCHES(targets(article, sample_choices()), Error, refused_field(ErrorCode::bad_encoding, field));
  CHECK_THROWS_MATCHES(write(article), Error, refused_field(ErrorCode::bad_encoding, field));
}

TEST_CASE("a file's error tells its place once", "[article][file][error]") {
  CHECK_THROWS_WITH(
      read_article("{\"format\": \"latchwork-article\", \"version\": 1,\n\"name\": \"\", \"pieces\": []}"),
      "line 2, name is empty");
}

}  // namespace article_check_test
