// From an article to panels that make it.
#include "latchwork/article_fit.hpp"

#include <string>
#include <vector>

#include "catch.hpp"
#include "latchwork/motif.hpp"
#include "latchwork/size.hpp"

namespace article_fit_test {

using namespace latchwork;
using latchwork_test::Approx;
using latchwork_test::refused_field;

namespace {

// A stitch of stockinette is 4 mm wide and 2.5 mm high, one of the rope 3 mm and 2.5 mm.
Swatch swatch() {
  return Swatch({{"stockinette", Counted::stitches, 25, 100, ""},
                 {"stockinette", Counted::rows, 40, 100, ""},
                 {"rope 2/2 every 4", Counted::stitches, 100, 300, ""},
                 {"rope 2/2 every 4", Counted::rows, 40, 100, ""}});
}

// Edge, ground, rope, ground, edge: 2 + 5 + 4 + 5 + 2 columns.
Panel panel(int rows = 80) {
  const Strip edge{"edge", "stockinette", Grid(1, 2)};
  const std::vector<Strip> strips{edge, stockinette(5), rope(2, 2, 4, Lean::right), stockinette(5), edge};
  return join_strips("front", rows, strips);
}

ArticleRequest request() {
  ArticleRequest out;
  out.choices.rule = "same size";
  out.choices.closure = "overlap";
  out.choices.measures = {{"width", 200, 200, ""}, {"height", 200, 200, ""}};
  out.made = {"front"};
  out.groups = {{1, 2, 1, 20}, {3, 3, 1, 1}};
  out.edge = 0;
  out.design.edge_least = 2;
  out.design.edge_most = 6;
  out.design.rows_step = 4;
  out.design.seam_left = out.design.seam_right = 1;
  out.design.seam_bottom = out.design.seam_top = 2;
  return out;
}

ArticleFit fitted_by(const ArticleRequest& wanted, const Panel& of) {
  return fit_article(built_in_article("cushion cover"), wanted, of, swatch());
}

}  // namespace

TEST_CASE("a piece's target is fitted with its ranges, and seams where it is sewn", "[article][fit]") {
  TargetPiece piece;
  piece.width_least_mm = 300;
  piece.width_greatest_mm = 310;
  piece.length_least_mm = piece.length_greatest_mm = 400;
  piece.left = EdgeUse::seamed;
  piece.lower = EdgeUse::seamed;
  piece.upper = EdgeUse::closure;
  FitRequest design;
  design.width_mm = 7;  // not read
  design.seam_left = design.seam_right = 1;
  design.seam_bottom = design.seam_top = 2;
  design.rows_step = 4;
  const FitRequest made = piece_request(piece, design);
  CHECK(made.width_mm == 300);
  CHECK(made.width_most_mm == 310);
  CHECK(made.height_mm == 400);
  CHECK(made.height_most_mm == 400);
  CHECK(made.seam_left == 1);
  CHECK(made.seam_right == 0);  // free
  CHECK(made.seam_bottom == 2);
  CHECK(made.seam_top == 0);  // at the opening
  CHECK(made.rows_step == 4);
  // A sleeve that widens from 300 to 380..400 is knitted as wide as that.
  piece.shape = {{200, 200, 380, 400}, {300, 300, 100, 100}};
  CHECK(piece_request(piece, design).width_mm == 380);
  CHECK(piece_request(piece, design).width_most_mm == 400);
}

TEST_CASE("a piece of an article leads to its fits in one call", "[article][fit]") {
  ArticleChoices choices;
  choices.list = "covers, UK";
  choices.size = "40 x 40 cm";
  choices.rule = "same size";
  choices.closure = "seam";
  const Targets cover = targets(built_in_article("cushion cover"), choices);
  FitRequest design;
  design.groups = {{{stockinette(10)}, 1, 20}};
  design.edge = stockinette(1);
  design.seam_left = design.seam_right = 1;
  const FitResult found = fit_piece(cover.pieces.at(0), design, swatch());
  CHECK(found == fit(piece_request(cover.pieces[0], design), swatch()));
  REQUIRE_FALSE(found.candidates.empty());
  // 10 repeats and an edge stitch a side, less the seams' two: 100 stitches of 4 mm, 160 rows of 2.5 mm.
  CHECK(found.candidates[0].times == std::vector<int>{10});
  CHECK(found.candidates[0].rows == 160);
  CHECK(found.candidates[0].error == 0);
}

TEST_CASE("groups and edge are cut from the panel's strips", "[article][fit]") {
  const FitRequest design = panel_design(request(), panel());
  REQUIRE(design.groups.size() == 2);
  REQUIRE(design.groups[0].strips.size() == 2);
  CHECK(design.groups[0].strips[1].grid == rope(2, 2, 4, Lean::right).grid);
  CHECK(design.groups[0].most == 20);
  CHECK(design.groups[1].strips[0].grid.columns() == 5);
  ArticleRequest tied = request();
  tied.groups[1].as_group = 0;
  CHECK(panel_design(tied, panel()).groups[1].as_group == 0);
  CHECK(design.groups[1].as_group == -1);
  REQUIRE(design.edge);
  CHECK(design.edge->grid == Grid(1, 1));
  ArticleRequest plain = request();
  plain.groups.clear();
  REQUIRE(panel_design(plain, panel()).groups.size() == 1);
  CHECK(panel_design(plain, panel()).groups[0].strips.size() == 3);
  plain.edge = -1;
  CHECK(panel_design(plain, panel()).groups[0].strips.size() == 5);
  CHECK_FALSE(panel_design(plain, panel()).edge);
}

TEST_CASE("the panel as it stands is held against the piece between its seams", "[article][fit]") {
  const ArticleFit found = fitted_by(request(), panel());
  REQUIRE(found.pieces.size() == 1);
  CHECK(found.targets.pieces.size() == 3);  // a front and two backs
  const PieceFit& front = found.pieces[0];
  // 14 stockinette columns of 4 mm less the seams' two, 4 of the rope at 3 mm; 80 rows less 4 of 2.5 mm.
  CHECK(front.as_it_stands.width_mm == Approx(12 * 4 + 4 * 3));
  CHECK(front.as_it_stands.height_mm == Approx(76 * 2.5));
  CHECK(front.as_it_stands.width_error_mm == Approx(60 - 200));
  CHECK(front.as_it_stands.width_error_percent == Approx(-70));
  CHECK(front.as_it_stands.height_error_percent == Approx(-5));
  CHECK(front.as_it_stands.columns == 18);
  CHECK(front.as_it_stands.rows == 80);
  REQUIRE_FALSE(front.fit.candidates.empty());
  // 84 rows, less 4: 200 mm. 32 mm for each repeat, 20 mm of ground, 8 mm for each edge column beyond the seams'.
  const FitCandidate& best = front.fit.candidates[0];
  CHECK(best.rows == 84);
  CHECK(best.times == std::vector<int>{5, 1});
  CHECK(best.edge_columns == 3);
  CHECK(best.width_mm == Approx(5 * 32 + 20 + 8 * (best.edge_columns - 1)));
  const FitRequest wanted = piece_request(front.target, panel_design(request(), panel()));
  const Panel made = fitted(wanted, best);
  SizeOptions seams;
  seams.seam_left = seams.seam_right = 1;
  seams.seam_bottom = seams.seam_top = 2;
  CHECK(size(made, swatch(), seams).width_mm == best.width_mm);
  CHECK(size(made, swatch(), seams).height_mm == best.height_mm);
}

TEST_CASE("pieces alike have one fit, and a name stands for all its parts", "[article][fit]") {
  ArticleRequest wanted = request();
  wanted.made.clear();
  const ArticleFit cover = fitted_by(wanted, panel());
  REQUIRE(cover.pieces.size() == 3);
  CHECK(cover.pieces[1].fit.candidates[0].error == cover.pieces[2].fit.candidates[0].error);
  ArticleRequest blanket;
  blanket.choices.measures = {{"width", 900, 900, ""}, {"height", 1200, 1200, ""}};
  blanket.choices.counts = {{"across", 3}, {"up", 1}};
  blanket.made = {"panel"};
  const ArticleFit found = fit_article(built_in_article("blanket of panels"), blanket, panel(), swatch());
  CHECK(found.pieces.size() == found.targets.pieces.size());
  CHECK(found.pieces.size() > 1);
}

TEST_CASE("a panel of several bands is held against the article and not fitted, which is said", "[article][fit]") {
  const ArticleFit found = fitted_by(request(), panel(40).above(panel(40)));
  REQUIRE(found.pieces.size() == 1);
  CHECK(found.pieces[0].as_it_stands.height_mm == Approx(76 * 2.5));
  CHECK(found.pieces[0].fit.candidates.empty());
  CHECK(found.message.find("2 bands") != std::string::npos);
  CHECK_THROWS_MATCHES(panel_design(request(), panel(40).above(panel(40))), Error,
                       refused_field(ErrorCode::bad_argument, "panel"));
}

TEST_CASE("what no panel's design can be is refused at its place", "[article][fit][error]") {
  const auto refused = [](const char* field, auto&& change) {
    INFO(field);
    ArticleRequest wrong = request();
    change(wrong);
    CHECK_THROWS_MATCHES(fitted_by(wrong, panel()), Error, refused_field(ErrorCode::bad_argument, field));
  };
  refused("made[0]", [](ArticleRequest& of) { of.made = {"hood"}; });
  refused("made[1]", [](ArticleRequest& of) { of.made = {"front", "front"}; });
  refused("made[0]", [](ArticleRequest& of) { of.made = {""}; });
  refused("groups[1].last", [](ArticleRequest& of) { of.groups[1].last = 5; });
  refused("groups[0].last", [](ArticleRequest& of) { of.groups[0] = {3, 2, 1, 1}; });
  refused("groups[0].first", [](ArticleRequest& of) { of.groups[0].first = -1; });
  refused("groups[0].most", [](ArticleRequest& of) { of.groups[0].most = 0; });
  refused("groups", [](ArticleRequest& of) { of.groups.assign(9, {1, 1, 1, 1}); });
  refused("edge", [](ArticleRequest& of) { of.edge = 5; });
  refused("edge", [](ArticleRequest& of) { of.edge = -2; });
  refused("seam_ms_per_m", [](ArticleRequest& of) { of.seam_ms_per_m = -1; });
  refused("design.rows_step", [](ArticleRequest& of) { of.design.rows_step = 0; });
  refused("design.tolerance_percent", [](ArticleRequest& of) { of.design.tolerance_percent = -1; });
  refused("design.seam_left", [](ArticleRequest& of) { of.design.seam_left = 0.25; });
  refused("choices.size", [](ArticleRequest& of) {
    of.choices.measures.clear();
    of.choices.list = "covers, UK";
  });
}

TEST_CASE("a measure of an article's choices is a number of mm or a text with its unit", "[article][file]") {
  const auto of = [](const std::string& least, const std::string& greatest) {
    return read_article_request(R"({"format": "latchwork-article-choices", "version": 1, "article": "scarf",
 "choices": {"measures": [{"name": "width", "least_mm": )" +
                                least + R"(,
   "greatest_mm": )" + greatest +
                                "}]}}");
  };
  const ArticleRequest read = of("\"17 3/4 in\"", "\"45.5 cm\"");
  CHECK(read.choices.measures.at(0).least_mm == 450.85);
  CHECK(read.choices.measures.at(0).greatest_mm == 455);
  CHECK(read == of("450.85", "455"));
  CHECK(read_article_request(write(read)) == read);
  const auto refused = [&](const char* text, ErrorCode code) {
    INFO(text);
    try {
      of("450", std::string("\"") + text + "\"");
      FAIL_CHECK("was read");
    } catch (const Error& error) {
      CHECK(error.code() == code);
      CHECK(error.place().line == 3);
      CHECK(error.place().field == "choices.measures[0].greatest_mm");
      CHECK(std::string(error.what()).starts_with("line 3, choices.measures[0].greatest_mm: "));
    }
  };
  refused("45", ErrorCode::bad_unit);
  refused("45 g", ErrorCode::bad_unit);
  refused("-45 cm", ErrorCode::bad_value);
  refused("wide", ErrorCode::bad_syntax);
  refused("45 cm or so", ErrorCode::bad_syntax);
}

TEST_CASE("an edge or a group that would cut a crossing is named", "[article][fit][error]") {
  ArticleRequest wrong = request();
  wrong.edge = 2;  // one column of the rope
  try {
    panel_design(wrong, panel());
    FAIL_CHECK("was cut");
  } catch (const Error& error) {
    CHECK(error.code() == ErrorCode::crossing_cut);
    CHECK(error.place().field == "edge");
    CHECK(std::string(error.what()).starts_with("edge: "));
  }
}

}  // namespace article_fit_test
