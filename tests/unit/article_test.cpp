#include "latchwork/article.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <string>
#include <tuple>
#include <vector>

#include "catch.hpp"
#include "sample_article.hpp"

namespace article_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::message_of;
using latchwork_test::refused_field;
using latchwork_test::sample_article;
using latchwork_test::sample_choices;

namespace {

constexpr auto free_ = EdgeUse::free;
constexpr auto seamed = EdgeUse::seamed;
constexpr auto closed = EdgeUse::closure;

ArticleChoices blanket_of(int across, int up) {
  ArticleChoices choices;
  choices.measures = {{"width", 1200, 1200, ""}, {"height", 1500, 1500, ""}};
  choices.counts = {{"across", across}, {"up", up}};
  return choices;
}

/// Of all edges that are sewn to another.
double sewn_edges_mm(const Targets& made) {
  double mm = 0;
  for (const TargetPiece& piece : made.pieces) {
    const int sides = (piece.left == seamed ? 1 : 0) + (piece.right == seamed ? 1 : 0);
    const int ends = (piece.lower == seamed ? 1 : 0) + (piece.upper == seamed ? 1 : 0);
    mm += piece.count * (sides * piece.length_least_mm + ends * piece.width_least_mm);
  }
  return mm;
}

int pieces_in_all(const Targets& made) {
  int count = 0;
  for (const TargetPiece& piece : made.pieces) count += piece.count;
  return count;
}

}  // namespace

TEST_CASE("articles that come with the library are written and read back", "[article]") {
  CHECK(article_names() == std::vector<std::string>{"cushion cover", "blanket of panels", "scarf", "bag panel",
                                                    "straight garment pieces"});
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
  CHECK_THROWS_MATCHES(targets(cushion, choices), Error, refused_field(ErrorCode::bad_argument, "choices.size"));
  choices.size = "45 x 45 cm";
  const Targets made = targets(cushion, choices);
  CHECK(made.sources == std::vector<std::string>{"list 'covers, UK': britishwholesales.co.uk (published)",
                                                 "closure 'overlap': from memory",
                                                 "rule 'insert 2 in larger': engineerfix.com (published)"});
  CHECK(made.cautions == cushion.cautions);
  choices.closure = "seam";
  CHECK(targets(cushion, choices).sources[1] == "closure 'seam': common practice, no source");
}

TEST_CASE("a cushion cover's back is in one piece or laps over itself", "[article]") {
  const Article cushion = built_in_article("cushion cover");
  ArticleChoices choices{"covers, UK", "45 x 45 cm", "same size", "overlap", {}, {}};
  Targets made = targets(cushion, choices);
  REQUIRE(made.pieces.size() == 3);
  CHECK(made.pieces[0].width_least_mm == 450);
  CHECK(made.pieces[1].length_least_mm == 275);  // half of 450 and of the lap's 100
  CHECK(made.pieces[1].length_greatest_mm == 300);
  CHECK(made.pieces[1].upper == closed);
  CHECK(made.pieces[2].lower == closed);
  CHECK(made.seam_least_mm == 1800);  // all round, through both layers of the lap at once
  CHECK(made.seam_greatest_mm == 1800);

  choices.measures = {{"overlap", 120, 120, ""}};
  CHECK(targets(cushion, choices).pieces[1].length_least_mm == 285);

  choices.closure = "seam";
  CHECK_THROWS_MATCHES(targets(cushion, choices), Error,
                       refused_field(ErrorCode::bad_argument, "choices.measures[0].name"));
  choices.measures.clear();
  made = targets(cushion, choices);
  REQUIRE(made.pieces.size() == 2);
  CHECK(made.pieces[1].length_least_mm == 450);
  CHECK(2 * made.seam_least_mm == sewn_edges_mm(made));
}

TEST_CASE("how far edges lap is from memory, and says so", "[article]") {
  const auto& closures = built_in_article("cushion cover").closures;
  REQUIRE(closures.size() == 3);
  CHECK(closures[0].overlap_least_mm == 100);
  CHECK(closures[0].overlap_greatest_mm == 150);
  CHECK(closures[2].overlap_least_mm == 25);
  CHECK(closures[2].overlap_greatest_mm == 50);
  for (const std::string& name : article_names()) {
    const Article article = built_in_article(name);
    for (const Closure& closure : article.closures) {
      const bool laps = closure.overlap_greatest_mm > 0;  // those alone have figures
      CHECK(closure.mark == (laps ? SourceMark::from_memory : SourceMark::practice));
      CHECK(closure.source == (laps ? "from memory" : "common practice, no source"));
    }
    // And only what is marked so says that it has no source.
    for (const Caution& caution : article.cautions) {
      CHECK((caution.source == "common practice, no source") == (caution.mark == SourceMark::practice));
      CHECK((caution.source == "from memory") == (caution.mark == SourceMark::from_memory));
    }
  }
}

TEST_CASE("a blanket's seams lie on the edges that are sewn", "[article]") {
  const Article blanket = built_in_article("blanket of panels");
  for (int across = 1; across <= 5; ++across) {
    for (int up = 1; up <= 5; ++up) {
      const Targets made = targets(blanket, blanket_of(across, up));
      CAPTURE(across, up);
      CHECK(made.seam_least_mm == (across - 1) * 1500 + (up - 1) * 1200);
      CHECK(sewn_edges_mm(made) == Approx(2 * made.seam_least_mm));
      CHECK(pieces_in_all(made) == across * up);
    }
  }
  const Targets one = targets(blanket, blanket_of(1, 1));
  REQUIRE(one.pieces.size() == 1);
  CHECK(one.pieces[0] == TargetPiece{"panel", 1, 1200, 1200, 1500, 1500, free_, free_, free_, free_, {}});
  CHECK(one.seams.empty());

  const Targets three = targets(blanket, blanket_of(3, 1));
  REQUIRE(three.pieces.size() == 3);
  CHECK(three.pieces[0] == TargetPiece{"panel, left", 1, 400, 400, 1500, 1500, free_, seamed, free_, free_, {}});
  CHECK(three.pieces[1] == TargetPiece{"panel, middle", 1, 400, 400, 1500, 1500, seamed, seamed, free_, free_, {}});
  CHECK(three.pieces[2] == TargetPiece{"panel, right", 1, 400, 400, 1500, 1500, seamed, free_, free_, free_, {}});

  const Targets nine = targets(blanket, blanket_of(5, 4));
  REQUIRE(nine.pieces.size() == 9);
  CHECK(nine.pieces[0].name == "panel, lower left");
  CHECK(nine.pieces[3].name == "panel, middle left");
  CHECK(nine.pieces[4] == TargetPiece{"panel, middle", 6, 240, 240, 375, 375, seamed, seamed, seamed, seamed, {}});
  CHECK(nine.pieces[8].name == "panel, upper right");
}

TEST_CASE("a ring of bag panels is sewn at every side and below", "[article]") {
  for (int panels = 2; panels <= 5; ++panels) {
    ArticleChoices choices;
    choices.measures = {{"width", 300, 300, ""}, {"height", 360, 360, ""}};
    choices.counts = {{"panels", panels}};
    const Targets made = targets(built_in_article("bag panel"), choices);
    CHECK(made.seam_least_mm == panels * (360 + 150));
    CHECK(sewn_edges_mm(made) == 2 * made.seam_least_mm);
  }
}

TEST_CASE("a garment's seams leave its openings out", "[article]") {
  ArticleChoices choices{"CYC woman", "M", "", "", {}, {}};
  choices.measures = {
      {"ease", 100, 100, ""}, {"length", 600, 600, ""}, {"armhole", 200, 200, ""}, {"neck", 220, 220, ""}};
  const Article garment = built_in_article("straight garment pieces");
  const Targets made = targets(garment, choices);
  REQUIRE(made.pieces.size() == 2);
  CHECK(made.pieces[0].width_least_mm == Approx((914.4 + 100) / 2));
  CHECK(made.pieces[1].width_greatest_mm == Approx((965.2 + 100) / 2));
  REQUIRE(made.seams.size() == 2);
  CHECK(made.seams[0] == TargetSeam{"side, below the armhole", 2, 400, 400});
  CHECK(2 * made.seams[1].least_mm == Approx((914.4 + 100) / 2 - 220));  // both shoulders and the neck are the width
  choices.measures[2] = {"armhole", 601, 601, ""};
  CHECK_THROWS_MATCHES(targets(garment, choices), Error, refused_field(ErrorCode::bad_argument, "choices.measures"));
}

TEST_CASE("a host's article is reckoned by the same rules", "[article]") {
  // By hand: the rule takes 10 to 20 off 900 and off 320 to 340; the lap is 60 to 80, the flap 100.
  const Targets made = targets(sample_article(), sample_choices());
  REQUIRE(made.pieces.size() == 7);
  const TargetPiece& corner = made.pieces[0];
  CHECK(corner.name == "body, lower left");
  CHECK(corner.width_least_mm == Approx(880.0 / 3));
  CHECK(corner.width_greatest_mm == Approx(890.0 / 3));
  CHECK(corner.length_least_mm == (300 + 30) / 2.0);
  CHECK(corner.length_greatest_mm == (330 + 40) / 2.0);
  CHECK(corner.left == seamed);
  CHECK(corner.lower == closed);
  CHECK(corner.upper == seamed);
  CHECK(made.pieces[5].name == "body, upper right");
  CHECK(made.pieces[5].right == free_);
  CHECK(made.pieces[5].upper == closed);
  CHECK(
      made.pieces[6] ==
      TargetPiece{"end", 4, 110, 112, 120, 140, free_, free_, seamed, free_, {{50, 50, 150, 150}, {120, 120, 40, 45}}});
  CHECK(made.seams == std::vector<TargetSeam>{
                          {"side by side", 2, 330, 370}, {"one above the other", 1, 880, 890}, {"end", 4, 100, 100}});
  CHECK(made.seam_least_mm == 2 * 330 + 880 + 400);
  CHECK(made.seam_greatest_mm == 2 * 370 + 890 + 400);
  CHECK(made.filling == std::vector<NamedMeasure>{{"length", 900, 900, ""}, {"girth", 320, 340, ""}});
}

TEST_CASE("a graded rule knows its own sizes, both ways, and no others", "[article]") {
  ArticleChoices choices = sample_choices();
  choices.rule = "stepped";
  choices.size = "narrow";
  CHECK(targets(sample_article(), choices).pieces[0].width_least_mm == 230);  // 690 in three
  choices.list = "sewn before";
  choices.size = "short";
  CHECK(targets(sample_article(), choices).filling ==
        std::vector<NamedMeasure>{{"length", 700, 700, ""}, {"girth", 300, 300, ""}});
  choices.list = "windows";
  choices.size = "wide";
  CHECK_THROWS_MATCHES(targets(sample_article(), choices), Error,
                       refused_field(ErrorCode::bad_argument, "choices.rule"));
}

TEST_CASE("a size may go by an input, which is wanted then and only then", "[article]") {
  const Article scarf = built_in_article("scarf");
  ArticleChoices choices;
  choices.list = "by the wearer";
  choices.size = "as long as the wearer is tall";
  choices.measures = {{"width", 200, 200, ""}, {"wearer's height", 1640, 1660, ""}};
  const Targets made = targets(scarf, choices);
  CHECK(made.pieces[0].length_least_mm == 1640);
  CHECK(made.pieces[0].length_greatest_mm == 1660);
  choices.measures.pop_back();
  CHECK_THROWS_MATCHES(targets(scarf, choices), Error, refused_field(ErrorCode::bad_argument, "choices.measures"));
  choices.list = "three lengths";
  choices.size = "short";
  CHECK(targets(scarf, choices).pieces[0].length_least_mm == 1397);
  choices.measures.push_back({"wearer's height", 1640, 1660, ""});
  CHECK_THROWS_MATCHES(targets(scarf, choices), Error,
                       refused_field(ErrorCode::bad_argument, "choices.measures[1].name"));
  CHECK(message_of([&] { targets(scarf, choices); }).find("does not go by it") != std::string::npos);

  // With more on top; and an input that a piece refers to as well is always wanted.
  Article article = sample_article();
  article.lists[1].sizes[0].measures[0] = {"length", 600, 610, "six flaps", "flap"};
  ArticleChoices own = sample_choices();
  own.list = "sewn before";
  own.size = "short";
  CHECK(targets(article, own).filling[0] == NamedMeasure{"length", 710, 730, ""});  // 100 to 100, 600 to 610, 10 to 20
  article.lists[1].sizes[0].measures[0] = {"length", -1000, -1000, "less than nothing", "flap"};
  CHECK_THROWS_MATCHES(targets(article, own), Error, refused_field(ErrorCode::bad_argument, "choices.measures"));
}

TEST_CASE("an insert that is there is measured, and the rule makes the cover", "[article]") {
  const Article cushion = built_in_article("cushion cover");
  ArticleChoices choices;
  choices.rule = "insert 1 to 2 in larger";
  choices.closure = "seam";
  choices.measures = {{"width", 430, 430, ""}, {"height", 520, 530, ""}};
  choices.measures_of_filling = true;
  const Targets made = targets(cushion, choices);
  CHECK(made.pieces[0].width_least_mm == Approx(430 - 50.8));
  CHECK(made.pieces[0].width_greatest_mm == Approx(430 - 25.4));
  CHECK(made.pieces[0].length_least_mm == Approx(520 - 50.8));
  CHECK(made.pieces[0].length_greatest_mm == Approx(530 - 25.4));
  CHECK(made.filling == std::vector<NamedMeasure>{{"width", 430, 430, ""}, {"height", 520, 530, ""}});
  const auto refused = [](const Article& article, const ArticleChoices& asked) {
    CHECK_THROWS_MATCHES(targets(article, asked), Error,
                         refused_field(ErrorCode::bad_argument, "choices.measures_of_filling"));
  };
  choices.list = "covers, UK";
  choices.size = "40 x 40 cm";
  refused(cushion, choices);  // the list gives the measures
  ArticleChoices bag;
  bag.measures = {{"width", 300, 300, ""}, {"height", 360, 360, ""}};
  bag.counts = {{"panels", 2}};
  bag.measures_of_filling = true;
  refused(built_in_article("bag panel"), bag);  // nothing is filled
}

TEST_CASE("a rule for squares is refused for an oblong, and the other way round", "[article][error]") {
  const Article cushion = built_in_article("cushion cover");
  const auto filling = [&](const char* rule, double width, double height) {
    ArticleChoices choices;
    choices.rule = rule;
    choices.closure = "seam";
    choices.measures = {{"width", width, width, ""}, {"height", height, height, ""}};
    return targets(cushion, choices).filling;
  };
  CHECK(filling("insert 2 in larger", 450, 450)[0].least_mm == Approx(500.8));
  CHECK(filling("oblong insert 1 in larger", 300, 500)[1].least_mm == Approx(525.4));
  CHECK(filling("same size", 450, 450)[0].least_mm == 450);
  CHECK(filling("same size", 300, 500)[0].least_mm == 300);
  for (const auto& [rule, width, height] :
       {std::tuple{"insert 2 in larger", 300, 500}, std::tuple{"oblong insert 1 in larger", 450, 450},
        std::tuple{"graded", 300, 500}}) {
    CAPTURE(rule);
    CHECK_THROWS_MATCHES(filling(rule, width, height), Error, refused_field(ErrorCode::bad_argument, "choices.rule"));
  }
  CHECK(message_of([&] { filling("oblong insert 1 in larger", 450, 450); }) ==
        "rule 'oblong insert 1 in larger' is for oblongs; this is square");
}

TEST_CASE("every oblong of a list may lie or stand", "[article]") {
  int oblongs = 0;
  for (const SizeList& list : built_in_article("cushion cover").lists) {
    for (const ArticleSize& size : list.sizes) {
      const NamedMeasure& width = size.measures.at(0);
      const NamedMeasure& height = size.measures.at(1);
      REQUIRE((width.name == "width" && height.name == "height"));
      if (width.least_mm == height.least_mm) continue;
      ++oblongs;
      CAPTURE(list.name, size.name);
      CHECK(std::any_of(list.sizes.begin(), list.sizes.end(), [&](const ArticleSize& other) {
        return other.measures[0].least_mm == height.least_mm && other.measures[1].least_mm == width.least_mm &&
               other.measures[0].printed == height.printed && other.measures[1].printed == width.printed;
      }));
    }
  }
  CHECK(oblongs == 12);
}

TEST_CASE("an own overlap stands in for the closure's figures, but not for a seam's", "[article]") {
  const Article cushion = built_in_article("cushion cover");
  ArticleChoices choices;
  choices.rule = "same size";
  choices.closure = "overlap";
  choices.measures = {{"width", 400, 400, ""}, {"height", 400, 400, ""}, {"overlap", 80, 90, ""}};
  const Targets made = targets(cushion, choices);
  REQUIRE(made.pieces.size() == 3);
  CHECK(made.pieces[1].length_least_mm == 240);  // half of 400 and of 80
  CHECK(made.pieces[1].length_greatest_mm == 245);
  choices.closure = "seam";
  CHECK_THROWS_MATCHES(targets(cushion, choices), Error,
                       refused_field(ErrorCode::bad_argument, "choices.measures[2].name"));
}

TEST_CASE("a measure that comes out too small is told rounded, and once where it is one", "[article][error]") {
  Article article = built_in_article("cushion cover");
  ArticleChoices choices;
  choices.rule = "same size";
  choices.closure = "seam";
  choices.measures = {{"width", 400, 400, ""}, {"height", 400, 400, ""}};
  article.pieces[0].length = {{{"height", 1}}, -487.2, -474.5, {}};
  CHECK_THROWS_WITH(targets(article, choices),
                    Catch::Matchers::EndsWith("comes to -87.2 to -74.5 mm, not 1 to 100000 mm"));
  article.pieces[0].length = {{{"height", 1}}, -487.2, -487.2, {}};
  CHECK_THROWS_WITH(targets(article, choices), Catch::Matchers::EndsWith("comes to -87.2 mm, not 1 to 100000 mm"));
}

TEST_CASE("an overlap longer than the pieces that lap is refused", "[article][error]") {
  const Article cushion = built_in_article("cushion cover");
  ArticleChoices choices;
  choices.rule = "same size";
  choices.closure = "overlap";
  const auto lapped = [&](double height, double least, double greatest) {
    choices.measures = {{"width", 450, 450, ""}, {"height", height, height, ""}, {"overlap", least, greatest, ""}};
    return targets(cushion, choices).pieces[1].length_greatest_mm;
  };
  CHECK(lapped(450, 450, 450) == 450);  // two backs, each as high as the front: no more can lie double
  CHECK_THROWS_MATCHES(lapped(450, 9000, 9000), Error,
                       refused_field(ErrorCode::bad_argument, "choices.measures[2].greatest_mm"));
  CHECK_THROWS_MATCHES(lapped(450, 100, 451), Error,
                       refused_field(ErrorCode::bad_argument, "choices.measures[2].greatest_mm"));
  CHECK_THROWS_WITH(lapped(450, 460, 460),
                    Catch::Matchers::EndsWith("the overlap is 460 mm, more than the length of 'lower back', 455 mm"));
  // The closure's own 100 to 150 mm are too much for a cover 120 mm high.
  choices.measures = {{"width", 450, 450, ""}, {"height", 120, 120, ""}};
  CHECK_THROWS_MATCHES(targets(cushion, choices), Error, refused_field(ErrorCode::bad_argument, "choices.closure"));
}

TEST_CASE("a choice that is missing, unknown or out of its range is refused with its field", "[article][error]") {
  const Article article = sample_article();
  const auto [change, field] = GENERATE(table<std::function<void(ArticleChoices&)>, std::string>({
      {[](ArticleChoices& c) { c.list = "doors"; }, "choices.list"},
      {[](ArticleChoices& c) { c.list = ""; }, "choices.list"},           // a size of no list
      {[](ArticleChoices& c) { c.list = c.size = ""; }, "choices.list"},  // and no measures
      {[](ArticleChoices& c) { c.size = "grand"; }, "choices.size"},
      {[](ArticleChoices& c) { c.rule = ""; }, "choices.rule"},
      {[](ArticleChoices& c) { c.closure = "zip"; }, "choices.closure"},
      {[](ArticleChoices& c) { c.measures.clear(); }, "choices.measures"},  // the input
      {[](ArticleChoices& c) { c.measures[0].name = "tail"; }, "choices.measures[0].name"},
      {[](ArticleChoices& c) { c.measures[0].least_mm = 19; }, "choices.measures[0].least_mm"},
      {[](ArticleChoices& c) { c.measures[0].least_mm = std::nan(""); }, "choices.measures[0].least_mm"},
      {[](ArticleChoices& c) { c.measures[0].greatest_mm = 99; }, "choices.measures[0].greatest_mm"},
      {[](ArticleChoices& c) { c.measures[0].greatest_mm = std::numeric_limits<double>::infinity(); },
       "choices.measures[0].greatest_mm"},
      {[](ArticleChoices& c) { c.measures.push_back(c.measures[0]); }, "choices.measures[1].name"},  // twice
      {[](ArticleChoices& c) {
         c.measures.push_back({"girth", 300, 300, ""});
       },
       "choices.measures[1].name"},
      {[](ArticleChoices& c) {
         c.measures.push_back({"overlap", -1, 0, ""});
       },
       "choices.measures[1].least_mm"},
      {[](ArticleChoices& c) { c.counts.pop_back(); }, "choices.counts"},
      {[](ArticleChoices& c) { c.counts[1].name = "rings"; }, "choices.counts[1].name"},
      {[](ArticleChoices& c) { c.counts[0].count = 7; }, "choices.counts[0].count"},
      {[](ArticleChoices& c) { c.counts[0].count = 0; }, "choices.counts[0].count"},
      {[](ArticleChoices& c) { c.counts.push_back(c.counts[0]); }, "choices.counts[2].name"},
  }));
  ArticleChoices choices = sample_choices();
  REQUIRE_NOTHROW(targets(article, choices));
  change(choices);
  CHECK_THROWS_MATCHES(targets(article, choices), Error, refused_field(ErrorCode::bad_argument, field));
}

TEST_CASE("what an article does not offer cannot be chosen", "[article][error]") {
  const Article bag = built_in_article("bag panel");
  ArticleChoices choices;
  choices.measures = {{"width", 300, 300, ""}, {"height", 360, 360, ""}};
  choices.counts = {{"panels", 2}};
  for (const auto& [member, field] :
       {std::pair{&ArticleChoices::list, "choices.list"}, std::pair{&ArticleChoices::size, "choices.size"},
        std::pair{&ArticleChoices::rule, "choices.rule"}, std::pair{&ArticleChoices::closure, "choices.closure"}}) {
    ArticleChoices asked = choices;
    asked.*member = "any";
    CHECK_THROWS_MATCHES(targets(bag, asked), Error, refused_field(ErrorCode::bad_argument, field));
  }
  choices.measures.pop_back();
  CHECK_THROWS_MATCHES(targets(bag, choices), Error, refused_field(ErrorCode::bad_argument, "choices.measures"));
}

TEST_CASE("a shape that does not rise within its piece is refused", "[article][error]") {
  const auto [change, wrong] = GENERATE(table<std::function<void(ArticlePiece&)>, std::string>({
      {[](ArticlePiece& p) {
         p.shape[0].height = {{}, 121, 121, {}};
       },
       "above the next point"},
      {[](ArticlePiece& p) {
         p.shape[0].height = {{}, -1, 0, {}};
       },
       "below the lower edge"},
      {[](ArticlePiece& p) {
         p.shape[1].height = {{}, 120, 141, {}};
       },
       "above the upper edge"},
      {[](ArticlePiece& p) {
         p.shape[1].width = {{}, 0.5, 40, {}};
       },
       "no width"},
      {[](ArticlePiece& p) {
         p.shape[1].width = {{{"flap", 100}}, 1e5, 1e5, {}};
       },
       "too wide"},
      {[](ArticlePiece& p) {
         p.width = {{{"flap", -1}}, 0, 0, {}};
       },
       "a piece of no width"},
      {[](ArticlePiece& p) { p.length = {}; }, "a piece of no length"},
  }));
  CAPTURE(wrong);
  Article article = sample_article();
  change(article.pieces[1]);
  CHECK_THROWS_MATCHES(targets(article, sample_choices()), Error,
                       refused_field(ErrorCode::bad_argument, "choices.measures"));
  CHECK(read_article(write(article)) == article);  // with other choices it might do
}

TEST_CASE("too many pieces are refused, not counted past an int", "[article][error]") {
  Article article = sample_article();
  article.counts = {{"parts", "", 1000, 1000}, {"tiers", "", 1000, 1000}};
  article.pieces[0].count = 2;
  article.pieces[0].width.over.clear();
  article.pieces[0].length.over.clear();
  ArticleChoices choices = sample_choices();
  choices.counts = {{"parts", 1000}, {"tiers", 1000}};
  CHECK_THROWS_MATCHES(targets(article, choices), Error, refused_field(ErrorCode::bad_argument, "choices.counts"));
  article.pieces[0].count = 1;
  article.seams[0].times = {"parts", "parts", "tiers"};
  CHECK_THROWS_MATCHES(targets(article, choices), Error, refused_field(ErrorCode::bad_argument, "choices.counts"));
}

TEST_CASE("none of a count that no number holds is none", "[article]") {
  Article article;
  article.name = "x";
  article.counts = {{"n", "", 1, 1000}, {"m", "", 1, 1000}};
  ArticlePiece piece;
  piece.name = "p";
  piece.width.least_mm = piece.width.greatest_mm = piece.length.least_mm = piece.length.greatest_mm = 100;
  article.pieces = {piece};
  ArticleSeam seam;
  seam.name = "s";
  seam.times.assign(200, "n");
  seam.between = {"m"};
  seam.length = piece.length;
  article.seams = {seam};
  ArticleChoices choices;
  choices.counts = {{"n", 1000}, {"m", 1}};
  CHECK(targets(article, choices).seam_greatest_mm == 0);
  choices.counts = {{"n", 1000}, {"m", 2}};
  CHECK_THROWS_MATCHES(targets(article, choices), Error, refused_field(ErrorCode::bad_argument, "choices.counts"));
}

}  // namespace article_test
