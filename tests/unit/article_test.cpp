#include "latchwork/article.hpp"

#include <string>

#include "catch.hpp"

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::refused_field;

TEST_CASE("articles that come with the library are written and read back", "[article]") {
  for (const std::string& name : article_names()) {
    const Article article = built_in_article(name);
    CHECK(article.name == name);
    CHECK_FALSE(article.cautions.empty());
    CHECK(read_article(write(article)) == article);
  }
  CHECK_THROWS_MATCHES(built_in_article("hat"), Error, refused_field(ErrorCode::bad_argument, "name"));
}

TEST_CASE("where sources disagree the caller chooses", "[article]") {
  const Article cushion = built_in_article("cushion cover");
  ArticleChoices choices;
  CHECK_THROWS_MATCHES(targets(cushion, choices), Error, refused_field(ErrorCode::bad_argument, "choices.closure"));
  choices.closure = "overlap";
  CHECK_THROWS_MATCHES(targets(cushion, choices), Error, refused_field(ErrorCode::bad_argument, "choices.rule"));
  choices.rule = "insert 2 in larger";
  CHECK_THROWS_MATCHES(targets(cushion, choices), Error, refused_field(ErrorCode::bad_argument, "choices.list"));
  choices.list = "covers, UK";
  choices.size = "45 x 45 cm";
  const ArticleTargets made = targets(cushion, choices);
  REQUIRE(made.pieces.size() == 3);
  CHECK(made.pieces[0].width_least_mm == 450);
  CHECK(made.pieces[1].length_least_mm == 275);  // half of 450 and of the lap's 100
  CHECK(made.pieces[1].length_greatest_mm == 300);
  CHECK(made.seam_least_mm == 1800);
  CHECK(made.filling.at(0).least_mm == Approx(500.8));
  CHECK(made.cautions == cushion.cautions);
}

TEST_CASE("a blanket of panels is shared out and its seams counted", "[article]") {
  ArticleChoices choices;
  choices.measures = {{"width", 1200, 1200, ""}, {"height", 1500, 1500, ""}};
  choices.counts = {{"across", 3}, {"up", 1}};
  const ArticleTargets made = targets(built_in_article("blanket of panels"), choices);
  CHECK(made.pieces.at(0).count == 3);
  CHECK(made.pieces.at(0).width_least_mm == 400);
  CHECK(made.seam_least_mm == 3000);
}

TEST_CASE("an article that contradicts itself is refused with its place", "[article]") {
  Article scarf = built_in_article("scarf");
  scarf.pieces[0].width.terms[0].of = "girth";
  CHECK_THROWS_MATCHES(write(scarf), Error, refused_field(ErrorCode::bad_value, "pieces[0].width.terms[0].of"));
}
